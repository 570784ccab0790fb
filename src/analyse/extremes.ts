/** The smallest and largest of a figure over all the harnesses that tolerances allow. */
import { parallelResistanceOf, resistanceOf } from '../solve/measure.ts';
import type { Branch, Port } from '../solve/network.ts';
import { Solver } from '../solve/solver.ts';
import type { Variable } from './variables.ts';

/** How the ends were found: `corners` is exact, `samples` is the range that chance reached. */
export type Method = 'corners' | 'samples';

export interface Range {
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
  variables: readonly Variable[],
): Range {
  const solver = new Solver(branches, port, { direct: true });
  const at = (factor: (variable: Variable) => number): number => {
    solver.scale(new Map(variables.map((variable) => [variable.of, factor(variable)])));
    return resistanceOf(solver);
  };
  return { low: at((v) => v.low), nominal: at(() => 1), high: at((v) => v.high), method: 'corners' };
}

/** A signal load, 1 / Re(Y): corners where it proves monotone, and samples besides where it does not. */
export function signalLoadRange(
  branches: readonly Branch[],
  port: Port,
  frequency: number,
  variables: readonly Variable[],
  samples: readonly Factors[],
): Range {
  const solver = new Solver(branches, port);
  return extremes(variables, samples, (factors) => {
    solver.scale(factors);
    return parallelResistanceOf(solver, frequency);
  });
}

/** More corners than two to this power are not all visited. */
const MOST_VARIABLES = 10;

/**
 * The ends of any figure. Variables that move it are sorted out first; then every corner of their box is solved, and
 * the middle of every edge. Where no middle lies outside its edge's ends the figure is monotone along each variable
 * and the corners hold its ends; else, or with too many variables to visit, the samples are searched as well.
 */
export function extremes(
  variables: readonly Variable[],
  samples: readonly Factors[],
  figure: (factors: Factors) => number,
): Range {
  const nominal = figure(new Map());
  const moving = variables.filter(({ of, low, high }) =>
    [low, high].some((factor) => figure(new Map([[of, factor]])) !== nominal),
  );
  if (moving.length > MOST_VARIABLES) return bySamples(samples, figure, [nominal], nominal);
  const corners = cornersOf(moving);
  const values = corners.map((corner) => figure(new Map(corner)));
  const monotone = moving.every((variable, bit) =>
    values.every((value, i) => {
      const other = values[i ^ (1 << bit)] ?? value;
      const corner = corners[i] ?? [];
      const middle = figure(new Map([...corner, [variable.of, (variable.low + variable.high) / 2] as const]));
      return between(middle, value, other);
    }),
  );
  if (!monotone) return bySamples(samples, figure, [nominal, ...values], nominal);
  return { low: Math.min(...values), nominal, high: Math.max(...values), method: 'corners' };
}

/** Bit k of a corner's index says whether variable k is high. */
const cornersOf = (variables: readonly Variable[]): readonly (readonly (readonly [string, number])[])[] =>
  Array.from({ length: 2 ** variables.length }, (_, i) =>
    variables.map(({ of, low, high }, bit) => [of, (i >> bit) & 1 ? high : low] as const),
  );

function between(middle: number, a: number, b: number): boolean {
  if (!Number.isFinite(middle)) return middle === a || middle === b;
  const slack = 1e-12 * Math.abs(middle);
  return middle >= Math.min(a, b) - slack && middle <= Math.max(a, b) + slack;
}

function bySamples(
  samples: readonly Factors[],
  figure: (factors: Factors) => number,
  known: readonly number[],
  nominal: number,
): Range {
  let low = Math.min(...known);
  let high = Math.max(...known);
  for (const factors of samples) {
    const value = figure(factors);
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return { low, nominal, high, method: 'samples' };
}
