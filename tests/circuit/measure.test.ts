/** A meter's reading off the network: two nodes that are one, two that nothing joins, and the parallel law. */
import { expect, it } from 'vitest';
import { resistanceOf } from '../../src/solve/measure.ts';
import { resistor } from '../../src/solve/network.ts';
import { Solver } from '../../src/solve/solver.ts';

const reading = (branches: ReturnType<typeof resistor>[], from: number, to: number): number =>
  resistanceOf(new Solver(branches, { from, to }, { direct: true }));

it('nothing between a node and itself, whatever else there is', () => {
  expect(reading([], 1, 1)).toBe(0);
  expect(reading([resistor(1, 2, 1000)], 1, 1)).toBe(0);
});
it('no end of ohms where nothing joins the two', () =>
  expect(reading([resistor(1, 2, 1000)], 1, 3)).toBe(Number.POSITIVE_INFINITY));
it('470 kΩ beside 500 kΩ', () =>
  expect(reading([resistor(1, 0, 470e3), resistor(0, 1, 500e3)], 1, 0)).toBeCloseTo(
    (470e3 * 500e3) / 970e3,
    6,
  ));
