/** The load table: what cards say, a row each, for kits with more switch positions than cards can be looked through. */

import { CARD_TYPE, joinedLines } from '../annotate/card-size.ts';
import type { Card, CardRow } from '../annotate/cards.ts';
import { linesIn } from '../common/flow.ts';
import { at, type Rect } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { CLASS } from './classes.ts';
import type { Pen } from './pen.ts';
import { ruled, type Theme } from './theme.ts';

const LINE = 19;
const PAD = 5;
/** Between columns. */
const GAP = 14;
/** Between two tables that stand side by side. */
export const TABLE_GAP = 28;
/** A bar of the signal load, its reference in the middle. */
const BAR = 64;
/** Room of the mark in the pickup's tint, before its name. */
const MARK = 12;
/** Names of switches are broken at this width. */
const HEAD = 74;
const [SMALL, ROW] = [CARD_TYPE.small, CARD_TYPE.row];

/** Where a column stands, from the table's left edge. */
interface Column {
  readonly x: number;
  readonly width: number;
}

export interface Table {
  readonly language: Language;
  /** Names of the switches above their columns, in lines. */
  readonly heads: readonly (readonly string[])[];
  readonly switches: readonly Column[];
  readonly pickup: Column;
  readonly dcLoad: Column;
  readonly signalLoad: Column;
  readonly bar: Column;
  readonly verdict: Column;
  readonly meter: Column;
  readonly width: number;
  /** Of what stands above the rows. */
  readonly head: number;
}

const HEADS = {
  pickup: 'sounding.head',
  dcLoad: 'load.dc',
  signalLoad: 'load.signal',
  meter: 'meter.short',
} as const;

const remarkOf = ({ level, verdict }: CardRow): string =>
  [verdict, ...(level === undefined ? [] : [level])].join(', ');

/**
 * Columns wide enough for all cards.
 *
 * @param switches what the drawing calls them
 */
export function tableOf(cards: readonly Card[], switches: readonly string[], language: Language): Table {
  const say = sayIn(language);
  const rows = cards.flatMap((card) => card.rows);
  const small = (words: readonly string[]): number =>
    Math.max(0, ...words.map((one) => textWidth(one, SMALL)));
  const bold = (words: readonly string[]): number =>
    Math.max(0, ...words.map((one) => textWidth(one, ROW, 'bold')));
  const heads = switches.map((label) => linesIn(label, SMALL, HEAD));
  let x = PAD;
  const column = (...widths: readonly number[]): Column => {
    const width = Math.ceil(Math.max(...widths));
    const own = { x, width };
    x += width + GAP;
    return own;
  };
  const columns = {
    switches: heads.map((lines, i) =>
      column(
        small(lines),
        bold(cards.flatMap(({ combinations }) => combinations.map((one) => one[i] ?? ''))),
      ),
    ),
    pickup: column(
      small([say(HEADS.pickup)]),
      MARK + bold(rows.map(({ label }) => label)),
      MARK + small(cards.flatMap(joinedLines)),
      bold(cards.filter((card) => card.rows.length === 0).map(({ title }) => title)),
    ),
    dcLoad: column(small([say(HEADS.dcLoad)]), bold(rows.map(({ dcLoad }) => dcLoad))),
    signalLoad: column(small([say(HEADS.signalLoad)]), bold(rows.map(({ signalLoad }) => signalLoad))),
    bar: column(BAR),
    verdict: column(small(rows.map(remarkOf))),
    meter: column(small([say(HEADS.meter)]), bold(cards.map(({ meter }) => meter))),
  };
  return {
    ...columns,
    language,
    heads,
    width: x - GAP + PAD,
    head: 16 * Math.max(1, ...heads.map(({ length }) => length)) + 6,
  };
}

/** Where nothing sounds, a line says so. */
const linesOfRows = ({ rows }: Card): number => Math.max(1, rows.length);

/** As high as its lines: of positions or of pickups, whichever are more. */
export const tableRowHeight = (card: Card): number =>
  2 * PAD + LINE * Math.max(card.combinations.length, linesOfRows(card) + joinedLines(card).length);

export function drawTableHead(pen: Pen, table: Table, { x, y }: Rect, theme: Theme): void {
  const bottom = y + table.head;
  const words = (text: string, { x: left, width }: Column, anchor: 'start' | 'end', line = 0): void =>
    pen.text(text, at(x + left + (anchor === 'end' ? width : 0), bottom - 12 - 16 * line), {
      size: SMALL,
      fill: theme.quiet,
      anchor,
    });
  table.switches.forEach((column, i) => {
    const lines = table.heads[i] ?? [];
    lines.forEach((line, n) => {
      words(line, column, 'start', lines.length - 1 - n);
    });
  });
  const say = sayIn(table.language);
  words(say(HEADS.pickup), table.pickup, 'start');
  words(say(HEADS.dcLoad), table.dcLoad, 'end');
  words(say(HEADS.signalLoad), table.signalLoad, 'end');
  words(say(HEADS.meter), table.meter, 'end');
}

export function drawTableRow(
  pen: Pen,
  table: Table,
  card: Card,
  box: Rect,
  tints: ReadonlyMap<string, string>,
  theme: Theme,
  shown = false,
): void {
  const { x, y } = box;
  const frame = shown ? { stroke: theme.ink, 'stroke-width': theme.monochrome ? 4 : 2.5 } : ruled(theme);
  pen.rect(box, { class: CLASS.card, rx: 4, fill: theme.plate, ...frame });
  const middle = (line: number): number => y + PAD + LINE * (line + 0.5);
  const put = (
    text: string,
    { x: left, width }: Column,
    line: number,
    { bold = true, end = false, indent = 0 } = {},
  ): void =>
    pen.text(text, at(x + left + (end ? width : indent), middle(line)), {
      size: bold ? ROW : SMALL,
      ...(bold ? { weight: 'bold' as const } : {}),
      fill: bold ? theme.ink : theme.quiet,
      anchor: end ? 'end' : 'start',
    });
  card.combinations.forEach((one, line) => {
    table.switches.forEach((column, i) => {
      put(one[i] ?? '', column, line);
    });
  });
  if (card.rows.length === 0) put(card.title, table.pickup, 0);
  card.rows.forEach((row, line) => {
    const tint = theme.tints[tints.get(row.pickup) ?? ''] ?? theme.ink;
    pen.rect({ x: x + table.pickup.x, y: middle(line) - 6, width: 5, height: 12 }, { rx: 2, fill: tint });
    put(row.label, table.pickup, line, { indent: MARK });
    put(row.dcLoad, table.dcLoad, line, { end: true });
    put(row.signalLoad, table.signalLoad, line, { end: true });
    put(remarkOf(row), table.verdict, line, { bold: false });
    const bar = { x: x + table.bar.x, y: middle(line) - 3, width: BAR, height: 6 };
    pen.rect(bar, {
      rx: 3,
      ...(theme.monochrome ? { fill: theme.paper, ...ruled(theme) } : { fill: theme.inside }),
    });
    const share = Math.min(1, Math.max(0, row.ratio / 2));
    pen.rect({ ...bar, width: Math.max(6, BAR * share) }, { rx: 3, fill: tint });
    pen.line([at(bar.x + BAR / 2, bar.y - 3), at(bar.x + BAR / 2, bar.y + 9)], {
      stroke: theme.ink,
      'stroke-width': 1.5,
    });
  });
  joinedLines(card).forEach((line, i) => {
    put(line, table.pickup, linesOfRows(card) + i, { bold: false, indent: MARK });
  });
  put(card.meter, table.meter, 0, { end: true });
}
