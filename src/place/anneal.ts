/** Other placements to begin from: simulated annealing from the first one, on the estimate of what its wires would cost. */
import { nth } from '../common/must.ts';
import { seeded } from '../common/random.ts';
import type { Joint } from '../describe/kit.ts';
import { Estimate } from './estimate.ts';
import type { Column } from './lanes.ts';
import { Moves } from './moves.ts';
import type { GridPart } from './placement.ts';
import { Move } from './places.ts';

/** How much worse a move may be in the beginning, in the mean, half grid steps; it falls in so many levels, each time to this share. */
const WARMTH = 300;
const LEVELS = 64;
const COOLER = 0.932;
/**
 * Values of an exponential distribution of mean 1, in 256ths, one as likely as another. They are whole numbers, since engines differ
 * in the last digits of a logarithm.
 */
const CHANCES = Int32Array.from({ length: 1024 }, (_, i) => Math.round(-256 * Math.log((i + 0.5) / 1024)));

/**
 * The best of the placements met on the way; parts may still be nearer than is wanted.
 *
 * @param between room wanted between parts, grid units
 * @param moves tried
 * @param column that no part may leave; without it there is none
 */
export function annealed(
  gridParts: readonly GridPart[],
  joints: readonly Joint[],
  between: number,
  {
    moves,
    seed,
    column,
  }: { readonly moves: number; readonly seed: number; readonly column?: Column | undefined },
): readonly GridPart[] {
  const random = seeded(seed);
  const steps = new Moves(gridParts, joints);
  if (steps.loose.length === 0) return gridParts;
  const estimate = new Estimate(gridParts, joints, between, column);
  const move = new Move();
  let now = estimate.cost;
  let best = { gridParts, cost: now };
  for (let i = 0, level = 1, warmth = WARMTH; i < moves; i++) {
    if (i * LEVELS >= moves * level) {
      warmth *= COOLER;
      level++;
    }
    if (!steps.draw(estimate.places, random, move)) continue;
    const worse = (warmth * nth(CHANCES, Math.floor(random() * CHANCES.length))) / 256;
    const cost = estimate.apply(move, now + worse);
    if (cost === undefined) continue;
    now = cost;
    if (cost < best.cost) best = { gridParts: estimate.gridParts, cost };
  }
  return best.gridParts;
}
