/** Other placements to begin from: simulated annealing from the first one, on the estimate of what its wires would cost. */
import { seeded } from '../common/random.ts';
import type { Joint } from '../describe/kit.ts';
import { Estimate } from './estimate.ts';
import { step } from './moves.ts';
import { type GridPart, looseOnes } from './placement.ts';

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
  const loose = looseOnes(gridParts);
  if (loose.length === 0) return gridParts;
  const estimate = new Estimate(gridParts, joints, between);
  let now = estimate.cost;
  let best = { gridParts, cost: now };
  for (let i = 0; i < moves; i++) {
    const next = step(estimate.gridParts, loose, joints, random);
    if (!next) continue;
    const cost = estimate.move(next);
    if (cost - now > WARMTH * (1 - i / moves) * random()) {
      estimate.undo();
      continue;
    }
    now = cost;
    if (cost < best.cost) best = { gridParts: next, cost };
  }
  return best.gridParts;
}
