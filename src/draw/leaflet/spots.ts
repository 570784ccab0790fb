/**
 * Places for marks that must hide nothing, such as numbers of joints: each mark has many spots to choose from, each with a price, and all marks
 * together choose so that none lies on another and no leader crosses another's mark.
 */
import { overlaps, type Point, type Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';

/** A leader from what a mark belongs to, to the mark's edge. */
export type Leader = readonly [Point, Point];

/** One place for a mark. */
export interface Spot {
  readonly centre: Point;
  /** What it takes, with the air about it. */
  readonly room: Rect;
  /** Absent on its own line. */
  readonly leader?: Leader;
  /** What the place itself costs, the nearest least. */
  readonly price: number;
}

/** What lies in the way: what it costs to lie on it, and to lead a leader across it. */
export interface Obstacle {
  readonly rect: Rect;
  readonly hidden: number;
  readonly crossed: number;
}

/** What must never be: more than any sum of what only looks worse. */
export const NEVER = 10_000;
/** Of two leaders that cross. */
const CROSSED_LEADERS = 400;
/** Spots that a mark chooses from: the cheapest by themselves. */
const CHOICE = 160;
/** Rounds in which every mark chooses again, knowing where the others stand. */
const ROUNDS = 12;

/** The spots that a mark may choose from, with what is in their way counted in, the cheapest first. */
export function choiceOf(spots: Iterable<Spot>, obstacles: readonly Obstacle[]): readonly Spot[] {
  const priced = [...spots].map((spot) => ({ ...spot, price: spot.price + inTheWay(spot, obstacles) }));
  return priced.sort((a, b) => a.price - b.price).slice(0, CHOICE);
}

function inTheWay({ room, leader }: Spot, obstacles: readonly Obstacle[]): number {
  let sum = 0;
  for (const { rect, hidden, crossed } of obstacles) {
    if (hidden > 0 && overlaps(rect, room)) sum += hidden;
    if (leader && crossed > 0 && crosses(leader, rect)) sum += crossed;
  }
  return sum;
}

/** Of each mark the spot that it stands at; marks without any choice are not allowed. */
export function settled(choices: readonly (readonly Spot[])[]): readonly Spot[] {
  const chosen: (Spot | undefined)[] = choices.map(() => undefined);
  const costOf = (spot: Spot, own: number): number =>
    chosen.reduce(
      (sum, other, k) => (other === undefined || k === own ? sum : sum + between(spot, other)),
      spot.price,
    );
  const choose = (i: number): boolean => {
    const before = chosen[i];
    let [best, least] = [before, before ? costOf(before, i) : Number.POSITIVE_INFINITY];
    for (const spot of nth(choices, i)) {
      if (spot.price >= least) break;
      const cost = costOf(spot, i);
      if (cost < least) [best, least] = [spot, cost];
    }
    chosen[i] = best;
    return best !== before;
  };
  // Who has the fewest good places chooses first.
  const good = (i: number): number => nth(choices, i).filter(({ price }) => price < NEVER).length;
  const order = [...choices.keys()].sort((a, b) => good(a) - good(b) || a - b);
  for (let round = 0; round < ROUNDS; round++) if (!order.map(choose).includes(true)) break;
  return choices.map((choice, i) => chosen[i] ?? nth(choice, 0));
}

function between(a: Spot, b: Spot): number {
  let sum = overlaps(a.room, b.room) ? NEVER : 0;
  if (a.leader && crosses(a.leader, b.room)) sum += NEVER;
  if (b.leader && crosses(b.leader, a.room)) sum += NEVER;
  if (a.leader && b.leader && meet(a.leader, b.leader)) sum += CROSSED_LEADERS;
  return sum;
}

/** Whether a straight line has a piece within a rectangle. */
export function crosses([a, b]: Leader, { x, y, width, height }: Rect): boolean {
  let [from, to] = [0, 1];
  for (const [start, step, low, high] of [
    [a.x, b.x - a.x, x, x + width],
    [a.y, b.y - a.y, y, y + height],
  ] as const) {
    if (step === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [s, t] = [(low - start) / step, (high - start) / step];
    from = Math.max(from, Math.min(s, t));
    to = Math.min(to, Math.max(s, t));
  }
  return from < to;
}

/** On which side of a line through two points a third lies. */
const side = (a: Point, b: Point, p: Point): number =>
  Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));

/** Whether two straight lines cross, or one ends on the other. */
const meet = ([a, b]: Leader, [c, d]: Leader): boolean =>
  side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
