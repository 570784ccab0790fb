/** Places for the name of a part and for the value of a component: where they stand in the wiring, in other lines, moved, away from the part, shortened. */
import { around, centreOf, inside, type Point, type Rect, rectAbout } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { remembered } from '../../common/remembered.ts';
import { is } from '../../parts/index.ts';
import { type LabelSlot, nameWays } from '../../parts/outline.ts';
import { rectToSheet } from '../../place/frame.ts';
import type { PlacedPart } from '../../place/placement.ts';
import type { Leader, Spot } from './spots.ts';
import { linesOf, namesOf, roomOf, valuesOf } from './tags.ts';

/** A place for words. */
export interface Written extends Spot {
  readonly slots: readonly LabelSlot[];
  /** How far from there they stand. */
  readonly by: Point;
}

/** How places for a name are looked for. */
export interface Care {
  /** From one place to the next, drawing units. */
  readonly step: number;
  /** How far a name moves across and down, in steps. */
  readonly across: number;
  readonly down: number;
  /** How far from its body a component's words may stand, drawing units. */
  readonly near: number;
  /** So far beside its body the name of another part may stand; only on the body where it is left out. */
  readonly beside?: number;
}
export const USUAL: Care = { step: 8, across: 9, down: 6, near: 14 };
export const CLOSE: Care = { step: 6, across: 27, down: 20, near: 72, beside: 72 };
/** Letters that are left of a name that is shortened. */
const SHORT = [20, 16, 12, 9, 7, 5, 3] as const;
/** What it costs: other lines than in the wiring, to stand out of its part, each unit beyond it, beside it, farther away with a leader, each unit of that and each wire across it; on a wire of it, on another wire or too close to it; over the symbol of a ground point, or over each thing that is drawn on another part's face; to be shortened, and each letter less; to leave a value out. */
export const PRICE = {
  lines: 25,
  out: 100,
  beyond: 4,
  aside: 250,
  leader: 200,
  reach: 4,
  across: 60,
  ownWire: 1200,
  wire: 3000,
  beside: 150,
  symbol: 150,
  ink: 200,
  short: 2000,
  letter: 30,
  left: 2500,
} as const;
/** Between a component's body and its words. */
const BESIDE = 4;

/** Beside words, so that no line touches a letter. */
const AIR = 2;
const airy = (slots: readonly LabelSlot[]): Rect => {
  const { x, y, width, height } = rectAbout(slots.map(roomOf));
  return { x: x - AIR, y, width: width + 2 * AIR, height };
};

const UNMOVED: Point = { x: 0, y: 0 };
export const standing = (slots: readonly LabelSlot[], price: number): Written => {
  const room = airy(slots);
  return { centre: centreOf(room), room, slots, by: UNMOVED, price };
};

/** Lines that a name may be written in. */
interface Way {
  readonly slots: readonly LabelSlot[];
  readonly price: number;
}

/** A name in the lines of the wiring, and in other lines. */
export function waysOf(placed: PlacedPart, size: number, values: boolean): readonly Way[] {
  const usual = namesOf(placed, size, values);
  if (usual.length === 0) return [];
  const others = nameWays(placed.part.label);
  return [
    { slots: usual, price: 0 },
    ...others.map((lines) => ({ slots: linesOf(placed, lines, size), price: PRICE.lines })),
  ];
}

/** The beginnings of a name. */
export function shortOf(placed: PlacedPart, size: number): readonly Way[] {
  const letters = [...placed.part.label];
  return SHORT.filter((count) => count < letters.length).flatMap((count) =>
    nameWays(`${letters.slice(0, count).join('').trimEnd()}…`).map((lines) => ({
      slots: linesOf(placed, lines, size),
      price: PRICE.short + PRICE.letter * (SHORT[0] - count),
    })),
  );
}

/** Whether a name may stand so at no price. */
export function isFree({ part, frame, outline }: PlacedPart, room: Rect): boolean {
  const body = rectToSheet(frame, outline.body);
  return is(part, 'component') ? gap(room, body) <= USUAL.near : near(room, body) && inside(room, body);
}

