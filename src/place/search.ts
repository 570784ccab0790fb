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
/** Starts in a column that may fail before others are tried, which mind its lanes more; and of those, where it is not to be widened easily. */
const IN_VAIN = 6;
const PATIENT = 16;
/** Fewer than so many that could be wired are followed by such; so many will do. */
const [FEW, ENOUGH] = [2, 4] as const;
/** How many that were left behind are looked at where the best is not good. */
const OTHERS = 3;
/** In a column they are tried once more with rows so many times as far apart. */
const HIGHER = 1.5;
/** Work after which wires that still clash are too many for a column, as those that fit come to terms with far less. */
const PATIENCE = 150_000;
/** How many of the best go on, and what share of the steps each of them gets, and of the rest of the work. */
const ROUNDS = [
  { keep: 4, share: 0.06 },
  { keep: 2, share: 0.13 },
  { keep: 1, share: 0.5 },
] as const;

interface SearchOptions {
  /** Of a column from 0 that neither parts nor wires leave, grid units; without it there is none. */
  readonly widest?: number;
  /** Whether a column is not easily taken for too narrow. */
  readonly patient?: boolean;
  /** Asked of the best, and where that is not good of those that were left behind, which saves a search. */
  readonly isGood?: (wiring: Wiring) => boolean;
}

/**
 * The best placement found from a first one, with its wires; `undefined` where no start could be wired.
 *
 * @param between room kept free between parts, grid units
 * @param margin free columns and rows around the parts
 */
export function search(
  first: readonly GridPart[],
  joints: readonly Joint[],
  between: number,
  margin: number,
  effort: Effort,
  { widest, patient = false, isGood = () => true }: SearchOptions = {},
): Wiring | undefined {
  const { work = WORK } = effort;
  const wired = (gridParts: readonly GridPart[]): readonly Wiring[] => {
    const wiring = new Wiring(gridParts, joints, margin, false, widest);
    return wiring.routeAll(1, widest === undefined ? undefined : PATIENCE) ? [wiring] : [];
  };
  const moves = MOVES * looseOnes(first).length;
  const across = joints.filter(({ from, to }) => from.part !== to.part);
  const start = (nth: number, strict = false): readonly GridPart[] => {
    const column = widest === undefined ? undefined : { widest, strict };
    const seed = effort.seed + nth;
    return apart(annealed(first, across, between, { moves, seed, column }), between, widest);
  };
  const count = Math.min(STARTS, Math.floor(effort.steps / STEPS_A_START));
  const starts = Array.from({ length: count }, (_, i) => i + 1);
  let runs: readonly Wiring[] = [];
  for (const nth of [0, ...starts]) {
    const spent = runs.reduce((sum, { work }) => sum + work, 0);
    if (spent > STARTS_SHARE * work) break;
    // Where some starts find no way in a column, so do the others.
    if (widest !== undefined && runs.length === 0 && nth >= IN_VAIN) break;
    const gridParts = nth === 0 ? first : start(nth);
    // Seated parts that were turned may have come to lie on one another, and cannot move apart.
    if (nth === 0 || new Estimate(gridParts, [], between).nearPairs < OVERLAPPING)
      runs = [...runs, ...wired(gridParts)];
  }
  if (widest !== undefined && runs.length < Math.min(count, FEW))
    for (let nth = 1; nth <= (patient ? PATIENT : IN_VAIN) && runs.length < Math.min(count, ENOUGH); nth++) {
      const gridParts = start(nth, true);
      const near = wired(gridParts);
      const more = near.length > 0 ? near : wired(higher(gridParts));
      for (const run of more) squeeze(run, between);
      runs = [...runs, ...more];
    }
  let left: readonly Wiring[] = [];
  if (effort.steps > 0)
    for (const [round, { keep, share }] of ROUNDS.entries()) {
      const best = byScore(runs);
      runs = best.slice(0, keep);
      left = [...best.slice(keep), ...left];
      for (const [i, run] of runs.entries())
        improve(run, joints, between, {
          steps: Math.ceil(effort.steps * share),
          work: work * (1 - STARTS_SHARE) * share,
          seed: effort.seed + 100 * round + i,
        });
    }
  const [best, ...others] = byScore(runs);
  const finished = (run: Wiring): Wiring => {
    if (effort.steps > 0) {
      if (widest !== undefined) squeeze(run, between);
      polish(run, between);
    }
    return run;
  };
  if (!best || isGood(finished(best))) return best;
  return [...others, ...left].slice(0, OTHERS).find((run) => isGood(finished(run))) ?? best;
}

const higher = (gridParts: readonly GridPart[]): readonly GridPart[] =>
  gridParts.map((one) => ({ ...one, row: Math.round(one.row * HIGHER) }));

const byScore = (runs: readonly Wiring[]): readonly Wiring[] =>
  runs
    .map((run) => ({ run, score: scoreOf(run) }))
    .sort((a, b) => a.score - b.score)
    .map(({ run }) => run);
