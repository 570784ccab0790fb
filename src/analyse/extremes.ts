/** The smallest and largest of a figure over all the harnesses that tolerances allow. */
import { nth } from '../common/must.ts';
import { seeded } from '../common/random.ts';
import { parallelResistanceOf, resistanceOf } from '../solve/measure.ts';
import type { Branch, Port } from '../solve/network.ts';
import { Solver } from '../solve/solver.ts';
import type { ToleranceParameter } from './variables.ts';

/** How the ends were found: at two `corners`, which is exact, or by a `search` from many corners. Both are limits. */
export type Method = 'corners' | 'search';

export interface ToleranceRange {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly method: Method;
}

/** Factors by element. */
export type Factors = Map<string, number>;

/**
 * A direct resistance. It never falls when any resistance of the network rises (Rayleigh's monotonicity law), so its
 * ends are where all factors are low and where all are high: two solutions, exact.
 */
export function resistanceRange(
  branches: readonly Branch[],
  port: Port,
  variables: readonly ToleranceParameter[],
): ToleranceRange {
  const solver = new Solver(branches, port, { direct: true });
  const at = (factor: (variable: ToleranceParameter) => number): number => {
    solver.scale(new Map(variables.map((variable) => [variable.of, factor(variable)])));
    return resistanceOf(solver);
  };
  return { low: at((v) => v.low), nominal: at(() => 1), high: at((v) => v.high), method: 'corners' };
}

/** A signal load, 1 / Re(Y): it may be largest or smallest inside the tolerances, so it is searched. */
export function signalLoadRange(
  branches: readonly Branch[],
  port: Port,
  frequency: number,
  variables: readonly ToleranceParameter[],
): ToleranceRange {
  const solver = new Solver(branches, port);
  return limitsOf(variables, (factors) => {
    solver.scale(factors);
    return parallelResistanceOf(solver, frequency);
  });
}

/** Of so many variables every corner is visited; of more, so many corners by chance. */
const ALL_CORNERS = 7;
const SOME_CORNERS = 2 ** ALL_CORNERS;
/** The search starts from so many corners, the furthest out. */
const STARTS = 4;
const SEED = 1;

/**
 * The ends of any figure over a box of factors. From the corners furthest out, and from the middle, each variable in turn goes where
 * the figure is furthest out with the others held, at an end or inside, until none moves any more.
 */
export function limitsOf(
  variables: readonly ToleranceParameter[],
  figure: (factors: Factors) => number,
): ToleranceRange {
  const nominal = figure(new Map());
  const moving = variables.filter(({ of, low, high }) =>
    [low, high].some((factor) => figure(new Map([[of, factor]])) !== nominal),
  );
  const at = (point: readonly number[]): number =>
    figure(new Map(moving.map(({ of }, i) => [of, nth(point, i)])));
  const corners = cornersOf(moving)
    .map((point) => ({ point, value: at(point) }))
    .sort((a, b) => a.value - b.value);
  const middle = moving.map(() => 1);
  const from = (starts: typeof corners) => [middle, ...starts.map(({ point }) => point)];
  return {
    low: Math.min(...from(corners.slice(0, STARTS)).map((point) => -climbed(point, moving, (p) => -at(p)))),
    nominal,
    high: Math.max(...from(corners.slice(-STARTS)).map((point) => climbed(point, moving, at))),
    method: 'search',
  };
}

/** Bit k of a corner's number says whether variable k is high. */
function cornersOf(variables: readonly ToleranceParameter[]): readonly (readonly number[])[] {
  const random = seeded(SEED);
  const all = variables.length <= ALL_CORNERS;
  return Array.from({ length: all ? 2 ** variables.length : SOME_CORNERS }, (_, i) =>
    variables.map(({ low, high }, bit) => {
      // Of those by chance the first two are all low and all high.
      const isHigh = all ? ((i >> bit) & 1) === 1 : i < 2 ? i === 1 : random() < 0.5;
      return isHigh ? high : low;
    }),
  );
}

/** Rounds of all variables after which a search ends in any case; three are usual. */
const ROUNDS = 20;
/** Where along a variable a largest value inside is looked for, shares of its range. */
const INSIDE = [0.25, 0.5, 0.75];

/** The largest value that is reached from a point by moving one variable at a time. */
function climbed(
  from: readonly number[],
  variables: readonly ToleranceParameter[],
  at: (point: readonly number[]) => number,
): number {
  const point = [...from];
  let best = at(point);
  for (let round = 0; round < ROUNDS; round++) {
    const reached = best;
    for (const [k, { low, high }] of variables.entries()) {
      const along = (factor: number): number => at(point.map((held, i) => (i === k ? factor : held)));
      const steps = [low, ...INSIDE.map((share) => low + (high - low) * share), high];
      const values = steps.map(along);
      const top = values.indexOf(Math.max(...values));
      const [before, after] = [Math.max(0, top - 1), Math.min(steps.length - 1, top + 1)];
      // At an end it may still rise on the way in: a hair inside tells.
      const hair = (high - low) * 1e-6 * (top === 0 ? 1 : -1);
      const inside = (before < top && top < after) || along(nth(steps, top) + hair) > nth(values, top);
      const found = inside ? topBetween(along, nth(steps, before), nth(steps, after)) : nth(steps, top);
      const value = along(found);
      if (value <= best) continue;
      best = value;
      point[k] = found;
    }
    if (best - reached <= 1e-13 * Math.abs(best)) break;
  }
  return best;
}

/** Where a curve with one top is highest, by golden sections. */
function topBetween(curve: (x: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  for (let i = 0; i < 40; i++) {
    const [c, d] = [b - golden * (b - a), a + golden * (b - a)];
    if (curve(c) > curve(d)) b = d;
    else a = c;
  }
  return (a + b) / 2;
}
