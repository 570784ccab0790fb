/** The blocks that a sheet is composed of, each in the room that a width leaves it: head, key, cards with what they say, work. */

import { cardWidth } from '../annotate/card-size.ts';
import type { Card } from '../annotate/cards.ts';
import { linesIn } from '../common/flow.ts';
import type { Point, Rect } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import { textWidth, type Weight } from '../common/text.ts';
import type { Language } from '../messages/language.ts';
import { CARD_GAP, cardHeight } from './cards.ts';
import { type KeyEntry, keyHeight, keyIn, keyRows } from './key.ts';
import { TABLE_GAP, type Table, tableRowHeight } from './table.ts';
import { workHeight, workIn } from './work.ts';

/** What a sheet is to show, before it has a size. */
export interface Contents {
  /** That it is worded in. */
  readonly language: Language;
  /** Large above all; a piece alone has none. */
  readonly title?: string;
  /** Small under the title. */
  readonly views: readonly string[];
  readonly key: readonly KeyEntry[];
  readonly drawing?: {
    readonly width: number;
    readonly height: number;
    /** Size of its smallest type. */
    readonly type: number;
    /** From where to where across it there is something, for a column, which leaves its own margin out. */
    readonly ink?: { readonly left: number; readonly right: number };
  };
  readonly cards: readonly Card[];
  /** Columns of a table that the cards stand in as rows, where there are many. */
  readonly table?: Table;
  /** What the cards say, sentence by sentence, below them. */
  readonly legend: readonly string[];
  /** Lines of work in place of the cards. */
  readonly work: readonly string[];
}

export const NO_CONTENTS: Omit<Contents, 'language'> = {
  views: [],
  key: [],
  cards: [],
  legend: [],
  work: [],
};

/** A line of text that belongs to the sheet itself: its left end, and the middle of its capitals. */
export interface SheetLine {
  readonly words: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly weight: Weight;
}

/** Where everything of a sheet stands. */
export interface Layout {
  /** What the root shows, in the drawing's own units. */
  readonly box: Rect;
  /** Its size as the root says it: CSS pixels, or with a unit. */
  readonly width: number | string;
  readonly height: number | string;
  /** What one unit of everything but the drawing is in the drawing's own; all that follows but its place is in those. */
  readonly scale: number;
  readonly drawing: Point;
  readonly head: readonly SheetLine[];
  readonly key: { readonly rows: readonly (readonly KeyEntry[])[]; readonly at: Point };
  readonly work: { readonly lines: readonly (readonly string[])[]; readonly at: Point };
  /** Where each card stands. */
  readonly cards: readonly Rect[];
  /** Where each head of a table stands. */
  readonly heads: readonly Rect[];
  readonly caption: readonly SheetLine[];
  /** Right end of the revision mark, the middle of its capitals, and its size, in the drawing's own units. */
  readonly mark: { readonly x: number; readonly y: number; readonly size: number };
}

type Placed = Pick<Layout, 'drawing' | 'head' | 'key' | 'work' | 'cards' | 'heads' | 'caption'>;

/** Something as high as it is, wherever it is put. */
export interface Block {
  readonly height: number;
  /** Air between it and what stands above it. */
  readonly above: number;
  readonly put: (x: number, y: number) => Partial<Placed>;
}

export const NOTHING: Placed = {
  drawing: { x: 0, y: 0 },
  head: [],
  key: { rows: [], at: { x: 0, y: 0 } },
  work: { lines: [], at: { x: 0, y: 0 } },
  cards: [],
  heads: [],
  caption: [],
};

const TITLE = { size: 22, weight: 'bold', line: 28 } as const;
const SMALL = { size: 12, weight: 'regular', line: 18 } as const;

export function headBlock({ title, views }: Pick<Contents, 'title' | 'views'>, width: number): Block {
  const titles = title === undefined ? [] : linesIn(title, TITLE.size, width, TITLE.weight);
  const small = views.flatMap((line) => linesIn(line, SMALL.size, width));
  // Air between the title and what is small under it.
  const below = titles.length * TITLE.line + (titles.length > 0 ? 3 : 0);
  return {
    height: below + small.length * SMALL.line,
    above: 0,
    put: (x, y) => ({
      head: [
        ...titles.map((words, i) => ({ ...TITLE, words, x, y: y + (i + 0.5) * TITLE.line - 2 })),
        ...small.map((words, i) => ({ ...SMALL, words, x, y: y + below + (i + 0.5) * SMALL.line })),
      ],
    }),
  };
}

/** @param single whether each entry has a row of its own */
export function keyBlock({ key }: Contents, width: number, single: boolean): Block {
  const entries = keyIn(key, width);
  const rows = single ? entries.map((entry) => [entry]) : keyRows(entries, width);
  return { height: keyHeight(rows), above: 6, put: (x, y) => ({ key: { rows, at: { x, y: y + 11 } } }) };
}

export function workBlock({ work, drawing }: Contents, width: number): Block {
  const lines = workIn(work, width);
  return {
    height: workHeight(lines),
    above: airBelow(drawing),
    put: (x, y) => ({ work: { lines, at: { x, y } } }),
  };
}

/** The wiring, a unit of it so many of the sheet's others, in the middle of a width. */
export const drawingBlock = ({ drawing }: Contents, width: number, ratio = 1): Block => ({
  height: (drawing?.height ?? 0) * ratio,
  above: 19,
  put: (x, y) => ({ drawing: { x: x + Math.max(0, (width - (drawing?.width ?? 0) * ratio) / 2), y } }),
});

