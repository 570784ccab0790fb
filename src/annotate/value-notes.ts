/**
 * Notes on values that no passive guitar has: a k or an M that was forgotten, or m written for M. What is usual is common
 * practice, no source: pots from 10 kΩ to 2 MΩ, pickups from 100 Ω to 100 kΩ. Resistors may be anything.
 */
import { type Problem, problem } from '../common/problem.ts';
import { printQuantity, writeQuantity } from '../common/units.ts';
import type { Kit } from '../describe/kit.ts';
import { isPickup } from '../parts/index.ts';

type Range = readonly [least: number, most: number];
const POT: Range = [10e3, 2e6];
const PICKUP: Range = [100, 100e3];

export const valueNotes = ({ parts }: Kit): readonly Problem[] =>
  parts.flatMap((part): readonly Problem[] => {
    const path = ['parts', part.name];
    if (part.kind === 'pot') return unlikely([...path, 'value'], 'a pot', part.value.value, POT);
    return isPickup(part) ? unlikely([...path, 'resistance'], 'a pickup', part.resistance.value, PICKUP) : [];
  });

function unlikely(
  path: readonly string[],
  what: string,
  value: number,
  [least, most]: Range,
): readonly Problem[] {
  if (value >= least && value <= most) return [];
  // A prefix forgotten, or one too many; milli for mega is six and three noughts.
  const likely = [1e3, 1e6, 1e9, 1e-3, 1e-6].map((f) => value * f).find((v) => v >= least && v <= most);
  return [
    problem('value-unlikely', path, {
      what,
      got: printQuantity(value, 'ohm'),
      least: printQuantity(least, 'ohm'),
      most: printQuantity(most, 'ohm'),
      ...(likely === undefined ? {} : { likely: writeQuantity(Number(likely.toPrecision(12)), 'ohm') }),
    }),
  ];
}
