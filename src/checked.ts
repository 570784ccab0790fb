/** From a description to a kit that is checked: its text, its joints, and what only solving shows. Pure. */
import { acrossErrors } from './annotate/circuit-notes.ts';
import { glyphErrors } from './annotate/notes.ts';
import type { Diagnostic, Problem } from './common/problem.ts';
import type { BaseReader } from './describe/chain.ts';
import { toDiagnostics } from './describe/diagnostics.ts';
import type { Kit } from './describe/kit.ts';
import { type Reading, readKit as readText, kitFromValue as readValue } from './describe/read.ts';
import type { Source } from './describe/source.ts';
import type { PartsList } from './describe/stock.ts';
import { buildCircuit } from './solve/build.ts';
import { findErrors } from './solve/errors.ts';

/** What a description gave. */
export interface Checked {
  /** There only when nothing is wrong: every joint names a lug that exists, and every position gives a signal. */
  readonly kit?: Kit;
  /** Every error, each with its place, what is wrong, and what to do. */
  readonly diagnostics: readonly Diagnostic[];
  readonly source: Source;
}

/**
 * Reads and checks the text of a kit: JSON when the file's name ends in `.json`, else YAML. `file` is for the diagnostics, and
 * for `readBase`, which finds the kits that this one extends; without it a kit may extend none. `list` is the workshop's parts list, by
 * which codes and values are matched to stock; its errors are among the diagnostics.
 */
export const readKit = (text: string, file: string, readBase?: BaseReader, list?: PartsList): Checked =>
  checked(readText(text, file, readBase, list));

/** Reads and checks a value that is there already, such as what `defineKit` returns; its bases and its list as in `readKit`. */
export const kitFromValue = (
  value: unknown,
  file: string,
  readBase?: BaseReader,
  list?: PartsList,
): Checked => checked(readValue(value, file, readBase, list));

/** Checks what was read. */
export function checked(reading: Reading): Checked {
  const problems: readonly Problem[] = [
    ...reading.problems,
    ...(reading.draft ? findErrors(reading.draft) : []),
    ...(reading.kit ? glyphErrors(reading.kit) : []),
  ];
  // Warnings of the list are its own affair; with an error nobody knows what a kit is made of.
  const listed = reading.list?.diagnostics.filter((one) => one.severity === 'error') ?? [];
  const own = toDiagnostics([...problems, ...soundErrors(reading.kit, problems)], reading.source);
  const diagnostics = [...listed, ...own];
  const sound = diagnostics.every((one) => one.severity !== 'error');
  return { diagnostics, source: reading.source, ...(sound && reading.kit ? { kit: reading.kit } : {}) };
}

/** What only solving shows, of a kit that is otherwise without an error. */
const soundErrors = (kit: Kit | undefined, problems: readonly Problem[]): readonly Problem[] =>
  kit && problems.length === 0 ? acrossErrors(buildCircuit(kit)) : [];
