/** A text once parsed: its value, and beside it where in the text each piece of the value stands. */
import type { Problem } from '../common/problem.ts';

/** Where a value stands, as offsets into the text; `entries` for the children of a map or list. */
export interface SourceNode {
  readonly start: number;
  readonly end: number;
  readonly entries?: ReadonlyMap<string | number, Entry>;
}

export interface Entry {
  /** Offset of the key; of the item itself in a list. */
  readonly key: number;
  readonly node: SourceNode;
}

/** A problem the text itself has, which no path leads to. */
export interface SyntaxProblem {
  readonly problem: Problem;
  readonly offset: number;
}

export interface Parsed {
  /** Absent when the text could not be parsed at all. */
  readonly value?: unknown;
  readonly root: SourceNode;
  readonly syntaxProblems: readonly SyntaxProblem[];
}
