/**
 * The placement search: from a placement that works to one with fewer crossings, fewer bends and less wire.
 *
 * The free choices are where a loose part stands, which way round it lies, and, where the arrangement leaves it open,
 * which of two parts stands in which place. The order of wire ends at a lug and the side of a case are free as well,
 * but they need no search: every routing weighs all of them.
 *
 * The score is what the wires cost once routed (see `route/route.ts`: 2 a grid step, three times that on a component's
 * leg, 7 a bend, 44 a crossing, more for what is hard to read), `SPRAWL` for every grid step of the drawing's
 * width and height, and a price for pickups that stand otherwise than on the instrument. Steps are drawn by a seeded
 * generator and taken when they do not worsen the score by more than a tolerance that shrinks to nothing; the best
 * placement met is the answer, once every loose part has been tried a little aside.
 * The bound is a number of steps, never a time, so that the outcome is the same on every machine.
 */
import { seeded } from '../common/random.ts';
import type { Joint } from '../describe/kit.ts';
import { isPickup, mayMirror } from '../parts/index.ts';
import type { GridPart } from './placement.ts';
import { boxOf, clash, lugCentre } from './settle.ts';
import { bounds, type Wiring } from './wiring.ts';

export interface Effort {
  /** Steps routed at most, fewer where many parts are loose; 0 leaves the first placement as it is. */
  readonly steps: number;
  readonly seed: number;
}

/** Keeps a kit within a second on a small machine. */
export const DEFAULT_EFFORT: Effort = { steps: 1400, seed: 60617 };

/** Price of a grid step of the drawing's width and of its height. */
const SPRAWL = 10;
/** How much worse a step may be at the beginning, as a share of the score; it falls to nothing along the way. */
const TOLERANCE = 0.012;
/** A step whose straight distances alone are this much longer is not worth a routing. */
const LONGER = 40;
/** With more loose parts than this the steps become fewer, so that the time stays about the same. */
const LOOSE_ENOUGH = 9;
/** Steps drawn for every one allowed, since most are refused without a routing. */
const DRAWS = 20;

/**
 * Searches from a wired placement; afterwards the wiring stands and runs in the best way found.
 *
 * @param between room kept free between parts, grid units
 */
export function improve(
  wiring: Wiring,
  joints: readonly Joint[],
  between: number,
  { steps, seed }: Effort,
): void {
  const random = seeded(seed);
  const loose = wiring.gridParts.flatMap((gridPart, i) => (gridPart.fixed ? [] : [i]));
  if (loose.length === 0 || steps === 0) return;
  let now = { before: wiring.remember(), score: scoreOf(wiring), far: distances(wiring.gridParts, joints) };
  let best = now;
  // The first places may already be nearer than is wanted; the search never makes that worse.
  let crowded = crowding(wiring.gridParts, between);
  // Where more parts are loose a step moves more wires and takes longer.
  const most = Math.min(steps, Math.ceil((steps * LOOSE_ENOUGH) / loose.length));
  let left = most;
  for (let draw = 0; left > 0 && draw < most * DRAWS; draw++) {
    const next = step(now.before.gridParts, loose, joints, random);
    if (!next || crowding(next, between) > crowded) continue;
    const far = distances(next, joints);
    if (far > now.far + LONGER) continue;
    left--;
    const worst = now.score * (1 + TOLERANCE * (left / most));
    const score = moved(wiring, next, worst);
    if (score === undefined) {
      wiring.restore(now.before);
      continue;
    }
    if (left % 20 === 0) wiring.refine(1);
    now = { before: wiring.remember(), score: Math.min(score, scoreOf(wiring)), far };
    crowded = crowding(next, between);
    if (score < best.score) best = now;
  }
  wiring.restore(best.before);
  wiring.refine(3);
  tidy(wiring, loose, between);
}

/** At last every loose part is tried the other way round and a little aside, and stays where that is better. */
const ASIDE = [-2, -1, 1, 2] as const;

function tidy(wiring: Wiring, loose: readonly number[], between: number): void {
  for (const i of loose) {
    const gridPart = wiring.gridParts[i];
    if (!gridPart) continue;
    const tries: readonly Partial<GridPart>[] = [
      ...(mayMirror(gridPart.part) ? [{ mirror: !gridPart.mirror }] : []),
      ...ASIDE.map((by) => ({ column: gridPart.column + by })),
      ...ASIDE.map((by) => ({ row: gridPart.row + by })),
    ];
    for (const next of tries) {
      const before = wiring.remember();
      const score = scoreOf(wiring);
      const gridParts = wiring.gridParts.map((one, k) => (k === i ? { ...one, ...next } : one));
      if (crowding(gridParts, between) > crowding(wiring.gridParts, between)) continue;
      if (moved(wiring, gridParts, score - 1) === undefined) wiring.restore(before);
    }
  }
  wiring.refine(1);
}

/** Moves parts, and answers the score then, or `undefined` when it would be above `worst`. */
function moved(wiring: Wiring, gridParts: readonly GridPart[], worst: number): number | undefined {
  if (!wiring.move(gridParts, worst - spread(gridParts))) return undefined;
  const score = scoreOf(wiring);
  return score > worst ? undefined : score;
}

