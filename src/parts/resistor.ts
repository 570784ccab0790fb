import { given, givenOr, type Sourced } from '../common/units.ts';
import { fraction, ohms } from './fields.ts';
import { definePart, type PartBase } from './kind.ts';
import { sleeveField, sleeves, twoLegs } from './two-leg.ts';

export interface Resistor extends PartBase<'resistor'> {
  /** Ohms. */
  readonly value: Sourced;
  readonly tolerance: Sourced;
  readonly sleeved: readonly string[];
}

/** Resistor with two legs. Tolerance ±5 % when not given (common practice, no source). */
export const resistor = definePart({
  kind: 'resistor',
  what: 'resistor',
  fields: {
    value: ohms('Resistance'),
    tolerance: fraction('Tolerance').optional(),
    sleeve: sleeveField,
  },
  build: (base, written): Resistor => ({
    ...base,
    value: given(written.value),
    tolerance: givenOr(written.tolerance, 0.05),
    sleeved: sleeves(written.sleeve),
  }),
  lugs: () => twoLegs,
  elements: (part) => [
    { kind: 'resistance', id: 'body', a: '1', b: '2', ohms: part.value, tolerance: part.tolerance },
  ],
});
