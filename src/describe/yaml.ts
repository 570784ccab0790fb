/**
 * YAML to value and places. Aliases are unfolded here, under a budget, and nesting is bounded before anything
 * recursive sees the text, so that no file can hang or crash the program.
 */
import {
  Composer,
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  type ParsedNode,
  Parser,
  visit,
} from 'yaml';
import { type Problem, problem } from '../common/problem.ts';
import type { Entry, Parsed, SourceNode, SyntaxProblem } from './tree.ts';
import { explainYaml, isIndentation, isRunOn } from './yaml-words.ts';

/** Deeper than any kit: a joint's colour stands at the fourth level. */
const DEEPEST = 60;
/** Takes over the keys of another map; no part of YAML 1.2, and common all the same. */
const MERGE = '<<';
/** Values that aliases may add to a file. */
const UNFOLDED = 10_000;

type Token = ReturnType<Parser['next']> extends Generator<infer T, void> ? T : never;

export function parseYaml(text: string): Parsed {
  const root: SourceNode = { start: 0, end: text.length };
  const tokens = tokensOf(text);
  if (!Array.isArray(tokens))
    return { root, syntaxProblems: [{ problem: problem('too-deep', [], {}), offset: tokens.tooDeepAt }] };
  const composer = new Composer({ uniqueKeys: false, prettyErrors: false });
  const [doc, second] = [...composer.compose(tokens, true, text.length)];
  if (!doc) return { root, syntaxProblems: [] };
  const syntaxProblems = oneALine(text, syntaxErrors(doc, text));
  if (second)
    syntaxProblems.push({
      problem: problem('bad-syntax', [], { reason: explainYaml('MULTIPLE_DOCS') }),
      offset: second.range[0],
    });
  if (syntaxProblems.length > 0) return { root, syntaxProblems };
  return new Walk().run(doc as Document.Parsed, root);
}

/** Tokens of the text, or the place where it nests too deep. The parser keeps its own stack, so this is safe. */
function tokensOf(text: string): Token[] | { readonly tooDeepAt: number } {
  const parser = new Parser();
  const tokens: Token[] = [];
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    if (parser.stack.length > DEEPEST) return { tooDeepAt: parser.offset };
  }
  for (const token of parser.end()) tokens.push(token);
  return tokens;
}

function syntaxErrors(doc: Document.Parsed | Document, text: string): readonly SyntaxProblem[] {
  const quotes = openingQuotes(doc);
  return [...doc.errors, ...doc.warnings].map(({ code, message, pos }) => {
    // A quote left open is noticed at the end of the file; the place to fix is where it was opened.
    const quote = code === 'MISSING_CHAR' && /quote/.test(message) ? quotes.get(pos[0]) : undefined;
    const reason =
      quote === undefined ? explainYaml(code, message) : 'a quote is opened here and never closed';
    const offset = quote ?? Math.min(pos[0], text.length);
    const line = textLine(text, offset);
    const comment = keyInComment(text, line);
    // Items of a list whose key is a comment are taken for more of the value above, which is told as several other mistakes.
    const isItem = comment !== undefined && /^\s+-\s/.test(text.slice(line)) && isRunOn(code);
    if (quote !== undefined || !(isIndentation(code, message) || isItem))
      return { problem: problem('bad-syntax', [], { reason }), offset };
    // Blank lines and comments are passed: it is the text after them that is out of step.
    const detail = { reason: explainYaml('BAD_INDENT'), ...(comment === undefined ? {} : { comment }) };
    return { problem: problem('bad-syntax', [], detail), offset: line };
  });
}

