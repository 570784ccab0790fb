/** Colour codes of wires (IEC 60757), each on its own wire, or beside it where there is no room. */

import { around, centreOf, overlaps, PITCH, type Point, type Rect } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import { textWidth } from '../common/text.ts';
import { labelsToSheet, rectToSheet } from '../place/frame.ts';
import type { PlacedWire, Placement } from '../place/placement.ts';
import { CLASS } from './classes.ts';
import { highlightBox } from './highlight.ts';
import type { Look } from './part.ts';
import type { Pen } from './pen.ts';
import { kept, LINE, type Theme } from './theme.ts';
import type { Emphasis } from './wires.ts';

const SIZE = 12;
export const CHIP_HEIGHT = 16;

/** A place on a wire for its code. */
interface Chip {
  /** Index of its wire. */
  readonly wire: number;
  readonly code: string;
  readonly rect: Rect;
  /** From the wire to a chip that stands beside it. */
  readonly leader?: readonly [Point, Point];
}

/** How wide a chip is. */
export const chipWidth = (code: string, size: number = SIZE): number =>
  Math.ceil(textWidth(code, size, 'bold')) + 8;

/** How much of its wire a chip leaves to be seen on either side, and how far it keeps from everything else. */
interface Room {
  readonly ends: number;
  readonly clear: number;
  /** How far along its wire the next crossing must be, so that wire is seen between code and opening. */
  readonly apart: number;
}
/** Tried in this order. */
const AMPLE: Room = { ends: 14, clear: 4, apart: 18 };
const ROOMS: readonly Room[] = [AMPLE, { ends: 8, clear: 2, apart: 12 }];
/** How far a chip may stand out at the sides of the drawing, where the sheet's margin is free. */
export const BESIDE_DRAWING = 16;
/** In a column chips keep off the drawing's own margin: it has no width to spare. */
export const COLUMN_MARGIN = 8;
export const besideDrawing = ({ width }: { readonly width?: number }): number =>
  width === undefined ? BESIDE_DRAWING : COLUMN_MARGIN - PITCH;
/** Where beside its wire a chip may stand that finds no room on it, the nearest first. */
const STEP = 8;
const FARTHEST = 112;
const OFFSETS: readonly Point[] = Array.from({ length: 29 * 29 }, (_, i) => ({
  x: ((i % 29) - 14) * STEP,
  y: (Math.floor(i / 29) - 14) * STEP,
}))
  .filter(({ x, y }) => Math.hypot(x, y) >= 20 && Math.hypot(x, y) <= FARTHEST)
  .sort((p, q) => p.x ** 2 + p.y ** 2 - q.x ** 2 - q.y ** 2);

const known = new WeakMap<Placement, Map<string, readonly Chip[]>>();

/**
 * The chips of a placement, which all its sheets share but those that highlight parts.
 *
 * @param beside how far a chip may stand out at the sides of the drawing
 */
export function chipsOf(
  placement: Placement,
  highlighted: ReadonlySet<string>,
  beside = BESIDE_DRAWING,
): readonly Chip[] {
  const ofPlacement = known.get(placement) ?? new Map<string, readonly Chip[]>();
  known.set(placement, ofPlacement);
  const key = JSON.stringify([beside, ...highlighted]);
  const chips = ofPlacement.get(key) ?? findChips(placement, highlighted, beside);
  ofPlacement.set(key, chips);
  return chips;
}

/** A chip for every wire with a colour: on a free stretch of it where there is one, else beside it with a leader. */
function findChips(
  { wires, parts, width: across, height: down }: Placement,
  highlighted: ReadonlySet<string>,
  beside: number,
): readonly Chip[] {
  const chips: Chip[] = [];
  // Beyond the drawing's own margin there is the key, the cards or the edge of the page.
  const far = 1e6;
  const walls: readonly Rect[] = [
    { x: -far, y: -far, width: 2 * far, height: far },
    { x: -far, y: down, width: 2 * far, height: far },
    { x: -far, y: -far, width: far - beside, height: 2 * far },
    { x: across + beside, y: -far, width: far, height: 2 * far },
  ];
  const bodies = bodiesOf(parts, highlighted);
  const runs = wires.map(runOf);
  for (const [index, wire] of wires.entries()) {
    const code = wire.joint.colour;
    if (code === undefined) continue;
    const taken = [...walls, ...bodies, ...chips.map((chip) => chip.rect)];
    const width = chipWidth(code);
    const ends = isLong(wire) ? endSpots(wire, freeSpots(wire, runs, width, taken, AMPLE)) : [];
    const found = ROOMS.map((room) => freeSpots(wire, runs, width, taken, room).next().value).find(
      (spot) => spot !== undefined,
    );
    const all =
      ends.length > 0
        ? ends
        : [
            found ??
              asideSpot(wire, runs, width, taken, true) ??
              asideSpot(wire, runs, width, taken, false) ??
              [],
          ].flat();
    chips.push(...all.map((spot) => ({ wire: index, code, ...spot })));
  }
  return chips;
}

