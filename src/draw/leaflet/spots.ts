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
/** A spot in the way of so much is counted no further. */
const HOPELESS = 4 * NEVER;
/** Spots that a mark chooses from: the cheapest by themselves. */
const CHOICE = 300;
/** Others that a mark may make move at once. */
const PUSHED = 2;
/** Rounds in which every mark chooses again, knowing where the others stand. */
const ROUNDS = 24;

/** The spots that a mark may choose from, with what is in their way counted in, the cheapest first. */
export function choiceOf(spots: Iterable<Spot>, obstacles: readonly Obstacle[]): readonly Spot[] {
  const priced = [...spots].map((spot) => ({ ...spot, price: spot.price + inTheWay(spot, obstacles) }));
  return priced.sort((a, b) => a.price - b.price).slice(0, CHOICE);
}

function inTheWay({ room, leader }: Spot, obstacles: readonly Obstacle[]): number {
  let sum = 0;
  for (const { rect, hidden, crossed } of obstacles) {
    if (sum > HOPELESS) break;
    if (hidden > 0 && overlaps(rect, room)) sum += hidden;
    if (leader && crossed > 0 && crosses(leader, rect)) sum += crossed;
  }
  return sum;
}

/** Of each mark the spot that it stands at; each must have some choice. */
export function settled(choices: readonly (readonly Spot[])[]): readonly Spot[] {
  // Who has the fewest good places chooses first.
  const good = choices.map((choice) => choice.filter(({ price }) => price < NEVER).length);
  const order = [...choices.keys()].sort((a, b) => nth(good, a) - nth(good, b) || a - b);
  const chosen: (Spot | undefined)[] = choices.map(() => undefined);
  for (let round = 0; round < ROUNDS; round++) {
    const moved = order.filter((i) => chooseAgain(choices, chosen, i));
    if (moved.length === 0 && !order.some((i) => pushAway(choices, chosen, i))) break;
  }
  return choices.map((choice, i) => chosen[i] ?? nth(choice, 0));
}

type Chosen = readonly (Spot | undefined)[];

/** What a spot costs a mark where all others stand. */
const costOf = (chosen: Chosen, spot: Spot, own: number): number =>
  chosen.reduce(
    (sum, other, k) => (other === undefined || k === own ? sum : sum + between(spot, other)),
    spot.price,
  );

function cheapest(choice: readonly Spot[], chosen: Chosen, own: number, before?: Spot): Spot | undefined {
  let [best, least] = [before, before ? costOf(chosen, before, own) : Number.POSITIVE_INFINITY];
  for (const spot of choice) {
    if (spot.price >= least) break;
    const cost = costOf(chosen, spot, own);
    if (cost < least) [best, least] = [spot, cost];
  }
  return best;
}

/** Whether a mark moved to a place that is better for it. */
function chooseAgain(
  choices: readonly (readonly Spot[])[],
  chosen: (Spot | undefined)[],
  i: number,
): boolean {
  const before = chosen[i];
  chosen[i] = cheapest(nth(choices, i), chosen, i, before);
  return chosen[i] !== before;
}

/** Whether a mark that stands badly found a place by making one or two others move. */
function pushAway(choices: readonly (readonly Spot[])[], chosen: (Spot | undefined)[], i: number): boolean {
  const now = chosen[i];
  if (now === undefined || costOf(chosen, now, i) < NEVER) return false;
  const total = (of: Chosen): number =>
    of.reduce((sum, spot, k) => (spot === undefined ? sum : sum + costOf(of.slice(0, k), spot, k)), 0);
  const least = total(chosen);
  for (const spot of nth(choices, i)) {
    if (spot.price >= costOf(chosen, now, i)) break;
    const pushed = chosen.flatMap((other, k) =>
      other !== undefined && k !== i && between(spot, other) >= NEVER ? [k] : [],
    );
    if (pushed.length > PUSHED) continue;
    const tried = chosen.map((other, k) => (k === i ? spot : pushed.includes(k) ? undefined : other));
    for (const k of pushed) tried[k] = cheapest(nth(choices, k), tried, k);
    if (total(tried) >= least) continue;
    for (const [k, other] of tried.entries()) chosen[k] = other;
    return true;
  }
  return false;
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
