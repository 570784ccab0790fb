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
/** Spots that a mark chooses from, where it is not said: the cheapest by themselves. */
const CHOICE = 120;
/** A mark that stands so badly tries to make others move. */
const BADLY = 400;
/** Others that a mark may make move at once. */
const PUSHED = 2;
/** Rounds in which every mark chooses again, knowing where the others stand. */
const ROUNDS = 24;

/** The spots that a mark may choose from, with what is in their way counted in, the cheapest first. */
export function choiceOf<S extends Spot>(
  spots: Iterable<S>,
  obstacles: readonly Obstacle[],
  most = CHOICE,
): readonly S[] {
  const sorted = [...spots].sort((a, b) => a.price - b.price);
  if (sorted.length === 0) return [];
  const reach = reachOf(sorted);
  const within = obstacles.filter(({ rect }) => overlaps(rect, reach));
  const found: S[] = [];
  // What is in the way only adds to a price, so that what is dearer than enough others without it need not be looked at.
  for (const spot of sorted) {
    const enough = found[most - 1]?.price ?? Number.POSITIVE_INFINITY;
    if (enough <= spot.price) break;
    const price = spot.price + inTheWay(spot, within, enough - spot.price);
    if (price >= enough) continue;
    insert(found, { ...spot, price });
    if (found.length > most) found.pop();
  }
  return found;
}

/** What all spots with their leaders take up together. */
function reachOf(spots: readonly Spot[]): Rect {
  let [left, top, right, bottom] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  const add = (x: number, y: number): void => {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  };
  for (const { room, leader } of spots) {
    add(room.x, room.y);
    add(room.x + room.width, room.y + room.height);
    if (leader) for (const { x, y } of leader) add(x, y);
  }
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** Puts a spot among others in the order of their prices, behind those of the same. */
function insert<S extends Spot>(spots: S[], spot: S): void {
  let [low, high] = [0, spots.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (nth(spots, middle).price <= spot.price) low = middle + 1;
    else high = middle;
  }
  spots.splice(low, 0, spot);
}

/** Whether spots have nothing in their way, and none of them another. */
export const allClear = (
  spots: readonly { readonly spot: Spot; readonly obstacles: readonly Obstacle[] }[],
): boolean =>
  spots.every(
    ({ spot, obstacles }, i) =>
      inTheWay(spot, obstacles) === 0 && spots.slice(0, i).every((other) => between(other.spot, spot) === 0),
  );

/** @param enough from which on it is not counted any further */
function inTheWay({ room, leader }: Spot, obstacles: readonly Obstacle[], enough = HOPELESS): number {
  const most = Math.min(enough, HOPELESS);
  let sum = 0;
  for (const { rect, hidden, crossed } of obstacles) {
    if (sum > most) break;
    if (hidden > 0 && overlaps(rect, room)) sum += hidden;
    if (leader && crossed > 0 && crosses(leader, rect)) sum += crossed;
  }
  return sum;
}

/** What a mark in a crowd may choose from besides. */
interface Crowd<S extends Spot> {
  /** A mark whose place costs so much, others in its way counted in, is in one. */
  readonly from: number;
  /** From so much on all others have more to choose from too. */
  readonly others: number;
  /** More spots for a mark, the cheapest first. */
  readonly closely: (mark: number) => readonly S[];
}

/**
 * Of each mark the spot that it stands at; each must have some choice. Those that end up in a crowd have more to choose from, and if that is not
 * enough, so have all others: who stands well may make room.
 */
export function settled<S extends Spot>(choices: readonly (readonly S[])[], crowd?: Crowd<S>): readonly S[] {
  const open = [...choices];
  const chosen: (S | undefined)[] = choices.map(() => undefined);
  choose(open, chosen);
  if (crowd) {
    const inCrowd = (from: number): readonly number[] =>
      [...open.keys()].filter((i) => costOf(chosen, chosen[i] ?? nth(nth(open, i), 0), i) >= from);
    const closely = new Set<number>();
    for (const whom of [
      () => inCrowd(crowd.from),
      () => (inCrowd(crowd.others).length === 0 ? [] : [...open.keys()]),
    ]) {
      const more = whom().filter((i) => !closely.has(i));
      if (more.length === 0) continue;
      for (const i of more) {
        closely.add(i);
        open[i] = crowd.closely(i);
      }
      choose(open, chosen);
    }
  }
  return choices.map((choice, i) => chosen[i] ?? nth(choice, 0));
}

/** Has all marks choose until none finds a better place. What they cost together only becomes less. */
function choose<S extends Spot>(choices: readonly (readonly S[])[], chosen: (S | undefined)[]): void {
  // Who has the fewest good places chooses first.
  const good = choices.map((choice) => choice.filter(({ price }) => price < NEVER).length);
  const order = [...choices.keys()].sort((a, b) => nth(good, a) - nth(good, b) || a - b);
  for (let round = 0; round < ROUNDS; round++) {
    const moved = order.filter((i) => chooseAgain(choices, chosen, i));
    if (moved.length === 0 && !order.some((i) => pushAway(choices, chosen, i))) break;
  }
}

type Chosen = readonly (Spot | undefined)[];

/** What a spot costs a mark where all others stand. */
const costOf = (chosen: Chosen, spot: Spot, own: number): number =>
  chosen.reduce(
    (sum, other, k) => (other === undefined || k === own ? sum : sum + between(spot, other)),
    spot.price,
  );

function cheapest<S extends Spot>(
  choice: readonly S[],
  chosen: Chosen,
  own: number,
  before?: S,
): S | undefined {
  let [best, least] = [before, before ? costOf(chosen, before, own) : Number.POSITIVE_INFINITY];
  for (const spot of choice) {
    if (spot.price >= least) break;
    const cost = costOf(chosen, spot, own);
    if (cost < least) [best, least] = [spot, cost];
  }
  return best;
}

/** Whether a mark moved to a place that is better for it. */
function chooseAgain<S extends Spot>(
  choices: readonly (readonly S[])[],
  chosen: (S | undefined)[],
  i: number,
): boolean {
  const before = chosen[i];
  chosen[i] = cheapest(nth(choices, i), chosen, i, before);
  return chosen[i] !== before;
}

/** Whether a mark that stands badly found a place by making one or two others move. */
function pushAway<S extends Spot>(
  choices: readonly (readonly S[])[],
  chosen: (S | undefined)[],
  i: number,
): boolean {
  const now = chosen[i];
  if (now === undefined || costOf(chosen, now, i) < BADLY) return false;
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

/** Whether a straight line has a piece within a rectangle. Asked a million times for a kit, so it makes nothing on the way. */
function crosses([a, b]: Leader, { x, y, width, height }: Rect): boolean {
  if (Math.max(a.x, b.x) <= x || Math.min(a.x, b.x) >= x + width) return false;
  if (Math.max(a.y, b.y) <= y || Math.min(a.y, b.y) >= y + height) return false;
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  // The rectangle's corners lie on both sides of the line.
  const [one, other] = [dx * (y - a.y), dx * (y + height - a.y)];
  const [near, far] = [dy * (x - a.x), dy * (x + width - a.x)];
  return Math.min(one, other) - Math.max(near, far) < 0 && Math.max(one, other) - Math.min(near, far) > 0;
}

/** On which side of a line through two points a third lies. */
const side = (a: Point, b: Point, p: Point): number =>
  Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));

/** Whether two straight lines cross, or one ends on the other. */
const meet = ([a, b]: Leader, [c, d]: Leader): boolean =>
  side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
