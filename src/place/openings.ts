/**
 * Where wires cross, one of the two is open: the lower one, ground below signal. But an opening close to a wire's end makes it look
 * unconnected, and one close to a corner or to another opening leaves a stub too short to be seen; there the upper one
 * opens instead. Which of two opens is a choice between two, what rules out an opening, or two at once, is known of
 * each: a question of two-satisfiability, so the answer is exact, however many crossings hang together.
 */
import type { Point } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import type { PlacedWire } from './placement.ts';

/** Half an opening; least of a wire to be seen between an opening and a solder dot, a corner, another opening. Drawing units. */
export const OPENING = { half: 6, dot: 16, corner: 12, stub: 12 } as const;

/** How much it matters where there is no choice but to spoil something. */
const PRICE = { dot: 100, stub: 30, corner: 10 } as const;

export interface Crossing {
  readonly at: Point;
  /** Numbers of the two wires, the lower one first. */
  readonly wires: readonly [number, number];
}

/** Which of a crossing's wires: the lower 0, the upper 1. */
type Side = 0 | 1;
const SIDES = [0, 1] as const;
const otherSide = (side: Side): Side => (side === 0 ? 1 : 0);

interface Segment {
  readonly wire: number;
  readonly a: Point;
  readonly b: Point;
}

/** What is open: the openings of each wire, and the crossings where neither wire can be open without spoiling something. */
interface Openings {
  readonly of: readonly (readonly Point[])[];
  readonly spoilt: readonly Crossing[];
}

const distance = (p: Point, q: Point): number => Math.abs(p.x - q.x) + Math.abs(p.y - q.y);

/**
 * @param height of a wire: what is lower runs beneath
 * @param there numbers of the wires that are drawn
 */
export function openingsOf(
  wires: readonly PlacedWire[],
  height: (wire: number) => number,
  there: ReadonlySet<number>,
): Openings {
  const crossings = crossingsOf(wires, height, there);
  const places = crossings.map(({ at, wires: pair }) => ({
    at,
    sides: pair.map((wire) => placeOn(nth(wires, wire), wire, at)),
  }));
  const near = neighbours(places.map(({ at, sides }) => ({ at, on: sides.map(({ on }) => on) })));
  const chosen: (Side | undefined)[] = crossings.map(() => undefined);
  const skipped = new Set<number>();
  /** Chooses a side and all that follows from it; when that leads nowhere, nothing at all. */
  const choose = (first: number, side: Side): boolean => {
    const made: number[] = [];
    const waiting: [number, Side][] = [[first, side]];
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      const [k, s] = next;
      if (skipped.has(k) || chosen[k] === s) continue;
      if (chosen[k] !== undefined || nth(nth(places, k).sides, s).spoils > 0) {
        for (const one of made) chosen[one] = undefined;
        return false;
      }
      chosen[k] = s;
      made.push(k);
      for (const { crossing, side: theirs } of nth(nth(near, k), s))
        waiting.push([crossing, otherSide(theirs)]);
    }
    return true;
  };
  // What followed from a choice without contradiction never stands in the way of those still open: no step back is needed.
  for (const k of crossings.keys()) {
    if (chosen[k] !== undefined || choose(k, 0) || choose(k, 1)) continue;
    skipped.add(k);
  }
  for (const k of skipped) {
    const price = (side: Side): number =>
      nth(nth(places, k).sides, side).spoils +
      PRICE.stub * nth(nth(near, k), side).filter((one) => chosen[one.crossing] === one.side).length;
    chosen[k] = price(1) < price(0) ? 1 : 0;
  }
  const of: Point[][] = wires.map(() => []);
  for (const [k, { at, wires: pair }] of crossings.entries()) of[pair[chosen[k] ?? 0]]?.push(at);
  return { of, spoilt: [...skipped].map((k) => nth(crossings, k)) };
}

/** A crossing as one of its wires meets it. */
interface Place {
  /** The wire and which of its stretches, as one text. */
  readonly on: string;
  /** What an opening there would spoil of the wire's end and corners. */
  readonly spoils: number;
}

function placeOn({ points }: PlacedWire, wire: number, at: Point): Place {
  const on = stretchAt(points, at);
  const spoils = [on, on + 1].map((i) => {
    const isEnd = i === 0 || i === points.length - 1;
    const seen = distance(nth(points, i), at) - OPENING.half;
    return isEnd ? (seen < OPENING.dot ? PRICE.dot : 0) : seen < OPENING.corner ? PRICE.corner : 0;
  });
  return { on: `${wire} ${on}`, spoils: nth(spoils, 0) + nth(spoils, 1) };
}

/** Which crossing, and which of its wires: one that cannot be open as well. */
interface Neighbour {
  readonly crossing: number;
  readonly side: Side;
}

/** Of each crossing and each of its wires, the openings of that wire that would leave a short stub between. */
function neighbours(
  crossings: readonly { readonly at: Point; readonly on: readonly string[] }[],
): readonly (readonly (readonly Neighbour[])[])[] {
  const onStretch = new Map<string, Neighbour[]>();
  crossings.forEach(({ on }, crossing) => {
    for (const side of SIDES) {
      const stretch = nth(on, side);
      onStretch.set(stretch, [...(onStretch.get(stretch) ?? []), { crossing, side }]);
    }
  });
  return crossings.map(({ at, on }, k) =>
    SIDES.map((side) =>
      (onStretch.get(nth(on, side)) ?? []).filter(
        ({ crossing }) =>
          crossing !== k && distance(at, nth(crossings, crossing).at) < OPENING.stub + 2 * OPENING.half,
      ),
    ),
  );
}

/** Crossings that cannot be drawn without hiding an end, a corner or a stub of a wire, whichever wire runs beneath. */
export const spoiltCrossings = (wires: readonly PlacedWire[]): readonly Crossing[] =>
  openingsOf(wires, (wire) => wire, new Set(wires.keys())).spoilt;

/** Every crossing of two wires. */
export const crossingsIn = (wires: readonly PlacedWire[]): readonly Crossing[] =>
  crossingsOf(wires, (wire) => wire, new Set(wires.keys()));

function crossingsOf(
  wires: readonly PlacedWire[],
  height: (wire: number) => number,
  there: ReadonlySet<number>,
): readonly Crossing[] {
  const segments = wires.flatMap(({ points }, wire) =>
    there.has(wire) ? points.slice(1).map((b, i): Segment => ({ wire, a: points[i] ?? b, b })) : [],
  );
  const upright = segments.filter(({ a, b }) => a.x === b.x);
  return segments
    .filter(({ a, b }) => a.y === b.y)
    .flatMap((h) =>
      upright.flatMap((v): Crossing[] => {
        const at = { x: v.a.x, y: h.a.y };
        if (h.wire === v.wire || !between(h.a, h.b, at) || !between(v.a, v.b, at)) return [];
        return [{ at, wires: height(h.wire) < height(v.wire) ? [h.wire, v.wire] : [v.wire, h.wire] }];
      }),
    );
}

/** Whether a point lies on a level or upright stretch, its ends left out. */
export const between = (a: Point, b: Point, p: Point): boolean =>
  a.x === b.x ? p.x === a.x && (p.y - a.y) * (p.y - b.y) < 0 : p.y === a.y && (p.x - a.x) * (p.x - b.x) < 0;

/** Number of the stretch that a point lies on. */
const stretchAt = (points: readonly Point[], at: Point): number =>
  Math.max(
    0,
    points.findIndex((a, i) => {
      const b = points[i + 1];
      return b !== undefined && between(a, b, at);
    }),
  );
