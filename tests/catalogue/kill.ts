/** A build that is killed, and what the next one makes of what it left. */
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { buildByCli, outOf, start } from './workshop.ts';

interface After {
  /** Whether the build was still at work when it was killed. */
  readonly killed: boolean;
  readonly code: number | null;
  /** What lies in the folder of outputs after the next build. */
  readonly out: Readonly<Record<string, string>>;
  /** What lies in the workshop's own folder besides what is kept there: locks, and files that were half written. */
  readonly left: readonly string[];
}

/**
 * Builds from the start, kills the build after some time, and builds again.
 *
 * @param after milliseconds from the start of the process
 * @param warm with the cache of an earlier build, so that nearly all of the time goes into writing
 */
export async function killOnce(
  folder: string,
  after: number,
  signal: NodeJS.Signals,
  warm: boolean,
): Promise<After> {
  const own = join(folder, '.solderleaf');
  rmSync(join(folder, 'out'), { recursive: true, force: true });
  if (!warm) rmSync(own, { recursive: true, force: true });
  const { child, ended } = start([folder, '--workers', '2']);
  const timer = setTimeout(() => child.kill(signal), after);
  const first = await ended;
  clearTimeout(timer);
  const next = await buildByCli(folder, ['--workers', '2']);
  return {
    killed: first.code !== 0,
    code: next.code,
    out: outOf(folder),
    left: leftIn(own),
  };
}

/** Locks and half-written files; not those of the cache, which lie there harmless until the next writing. */
export const leftIn = (own: string): readonly string[] =>
  readdirSync(own, { recursive: true, encoding: 'utf8' }).filter(
    (name) => !name.startsWith('cache') && /(^|[/\\])(lock|\.)/.test(name),
  );
