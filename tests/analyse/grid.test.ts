/** Frequencies equally spaced on a logarithmic axis. */
import { expect, it } from 'vitest';
import { logGrid } from '../../src/analyse/index.ts';

it('a decade apart, ends included and exact', () => {
  const grid = logGrid(4, 20, 20_000);
  expect(grid).toHaveLength(4);
  expect(grid[0]).toBe(20);
  expect(grid[3]).toBe(20_000);
  for (const [i, hertz] of [20, 200, 2000, 20_000].entries()) expect(grid[i]).toBeCloseTo(hertz, 6);
});
it('one point is the lower end', () => expect(logGrid(1, 50, 100)).toEqual([50]));
