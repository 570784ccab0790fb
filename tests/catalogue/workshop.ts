/** A made-up workshop of small kits in a folder of its own, and builds in it. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { make, type Task } from '../../src/catalogue/build/make.ts';
import type { Listener, Summary } from '../../src/catalogue/build/options.ts';
import type { Pool } from '../../src/catalogue/build/pool.ts';
import { Workshop, type WorkshopOptions } from '../../src/catalogue/build/workshop.ts';
import { readCatalogue } from '../../src/catalogue/read-catalogue.ts';
import { PLACEMENTS } from '../tools/placements-folder.ts';

/** A single coil with a padding resistor, so small, and with so little left to place, that it is drawn at once. */
export const smallKit = (id: string, ohms = '470k'): string =>
  `kit: ${id}
title: S, ${id}
parts:
  neck: { kind: single-coil, label: Neck, resistance: 5.7k, inductance: 2.4 }
  pad: { kind: resistor, label: Pad, value: ${ohms} }
  output: { kind: jack, label: Output }
joints:
  - neck.hot > output.tip
  - neck.ground > output.sleeve
  - leg: pad.1 > output.tip
  - leg: pad.2 > output.sleeve
arrangement: single-control
`;

const CLI = resolve('dist/cli.js');
const made: string[] = [];
/** Deletes all workshops; for `afterAll`. */
export const clearWorkshops = (): void => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
};

export const newFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'solderleaf-workshop-'));
  made.push(folder);
  return folder;
};

/** Where workshops of one run share what was placed in them; nowhere outside of a run. */
const shared = process.env[PLACEMENTS] && join(process.env[PLACEMENTS], 'workshops');
const placedIn = (folder: string): string => join(folder, '.solderleaf', 'cache', 'placed');

/** Copies the placements that are not there yet. */
function carry(from: string | undefined, to: string | undefined): void {
  if (from && to && existsSync(from)) cpSync(from, to, { recursive: true, force: false });
}

/** A workshop's folder with its kits by id; kits that other workshops of the run have are placed in its cache already. */
export function newWorkshop(
  kits: Readonly<Record<string, string>>,
  head = 'outputs: [drawing, loads]\n',
  folder = newFolder(),
): string {
  mkdirSync(join(folder, 'kits'), { recursive: true });
  for (const [id, text] of Object.entries(kits)) putKit(folder, id, text);
  writeFileSync(join(folder, 'solderleaf.yaml'), `kits: [kits/*.yaml]\n${head}`);
  carry(shared, placedIn(folder));
  return folder;
}

export const putKit = (folder: string, id: string, text: string): void =>
  writeFileSync(join(folder, 'kits', `${id}.yaml`), text);

/** A copy of a workshop's kits and catalogue, without outputs; without the cache as well, unless asked for, so that it is placed anew. */
export function copyOf(folder: string, warm = false): string {
  const copy = newFolder();
  for (const name of ['kits', 'solderleaf.yaml', ...(warm ? ['.solderleaf'] : [])])
    cpSync(join(folder, name), join(copy, name), { recursive: true });
  return copy;
}

/** Hashes of all files below a folder by their names; nothing for a folder that is not there. */
export function contentsOf(folder: string): Readonly<Record<string, string>> {
  const names = statSync(folder, { throwIfNoEntry: false })
    ? readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()
    : [];
  return Object.fromEntries(
    names
      .filter((name) => statSync(join(folder, name)).isFile())
      .map((name) => [
        name,
        createHash('sha256')
          .update(readFileSync(join(folder, name)))
          .digest('hex'),
      ]),
  );
}

export const outOf = (folder: string) => contentsOf(join(folder, 'out'));

interface Built extends Summary {
  readonly lines: readonly string[];
  readonly errorLines: readonly string[];
  /** What the workers were given. */
  readonly tasks: readonly Task[];
}

/**
 * Builds within this process.
 *
 * @param late a kit that is done only when another one is
 */
export async function buildHere(
  folder: string,
  options: Partial<WorkshopOptions> = {},
  late?: string,
): Promise<Built> {
  const tasks: Task[] = [];
  let other: () => void = () => undefined;
  const otherIsDone = new Promise<void>((settle) => {
    other = settle;
  });
  const pool: Pool = {
    workers: late === undefined ? 1 : 2,
    run: async (task) => {
      tasks.push(task);
      const answer = await make(task);
      // One that is alone waits for nothing.
      if (task.job.id === late) await Promise.race([otherIsDone, new Promise((end) => setTimeout(end, 300))]);
      else setTimeout(other, 50);
      return answer;
    },
    close: async () => undefined,
  };
  const { catalogue, diagnostics } = await readCatalogue(folder);
  if (!catalogue) throw new Error(diagnostics.map(({ message }) => message).join());
  const [lines, errorLines]: [string[], string[]] = [[], []];
  const listener: Listener = {
    line: (text) => void lines.push(text),
    errorLine: (text) => void errorLines.push(text),
    progress: () => undefined,
  };
  const summary = await new Workshop(pool, { prune: false, check: false, ...options }).build(
    catalogue,
    listener,
  );
  if ('refused' in summary) throw new Error(summary.refused);
  carry(placedIn(folder), shared);
  return { ...summary, lines, errorLines, tasks };
}

export interface Ended {
  readonly code: number | null;
  readonly signal: string | null;
  readonly out: string;
  readonly error: string;
}

/** Starts the program as it is shipped. */
export function start(args: readonly string[], env: NodeJS.ProcessEnv = {}) {
  const child = spawn(process.execPath, [CLI, 'build', ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, ...env },
  });
  let [out, error] = ['', ''];
  child.stdout.on('data', (text) => {
    out += text;
  });
  child.stderr.on('data', (text) => {
    error += text;
  });
  const ended = new Promise<Ended>((settle) =>
    child.on('close', (code, signal) => settle({ code, signal, out, error })),
  );
  return { child, ended };
}

/** Builds by the program as it is shipped. */
export const buildByCli = (folder: string, args: readonly string[] = [], env: NodeJS.ProcessEnv = {}) =>
  start([folder, ...args], env).ended;
