/** A parts list in CSV as the value that `parts.yaml` would have, with places in the text. */

import { z } from 'zod';
import { closestName } from '../common/nearest.ts';
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import { type Cell, readCsv } from './csv.ts';
import { readCell } from './stock-cells.ts';
import { itemShapes } from './stock-schema.ts';
import type { Entry, Parsed, SourceNode } from './tree.ts';

interface ListTable extends Parsed {
  /** Found while the cells were read; their paths lead into the table. */
  readonly problems: readonly Problem[];
  /** Columns that every list has and this one has not: of them is told once, not at every row. */
  readonly missing: readonly string[];
  /** The sheet's own name of the place a path leads to: `row 3, column C “Value”`. */
  readonly called: (path: KeyPath) => string | undefined;
}

/** What people head a column with; common practice, no source. */
const HEADS: Readonly<Record<string, string>> = {
  'stock-code': 'code',
  'part-code': 'code',
  'unit-price': 'price',
  'supplier-note': 'supplier',
  replacement: 'replaced-by',
};

/** Every field of an item, those within a map as `a.value`. */
const columns: readonly string[] = [
  ...new Set(
    Object.values(itemShapes).flatMap(({ shape }) =>
      Object.entries(shape as z.ZodRawShape).flatMap(([key, field]) => [key, ...within(key, field)]),
    ),
  ),
];

function within(key: string, field: z.core.$ZodType): readonly string[] {
  if (field instanceof z.ZodOptional) return within(key, field.unwrap());
  if (!(field instanceof z.ZodObject)) return [];
  return Object.keys(field.shape as z.ZodRawShape).map((inner) => `${key}.${inner}`);
}

interface Column extends Cell {
  readonly index: number;
  /** The field it is for; absent for a column that is not read. */
  readonly field?: string;
}

const isBlank = (row: readonly Cell[]): boolean => row.every(({ text }) => text.trim() === '');
const fieldOf = (head: string): string => {
  const name = head
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');
  return HEADS[name] ?? name;
};

/** Column 0 is `A`, as spreadsheets call it. */
const letterOf = (index: number): string =>
  index < 26 ? String.fromCharCode(65 + index) : letterOf(Math.floor(index / 26) - 1) + letterOf(index % 26);

export function parseListCsv(text: string): ListTable {
  const root: SourceNode = { start: 0, end: text.length };
  const nothing = { root, problems: [], missing: [], called: () => undefined };
  const table = readCsv(text);
  if ('offset' in table) return { ...nothing, syntaxProblems: [table] };
  const headRow = table.rows.findIndex((row) => !isBlank(row));
  const heads = table.rows[headRow];
  if (!heads)
    return { ...nothing, syntaxProblems: [{ problem: problem('list-empty', [], { csv: true }), offset: 0 }] };
  const head = readHeads(heads);
  const reading = { ...head, delimiter: table.delimiter };
  const rows = table.rows.map((row, index) => ({ row, index })).slice(headRow + 1);
  const items = rows
    .filter(({ row }) => !isBlank(row))
    .map(({ row, index }, i) => readRow(reading, row, i, index));
  const called = (path: KeyPath): string | undefined => {
    const [part, i] = path;
    if (part === 'columns') return `row ${headRow + 1}, column ${letterOf(Number(i))}`;
    const item = items[Number(i)];
    if (part !== 'stock' || !item) return undefined;
    const field = path.slice(2).join('.');
    const column =
      path[2] === 'cells'
        ? head.columns[Number(path[3])]
        : head.columns.find((one) => one.field !== undefined && one.field === field);
    const name = column ? `, column ${letterOf(column.index)} “${column.text.trim()}”` : '';
    return `row ${item.sheetRow + 1}${name}`;
  };
  const listed = (of: readonly SourceNode[]): SourceNode => ({
    ...root,
    entries: new Map(of.map((node, i): [number, Entry] => [i, { key: node.start, node }])),
  });
  return {
    value: { stock: items.map(({ value }) => value) },
    root: {
      ...root,
      entries: new Map([
        ['columns', { key: 0, node: listed(head.columns) }],
        ['stock', { key: 0, node: listed(items.map(({ node }) => node)) }],
      ]),
    },
    syntaxProblems: [],
    problems: [...head.problems, ...items.flatMap(({ problems }) => problems)],
    missing: head.missing,
    called,
  };
}

