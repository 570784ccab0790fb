/** Kit files from the disk: bytes, text, kit and every problem of it, the circuit's errors included. */
import { acrossErrors } from '../annotate/circuit-notes.ts';
import { glyphErrors } from '../annotate/notes.ts';
import type { Problem, Report } from '../common/problem.ts';
import { decode } from '../describe/decode.ts';
import type { Kit } from '../describe/kit.ts';
import { type Reading, readKit } from '../describe/read.ts';
import { report } from '../describe/report.ts';
import { type Source, valueSource } from '../describe/source.ts';
import { buildCircuit } from '../solve/build.ts';
import { findErrors } from '../solve/errors.ts';
import { isBytes, LARGEST_KIT, readBytes } from './read-file.ts';
import { runScript } from './script.ts';

/** What a file gave: a kit when it has no error, and the reports in any case. */
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
    ...(reading.draft ? findErrors(reading.draft) : []),
    ...(reading.kit ? glyphErrors(reading.kit) : []),
  ];
  const reports = report([...problems, ...soundErrors(reading.kit, problems)], reading.source);
  const sound = reading.kit !== undefined && reports.every((one) => one.severity !== 'error');
  return { file, reports, source: reading.source, ...(sound && reading.kit ? { kit: reading.kit } : {}) };
}

/** What only solving shows, of a kit that is otherwise without an error. */
const soundErrors = (kit: Kit | undefined, problems: readonly Problem[]): readonly Problem[] =>
  kit && problems.length === 0 ? acrossErrors(buildCircuit(kit)) : [];

async function readFile(file: string): Promise<Reading> {
  const bytes = readBytes(file, LARGEST_KIT);
  if (!isBytes(bytes)) return { problems: [bytes], source: valueSource(file) };
  if (file.endsWith('.ts')) return runScript(file);
  const { text, problems } = decode(bytes);
  return text === undefined ? { problems, source: valueSource(file) } : readKit(text, file);
}
