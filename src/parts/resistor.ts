import { around } from '../common/geometry.ts';
import { resistorBands } from '../common/marking.ts';
import { formatQuantity, given, givenOr, type Sourced } from '../common/units.ts';
import { figuresIn } from '../messages/figures.ts';
import { fraction, ohms } from './fields.ts';
import { definePart, type PartBase } from './kind.ts';
import { g } from './outline.ts';
import type { Shape } from './shape.ts';
import { sleeves, sleevingField, twoLegOutline, twoLegs } from './two-leg.ts';

/** Of a resistor that says nothing else: four bands, gold. Common practice, no source. */
export const RESISTOR_TOLERANCE = 0.05;

interface Resistor extends PartBase<'resistor'> {
  /** Ohms. */
  readonly value: Sourced;
  readonly tolerance: Sourced;
  readonly sleeved: readonly string[];
}

const BODY = { width: 58, height: 20, name: g(0.7) } as const;
const [A, B] = twoLegs;

/** What is written of a resistor that the program adds to a kit. */
export const newResistor = ({
  label,
  ohms: value,
  sleeved = false,
}: {
  readonly label?: string;
  readonly ohms: number;
  /** Whether its first leg gets sleeving. */
  readonly sleeved?: boolean;
}) => ({ ...(label === undefined ? {} : { label }), value, ...(sleeved ? { sleeving: 1 as const } : {}) });

const bandsOf = ({ value, tolerance }: Resistor): readonly string[] =>
  resistorBands(value.value, tolerance.value);

/** Resistor with two legs. Tolerance ±5 % when not given (common practice, no source). Drawn with its colour bands. */
export const resistor = definePart({
  kind: 'resistor',
  what: 'resistor',
  is: ['component'],
  mirrors: true,
  fields: {
    value: ohms('Resistance'),
    tolerance: fraction('Tolerance').optional(),
    sleeving: sleevingField,
  },
  build: (base, written): Resistor => ({
    ...base,
    value: given(written.value),
    tolerance: givenOr(written.tolerance, RESISTOR_TOLERANCE),
    sleeved: sleeves(written.sleeving),
  }),
  lugs: twoLegs,
  elements: (part) => [
    { kind: 'resistance', id: 'body', a: A.name, b: B.name, ohms: part.value, tolerance: part.tolerance },
  ],
  component: (part) => ({
    value: formatQuantity(part.value.value, 'ohm'),
    bands: bandsOf(part),
    sleeved: part.sleeved,
  }),
  withOhms: (part, ohms) => ({ ...part, value: given(ohms) }),
  outline: (part, caption, language) =>
    twoLegOutline(part.label, figuresIn(language).quantity(part.value.value, 'ohm'), BODY, caption),
  face: (part, { outline: { body } }) => {
    const bands = bandsOf(part);
    const y = body.y + body.height / 2;
    const pitch = bands.length > 4 ? 7.5 : 9.5;
    return [
      { shape: 'rect', role: 'resistor-body', rect: body, radius: 9 },
      ...bands.map((code, i): Shape => {
        const x = body.x + (i === bands.length - 1 ? body.width - 10 : 11 + i * pitch);
        return { shape: 'rect', role: 'band', rect: around(x, y, 5, body.height - 2), code };
      }),
    ];
  },
});