/** Columns that every list has. */
const NEEDED = ['code', 'kind'];

function readHeads(heads: readonly Cell[]) {
  const problems: Problem[] = [];
  const seen = new Map<string, number>();
  const found = heads.map((cell, index): Column => {
    const name = cell.text.trim();
    const field = fieldOf(name);
    if (name === '') return { ...cell, index };
    const first = seen.get(field);
    if (first !== undefined)
      problems.push(problem('column-twice', ['columns', index], { column: name, first: letterOf(first) }));
    seen.set(field, first ?? index);
    if (columns.includes(field)) return first === undefined ? { ...cell, index, field } : { ...cell, index };
    const nearest = closestName(field, columns);
    problems.push(
      nearest === undefined
        ? problem('column-not-read', ['columns', index], { column: name, read: columns })
        : problem('column-unknown', ['columns', index], { column: name, nearest, allowed: columns }),
    );
    return { ...cell, index };
  });
  // A misspelt name is one problem, not two.
  const guessed = problems.flatMap(({ detail }) => ('nearest' in detail ? [detail.nearest] : []));
  const missing = NEEDED.filter((column) => !seen.has(column));
  for (const column of missing)
    if (!guessed.includes(column)) {
      const names = heads.map(({ text }) => text.trim()).filter((name) => name !== '');
      problems.push(problem('column-missing', ['columns', 0], { column, found: names }));
    }
  return { columns: found, problems, missing };
}

interface Head {
  readonly columns: readonly Column[];
  readonly delimiter: string;
}

function readRow(head: Head, row: readonly Cell[], i: number, sheetRow: number) {
  const problems: Problem[] = [];
  const value: Record<string, unknown> = {};
  const entries = new Map<string | number, Entry>();
  const entry = ({ start, end }: Cell): Entry => ({ key: start, node: { start, end } });
  const cells = new Map<number, Entry>();
  for (const [index, cell] of row.entries()) {
    cells.set(index, entry(cell));
    if (cell.text.trim() === '') continue;
    const column = head.columns[index];
    if (!column || column.text.trim() === '')
      problems.push(problem('cell-without-column', ['stock', i, 'cells', index], { got: cell.text.trim() }));
    if (column?.field === undefined) continue;
    const read = readCell(column.field, cell.text, head.delimiter);
    const steps = column.field.split('.');
    if ('why' in read) problems.push(problem('bad-value', ['stock', i, ...steps], read));
    put(value, steps, 'value' in read ? read.value : cell.text);
    place(entries, steps, entry(cell));
  }
  const [start, end] = [row[0]?.start ?? 0, row.at(-1)?.end ?? 0];
  // Not a field: cells that no column names are reached through it.
  entries.set('cells', { key: start, node: { start, end, entries: cells } });
  return { value, node: { start, end, entries }, problems, sheetRow };
}

function put(value: Record<string, unknown>, [key = '', ...rest]: readonly string[], its: unknown): void {
  if (rest.length === 0) {
    value[key] = its;
    return;
  }
  const inner = { ...(value[key] as Record<string, unknown> | undefined) };
  put(inner, rest, its);
  value[key] = inner;
}

function place(
  entries: Map<string | number, Entry>,
  [key = '', ...rest]: readonly string[],
  at: Entry,
): void {
  if (rest.length === 0) {
    entries.set(key, at);
    return;
  }
  const inner = new Map(entries.get(key)?.node.entries);
  place(inner, rest, at);
  entries.set(key, { key: at.key, node: { ...at.node, entries: inner } });
}
