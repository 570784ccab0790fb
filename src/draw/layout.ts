/** How a sheet divides its room: head and key above, the drawing, and below it the load cards or the work of a step. */
import { type Card, cardWidth } from '../annotate/cards.ts';
import type { Rect } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import { CARD_GAP, cardHeight } from './cards.ts';
import { EDGE, type Page, scaleOn } from './head.ts';
import { type KeyEntry, keyRows } from './key.ts';
import { WORK_LINE, workWidth } from './work.ts';

interface Room {
  readonly title: string;
  readonly views: readonly string[];
  readonly key: readonly KeyEntry[];
  readonly drawing: { readonly width: number; readonly height: number };
  readonly cards: readonly Card[];
  /** What the cards say, sentence by sentence, below them. */
  readonly legend: readonly string[];
  /** Lines of work in place of the cards. */
  readonly work: readonly string[];
}

interface Layout {
  readonly width: number;
  readonly height: number;
  /** Between the edges. */
  readonly inner: number;
  readonly key: readonly (readonly KeyEntry[])[];
  readonly keyTop: number;
  readonly drawingLeft: number;
  readonly drawingTop: number;
  readonly footTop: number;
  /** Where each card stands. */
  readonly cards: readonly Rect[];
}

/** Room for the lines below the cards. */
const captionHeight = (legend: readonly string[], inner: number): number =>
  26 + 18 * (captionOf(legend, inner).length - 1);

/** What the cards say below them, in as few lines as the width allows. */
export function captionOf(legend: readonly string[], inner: number): readonly string[] {
  const lines: string[] = [];
  for (const sentence of legend) {
    const last = lines.at(-1);
    const longer = `${last} ${sentence}`;
    if (last !== undefined && textWidth(longer, 12) <= inner) lines[lines.length - 1] = longer;
    else lines.push(sentence);
  }
  return lines;
}

/** No card is wider than reads well. */
const MOST_CARD = 390;

/** The layout of a sheet; on a page the one that prints largest. */
export function layOutSheet(room: Room, page?: Page): Layout {
  const { cards } = room;
  const least = Math.ceil(cardWidth(cards));
  const text = Math.max(
    textWidth(room.title, 22, 'bold'),
    ...room.views.map((line) => textWidth(line, 12)),
    ...room.work.map(workWidth),
    ...(cards.length === 0 ? [] : room.legend.map((line) => textWidth(line, 12))),
  );
  const base = Math.max(room.drawing.width, text);
  if (!page || cards.length === 0) {
    const inner = Math.max(base, cards.length === 0 ? 0 : widthOf(Math.min(cards.length, 3), least));
    return withCards(room, inner, Math.max(1, Math.floor((inner + CARD_GAP) / (least + CARD_GAP))));
  }
  const tried = cards.map((_, i) => withCards(room, Math.max(base, widthOf(i + 1, least)), i + 1));
  return tried.reduce((best, one) => (scaleOn(page, one) > scaleOn(page, best) ? one : best));
}

const widthOf = (count: number, each: number): number => count * (each + CARD_GAP) - CARD_GAP;

function withCards(room: Room, inner: number, most: number): Layout {
  const { cards, work } = room;
  const key = keyRows(room.key, inner);
  const keyTop = EDGE + 48 + 18 * room.views.length;
  const drawingTop = keyTop + key.length * 22 + 8;
  const footTop = drawingTop + room.drawing.height + 8;
  const rows = Math.ceil(cards.length / Math.max(1, Math.min(cards.length, most)));
  const perRow = Math.max(1, Math.ceil(cards.length / Math.max(1, rows)));
  // Wider than reads well only where a long name needs it.
  const width = Math.min(
    Math.max(MOST_CARD, Math.ceil(cardWidth(cards))),
    Math.floor((inner - CARD_GAP * (perRow - 1)) / perRow),
  );
  const boxes: Rect[] = [];
  let bottom = footTop - CARD_GAP;
  for (let row = 0; row < rows; row++) {
    const y = bottom + CARD_GAP;
    const own = cards.slice(row * perRow, (row + 1) * perRow).map(cardHeight);
    boxes.push(...own.map((height, column) => ({ x: EDGE + column * (width + CARD_GAP), y, width, height })));
    bottom = y + Math.max(...own);
  }
  const foot = rows > 0 ? bottom - footTop + captionHeight(room.legend, inner) : work.length * WORK_LINE;
  return {
    inner,
    width: Math.ceil(inner + 2 * EDGE),
    height: Math.ceil(footTop + foot + EDGE),
    key,
    keyTop,
    drawingLeft: EDGE + Math.max(0, Math.round((inner - room.drawing.width) / 2)),
    drawingTop,
    footTop,
    cards: boxes,
  };
}
