/** Ways with loops on a small grid, and what is left of them: worked out by hand. */
import { expect, it } from 'vitest';
import { Grid, type RoutedPath, type RouteRequest } from '../../src/place/route/grid.ts';
import { withoutLoops } from '../../src/place/route/loops.ts';

const grid = new Grid(10, 10);
const at = (...spots: readonly (readonly [number, number])[]): readonly number[] =>
  spots.map(([x, y]) => grid.node(x, y));
const path = (...spots: readonly (readonly [number, number])[]): RoutedPath => ({
  from: 0,
  to: 0,
  nodes: at(...spots),
});
/** From a lug left of the first node to one below, right or left of the last. */
const task = (inward: 0 | 1 | 2): RouteRequest => ({
  from: [{ node: 0, inward: 2, cost: 0 }],
  to: [{ node: 0, inward, cost: 0 }],
  weight: 1,
});

it('a way that meets no node twice is the same', () => {
  const straight = path([1, 1], [2, 1], [3, 1]);
  expect(withoutLoops(grid, task(0), straight)).toBe(straight);
});
it('turns at once where it came by before', () => {
  const loop = path([1, 4], [2, 4], [3, 4], [4, 4], [4, 3], [3, 3], [3, 4], [3, 5]);
  expect(withoutLoops(grid, task(1), loop).nodes).toEqual(at([1, 4], [2, 4], [3, 4], [3, 5]));
});
it('into its own lug as well, where the loop is at the very end', () => {
  const loop = path([1, 4], [2, 4], [3, 4], [3, 3], [2, 3], [2, 4]);
  expect(withoutLoops(grid, task(1), loop).nodes).toEqual(at([1, 4], [2, 4]));
});
it('several, one after the other', () => {
  const loops = path(
    [1, 4],
    [2, 4],
    [2, 3],
    [1, 3],
    [1, 4],
    [1, 5],
    [2, 5],
    [3, 5],
    [3, 6],
    [2, 6],
    [2, 5],
    [2, 4],
  );
  // The second leads back over the first's node as well: what is left of that is one node.
  const { nodes } = withoutLoops(grid, task(0), loops);
  expect(new Set(nodes).size).toBe(nodes.length);
  expect(nodes[0]).toBe(grid.node(1, 4));
});
it('one that it only turns round on stays', () => {
  const back = path([1, 4], [2, 4], [3, 4], [3, 3], [4, 3], [4, 4], [3, 4], [2, 4]);
  expect(withoutLoops(grid, task(2), back).nodes).toHaveLength(back.nodes.length);
});
