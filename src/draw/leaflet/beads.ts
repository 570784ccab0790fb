/**
 * Where the number of a new joint's end may stand: like a bead on its own line, close to the end and on a straight stretch of it; or aside in free
 * space, with a leader to the end.
 */
import { around, type Point, type Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import type { Spot } from './spots.ts';

/** Between a bead and whatever else there is. */
const AIR = 2;
/** Of its line between the end and the bead. */
const CLEAR = 9;
/** Between a bead and a corner of its line, so that the corner is seen. */
const CORNER = 3;
/** How closely places are looked for: units from one to the next along a line, and ways that a leader may lead. */
export interface Care {
  readonly step: number;
  readonly ways: number;
  /** Of a place on a line from its end. */
  readonly farthest: number;
}
const RINGS = [6.5, 10, 14, 20, 27, 35, 44, 54, 66] as const;
const FAR_RINGS = [80, 96, 114, 134, 156, 180, 210, 240] as const;
/** What a leader costs, each unit of its length; along its own line a unit costs 1, past the middle more, and beyond each line that crosses it so much. And a leader along its own line, for which it could be taken. */
const PRICE = { leader: 45, reach: 2, past: 3, beyond: 180, along: 900 } as const;
/** The cosine of the angle at which a leader is told from its line. */
const APART = Math.cos(Math.PI / 7);

const roomAt = ({ x, y }: Point, radius: number): Rect =>
  around(x, y, 2 * (radius + AIR), 2 * (radius + AIR));

/**
 * Spots for the number of an end on its own line.
 *
 * @param points the line's, from this end on
 * @param crossings how far along it others cross it: a number beyond one is taken for that of a joint nearby
 * @param alike whether the other end's number is the same and looks the same, so that one may be taken for the other
 */
export function* spotsOnLine(
  points: readonly Point[],
  radius: number,
  alike: boolean,
  { step, farthest }: Care,
  crossings: readonly number[],
): Generator<Spot> {
  const length = lengthOf(points);
  const most = alike ? length - radius - CLEAR : length / 2;
  for (let along = radius + CLEAR; along <= Math.min(most, farthest); along += step) {
    const centre = pointAt(points, along);
    if (points.slice(1, -1).some((corner) => far(corner, centre) < radius + CORNER)) continue;
    const past = Math.max(0, along - length / 2);
    const beyond = crossings.filter((one) => one < along).length;
    yield {
      centre,
      room: roomAt(centre, radius),
      price: along + PRICE.past * past + PRICE.beyond * beyond,
    };
  }
}

/**
 * Spots for the number of an end beside its line, not far away.
 *
 * @param tip where its solder is, from which a leader leads
 */
export const spotsAside = (
  points: readonly Point[],
  tip: Point,
  radius: number,
  { ways }: Care,
): Iterable<Spot> => spotsAbout(points, tip, radius, RINGS, ways);

/** Spots for the number of an end that finds no place near. */
export const spotsFar = (
  points: readonly Point[],
  tip: Point,
  radius: number,
  { ways }: Care,
): Iterable<Spot> => spotsAbout(points, tip, radius, FAR_RINGS, ways);

function* spotsAbout(
  points: readonly Point[],
  start: Point,
  radius: number,
  rings: readonly number[],
  ways: number,
): Generator<Spot> {
  const on = pointAt(points, CLEAR);
  const from = nth(points, 0);
  const [dx, dy] = [Math.sign(on.x - from.x), Math.sign(on.y - from.y)];
  for (const ring of rings)
    for (let way = 0; way < ways; way++) {
      const angle = (2 * Math.PI * way) / ways;
      const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
      const reach = radius + ring;
      const centre = { x: Math.round(start.x + reach * ux), y: Math.round(start.y + reach * uy) };
      yield {
        centre,
        room: roomAt(centre, radius),
        leader: leaderTo(start, centre, radius),
        price: PRICE.leader + PRICE.reach * ring + (ux * dx + uy * dy > APART ? PRICE.along : 0),
      };
    }
}

/** From a point to the edge of a circle. */
function leaderTo(from: Point, centre: Point, radius: number): readonly [Point, Point] {
  const length = Math.hypot(centre.x - from.x, centre.y - from.y);
  const share = Math.max(0, 1 - radius / length);
  return [from, { x: from.x + (centre.x - from.x) * share, y: from.y + (centre.y - from.y) * share }];
}

const far = (a: Point, b: Point): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);

/** Of a line of level and upright stretches. */
export const lengthOf = (points: readonly Point[]): number =>
  points.slice(1).reduce((sum, b, i) => sum + far(nth(points, i), b), 0);

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

/** A line without so much of one of its ends, but with at least half of it. */
export function shorter(points: readonly Point[], end: 'from' | 'to', by: number): readonly Point[] {
  const path = end === 'from' ? points : [...points].reverse();
  const less = Math.min(by, lengthOf(path) / 2);
  let passed = 0;
  const rest = path.findIndex((p, i) => {
    passed += i === 0 ? 0 : far(nth(path, i - 1), p);
    return passed > less;
  });
  const cut = rest < 1 ? path : [pointAt(path, less), ...path.slice(rest)];
  return end === 'from' ? cut : [...cut].reverse();
}
