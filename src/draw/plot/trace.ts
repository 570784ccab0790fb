/** A curve on a plot: cut to what the axes show, turned into a path, stroked so that it can be told from the others. */

import { line } from 'd3-shape';
import type { PlotState, Trace } from '../../annotate/plot.ts';
import { nth } from '../../common/must.ts';
import type { Pen } from '../pen.ts';
import type { Theme } from '../theme.ts';
import type { Axes } from './axes.ts';

/** Drawing units, left to right. */
export type Spot = readonly [number, number];
/** The stretches of one curve. */
export type Runs = readonly (readonly Spot[])[];

/** The stretches of a trace that lie above the floor and within the axis of frequencies, cut just at the edges. */
export function spotsOf(frequencies: readonly number[], trace: Trace, axes: Axes): Runs {
  const { box, x, y } = axes;
  const floor = box.y + box.height;
  const all = frequencies.map((f, i): Spot => [x(f), y(nth(trace.levels, i))]);
  const within = cut(all, (spot) => spot[0] - box.x).flatMap((run) => cut(run, (spot) => floor - spot[1]));
  return within.filter((run) => run.length > 1);
}

/** Splits a line where `inside` falls below zero, with a new end on the border. */
function cut(spots: readonly Spot[], inside: (spot: Spot) => number): Runs {
  const runs: Spot[][] = [];
  let run: Spot[] | undefined;
  spots.forEach((spot, i) => {
    const before = spots[i - 1];
    const [now, then] = [inside(spot), before ? inside(before) : -1];
    const border = (): Spot =>
      before
        ? [mix(before[0], spot[0], then / (then - now)), mix(before[1], spot[1], then / (then - now))]
        : spot;
    if (now >= 0) {
      if (!run) {
        run = before && now > 0 ? [border()] : [];
        runs.push(run);
      }
      run.push(spot);
    } else if (run) {
      run.push(border());
      run = undefined;
    }
  });
  return runs;
}

const mix = (a: number, b: number, share: number): number => a + (b - a) * share;

const pathOf = line<Spot>().digits(2);

/** Path data of the stretches, two decimals. */
export const dataOf = (runs: Runs): string => runs.map((run) => pathOf(run) ?? '').join('');

/** Longer dashes for the first state with a set of tints, shorter ones for those after it. */
const DASHES = [13, 8, 5, 3];
const GAP = 2;

/**
 * A state's line. One pickup alone is a solid line of its tint; several together take turns, dash by dash. A second
 * state with the same pickups is broken more finely, so that both can be told apart in black and white.
 */
export function strokeState(pen: Pen, d: string, state: PlotState, theme: Theme, width: number): void {
  const tints = state.tints.length > 0 ? state.tints : ['other'];
  const alone = tints.length === 1 && state.variant === 0;
  const dash = DASHES[Math.min(state.variant, DASHES.length - 1)] ?? 13;
  const period = tints.length * (dash + GAP);
  tints.forEach((tint, i) => {
    pen.stroke(d, {
      fill: 'none',
      stroke: theme.tints[tint] ?? theme.ink,
      'stroke-width': width,
      'stroke-linejoin': 'round',
      ...(alone
        ? {}
        : {
            'stroke-dasharray': `${dash} ${period - dash}`,
            ...(i > 0 ? { 'stroke-dashoffset': -i * (dash + GAP) } : {}),
          }),
    });
  });
}

/** A reference lies over the lines, on a thin white core, so that it shows where it runs along one of them. */
export function strokeReference(pen: Pen, d: string, theme: Theme, width: number): void {
  pen.stroke(d, { fill: 'none', stroke: theme.paper, 'stroke-width': width });
  pen.stroke(d, { fill: 'none', stroke: theme.quiet, 'stroke-width': width, 'stroke-dasharray': '5 3' });
}

/** Height of a curve at `x`, between its points; `undefined` where it is not drawn. */
export function heightAt(runs: Runs, x: number): number | undefined {
  for (const run of runs) {
    const i = run.findIndex((spot) => spot[0] >= x);
    const [b, a] = [run[i], run[Math.max(0, i - 1)]];
    if (!a || !b || (i === 0 && b[0] > x)) continue;
    return b[0] === a[0] ? b[1] : mix(a[1], b[1], (x - a[0]) / (b[0] - a[0]));
  }
  return undefined;
}

/** Where a curve last comes down through a height; its end when it never does. */
export function lastAt(runs: Runs, height: number): Spot | undefined {
  const run = runs.at(-1) ?? [];
  for (let i = run.length - 1; i > 0; i--) {
    const [a, b] = [run[i - 1], run[i]];
    if (a && b && a[1] <= height && b[1] >= height && b[1] > a[1])
      return [mix(a[0], b[0], (height - a[1]) / (b[1] - a[1])), height];
  }
  return run.at(-1);
}