/** What parts take up, with their words and the boxes of those that are highlighted. */
export const bodiesOf = (parts: Placement['parts'], highlighted: ReadonlySet<string>): readonly Rect[] =>
  parts.flatMap(({ part, frame, outline }) => [
    ...(highlighted.has(part.name) ? [rectToSheet(frame, highlightBox(outline))] : []),
    ...[outline.body, ...outline.blocked, ...outline.lugs.map((lug) => lug.tag)].map((rect) =>
      rectToSheet(frame, rect),
    ),
    ...labelsToSheet(frame, outline).map(({ text, centre, size, weight }) =>
      around(centre.x, centre.y, textWidth(text, size, weight), size),
    ),
  ]);

/** A wire longer than this has its code near both ends: whoever follows one from a lug meets it soon. */
const LONG = 560;
const isLong = ({ points }: PlacedWire): boolean =>
  points.slice(1).reduce((sum, b, i) => sum + span({ a: nth(points, i), b }), 0) > LONG;
/** Two codes of a wire are no nearer to one another than this. */
const ASUNDER = 260;

/** Of all free places the nearest to each end of the wire; none where those are near one another. */
function endSpots({ points }: PlacedWire, spots: Iterable<Place>): readonly Place[] {
  const [start, end] = [nth(points, 0), nth(points, points.length - 1)];
  const all = [...spots];
  const nearest = (to: Point): Place | undefined =>
    all.reduce<Place | undefined>(
      (best, one) => (best && far(best, to) <= far(one, to) ? best : one),
      undefined,
    );
  const [first, last] = [nearest(start), nearest(end)];
  return first && last && far(first, centreOf(last.rect)) >= ASUNDER ? [first, last] : [];
}

const far = ({ rect }: Place, to: Point): number => span({ a: centreOf(rect), b: to });

type Place = Pick<Chip, 'rect' | 'leader'>;

/** Stretches of a wire, the longest first. */
const stretchesOf = (wire: PlacedWire) =>
  wire.points
    .slice(1)
    .map((b, i) => ({ a: wire.points[i] ?? b, b }))
    .sort((s, t) => span(t) - span(s));

/** Free places, on the longest stretch first, from its middle outwards. */
function* freeSpots(
  wire: PlacedWire,
  runs: readonly Run[],
  width: number,
  taken: readonly Rect[],
  { ends, clear, apart }: Room,
): Generator<Place, undefined> {
  for (const { a, b } of stretchesOf(wire)) {
    const level = a.y === b.y;
    const half = (level ? width : CHIP_HEIGHT) / 2 + ends;
    const length = span({ a, b });
    // Nothing that a chip reaches lies beyond this.
    const reach = Math.max(width, CHIP_HEIGHT) / 2 + Math.max(clear, apart) + 2;
    const { runs: others, taken: bodies } = near(reaching(a, b, reach), runs, taken);
    for (let off = 0; off <= length / 2 - half; off += 4)
      for (const side of off === 0 ? [0] : [-1, 1]) {
        const share = 0.5 + (side * off) / length;
        const p = { x: Math.round(a.x + (b.x - a.x) * share), y: Math.round(a.y + (b.y - a.y) * share) };
        const wide = around(p.x, p.y, width + clear, CHIP_HEIGHT + clear);
        const along = level
          ? around(p.x, p.y, width + 2 * apart, 2)
          : around(p.x, p.y, 2, CHIP_HEIGHT + 2 * apart);
        if (
          others.every((other) => other.wire === wire || !(touches(other, wide) || touches(other, along))) &&
          bodies.every((other) => !overlaps(other, wide))
        )
          yield { rect: around(p.x, p.y, width, CHIP_HEIGHT) };
      }
  }
  return undefined;
}