/** Each way where the name stands in the wiring, and moved from there. */
export function* nameSpots(placed: PlacedPart, ways: readonly Way[], care: Care): Generator<Written> {
  const { part, frame, outline } = placed;
  const body = rectToSheet(frame, outline.body);
  const component = is(part, 'component');
  for (const { slots, price } of ways) {
    const room = airy(slots);
    const { width, height } = room;
    for (const by of movesOf(care)) {
      const { x, y } = by;
      const rect = { x: room.x + x, y: room.y + y, width, height };
      // A component's name stands at its body, whichever side of it.
      const aside = !component && !near(rect, body);
      const far = component || aside ? gap(rect, body) : 0;
      if (component ? far > care.near : aside && far > (care.beside ?? -1)) continue;
      const leader = far > USUAL.near ? leaderBetween(body, rect) : undefined;
      const out =
        component || inside(rect, body)
          ? 0
          : aside
            ? PRICE.aside + PRICE.beyond * beyond(rect, body)
            : PRICE.out + PRICE.beyond * beyond(rect, body);
      yield {
        centre: centreOf(rect),
        room: rect,
        slots,
        by,
        price: price + Math.abs(x) + Math.abs(y) + out + (leader ? PRICE.leader + PRICE.reach * far : 0),
        ...(leader ? { leader } : {}),
      };
    }
  }
}

/** Between two rectangles the shortest way, or nearly. */
function leaderBetween(from: Rect, to: Rect): Leader {
  const on = ({ x, y, width, height }: Rect, p: Point): Point => ({
    x: Math.min(Math.max(p.x, x), x + width),
    y: Math.min(Math.max(p.y, y), y + height),
  });
  const start = on(from, centreOf(to));
  return [start, on(to, start)];
}

const movesOf = remembered(({ step, across, down }: Care): readonly Point[] => {
  const columns = 2 * across + 1;
  return Array.from({ length: columns * (2 * down + 1) }, (_, i) => ({
    x: ((i % columns) - across) * step,
    y: (Math.floor(i / columns) - down) * step,
  }));
});

/** How far words stand out of a part, either way together. */
const beyond = (words: Rect, body: Rect): number =>
  Math.max(0, words.width - body.width) + Math.max(0, words.height - body.height);

/** Between two rectangles. */
const gap = (r: Rect, s: Rect): number =>
  Math.max(0, s.x - r.x - r.width, r.x - s.x - s.width, s.y - r.y - r.height, r.y - s.y - s.height);

/** Whether the middle of words is on a part. */
function near(words: Rect, { x, y, width, height }: Rect): boolean {
  const [across, down] = [words.x + words.width / 2, words.y + words.height / 2];
  return across >= x && down >= y && across <= x + width && down <= y + height;
}

/** Far from everything, where nothing is in the way of nothing. */
const NOWHERE = around(-1e6, -1e6, 0, 0);

/** A component's value on any side of its body, or nowhere. */
export function* valueSpots(placed: PlacedPart, size: number): Generator<Written> {
  const { frame, outline } = placed;
  const body = rectToSheet(frame, outline.body);
  const { x, y } = centreOf(body);
  const usual = valuesOf(placed, size);
  if (usual.length === 0) return;
  yield standing(usual, 0);
  const text = usual.map((slot) => slot.text).join(' ');
  const { width, height } = roomOf({ ...nth(usual, 0), text });
  const [across, down] = [(body.width + width) / 2 + BESIDE, (body.height + height) / 2 + BESIDE];
  const line = (centre: Point, price: number): Written =>
    standing([{ ...nth(usual, 0), text, centre }], price);
  for (let slide = 0; slide <= USUAL.across; slide++)
    for (const way of slide === 0 ? [0] : [-1, 1]) {
      const off = slide * way * USUAL.step;
      yield line({ x: x + off, y: y + down }, 10 + 2 * Math.abs(off));
      yield line({ x: x + off, y: y - down }, 20 + 2 * Math.abs(off));
      if (Math.abs(off) > body.height / 2 + height) continue;
      yield line({ x: x + across, y: y + off }, 30 + 2 * Math.abs(off));
      yield line({ x: x - across, y: y + off }, 30 + 2 * Math.abs(off));
    }
  // Nowhere: the list of joints tells it too.
  yield { centre: { x, y }, room: NOWHERE, slots: [], by: UNMOVED, price: PRICE.left };
}
