/** Other placements to begin from: simulated annealing from the first one, on the estimate of what its wires would cost. */
import { seeded } from '../common/random.ts';
import type { Joint } from '../describe/kit.ts';
import { Estimate } from './estimate.ts';
import { Moves } from './moves.ts';
import type { GridPart } from './placement.ts';
import { Move } from './places.ts';

/** How much worse a move may be in the beginning, half grid steps; it falls to nothing along the way. */
const WARMTH = 160;

/**
 * The best of the placements met on the way; parts may still be nearer than is wanted.
 *
 * @param between room wanted between parts, grid units
 * @param moves tried
 */
export function annealed(
  gridParts: readonly GridPart[],
  joints: readonly Joint[],
  between: number,
  { moves, seed }: { readonly moves: number; readonly seed: number },
): readonly GridPart[] {
  const random = seeded(seed);
  const steps = new Moves(gridParts, joints);
  if (steps.loose.length === 0) return gridParts;
  const estimate = new Estimate(gridParts, joints, between);
  const move = new Move();
  let now = estimate.cost;
  let best = { gridParts, cost: now };
  for (let i = 0; i < moves; i++) {
    if (!steps.draw(estimate.places, random, move)) continue;
    const cost = estimate.apply(move, now + WARMTH * (1 - i / moves) * random());
    if (cost === undefined) continue;
    now = cost;
    if (cost < best.cost) best = { gridParts: estimate.gridParts, cost };
  }
  return best.gridParts;
}
