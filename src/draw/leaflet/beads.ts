/**
 * Where the numbers of new joints stand: like beads on their own lines, close to the ends, where nothing else is hidden; else
 * beside the end, with a leader to it.
 */
import { around, inside, overlaps, type Point, type Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';

/** An end of a line that wants a number. */
export interface End {
  /** The line's points from this end on. */
  readonly points: readonly Point[];
  /** What must not be hidden besides what all must not hide: the other new lines. */
  readonly others: readonly Rect[];
}

export interface Bead {
  readonly centre: Point;
  /** Whether it stands beside its line, which then needs a leader from the end. */
  readonly beside: boolean;
}

/** Between a bead and whatever else there is. */
const AIR = 2;
/** Of its line between the end and the bead. */
const CLEAR = 9;
/** Places along the line, and beside the end. */
const STEP = 3;
const FARTHEST = 200;
const WAYS = 16;
const RINGS = [6, 14, 24, 36, 50, 66];
/** What it costs to hide something that must be seen, a line, and to need a leader; a unit of distance costs 1. */
const PRICE = { hidden: 1000, line: 60, leader: 40 } as const;

/**
 * Places for all ends, one after another.
 *
 * @param hidden what no bead may lie on
 * @param within what no bead may reach beyond
 */
export function beadsOf(
  ends: readonly End[],
  radius: number,
  hidden: readonly Rect[],
  within: Rect,
): readonly Bead[] {
  const placed: Rect[] = [];
  // Nobody's number stands on the very end of another's line.
  const tips = ends.map(({ points }) => around(nth(points, 0).x, nth(points, 0).y, 8, 8));
  return ends.map((end, i) => {
    let best: Bead | undefined;
    let least = Number.POSITIVE_INFINITY;
    const closed = [...hidden, ...placed, ...tips.filter((_, k) => k !== i)];
    for (const { bead, price } of placesOf(end, radius)) {
      if (price >= least) continue;
      const room = around(bead.centre.x, bead.centre.y, 2 * (radius + AIR), 2 * (radius + AIR));
      const cost =
        price +
        (inside(room, within) ? 0 : PRICE.hidden) +
        PRICE.hidden * closed.filter((rect) => overlaps(rect, room)).length +
        PRICE.line * end.others.filter((rect) => overlaps(rect, room)).length;
      if (cost < least) [best, least] = [bead, cost];
    }
    const bead = best ?? { centre: nth(end.points, 0), beside: false };
    placed.push(around(bead.centre.x, bead.centre.y, 2 * radius, 2 * radius));
    return bead;
  });
}

function* placesOf({ points }: End, radius: number): Generator<{ bead: Bead; price: number }> {
  const length = points.slice(1).reduce((sum, b, i) => sum + far(nth(points, i), b), 0);
  // Near its own end, so that it is not taken for the other's.
  for (let along = radius + CLEAR; along <= Math.min(length / 2, FARTHEST); along += STEP)
    yield { bead: { centre: pointAt(points, along), beside: false }, price: along };
  const tip = nth(points, 0);
  for (const ring of RINGS)
    for (let way = 0; way < WAYS; way++) {
      const angle = (2 * Math.PI * way) / WAYS;
      const reach = radius + ring;
      const centre = {
        x: Math.round(tip.x + reach * Math.cos(angle)),
        y: Math.round(tip.y + reach * Math.sin(angle)),
      };
      yield { bead: { centre, beside: true }, price: PRICE.leader + 2 * reach };
    }
}

const far = (a: Point, b: Point): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);

/** A point so far along a line, or its end. */
export function pointAt(points: readonly Point[], along: number): Point {
  let left = along;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [nth(points, i - 1), nth(points, i)];
    const here = far(a, b);
    if (left <= here && here > 0)
      return { x: a.x + ((b.x - a.x) * left) / here, y: a.y + ((b.y - a.y) * left) / here };
    left -= here;
  }
  return nth(points, points.length - 1);
}

/** Rectangles about the straight pieces of a line that is so wide. */
export const runsOf = (points: readonly Point[], width: number): readonly Rect[] =>
  points.slice(1).map((b, i) => {
    const a = nth(points, i);
    return {
      x: Math.min(a.x, b.x) - width / 2,
      y: Math.min(a.y, b.y) - width / 2,
      width: Math.abs(a.x - b.x) + width,
      height: Math.abs(a.y - b.y) + width,
    };
  });
