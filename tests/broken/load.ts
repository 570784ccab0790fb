/** Reads a kit file the way the command line does: bytes, text, problems; a script is run. */
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { tsImport } from 'tsx/esm/api';
import type { Problem, Report } from '../../src/common/problem.ts';
import { decode } from '../../src/describe/decode.ts';
import { failedScript, kitFromValue, type Reading, readKit } from '../../src/describe/read.ts';
import { report } from '../../src/describe/report.ts';
import { valueSource } from '../../src/describe/source.ts';
import { findFaults } from '../../src/solve/faults.ts';

export async function load(path: string, file: string): Promise<Reading> {
  if (file.endsWith('.ts')) {
    try {
      const loaded: { default?: unknown } = await tsImport(pathToFileURL(path).href, import.meta.url);
      return kitFromValue(loaded.default, file);
    } catch (thrown) {
      return failedScript(thrown, file);
    }
  }
  const { text, problems } = decode(readFileSync(path));
  return text === undefined ? { problems, source: valueSource(file) } : readKit(text, file);
}

export const allProblems = (reading: Reading): readonly Problem[] => [
  ...reading.problems,
  ...(reading.draft ? findFaults(reading.draft) : []),
];

export const reportsOf = (reading: Reading): readonly Report[] =>
  report(allProblems(reading), reading.source);
