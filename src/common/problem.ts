/**
 * Problems are data. Each stage collects all of its own; `describe/` puts file, line and column to them;
 * the sentences stand in one place, `wording.ts`.
 */
import type { Severity } from './quoting.ts';
import type { Details } from './wording.ts';

/** Where in the description a problem lies: the path of keys and indices from its root. */
export type KeyPath = readonly (string | number)[];

/** What a stage reports. `at` says whether the key or the value is to be pointed at. */
export interface Problem<C extends ProblemCode = ProblemCode> {
  readonly code: C;
  readonly path: KeyPath;
  readonly at: 'key' | 'value';
  readonly detail: Details[C];
  /** Another place that the problem is of as well, such as the first of two joints; it may be in another file. */
  readonly other?: KeyPath;
}

export type ProblemCode = keyof Details;

/** A place in a file, one-based, with the line's text for the excerpt. */
export interface SourceLocation {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly excerpt: string;
}

/** A problem with its place and its words, ready to print. */
export interface Diagnostic {
  readonly code: ProblemCode;
  readonly severity: Severity;
  readonly place: SourceLocation;
  readonly message: string;
  readonly remedy: string;
  /** The sentence at the end of `remedy` that names the kit, where the place is in a base of it. */
  readonly whose?: string;
}

/** Makes a problem; the code fixes which details it must carry. */
export function problem<C extends ProblemCode>(
  code: C,
  path: KeyPath,
  detail: Details[C],
  at: 'key' | 'value' = 'value',
): Problem {
  // The cast only widens the code: a Problem<C> is one of the union's members.
  return { code, path, at, detail } as Problem;
}
