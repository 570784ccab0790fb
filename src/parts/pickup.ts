/** What the two kinds of two-lead pickup share: the fields, the defaults' shape and the reference harness. */

import { z } from 'zod';
import { given, givenOr, type Sourced } from '../common/units.ts';
import { farads, fraction, henries, ohms } from './fields.ts';
import type { Element, LugSpec, PartBase } from './kind.ts';

/** The plain harness a pickup was made for: one volume pot, one tone pot. Ohms. */
export interface ReferenceHarness {
  readonly volume: Sourced;
  readonly tone: Sourced;
}

export interface PickupPart<K extends string> extends PartBase<K> {
  /** DC resistance of the whole pickup at 20 °C, ohms. */
  readonly resistance: Sourced;
  /** Inductance of the whole pickup, henries. */
  readonly inductance: Sourced;
  /** Winding and lead capacitance across the whole pickup, farads. */
  readonly capacitance: Sourced;
  /** Core loss as a resistor across the whole pickup, ohms; absent when not given. */
  readonly coreLoss?: Sourced;
  /** Tolerance of the winding's resistance, a fraction. */
  readonly tolerance: Sourced;
  readonly reference: ReferenceHarness;
}

export const pickupFields = {
  resistance: ohms('DC resistance at 20 °C').optional(),
  inductance: henries('Inductance').optional(),
  capacitance: farads('Capacitance of winding and lead').optional(),
  'core-loss': ohms('Core loss, as a resistor across the winding').optional(),
  tolerance: fraction('Tolerance of the DC resistance').optional(),
  reference: z
    .strictObject({
      volume: ohms('Volume pot of the harness it was made for').optional(),
      tone: ohms('Tone pot of the harness it was made for').optional(),
    })
    .optional()
    .describe('The plain harness this pickup was made for; its loads are the reference'),
};

type Written = z.output<z.ZodObject<typeof pickupFields>>;

/** Values of a kind when nothing is written, SI. Common practice, no source. */
export interface PickupDefaults {
  readonly resistance: number;
  readonly inductance: number;
  readonly capacitance: number;
  readonly pots: number;
}

export const buildPickup = <K extends string>(
  base: PartBase<K>,
  written: Written,
  fallback: PickupDefaults,
): PickupPart<K> => ({
  ...base,
  resistance: givenOr(written.resistance, fallback.resistance),
  inductance: givenOr(written.inductance, fallback.inductance),
  capacitance: givenOr(written.capacitance, fallback.capacitance),
  ...(written['core-loss'] === undefined ? {} : { coreLoss: given(written['core-loss']) }),
  // Common practice, no source: windings of one batch spread by about a tenth.
  tolerance: givenOr(written.tolerance, 0.1),
  reference: {
    volume: givenOr(written.reference?.volume, fallback.pots),
    tone: givenOr(written.reference?.tone, fallback.pots),
  },
});

export const pickupLugs: readonly LugSpec[] = [
  { name: 'hot', role: 'hot' },
  { name: 'ground', role: 'return' },
];

/** The one winding a two-lead pickup is to its harness. */
export const coilOf = (part: PickupPart<string>): readonly Element[] => [
  {
    kind: 'coil',
    id: 'coil',
    hot: 'hot',
    return: 'ground',
    resistance: part.resistance,
    inductance: part.inductance,
    capacitance: part.capacitance,
    ...(part.coreLoss ? { coreLoss: part.coreLoss } : {}),
  },
];