/** A drawing has a margin of its own. */
const airBelow = (drawing: Contents['drawing']): number => (drawing ? 8 : 14);

/** No card is wider than reads well. */
const MOST_CARD = 390;

/** What of a sheet the cards are: one by one, or rows of a table. */
export type Loads = Pick<Contents, 'cards' | 'table'>;

/** The least width of the cards, or of so many tables, abreast. */
export const cardsWidth = ({ cards, table }: Loads, abreast: number): number =>
  cards.length === 0
    ? 0
    : table
      ? abreast * (table.width + TABLE_GAP) - TABLE_GAP
      : abreast * (Math.ceil(cardWidth(cards)) + CARD_GAP) - CARD_GAP;

/** How many of the cards, or tables, stand abreast in a width; one at least. */
export const abreastIn = (loads: Loads, width: number): number =>
  Math.max(1, loads.cards.findLastIndex((_, i) => cardsWidth(loads, i + 1) <= width) + 1);

/** Cards in even rows, or rows of a table in even columns, at most so many abreast; below them what they say. */
export function cardsBlock(contents: Contents, inner: number, most: number): Block {
  const { legend, drawing, table } = contents;
  const { rects, heads } = table ? tables(contents, table, most) : rowsOfCards(contents, inner, most);
  const bottom = Math.max(0, ...rects.map(({ y, height }) => y + height));
  const lines = captionOf(legend, inner);
  const shifted = (x: number, y: number) => (rect: Rect) => ({ ...rect, x: rect.x + x, y: rect.y + y });
  return {
    height: bottom + captionHeight(lines),
    above: airBelow(drawing),
    put: (x, y) => ({
      cards: rects.map(shifted(x, y)),
      heads: heads.map(shifted(x, y)),
      caption: lines.map((words, i) => ({ ...SMALL, words, x, y: y + bottom + 22 + SMALL.line * i })),
    }),
  };
}

/** Where cards and heads of tables stand, from the block's corner. */
interface Stand {
  readonly rects: readonly Rect[];
  readonly heads: readonly Rect[];
}

/** Cards abreast, their tops level in each row. */
function rowsOfCards({ cards }: Contents, inner: number, most: number): Stand {
  const rects: Rect[] = [];
  const rows = Math.ceil(cards.length / Math.max(1, Math.min(cards.length, most)));
  const perRow = Math.max(1, Math.ceil(cards.length / Math.max(1, rows)));
  // Wider than reads well only where a long name needs it.
  const width = Math.min(
    Math.max(MOST_CARD, Math.ceil(cardWidth(cards))),
    Math.floor((inner - CARD_GAP * (perRow - 1)) / perRow),
  );
  let bottom = -CARD_GAP;
  for (let row = 0; row < rows; row++) {
    const y = bottom + CARD_GAP;
    const own = cards.slice(row * perRow, (row + 1) * perRow).map(cardHeight);
    rects.push(...own.map((height, i) => ({ x: i * (width + CARD_GAP), y, width, height })));
    bottom = y + Math.max(...own);
  }
  return { rects, heads: [] };
}

/** Between rows of a table that other pickups sound in. */
const GROUP_GAP = 7;

/** Tables abreast, each with a head, as even in height as rows allow. */
function tables({ cards }: Contents, { width, head }: Table, most: number): Stand {
  const heights = cards.map(tableRowHeight);
  const share = heights.reduce((sum, height) => sum + height, 0) / Math.min(most, cards.length);
  const rects: Rect[] = [];
  const heads: Rect[] = [];
  let [sum, y] = [0, 0];
  for (const [i, height] of heights.entries()) {
    const column = Math.min(most - 1, Math.floor((sum + height / 2) / share));
    const x = column * (width + TABLE_GAP);
    if (heads.at(-1)?.x !== x) {
      heads.push({ x, y: 0, width, height: head });
      y = head;
    } else if (cards[i]?.title !== cards[i - 1]?.title) y += GROUP_GAP;
    rects.push({ x, y, width, height });
    y += height;
    sum += height;
  }
  return { rects, heads };
}

const captionHeight = (lines: readonly string[]): number =>
  lines.length === 0 ? 0 : 8 + SMALL.line * lines.length;

/** What the cards say below them, in as few lines as the width allows. */
export function captionOf(legend: readonly string[], inner: number): readonly string[] {
  // Where a sentence is wider than the room, all of them run on.
  if (legend.some((line) => textWidth(line, SMALL.size) > inner))
    return linesIn(legend.join(' '), SMALL.size, inner);
  const lines: string[] = [];
  for (const sentence of legend) {
    const last = lines.at(-1);
    const longer = `${last} ${sentence}`;
    if (last !== undefined && textWidth(longer, SMALL.size) <= inner) lines[lines.length - 1] = longer;
    else lines.push(sentence);
  }
  return lines;
}

/** Blocks one below the other; those without height are left out. */
export function stacked(blocks: readonly Block[]): Block {
  const there = blocks.filter(({ height }) => height > 0);
  const tops: number[] = [];
  let bottom = 0;
  for (const [i, { height, above }] of there.entries()) {
    const top = i === 0 ? 0 : bottom + above;
    tops.push(top);
    bottom = top + height;
  }
  return {
    height: bottom,
    above: there[0]?.above ?? 0,
    put: (x, y) => Object.assign({}, ...there.map((block, i) => block.put(x, y + nth(tops, i)))),
  };
}
