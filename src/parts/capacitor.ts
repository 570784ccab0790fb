import { given, givenOr, type Sourced } from '../common/units.ts';
import { farads, fraction } from './fields.ts';
import { definePart, type PartBase } from './kind.ts';
import { sleeveField, sleeves, twoLegs } from './two-leg.ts';

export interface Capacitor extends PartBase<'capacitor'> {
  /** Farads. */
  readonly value: Sourced;
  readonly tolerance: Sourced;
  readonly sleeved: readonly string[];
}

/** Capacitor with two legs, unpolarised. Tolerance ±10 % when not given (common practice, no source). */
export const capacitor = definePart({
  kind: 'capacitor',
  what: 'capacitor',
  fields: {
    value: farads('Capacitance'),
    tolerance: fraction('Tolerance').optional(),
    sleeve: sleeveField,
  },
  build: (base, written): Capacitor => ({
    ...base,
    value: given(written.value),
    tolerance: givenOr(written.tolerance, 0.1),
    sleeved: sleeves(written.sleeve),
  }),
  lugs: () => twoLegs,
  elements: (part) => [
    { kind: 'capacitance', id: 'body', a: '1', b: '2', farads: part.value, tolerance: part.tolerance },
  ],
});