/** The start of the first line from an offset on that is neither blank nor a comment; the offset where there is none. */
function textLine(text: string, offset: number): number {
  const start = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  const found = /^[^\S\r\n]*[^\s#]/m.exec(text.slice(start));
  return found ? start + found.index : offset;
}

/** `parts:` where it is in a comment right above a line, with nothing but blank lines and comments between. */
function keyInComment(text: string, line: number): string | undefined {
  for (const above of text
    .slice(0, line)
    .split(/\r\n|\r|\n/)
    .slice(0, -1)
    .reverse()) {
    const key = /^\s*#\s*([a-z-]+:)\s*$/.exec(above)?.[1];
    if (key !== undefined || !/^\s*(?:#|$)/.test(above)) return key;
  }
  return undefined;
}

/** Where each quoted text begins, by the offset of its end. */
function openingQuotes(doc: Document.Parsed | Document): ReadonlyMap<number, number> {
  const starts = new Map<number, number>();
  visit(doc, {
    Scalar: (_key, scalar) => {
      if (scalar.range && scalar.type?.startsWith('QUOTE')) starts.set(scalar.range[1], scalar.range[0]);
    },
  });
  return starts;
}

/** One mistake often gives several errors; the first on a line is the one that helps. */
function oneALine(text: string, found: readonly SyntaxProblem[]): SyntaxProblem[] {
  const kept: SyntaxProblem[] = [];
  let lineEnd = -1;
  for (const syntaxProblem of [...found].sort((a, b) => a.offset - b.offset)) {
    if (syntaxProblem.offset <= lineEnd) continue;
    kept.push(syntaxProblem);
    const next = text.indexOf('\n', syntaxProblem.offset);
    lineEnd = next < 0 ? text.length : next;
  }
  return kept;
}

interface Read {
  readonly value: unknown;
  readonly node: SourceNode;
}

/** Thrown inside the walk only, when aliases unfold beyond the budget. */
class AliasLimitError extends Error {
  readonly offset: number;
  constructor(offset: number) {
    super('aliases unfold without end');
    this.offset = offset;
  }
}

class Walk {
  readonly #syntaxProblems: SyntaxProblem[] = [];
  readonly #anchors = new Map<string, ParsedNode>();
  readonly #open = new Set<ParsedNode>();
  #aliases = 0;
  #budget = UNFOLDED;
  /** Where the alias stands that is being unfolded, however many more it leads to. */
  #unfolding = 0;

  run(doc: Document.Parsed, root: SourceNode): Parsed {
    try {
      const read = this.#read(doc.contents, 0);
      return {
        value: read.value,
        node: read.node,
        root: read.node,
        syntaxProblems: this.#syntaxProblems,
      } as Parsed;
    } catch (thrown) {
      if (!(thrown instanceof AliasLimitError)) throw thrown;
      this.#report(problem('too-many-aliases', [], {}), thrown.offset);
      return { root, syntaxProblems: this.#syntaxProblems };
    }
  }

  #report(found: Problem, offset: number): void {
    this.#syntaxProblems.push({ problem: found, offset });
  }

  #read(node: ParsedNode | null, fallback: number): Read {
    const [start, end] = node?.range ?? [fallback, fallback];
    if (this.#aliases > 0 && --this.#budget < 0) throw new AliasLimitError(this.#unfolding);
    if (isAlias(node)) return this.#unfold(node.source, start);
    // A tag would turn a text into a date, bytes or a set; no kit has any of these.
    if (node?.tag)
      this.#report(problem('bad-syntax', [], { reason: explainYaml('TAG_RESOLVE_FAILED') }), start);
    if (node?.anchor) this.#anchors.set(node.anchor, node);
    if (isMap(node) || isSeq(node)) {
      this.#open.add(node);
      const read = isMap(node) ? this.#map(node, [start, end]) : this.#list(node, [start, end]);
      this.#open.delete(node);
      return read;
    }
    const value = isScalar(node) ? node.value : null;
    // A value left out has no place of its own; its key has.
    return { value, node: end > start ? { start, end } : { start: fallback, end: fallback } };
  }

  #unfold(name: string, offset: number): Read {
    const target = this.#anchors.get(name);
    if (!target) {
      this.#report(problem('bad-syntax', [], { reason: `there is no anchor “${name}” above` }), offset);
      return { value: null, node: { start: offset, end: offset } };
    }
    if (this.#open.has(target)) throw new AliasLimitError(offset);
    if (this.#aliases === 0) this.#unfolding = offset;
    this.#aliases++;
    const read = this.#read(target, offset);
    this.#aliases--;
    return read;
  }

  #map(map: { items: readonly unknown[] }, [start, end]: readonly [number, number]): Read {
    const value: Record<string, unknown> = {};
    const entries = new Map<string, Entry>();
    // Defined, not assigned: a key `__proto__` must become a key.
    const add = (key: string, entry: Entry, its: unknown): void => {
      entries.set(key, entry);
      Object.defineProperty(value, key, { value: its, enumerable: true, configurable: true, writable: true });
    };
    const merged: Read[] = [];
    for (const item of map.items as readonly { key: ParsedNode; value: ParsedNode | null }[]) {
      const at = item.key.range[0];
      const key = isScalar(item.key) && item.key.value !== null ? String(item.key.value) : undefined;
      if (key === undefined)
        this.#report(problem('bad-syntax', [], { reason: explainYaml('NON_STRING_KEY') }), at);
      else if (entries.has(key)) this.#report(problem('duplicate-key', [], { key }), at);
      const read = this.#read(item.value, at);
      if (key === MERGE) {
        if (read.node.entries === undefined || Array.isArray(read.value))
          this.#report(problem('bad-syntax', [], { reason: explainYaml('MERGE_KEY') }), at);
        else merged.push(read);
      } else if (key !== undefined && !entries.has(key)) add(key, { key: at, node: read.node }, read.value);
    }
    // What the map says itself comes first, wherever the merge key stands.
    for (const { value: from, node } of merged)
      for (const [key, entry] of node.entries ?? [])
        if (!entries.has(String(key))) add(String(key), entry, (from as Record<string, unknown>)[key]);
    return { value, node: { start, end, entries } };
  }

  #list(list: { items: readonly unknown[] }, [start, end]: readonly [number, number]): Read {
    const entries = new Map<number, Entry>();
    const value = (list.items as readonly ParsedNode[]).map((item, index) => {
      const [at] = item.range;
      const read = this.#read(item, at);
      entries.set(index, { key: at, node: read.node });
      return read.value;
    });
    return { value, node: { start, end, entries } };
  }
}
