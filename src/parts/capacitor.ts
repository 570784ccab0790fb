import { at } from '../common/geometry.ts';
import { capacitorCode } from '../common/marking.ts';
import { formatQuantity, given, givenOr, type Sourced } from '../common/units.ts';
import { figuresIn } from '../messages/figures.ts';
import { farads, fraction } from './fields.ts';
import { definePart, type PartBase } from './kind.ts';
import { g } from './outline.ts';
import { sleeves, sleevingField, twoLegOutline, twoLegs } from './two-leg.ts';

interface Capacitor extends PartBase<'capacitor'> {
  /** Farads. */
  readonly value: Sourced;
  readonly tolerance: Sourced;
  readonly sleeved: readonly string[];
}

/** A capacitor's body is taller than a resistor's: a name with a tail must keep clear of it. */
const BODY = { width: 44, height: 28, across: 36, name: g(0.6) } as const;
const [A, B] = twoLegs;

/**
 * Capacitor with two legs, unpolarised. Tolerance ±10 % when not given, and the range of usual values, are common practice, no
 * source. Drawn with its three-digit code.
 */
export const capacitor = definePart({
  kind: 'capacitor',
  what: 'capacitor',
  is: ['component'],
  mirrors: true,
  fields: {
    value: farads('Capacitance'),
    tolerance: fraction('Tolerance').optional(),
    sleeving: sleevingField,
  },
  build: (base, written): Capacitor => ({
    ...base,
    value: given(written.value),
    tolerance: givenOr(written.tolerance, 0.1),
    sleeved: sleeves(written.sleeving),
  }),
  lugs: twoLegs,
  elements: (part) => [
    { kind: 'capacitance', id: 'body', a: A.name, b: B.name, farads: part.value, tolerance: part.tolerance },
  ],
  component: ({ value, sleeved }) => ({
    value: formatQuantity(value.value, 'farad'),
    print: capacitorCode(value.value),
    sleeved,
  }),
  usual: ({ value }) => [
    { field: 'value', what: 'a capacitor', value: value.value, unit: 'farad', least: 50e-12, most: 470e-9 },
  ],
  outline: (part, caption, language) =>
    twoLegOutline(part.label, figuresIn(language).quantity(part.value.value, 'farad'), BODY, caption),
  face: (part, { outline }) => {
    // A little lower than the room it has, so that a name above it with a p or a g keeps clear.
    const room = outline.body;
    const body = { ...room, y: room.y + 1, height: room.height - 2 };
    const centre = at(body.x + body.width / 2, body.y + body.height / 2);
    return [
      { shape: 'rect', role: 'capacitor-body', rect: body, radius: 8 },
      { shape: 'text', role: 'print', text: capacitorCode(part.value.value), centre, size: 13 },
    ];
  },
});
