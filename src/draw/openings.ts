/**
 * Where wires cross, one of the two is open: the lower one, ground below signal. But an opening close to a wire's end makes it look
 * unconnected, and one close to a corner or to another opening leaves a stub too short to be seen; there the upper one
 * opens instead, where that is better.
 */
import type { Point } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import type { PlacedWire } from '../place/placement.ts';
import { LINE } from './theme.ts';

/** Least of a wire to be seen between an opening and a solder dot, a corner, another opening; drawing units. */
const SEEN = { dot: 16, corner: 12, stub: 12 } as const;

/** How much it matters. */
const PRICE = { dot: 100, stub: 30, corner: 10 } as const;

interface Crossing {
  readonly at: Point;
  /** Numbers of the two wires, the lower one first. */
  readonly wires: readonly [number, number];
}

interface Segment {
  readonly wire: number;
  readonly a: Point;
  readonly b: Point;
}

const distance = (p: Point, q: Point): number => Math.abs(p.x - q.x) + Math.abs(p.y - q.y);

/**
 * The openings of each wire.
 *
 * @param height of a wire: what is lower runs beneath
 * @param there numbers of the wires that are drawn
 */
export function openingsOf(
  wires: readonly PlacedWire[],
  height: (wire: number) => number,
  there: ReadonlySet<number>,
): readonly (readonly Point[])[] {
  const found: Point[][] = wires.map(() => []);
  const open = (wire: number, at: Point): void => {
    found[wire]?.push(at);
  };
  const close = (wire: number, at: Point): void => {
    const own = nth(found, wire);
    own.splice(own.indexOf(at), 1);
  };
  /** What an opening there would spoil of a wire, with those it has by now. */
  const spoils = (wire: number, at: Point): number => {
    const points = wires[wire]?.points ?? [];
    const on = stretchAt(points, at);
    const [a, b] = [nth(points, on), nth(points, on + 1)];
    const near = (p: Point, least: number): boolean => distance(p, at) < least + LINE.gap;
    const end = (i: number): number => {
      const p = nth(points, i);
      const isEnd = i === 0 || i === points.length - 1;
      return isEnd ? (near(p, SEEN.dot) ? PRICE.dot : 0) : near(p, SEEN.corner) ? PRICE.corner : 0;
    };
    const others = nth(found, wire).filter((p) => between(a, b, p) && near(p, SEEN.stub + LINE.gap));
    return end(on) + end(on + 1) + PRICE.stub * others.length;
  };
  const crossings = crossingsOf(wires, height, there);
  const chosen = crossings.map(({ at, wires: [lower] }) => {
    open(lower, at);
    return lower;
  });
  // Where wires cross as on a lattice one choice hangs on the next: each is made again until none would be another.
  for (let pass = 0, changed = true; changed && pass < PASSES; pass++) {
    changed = false;
    for (const [i, { at, wires: pair }] of crossings.entries()) {
      const now = nth(chosen, i);
      const other = now === pair[0] ? pair[1] : pair[0];
      close(now, at);
      const [stays, turns] = [spoils(now, at), spoils(other, at)];
      // Of two alike the lower opens.
      const better = turns < stays || (turns === stays && other === pair[0]);
      open(better ? other : now, at);
      chosen[i] = better ? other : now;
      changed ||= better;
    }
  }
  return found;
}
const PASSES = 8;

/** Whether any wire runs across another. */
export const hasCrossings = (wires: readonly PlacedWire[]): boolean =>
  crossingsOf(wires, (wire) => wire, new Set(wires.keys())).length > 0;

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
