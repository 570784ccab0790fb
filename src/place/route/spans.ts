/** What is known of a wire before it has a way: how far its ends are apart, and the least that it costs. Lengths in grid steps. */
import { nth } from '../../common/must.ts';
import { leastBends } from './bends.ts';
import { type AccessPoint, type RoutedPath, type RouteRequest, STEP_X, STEP_Y } from './grid.ts';
import type { RoutingCosts } from './search.ts';

/** The least that a wire costs, however free its way is; half grid steps. */
export function leastOf(
  { from, to, weight }: RouteRequest,
  columns: number,
  { step, bend }: Pick<RoutingCosts, 'step' | 'bend'>,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (const a of from)
    for (const b of to) {
      const across = (b.node % columns) - (a.node % columns);
      const down = Math.floor(b.node / columns) - Math.floor(a.node / columns);
      const bends = leastBends((a.inward + 2) & 3, b.inward, across, down);
      const length = Math.abs(across) + Math.abs(down);
      least = Math.min(least, a.cost + b.cost + step * weight * length + bend * bends);
    }
  return least;
}

/** From the one lug that a wire ends at to the other, across and down. */
export function straightOf(task: RouteRequest, { from, to }: RoutedPath, columns: number): number {
  const spot = ({ node, inward }: AccessPoint): readonly [number, number] => [
    (node % columns) + nth(STEP_X, inward),
    Math.floor(node / columns) + nth(STEP_Y, inward),
  ];
  const [a, b] = [spot(nth(task.from, from)), spot(nth(task.to, to))];
  return Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]);
}

/** Least distance between any two gates. */
export function spanOf({ from, to }: RouteRequest, columns: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const a of from)
    for (const b of to) {
      const dx = Math.abs((a.node % columns) - (b.node % columns));
      const dy = Math.abs(Math.floor(a.node / columns) - Math.floor(b.node / columns));
      least = Math.min(least, dx + dy);
    }
  return least;
}
