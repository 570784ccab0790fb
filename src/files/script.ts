/**
 * TypeScript kits. Such a kit is a program, so it runs in a process of its own, with a limit of time and of what it may
 * hand over: it may end, hang, fail or print, and nothing of that reaches this one.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BaseReader } from '../describe/chain.ts';
import { failedScript, kitFromValue, type Reading } from '../describe/read.ts';
import type { PartsList } from '../describe/stock.ts';
import { isScript, pathOfBase } from './kit-path.ts';

/** Milliseconds. */
const TIME_LIMIT = 10_000;
/** Characters that a kit may have as data. */
const MOST = 1e6;

/**
 * What the other process runs: it loads the kit, and hands what it exports by default to the fourth of its streams. In a
 * folder whose package.json does not say otherwise the loader makes a CommonJS module, which wraps what it exports.
 */
const RUNNER = `
import { writeSync } from 'node:fs';
const [loader, file, from] = process.argv.slice(1);
const hand = (answer) => writeSync(3, JSON.stringify(answer) + '\\n');
try {
  const { tsImport } = await import(loader);
  let { default: kit } = await tsImport(file, from);
  if (typeof kit === 'object' && kit !== null && '__esModule' in kit && 'default' in kit) kit = kit.default;
  hand({ kit });
} catch (thrown) {
  hand({ failed: thrown instanceof Error ? thrown.message : String(thrown) });
}
`;

interface Answer {
  readonly kit?: unknown;
  readonly failed?: string;
}

/**
 * Runs a TypeScript kit, and those that it extends: whoever names a kit to have it run means them too.
 *
 * @param readBase finds bases that are text
 * @param list the workshop's parts list, where there is one
 */
export async function runScript(file: string, readBase: BaseReader, list?: PartsList): Promise<Reading> {
  const answers = new Map<string, Answer>();
  for (let at: string | undefined = file; at !== undefined && !answers.has(at); ) {
    const answer = await answerOf(at);
    answers.set(at, answer);
    const name = extendsOf(answer.kit);
    at = name !== undefined && isScript(name) ? pathOfBase(name, at) : undefined;
  }
  const { kit, failed } = answers.get(file) ?? {};
  if (failed !== undefined) return failedScript(failed, file);
  const readAny: BaseReader = (name, from) => {
    const target = pathOfBase(name, from);
    const answer = answers.get(target);
    if (!answer) return readBase(name, from);
    return answer.failed === undefined
      ? { file: target, value: answer.kit }
      : { reason: `it could not be run: ${answer.failed.split('\n', 1)[0]}` };
  };
  return kitFromValue(kit, file, readAny, list);
}

function extendsOf(kit: unknown): string | undefined {
  const named = typeof kit === 'object' && kit !== null && 'extends' in kit ? kit.extends : undefined;
  return typeof named === 'string' ? named : undefined;
}

function answerOf(file: string): Promise<Answer> {
  const child = spawn(
    process.execPath,
    [
      '--input-type=module',
      '--eval',
      RUNNER,
      loaderUrl(),
      pathToFileURL(resolve(file)).href,
      import.meta.url,
    ],
    // A group of its own, so that whatever it starts ends with it.
    { stdio: ['ignore', 'ignore', 'ignore', 'pipe'], detached: true },
  );
  return new Promise((settle) => {
    let text = '';
    let done = false;
    const end = (answer: Answer): void => {
      if (done) return;
      done = true;
      clearTimeout(limit);
      stop(child);
      settle(answer);
    };
    const limit = setTimeout(
      () => end({ failed: `it did not finish within ${TIME_LIMIT / 1000} seconds` }),
      TIME_LIMIT,
    );
    const handed = child.stdio[3];
    handed?.on('data', (bytes: Buffer) => {
      text += bytes.toString('utf8');
      if (text.length > MOST) end({ failed: 'what it exports is too large for a kit' });
      else if (text.endsWith('\n')) end(parsed(text));
    });
    child.on('error', (thrown) => end({ failed: thrown.message }));
    // The stream may still hold what was handed over before the end.
    child.on('close', (code, signal) =>
      end({ failed: `it ended before it gave a kit, with ${signal ?? `exit code ${code}`}` }),
    );
  });
}

/** Where the loader's module is: resolved from here, as the other process has no place of its own to resolve it from. */
function loaderUrl(): string {
  const require = createRequire(import.meta.url);
  const folder = dirname(require.resolve('tsx/package.json'));
  const { exports } = require('tsx/package.json') as {
    readonly exports: { readonly './esm/api': { readonly import: { readonly default: string } } };
  };
  return pathToFileURL(join(folder, exports['./esm/api'].import.default)).href;
}

/** Ends a process and all that it started. */
function stop({ pid }: ChildProcess): void {
  if (pid === undefined) return;
  try {
    process.kill(-pid, 'SIGKILL');
  } catch {
    // It has ended by itself.
  }
}

function parsed(text: string): Answer {
  try {
    return JSON.parse(text) as Answer;
  } catch {
    return { failed: 'what it exports is not a kit’s plain data' };
  }
}