const scoreOf = (wiring: Wiring): number => wiring.cost + spread(wiring.gridParts);

/** What of the score the wires have no part in. */
function spread(gridParts: readonly GridPart[]): number {
  const box = bounds(gridParts);
  return SPRAWL * Math.round(box.width + box.height) + untidiness(gridParts);
}

/** Prices of pickups that do not stand as they do on the instrument: out of order, facing different ways, out of line. */
const DISORDER = 300;
const FACING = 100;
const OUT_OF_LINE = 60;

function untidiness(gridParts: readonly GridPart[]): number {
  const pickups = gridParts.filter(({ part, fixed }) => isPickup(part) && !fixed);
  let price = 0;
  pickups.slice(1).forEach((lower, i) => {
    const upper = pickups[i];
    if (!upper) return;
    if (upper.row > lower.row || (upper.row === lower.row && upper.column > lower.column)) price += DISORDER;
    if (upper.mirror !== lower.mirror) price += FACING;
    if (upper.column !== lower.column && upper.row !== lower.row) price += OUT_OF_LINE;
  });
  return price;
}

type Random = () => number;
const pick = <T>(from: readonly T[], random: Random): T | undefined =>
  from[Math.floor(random() * from.length)];

/** Another placement, one step away. */
function step(
  gridParts: readonly GridPart[],
  loose: readonly number[],
  joints: readonly Joint[],
  random: Random,
): readonly GridPart[] | undefined {
  const i = pick(loose, random) ?? 0;
  const gridPart = gridParts[i];
  if (!gridPart) return undefined;
  const put = (next: Partial<GridPart>): readonly GridPart[] =>
    gridParts.map((one, k) => (k === i ? { ...one, ...next } : one));
  const kind = random();
  if (kind < 0.4) {
    const reach = random() < 0.5 ? 2 : 8;
    const off = (): number => Math.floor(random() * (2 * reach + 1)) - reach;
    return put({ column: gridPart.column + off(), row: gridPart.row + off() });
  }
  if (kind < 0.55) return mayMirror(gridPart.part) ? put({ mirror: !gridPart.mirror }) : undefined;
  if (kind < 0.85) return beside(gridParts, gridPart, joints, random, put);
  const other = gridParts[pick(loose, random) ?? 0];
  if (!other || other === gridPart) return undefined;
  return gridParts.map((one) =>
    one === gridPart
      ? { ...one, column: other.column, row: other.row }
      : one === other
        ? { ...one, column: gridPart.column, row: gridPart.row }
        : one,
  );
}

/** The part moved so that one of its lugs comes near the lug it is joined to. */
function beside(
  gridParts: readonly GridPart[],
  gridPart: GridPart,
  joints: readonly Joint[],
  random: Random,
  put: (next: Partial<GridPart>) => readonly GridPart[],
): readonly GridPart[] | undefined {
  const own = joints.filter(
    ({ from, to }) => (from.part === gridPart.part.name) !== (to.part === gridPart.part.name),
  );
  const joint = pick(own, random);
  if (!joint) return undefined;
  const [near, far] =
    joint.from.part === gridPart.part.name ? [joint.from, joint.to] : [joint.to, joint.from];
  const other = gridParts.find((one) => one.part.name === far.part);
  if (!other) return undefined;
  const mirror = mayMirror(gridPart.part) && random() < 0.5 ? !gridPart.mirror : gridPart.mirror;
  const a = lugCentre({ ...gridPart, mirror }, near.lug);
  const b = lugCentre(other, far.lug);
  const off = (): number => Math.floor(random() * 13) - 6;
  return put({ mirror, column: gridPart.column + b.x - a.x + off(), row: gridPart.row + b.y - a.y + off() });
}

/** Parts nearer than this are all but one on the other: worth more than any number of pairs that are merely near. */
const LEAST = 2;
const TOUCHING = 1000;

/** How many pairs of parts are nearer than the room wanted between them, those that touch counted far more. */
function crowding(placed: readonly GridPart[], between: number): number {
  const boxes = placed.map(boxOf);
  let pairs = 0;
  boxes.forEach((a, i) => {
    for (let k = i + 1; k < boxes.length; k++) {
      const b = boxes[k];
      if (b && clash(a, b, between)) pairs += clash(a, b, Math.min(LEAST, between)) ? TOUCHING : 1;
    }
  });
  return pairs;
}

/** Straight distances between the ends of all joints, grid steps. */
function distances(placed: readonly GridPart[], joints: readonly Joint[]): number {
  const byName = new Map(placed.map((gridPart) => [gridPart.part.name, gridPart]));
  let sum = 0;
  for (const { from, to } of joints) {
    const [a, b] = [byName.get(from.part), byName.get(to.part)];
    if (!a || !b) continue;
    const [p, q] = [lugCentre(a, from.lug), lugCentre(b, to.lug)];
    sum += Math.abs(p.x - q.x) + Math.abs(p.y - q.y);
  }
  return sum;
}
