/** Kit files from the disk: bytes, text, kit and every problem of it, the circuit's faults included. */
import { readFileSync, statSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { acrossFaults } from '../annotate/circuit-notes.ts';
import { glyphFaults } from '../annotate/notes.ts';
import { type Problem, problem, type Report } from '../common/problem.ts';
import { decode } from '../describe/decode.ts';
import type { Kit } from '../describe/kit.ts';
import { failedScript, kitFromValue, type Reading, readKit } from '../describe/read.ts';
import { report } from '../describe/report.ts';
import { type Source, valueSource } from '../describe/source.ts';
import { buildCircuit } from '../solve/build.ts';
import { findFaults } from '../solve/faults.ts';

/** What a file gave: a kit when it has no fault, and the reports in any case. */
export interface Loaded {
  readonly file: string;
  readonly kit?: Kit;
  readonly reports: readonly Report[];
  readonly source: Source;
}

export async function loadKit(file: string): Promise<Loaded> {
  const reading = await readFile(file);
  const problems: readonly Problem[] = [
    ...reading.problems,
    ...(reading.draft ? findFaults(reading.draft) : []),
    ...(reading.kit ? glyphFaults(reading.kit) : []),
  ];
  const reports = report([...problems, ...soundFaults(reading.kit, problems)], reading.source);
  const sound = reading.kit !== undefined && reports.every((one) => one.severity !== 'fault');
  return { file, reports, source: reading.source, ...(sound && reading.kit ? { kit: reading.kit } : {}) };
}

/** What only solving shows, of a kit that is otherwise without a fault. */
const soundFaults = (kit: Kit | undefined, problems: readonly Problem[]): readonly Problem[] =>
  kit && problems.length === 0 ? acrossFaults(buildCircuit(kit)) : [];

async function readFile(file: string): Promise<Reading> {
  if (file.endsWith('.ts')) return runScript(file);
  try {
    const { text, problems } = decode(readFileSync(file));
    return text === undefined ? { problems, source: valueSource(file) } : readKit(text, file);
  } catch (thrown) {
    return unreadable(file, thrown);
  }
}

/** Runs a TypeScript kit; the loader is fetched only now, since few kits need it. */
async function runScript(file: string): Promise<Reading> {
  if (!statSync(file, { throwIfNoEntry: false })) return unreadable(file, new Error('ENOENT: no such file'));
  try {
    const { tsImport } = await import('tsx/esm/api');
    const loaded: { default?: unknown } = await tsImport(pathToFileURL(file).href, import.meta.url);
    return kitFromValue(unwrapped(loaded.default), file);
  } catch (thrown) {
    return failedScript(thrown, file);
  }
}

/** In a folder whose package.json does not say otherwise the loader makes a CommonJS module, which wraps what it exports. */
const unwrapped = (exported: unknown): unknown =>
  typeof exported === 'object' && exported !== null && '__esModule' in exported && 'default' in exported
    ? exported.default
    : exported;

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'you have no permission to',
};

function unreadable(file: string, thrown: unknown): Reading {
  const message = thrown instanceof Error ? thrown.message : String(thrown);
  const reason = REASONS[/^E[A-Z]+/.exec(message)?.[0] ?? ''] ?? message.replace(/, \w+( '.*')?$/, '');
  return { problems: [problem('file-unreadable', [], { reason })], source: valueSource(file) };
}
