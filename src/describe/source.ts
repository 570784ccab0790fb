/** A description's text with its places: from a problem's path to file, line, column and excerpt. */
import { type KeyPath, type Problem, problem, type SourceLocation } from '../common/problem.ts';
import { findJsonError } from './json.ts';
import { lineFinder } from './lines.ts';
import type { Parsed, SourceNode, SyntaxProblem } from './tree.ts';
import { parseYaml } from './yaml.ts';

/** As long as eighty kits; beyond it something else was given by mistake. */
export const LONGEST_TEXT = 250_000;

export interface Source {
  readonly file: string;
  /** The kit's own name, where its file describes others as well. */
  readonly called?: string;
  /** Whether places are exact; where they are not, messages name the path instead. */
  readonly exact: boolean;
  readonly placeOf: (problem: Problem) => SourceLocation;
  /** It is a circuit that ships with the program. */
  readonly ships?: true;
  /** Of a kit made of several descriptions: the one that a problem is in, and the problem with its path there. */
  readonly resolve?: (problem: Problem) => { readonly source: Source; readonly found: Problem };
}

export interface SourceText {
  readonly source: Source;
  /** Absent when the text could not be parsed. */
  readonly value?: unknown;
  readonly problems: readonly Problem[];
}

/** Parses a text, JSON when the file's name says so and YAML otherwise; one of more characters than `longest` is refused. */
export function parseText(text: string, file: string, longest = LONGEST_TEXT): SourceText {
  const parsed = parse(text, file, longest);
  return {
    source: sourceOf(text, file, parsed),
    problems: parsed.syntaxProblems.map((syntaxProblem) => syntaxProblem.problem),
    ...('value' in parsed ? { value: parsed.value } : {}),
  };
}

/** The places of a text that is parsed. */
export function sourceOf(text: string, file: string, parsed: Parsed): Source {
  const syntaxProblems = new Map(
    parsed.syntaxProblems.map((syntaxProblem) => [syntaxProblem.problem, syntaxProblem.offset]),
  );
  const find = lineFinder(text);
  const placeOf = (found: Problem): SourceLocation => ({
    file,
    ...find(syntaxProblems.get(found) ?? offsetOf(parsed.root, text, found.path, found.at)),
  });
  return { file, exact: true, placeOf };
}

function parse(text: string, file: string, longest: number): Parsed {
  const root: SourceNode = { start: 0, end: text.length };
  const fails = (syntaxProblem: SyntaxProblem): Parsed => ({ root, syntaxProblems: [syntaxProblem] });
  if (text.trim() === '') return fails({ problem: problem('file-empty', [], {}), offset: 0 });
  if (text.length > longest) return fails({ problem: problem('too-long', [], { most: longest }), offset: 0 });
  const mistake = /\.json$/i.test(file) ? findJsonError(text) : undefined;
  if (mistake)
    return fails({ problem: problem('bad-syntax', [], { reason: mistake.reason }), offset: mistake.offset });
  return parseYaml(text);
}

/** A source without a text of its own, such as a value a script exports: every place is its first line. */
export const valueSource = (file: string): Source => ({
  file,
  exact: false,
  placeOf: () => ({ file, line: 1, column: 1, excerpt: '' }),
});

/**
 * Follows a path as far as it leads. Within a joint's text the path may go on: `from` and `to` are its two ends,
 * and `lug` the lug of an end. A step that a text has no room for is passed over, so that one path serves a joint
 * written as text and one written as a map.
 */
function offsetOf(root: SourceNode, text: string, path: KeyPath, at: 'key' | 'value'): number {
  let node = root;
  let key = root.start;
  for (const [i, step] of path.entries()) {
    const entry = node.entries?.get(step);
    if (!entry) return node.entries || at === 'key' ? key : withinJoint(node, text, path.slice(i));
    ({ key, node } = entry);
  }
  return at === 'key' ? key : node.start;
}

function withinJoint(node: SourceNode, text: string, rest: KeyPath): number {
  const written = text.slice(node.start, node.end);
  const arrow = written.indexOf('>');
  const end = rest.includes('to') ? 'to' : rest.includes('from') ? 'from' : undefined;
  if (end === undefined || (end === 'to' && arrow < 0)) return node.start;
  const from = end === 'to' ? arrow + 1 : 0;
  const word = from + written.slice(from).search(/[^\s"'>]/);
  const dot = written.indexOf('.', word);
  return node.start + (rest.includes('lug') && dot >= 0 ? dot + 1 : Math.max(word, 0));
}
