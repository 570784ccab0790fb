/** Reads a kit file the way the command line does: bytes, text, problems; a script is run. */
import { readFileSync } from 'node:fs';
import type { Diagnostic, Problem } from '../../src/common/problem.ts';
import { decode } from '../../src/describe/decode.ts';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import { type Reading, readKit } from '../../src/describe/read.ts';
import { valueSource } from '../../src/describe/source.ts';
import { runScript } from '../../src/files/script.ts';
import { findErrors } from '../../src/solve/errors.ts';

export async function load(path: string, file: string): Promise<Reading> {
  if (file.endsWith('.ts')) {
    const run = await runScript(path);
    return {
      ...run,
      source: { ...run.source, placeOf: (found) => ({ ...run.source.placeOf(found), file }) },
    };
  }
  const { text, problems } = decode(readFileSync(path));
  return text === undefined ? { problems, source: valueSource(file) } : readKit(text, file);
}

export const allProblems = (reading: Reading): readonly Problem[] => [
  ...reading.problems,
  ...(reading.draft ? findErrors(reading.draft) : []),
];

export const reportsOf = (reading: Reading): readonly Diagnostic[] =>
  toDiagnostics(allProblems(reading), reading.source);
