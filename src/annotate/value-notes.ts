/**
 * Notes on values that no passive guitar has: a k or an M that was forgotten, or m written for M. What is usual is common
 * practice, no source: pots from 10 kΩ to 2 MΩ, pickups from 100 Ω to 100 kΩ, capacitors from 50 pF to 470 nF. Resistors may
 * be anything.
 */
import { type Problem, problem } from '../common/problem.ts';
import { printQuantity, writeQuantity } from '../common/units.ts';
import type { Kit } from '../describe/kit.ts';
import { isPickup } from '../parts/index.ts';

type Range = readonly [least: number, most: number];
const POT: Range = [10e3, 2e6];
const PICKUP: Range = [100, 100e3];
const CAPACITOR: Range = [50e-12, 470e-9];

export const valueNotes = ({ parts }: Kit): readonly Problem[] =>
  parts.flatMap((part): readonly Problem[] => {
    const path = ['parts', part.name];
    if (part.kind === 'pot') return unlikely([...path, 'value'], 'a pot', part.value.value, POT, 'ohm');
    if (part.kind === 'capacitor')
      return unlikely([...path, 'value'], 'a capacitor', part.value.value, CAPACITOR, 'farad');
    return isPickup(part)
      ? unlikely([...path, 'resistance'], 'a pickup', part.resistance.value, PICKUP, 'ohm')
      : [];
  });

function unlikely(
  path: readonly string[],
  what: string,
  value: number,
  [least, most]: Range,
  unit: 'ohm' | 'farad',
): readonly Problem[] {
  if (value >= least && value <= most) return [];
  // A prefix forgotten, or one too many; milli for mega is a factor of a thousand million.
  const likely = [1e3, 1e6, 1e9, 1e-3, 1e-6].map((f) => value * f).find((v) => v >= least && v <= most);
  return [
    problem('value-unlikely', path, {
      what,
      got: printQuantity(value, unit),
      least: printQuantity(least, unit),
      most: printQuantity(most, unit),
      unit,
      ...(likely === undefined ? {} : { likely: writeQuantity(Number(likely.toPrecision(12)), unit) }),
    }),
  ];
}
