/** A sheet for a column of a web page: just so wide, its pieces one below the other, all type but the drawing's as large as on any sheet. */

import { fine, PITCH, round2 } from '../common/geometry.ts';
import { TYPE as DRAWN } from '../parts/outline.ts';
import {
  abreastIn,
  type Contents,
  cardsBlock,
  cardsWidth,
  drawingBlock,
  headBlock,
  keyBlock,
  type Layout,
  type Loads,
  NOTHING,
  stacked,
  workBlock,
} from './blocks.ts';
import { COLUMN_MARGIN } from './chips.ts';

/** Between the column's edge and what stands in it, CSS pixels. */
const SIDE = 12;
/** Between the column's edge and what the drawing has there, drawing units. */
const AIR = 4;
/** Usual and smallest type beside the drawing, CSS pixels. */
const [TYPE, LEAST_TYPE] = [12, 11] as const;
/** What the revision mark adds to a column, and how far the middle of its capitals stands above the lower edge, CSS pixels. */
const MARK = { line: 12, up: 12 } as const;
/** Widths a column may have, CSS pixels. */
export const [LEAST_WIDTH, MOST_WIDTH] = [240, 4000] as const;

/** The least width in which nothing but the drawing has type under 11 pixels. */
export const leastWidth = (loads: Loads): number =>
  Math.max(LEAST_WIDTH, Math.ceil(cardsWidth(loads, 1) * (LEAST_TYPE / TYPE)) + 2 * SIDE);

/** The least width in which a drawing's own type is not under 11 pixels, CSS pixels. */
export const readableAcross = (drawing: NonNullable<Contents['drawing']>): number =>
  Math.ceil((inkOf(drawing).width + 2 * AIR) * (LEAST_TYPE / drawing.type));

/** Grid units that parts and wires of a drawing may take across to be readable so in a column, CSS pixels. */
export const unitsAcross = (width: number): number =>
  Math.max(1, Math.floor((width * (DRAWN.lug / LEAST_TYPE) - 2 * AIR - 2 * COLUMN_MARGIN) / PITCH));

function inkOf({ width, ink }: NonNullable<Contents['drawing']>): {
  readonly left: number;
  readonly width: number;
} {
  return ink ? { left: ink.left, width: ink.right - ink.left } : { left: 0, width };
}

export function layOutColumn(contents: Contents, width: number): Layout {
  const { drawing, cards } = contents;
  const room = width - 2 * SIDE;
  // One card wider than the room makes everything but the drawing a little smaller, so that all type is alike.
  const small = Math.min(1, room / Math.max(1, cardsWidth(contents, 1)));
  const inner = room / small;
  // The drawing takes the whole width where it is larger.
  const ink = drawing ? inkOf(drawing) : { left: 0, width: 0 };
  const fit = drawing ? Math.min(1, width / (ink.width + 2 * AIR)) : small;
  const all = stacked([
    headBlock(contents, inner),
    drawingBlock(contents, inner, fit / small),
    keyBlock(contents, inner, false),
    cards.length > 0 ? cardsBlock(contents, inner, abreastIn(contents, inner)) : workBlock(contents, inner),
  ]);
  const side = SIDE / small;
  // A drawing alone needs no more than its own margin.
  const alone = drawing !== undefined && all.height === drawing.height * (fit / small);
  const edge = alone ? (AIR * fit) / small : side;
  const height = Math.ceil((all.height + 2 * edge) * small) + MARK.line;
  const scale = fine(small / fit);
  const placed = { ...NOTHING, ...all.put(side, edge) };
  return {
    ...placed,
    drawing: {
      x: round2((width / fit - ink.width) / 2 - ink.left),
      y: round2(placed.drawing.y * scale),
    },
    mark: {
      x: round2((width - SIDE) / fit),
      y: round2((height - MARK.up) / fit),
      size: fine(TYPE / fit),
    },
    box: { x: 0, y: 0, width: round2(width / fit), height: round2(height / fit) },
    width,
    height,
    scale,
  };
}
