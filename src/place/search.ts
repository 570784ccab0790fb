/**
 * The whole search: several placements to begin from, every one of them routed, and the better half of them improved again and
 * again until one is left. A single start gets stuck: what is crossed in the first places mostly stays crossed.
 */
import type { Joint } from '../describe/kit.ts';
import { annealed } from './anneal.ts';
import { Estimate, OVERLAPPING } from './estimate.ts';
import { type Effort, improve, polish, scoreOf, WORK } from './improve.ts';
import { type GridPart, looseOnes } from './placement.ts';
import { apart } from './settle.ts';
import { squeeze } from './squeeze.ts';
import { Wiring } from './wiring.ts';

/** Placements to begin from, besides the first: at most, and one for so many steps. */
const STARTS = 10;
const STEPS_A_START = 150;
/** Moves on the estimate that each of them takes, for every loose part. */
const MOVES = 2000;
/** What laying wires at all these may take, as a share of the work; where wires stand close it is most of it. */
const STARTS_SHARE = 0.35;
/** Rows are so many times as far apart where a start in a column could not be wired: it may be as high as it likes. */
const HIGHER = 1.5;
/** Work after which wires that still clash are too many for a column, as those that fit come to terms with far less. */
const PATIENCE = 150_000;
/** How many of the best go on, and what share of the steps each of them gets, and of the rest of the work. */
const ROUNDS = [
  { keep: 4, share: 0.06 },
  { keep: 2, share: 0.13 },
  { keep: 1, share: 0.5 },
] as const;

interface Column {
  /** From 0, grid units. */
  readonly widest: number;
  /** Starts that may fail before it is taken for too narrow. */
  readonly inVain: number;
}

/**
 * The best placement found from a first one, with its wires; `undefined` where no start could be wired.
 *
 * @param between room kept free between parts, grid units
 * @param margin free columns and rows around the parts
 * @param column that neither parts nor wires leave; without it there is none
 */
export function search(
  first: readonly GridPart[],
  joints: readonly Joint[],
  between: number,
  margin: number,
  effort: Effort,
  column?: Column,
): Wiring | undefined {
  const { widest, inVain } = column ?? {};
  const wired = (gridParts: readonly GridPart[]): readonly Wiring[] => {
    const wiring = new Wiring(gridParts, joints, margin, false, widest);
    return wiring.routeAll(1, widest === undefined ? undefined : PATIENCE) ? [wiring] : [];
  };
  const wiredAnyhow = (gridParts: readonly GridPart[]): readonly Wiring[] => {
    const runs = wired(gridParts);
    if (runs.length > 0 || widest === undefined) return runs;
    return wired(gridParts.map((one) => ({ ...one, row: Math.round(one.row * HIGHER) })));
  };
  const { work = WORK } = effort;
  const moves = MOVES * looseOnes(first).length;
  const across = joints.filter(({ from, to }) => from.part !== to.part);
  const count = Math.min(STARTS, Math.floor(effort.steps / STEPS_A_START));
  // In a column starts go on until one could be wired.
  const most = Math.max(count, effort.steps > 0 ? (inVain ?? 0) : 0);
  const starts = Array.from({ length: most }, (_, i) => i + 1);
  let runs: readonly Wiring[] = [];
  for (const nth of [0, ...starts]) {
    const spent = runs.reduce((sum, { work }) => sum + work, 0);
    if (spent > STARTS_SHARE * work) break;
    if (nth > (runs.length === 0 ? (inVain ?? count) : count)) break;
    const gridParts =
      nth === 0
        ? first
        : apart(
            annealed(first, across, between, {
              moves,
              seed: effort.seed + nth,
              ...(widest === undefined ? {} : { widest }),
            }),
            between,
            widest,
          );
    // Seated parts that were turned may have come to lie on one another, and cannot move apart.
    if (nth === 0 || new Estimate(gridParts, [], between).nearPairs < OVERLAPPING)
      runs = [...runs, ...wiredAnyhow(gridParts)];
  }
  if (effort.steps > 0)
    for (const [round, { keep, share }] of ROUNDS.entries()) {
      runs = byScore(runs).slice(0, keep);
      if (widest !== undefined) for (const run of runs) squeeze(run, between);
      for (const [i, run] of runs.entries())
        improve(run, joints, between, {
          steps: Math.ceil(effort.steps * share),
          work: work * (1 - STARTS_SHARE) * share,
          seed: effort.seed + 100 * round + i,
        });
    }
  const [best] = byScore(runs);
  if (best && effort.steps > 0) {
    if (widest !== undefined) squeeze(best, between);
    polish(best, between);
  }
  return best;
}

const byScore = (runs: readonly Wiring[]): readonly Wiring[] =>
  runs
    .map((run) => ({ run, score: scoreOf(run) }))
    .sort((a, b) => a.score - b.score)
    .map(({ run }) => run);
