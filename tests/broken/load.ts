/** Reads a kit file the way the command line does: bytes, text, problems; a script is run, and bases are found on the disk. */
import { dirname, relative } from 'node:path';
import type { Diagnostic, Problem } from '../../src/common/problem.ts';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import type { Reading } from '../../src/describe/read.ts';
import { readKitFile } from '../../src/files/load.ts';
import { findErrors } from '../../src/solve/errors.ts';

export const load = (path: string): Promise<Reading> => readKitFile(path);

export const allProblems = (reading: Reading): readonly Problem[] => [
  ...reading.problems,
  ...(reading.draft ? findErrors(reading.draft) : []),
];

/** Every file is named as seen from the folder of the kit. */
export const reportsOf = (reading: Reading): readonly Diagnostic[] =>
  toDiagnostics(allProblems(reading), reading.source).map((report) => ({
    ...report,
    place: { ...report.place, file: relative(dirname(reading.source.file), report.place.file) },
  }));
