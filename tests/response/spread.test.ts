/** Labels in a row: apart, in order, where they wish to be when they can. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { spread } from '../../src/draw/plot/spread.ts';

const size = 20;

it('leaves labels alone that are in nobody’s way', () =>
  expect(
    spread(
      [10, 50, 90].map((wanted) => ({ wanted, size })),
      0,
      100,
    ),
  ).toEqual([10, 50, 90]));

it('parts two about the middle of their wishes', () =>
  expect(
    spread(
      [50, 50].map((wanted) => ({ wanted, size })),
      0,
      100,
    ),
  ).toEqual([40, 60]));

it('keeps within its ends', () =>
  expect(
    spread(
      [0, 0, 99].map((wanted) => ({ wanted, size })),
      0,
      100,
    ),
  ).toEqual([10, 30, 90]));

it('never overlaps, keeps the order and stays within where all fit', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          wanted: fc.double({ min: -50, max: 250, noNaN: true }),
          size: fc.integer({ min: 1, max: 25 }),
        }),
        {
          minLength: 1,
          maxLength: 8,
        },
      ),
      (wishes) => {
        const sorted = [...wishes].sort((a, b) => a.wanted - b.wanted);
        const middles = spread(sorted, 0, 200);
        const edges = sorted.map((wish, i) => [
          (middles[i] ?? 0) - wish.size / 2,
          (middles[i] ?? 0) + wish.size / 2,
        ]);
        edges.forEach(([low = 0, high = 0], i) => {
          expect(low).toBeGreaterThan(-1e-9);
          expect(high).toBeLessThan(200 + 1e-9);
          if (i > 0) expect(low).toBeGreaterThan((edges[i - 1]?.[1] ?? 0) - 1e-9);
        });
      },
    ),
    { seed: 1, numRuns: 500 },
  );
});
