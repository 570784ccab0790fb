/** Ways that run over themselves: on a crowded sheet a loop may cost less than a bend beside a crossing, and nobody solders one. */
import { nth } from '../../common/must.ts';
import type { Grid, RoutedPath, RouteRequest } from './grid.ts';

/**
 * The same way with its loops cut off: where it came by before, it turns at once. It takes no node that it did not take. A loop on
 * which it only turns round stays.
 */
export function withoutLoops(grid: Grid, { from, to }: RouteRequest, path: RoutedPath): RoutedPath {
  const { nodes } = path;
  if (new Set(nodes).size === nodes.length) return path;
  const kept: number[] = [];
  nodes.forEach((node, i) => {
    const before = kept.indexOf(node);
    if (before === -1) {
      kept.push(node);
      return;
    }
    const next = nodes[i + 1];
    const out = next === undefined ? nth(to, path.to).inward : grid.heading(node, next);
    const into =
      before === 0 ? (nth(from, path.from).inward + 2) & 3 : grid.heading(nth(kept, before - 1), node);
    if ((into ^ 2) === out) kept.push(node);
    else kept.length = before + 1;
  });
  return { ...path, nodes: kept };
}
