/** A spreadsheet's CSV: its cells by d3-dsv, and beside each where in the text it stands. */
import { dsvFormat } from 'd3-dsv';
import { nth } from '../common/must.ts';
import { problem } from '../common/problem.ts';
import type { SyntaxProblem } from './tree.ts';

export interface Cell {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

interface Table {
  readonly delimiter: string;
  /** Every row of the sheet, blank ones included. */
  readonly rows: readonly (readonly Cell[])[];
}

/** Where a cell begins and ends. */
type Span = Omit<Cell, 'text'>;

const MARK = '\uFEFF';
/** Some spreadsheets write and read a first line that names the separator. */
const SEPARATOR = /^sep=(.)\r?\n/i;
const DELIMITERS = [';', '\t', ','] as const;

/** The cells of a text, or what is wrong with its quotes. */
export function readCsv(text: string): Table | SyntaxProblem {
  const marked = text.startsWith(MARK) ? MARK.length : 0;
  const named = SEPARATOR.exec(text.slice(marked));
  const from = marked + (named?.[0].length ?? 0);
  const delimiter = named?.[1] ?? delimiterOf(text.slice(from));
  const spans = spansOf(text, from, delimiter);
  if (!Array.isArray(spans)) return spans;
  const rows = dsvFormat(delimiter)
    .parseRows(text.slice(from))
    .map((cells, row) => cells.map((cell, column) => ({ text: cell, ...nth(nth(spans, row), column) })));
  return { delimiter, rows };
}

/** What parts the cells of the first row that has any: the one that stands there most often, outside quotes. */
function delimiterOf(text: string): string {
  const [head = ''] = text.replace(/^[\r\n]+/, '').split(/[\r\n]/, 1);
  const bare = head.replace(/"[^"]*"/g, '');
  const count = (delimiter: string): number => bare.split(delimiter).length;
  return DELIMITERS.reduce<string>((best, one) => (count(one) > count(best) ? one : best), ',');
}

/**
 * Goes over the text as RFC 4180 says and notes where cells begin and end, which d3-dsv does not tell; a quote that is not closed, or
 * text behind a closing one, it would read without a word.
 */
function spansOf(text: string, from: number, delimiter: string): Span[][] | SyntaxProblem {
  const rows: Span[][] = [[]];
  let at = from;
  while (true) {
    const start = at;
    if (text[at] === '"') {
      at = closingQuote(text, at);
      if (at < 0) return fault(start, 'a quote is opened here and never closed');
      at++;
    } else while (at < text.length && !isEnd(text[at], delimiter)) at++;
    if (at < text.length && !isEnd(text[at], delimiter))
      return fault(at, 'there is text behind a closing quote; a quote within a text is written twice');
    rows.at(-1)?.push({ start, end: at });
    if (at >= text.length) return rows;
    if (text[at] === delimiter) {
      at++;
      continue;
    }
    at += text.startsWith('\r\n', at) ? 2 : 1;
    if (at >= text.length) return rows;
    rows.push([]);
  }
}

const isEnd = (letter: string | undefined, delimiter: string): boolean =>
  letter === delimiter || letter === '\n' || letter === '\r';

/** The offset of the quote that closes the one at an offset; two together are one within the text. */
function closingQuote(text: string, open: number): number {
  for (let at = open + 1; at < text.length; at++) {
    if (text[at] !== '"') continue;
    if (text[at + 1] !== '"') return at;
    at++;
  }
  return -1;
}

const fault = (offset: number, reason: string): SyntaxProblem => ({
  offset,
  problem: problem('bad-value', [], { why: reason, remedy: 'Correct the text at the marked position.' }),
});
