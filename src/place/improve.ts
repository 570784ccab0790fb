/**
 * The placement search: from a placement that works to one with fewer crossings, fewer bends and less wire.
 *
 * The free choices are where a loose part stands, which way round it lies, and, where the arrangement leaves it open,
 * which of two parts stands in which place. The order of wire ends at a lug and the side of a case are free as well,
 * but they need no search: every routing weighs all of them.
 *
 * The score is what the wires cost once routed (see `route/route.ts`: 2 a grid step, three times that on a component's
 * leg, 10 a bend, 90 a crossing, more for what is hard to read), more for wires that wander or run round the sheet and
 * for legs that are long, and what `tidiness.ts` adds for the drawing's width and height and for pickups that stand
 * otherwise than on the instrument. Steps are drawn by a seeded
 * generator and taken when they do not worsen the score by more than a tolerance that shrinks to nothing; the best
 * placement met is the answer, once every loose part has been tried a little aside.
 * The bound is a number of steps, and one of states that searches for ways look at, never a time, so that the outcome is
 * the same on every machine.
 */
import { nth } from '../common/must.ts';
import { seeded } from '../common/random.ts';
import type { Joint } from '../describe/kit.ts';
import { orientationsOf } from '../parts/index.ts';
import { Estimate } from './estimate.ts';
import { Moves, turnedTo } from './moves.ts';
import { type GridPart, looseOnes } from './placement.ts';
import { Move } from './places.ts';
import { spread } from './tidiness.ts';
import type { Wiring } from './wiring.ts';

export interface Effort {
  /** Steps routed at most, fewer where many parts are loose; 0 leaves the first placement as it is. */
  readonly steps: number;
  /** States that searches for ways may look at, all together; what is begun is finished. `WORK` where nothing is said. */
  readonly work?: number;
  readonly seed: number;
}

/** A kit takes one to six seconds with it on a small machine; `tests/bench/layout-table.ts` tells. */
export const DEFAULT_EFFORT: Effort = { steps: 4400, seed: 3 };
/** No kit with less than some thirty wires reaches it: only where wires stand close do searches get that long. */
export const WORK = 45_000_000;

/** How much worse a step may be at the beginning, as a share of the score; it falls to nothing along the way. */
const TOLERANCE = 0.012;
/** A step that the estimate says costs so much more is not worth a routing. */
const HOPELESS = 100;
/** With more loose parts than this the steps become fewer, so that the time stays about the same. */
const LOOSE_ENOUGH = 9;
/** With fewer there is less to try. */
const FEW_LOOSE = 6;
/** Steps drawn for every one allowed, since most are refused without a routing. */
const DRAWS = 40;

/**
 * Searches from a wired placement; afterwards the wiring stands and runs in the best way met.
 *
 * @param between room kept free between parts, grid units
 */
export function improve(
  wiring: Wiring,
  joints: readonly Joint[],
  between: number,
  { steps, work = WORK, seed }: Effort,
): void {
  const random = seeded(seed);
  const across = joints.filter(({ from, to }) => from.part !== to.part);
  const moves = new Moves(wiring.gridParts, across);
  const { loose } = moves;
  if (loose.length === 0 || steps === 0) return;
  const move = new Move();
  const estimate = new Estimate(wiring.gridParts, across, between, columnOf(wiring));
  let now = { before: wiring.remember(), score: scoreOf(wiring), estimated: estimate.cost };
  let best = now;
  // The first places may already be nearer than is wanted; the search never makes that worse.
  let crowded = estimate.nearPairs;
  // Where more parts are loose a step moves more wires and takes longer.
  const most = Math.min(
    Math.ceil((steps * loose.length) / FEW_LOOSE),
    steps,
    Math.ceil((steps * LOOSE_ENOUGH) / loose.length),
  );
  let left = most;
  const begun = wiring.work;
  /** What is left to be done, as a share. */
  const rest = (): number => Math.min(left / most, 1 - (wiring.work - begun) / work);
  for (let draw = 0; rest() > 0 && draw < most * DRAWS; draw++) {
    if (!moves.draw(estimate.places, random, move)) continue;
    const estimated = estimate.apply(move, now.estimated + HOPELESS);
    if (estimated === undefined) continue;
    if (estimate.nearPairs > crowded) {
      estimate.undo();
      continue;
    }
    left--;
    const worst = now.score * (1 + TOLERANCE * Math.max(0, rest()));
    const score = moved(wiring, estimate.gridParts, worst);
    if (score === undefined) {
      wiring.restore(now.before);
      estimate.undo();
      continue;
    }
    const polished = left % 20 === 0;
    if (polished) wiring.refine(1);
    now = {
      before: wiring.remember(),
      score: polished ? Math.min(score, scoreOf(wiring)) : score,
      estimated,
    };
    crowded = estimate.nearPairs;
    if (now.score < best.score) best = now;
  }
  wiring.restore(best.before);
}

const columnOf = ({ widest }: Wiring): { widest: number } | undefined =>
  widest === undefined ? undefined : { widest };

const ASIDE = [-2, -1, 1, 2] as const;

/** At last every loose part is tried turned otherwise and a little aside, and stays where that is better. */
export function polish(wiring: Wiring, between: number): void {
  wiring.refine(3);
  const crowding = (gridParts: readonly GridPart[]): number => new Estimate(gridParts, [], between).nearPairs;
  for (const i of looseOnes(wiring.gridParts)) {
    const { part, outline, fixed, turnable } = nth(wiring.gridParts, i);
    const tries: readonly ((one: GridPart) => GridPart)[] = [
      ...(turnable ? orientationsOf(part, outline) : []).map((way) => (one: GridPart) => turnedTo(one, way)),
      ...(fixed ? [] : ASIDE).flatMap((by) => [
        (one: GridPart) => ({ ...one, column: one.column + by }),
        (one: GridPart) => ({ ...one, row: one.row + by }),
      ]),
    ];
    for (const next of tries) {
      const before = wiring.remember();
      const score = scoreOf(wiring);
      const gridParts = wiring.gridParts.map((one, k) => (k === i ? next(one) : one));
      if (crowding(gridParts) > crowding(wiring.gridParts)) continue;
      if (moved(wiring, gridParts, score - 1) === undefined) wiring.restore(before);
    }
  }
  wiring.refine(1);
}

/** Moves parts, and answers the score then, or `undefined` when it would be above `worst`. */
function moved(wiring: Wiring, gridParts: readonly GridPart[], worst: number): number | undefined {
  if (!wiring.move(gridParts, worst - spread(gridParts, wiring.widest !== undefined))) return undefined;
  const score = scoreOf(wiring);
  return score > worst ? undefined : score;
}

export const scoreOf = (wiring: Wiring): number =>
  wiring.cost + wiring.excess + spread(wiring.gridParts, wiring.widest !== undefined);