/** The nearest free place beside the wire, joined to it by a leader that touches nothing else, or at least no part. */
function asideSpot(
  wire: PlacedWire,
  all: readonly Run[],
  width: number,
  bodies: readonly Rect[],
  clear: boolean,
): Place | undefined {
  const [xs, ys] = [wire.points.map(({ x }) => x), wire.points.map(({ y }) => y)];
  const [least, most] = [
    { x: Math.min(...xs), y: Math.min(...ys) },
    { x: Math.max(...xs), y: Math.max(...ys) },
  ];
  const { runs, taken } = near(reaching(least, most, FARTHEST + width + CHIP_HEIGHT), all, bodies);
  const others = runs.filter((other) => other.wire !== wire);
  const starts = stretchesOf(wire)
    .flatMap(({ a, b }) => pointsOn(a, b, STEP))
    .filter((p) => others.every((other) => !touches(other, around(p.x, p.y, 2, 2))));
  for (const off of OFFSETS)
    for (const p of starts) {
      const q = { x: p.x + off.x, y: p.y + off.y };
      const wide = around(q.x, q.y, width + 4, CHIP_HEIGHT + 4);
      if (runs.some((other) => touches(other, wide)) || taken.some((other) => overlaps(other, wide)))
        continue;
      const leader = pointsOn(p, q, 3).map((at) => around(at.x, at.y, 2, 2));
      if (
        leader.every(
          (at) =>
            (!clear || others.every((other) => !touches(other, at))) &&
            taken.every((other) => !overlaps(other, at)),
        )
      )
        return { rect: around(q.x, q.y, width, CHIP_HEIGHT), leader: [p, q] };
    }
  return undefined;
}

/** Points on the way from one to the other, the ends left out, rounded. */
function pointsOn(a: Point, b: Point, step: number): readonly Point[] {
  const count = Math.floor(Math.hypot(b.x - a.x, b.y - a.y) / step);
  return Array.from({ length: Math.max(0, count - 1) }, (_, i) => {
    const share = (i + 1) / count;
    return { x: Math.round(a.x + (b.x - a.x) * share), y: Math.round(a.y + (b.y - a.y) * share) };
  });
}

const span = ({ a, b }: { a: Point; b: Point }): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);

/** Half of the widest line a wire is drawn with. */
const WIDEST = LINE.sleeving / 2;

/** A wire with the room its stretches take. */
interface Run {
  readonly wire: PlacedWire;
  readonly rects: readonly Rect[];
}

export const runOf = (wire: PlacedWire): Run => ({
  wire,
  rects: wire.points.slice(1).map((b, i) => {
    const a = wire.points[i] ?? b;
    return reaching(a, b, WIDEST);
  }),
});

/** The rectangle about two points, and so much more on every side. */
const reaching = (a: Point, b: Point, more: number): Rect => ({
  x: Math.min(a.x, b.x) - more,
  y: Math.min(a.y, b.y) - more,
  width: Math.abs(a.x - b.x) + 2 * more,
  height: Math.abs(a.y - b.y) + 2 * more,
});

/** What of wires and bodies lies in an area at all. */
const near = (area: Rect, runs: readonly Run[], taken: readonly Rect[]) => ({
  runs: runs.flatMap(({ wire, rects }): readonly Run[] => {
    const some = rects.filter((rect) => overlaps(rect, area));
    return some.length === 0 ? [] : [{ wire, rects: some }];
  }),
  taken: taken.filter((rect) => overlaps(rect, area)),
});

const touches = ({ rects }: Run, rect: Rect): boolean => rects.some((one) => overlaps(rect, one));

/** Draws the chips of all wires that are there; each keeps its place whatever else is drawn. */
export function drawChips(
  pen: Pen,
  placement: Placement,
  { theme, highlighted, hooks }: Pick<Look, 'theme' | 'highlighted' | 'hooks'>,
  emphasis: readonly Emphasis[] = [],
  beside = BESIDE_DRAWING,
): void {
  for (const { code, rect, leader, wire } of chipsOf(placement, highlighted, beside)) {
    if (emphasis[wire] === 'absent') continue;
    const own = hooks ? pen.group({ 'data-chip': wire + 1 }) : pen;
    if (leader) own.line(leader, { stroke: theme.quiet, 'stroke-width': kept(theme, 1.4) });
    drawChip(own, code, rect, theme);
  }
}

export function drawChip(pen: Pen, code: string, rect: Rect, theme: Theme, size: number = SIZE): void {
  // Round at its ends, or without a frame where only forms tell, so that it is not taken for a lug's tag.
  pen.rect(rect, {
    class: CLASS.chip,
    rx: 6.5,
    fill: theme.paper,
    ...(theme.monochrome ? {} : { stroke: theme.outline, 'stroke-width': 0.8 }),
  });
  pen.text(
    code,
    { x: rect.x + rect.width / 2, y: rect.y + rect.height / 2 },
    { size, weight: 'bold', fill: theme.ink },
  );
}
