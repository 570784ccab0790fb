/** What the two kinds of two-lead pickup share: the fields, the defaults' shape, the reference harness and the look. */

import { z } from 'zod';
import { around, at } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import { given, givenOr } from '../common/units.ts';
import { figuresIn } from '../messages/figures.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { farads, fraction, henries, ohms } from './fields.ts';
import {
  type CircuitElement,
  type LugSpec,
  type PartBase,
  type PickupPart,
  type Polarity,
  polarities,
  type Seen,
  type UsualValue,
  type Wind,
  winds,
} from './kind.ts';
import { g, nameLines, type Outline, TYPE, tagCentre, tagPorts, titleLabels, widestLine } from './outline.ts';
import { conductor, plate, run, type Shape } from './shape.ts';

export const windField = z.enum(winds);
export const polarityField = z.enum(polarities);

/** What may be written about any pickup. */
export const windingFields = {
  resistance: ohms('DC resistance at 20 °C').optional(),
  inductance: henries('Inductance').optional(),
  capacitance: farads('Capacitance of winding and lead').optional(),
  'core-loss': ohms('Core-loss resistance in parallel with the winding').optional(),
  tolerance: fraction('Tolerance of the DC resistance').optional(),
  'inductance-tolerance': fraction('Tolerance of the inductance').optional(),
  'capacitance-tolerance': fraction('Tolerance of the capacitance of winding and lead').optional(),
  reference: z
    .strictObject({
      volume: ohms('Volume pot of the reference harness').optional(),
      tone: ohms('Tone pot of the reference harness').optional(),
    })
    .optional()
    .describe('Reference harness: the pots this pickup was designed for'),
};

/** And about one with two leads. */
export const pickupFields = {
  ...windingFields,
  wind: windField
    .optional()
    .describe(
      'Which way the wire runs from the hot lead to the ground lead, seen from the strings; in a humbucker, through its first coil',
    ),
  polarity: polarityField
    .optional()
    .describe('Magnetic pole that faces the strings; in a humbucker, in its first coil'),
};

type Written = z.output<z.ZodObject<typeof windingFields>> & {
  readonly wind?: Wind | undefined;
  readonly polarity?: Polarity | undefined;
};

/** Values of a kind when nothing is written, SI. Common practice, no source. */
interface PickupDefaults {
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
  // Common practice, no source: windings of one batch differ by about a tenth, their capacitance by a fifth.
  tolerance: givenOr(written.tolerance, 0.1),
  inductanceTolerance: givenOr(written['inductance-tolerance'], 0.1),
  capacitanceTolerance: givenOr(written['capacitance-tolerance'], 0.2),
  usualResistance: fallback.resistance,
  ...(written.wind === undefined ? {} : { wind: written.wind }),
  ...(written.polarity === undefined ? {} : { polarity: written.polarity }),
  reference: {
    volume: givenOr(written.reference?.volume, fallback.pots),
    tone: givenOr(written.reference?.tone, fallback.pots),
  },
});

export const pickupLugs = [
  { name: 'hot', role: 'hot' },
  { name: 'ground', role: 'return' },
] as const satisfies readonly LugSpec[];
const [HOT, GROUND] = pickupLugs;

/**
 * The one winding a two-lead pickup is to its harness.
 *
 * @param hum volts that one volt of hum in a coil gives: 1, or 0 where two coils inside cancel it
 */
export const coilOf = (part: PickupPart<string>, hum: 0 | 1): readonly CircuitElement[] => [
  {
    kind: 'coil',
    id: 'coil',
    hot: HOT.name,
    return: GROUND.name,
    hum,
    resistance: part.resistance,
    inductance: part.inductance,
    capacitance: part.capacitance,
    ...(part.coreLoss ? { coreLoss: part.coreLoss } : {}),
    tolerances: [part.tolerance, part.inductanceTolerance, part.capacitanceTolerance],
  },
];

/** Common practice, no source. */
export const usualWinding = ({ resistance }: PickupPart<string>): readonly UsualValue[] => [
  {
    field: 'resistance',
    what: 'a pickup',
    value: resistance.value,
    unit: 'ohm',
    least: 100,
    most: 100e3,
  },
];

/** Room for the coils' symbol at the left of the body. */
const SYMBOL = 58;
/** Room that a line of the name has before it is broken, or as wide as the line below it. */
const LINE = 130;
/** Between the middles of the name's lines, and from them to the line below. */
const NAME_LINE = 16;
const BELOW_NAME = 17;

/** What a pickup is and its resistance: `humbucker, 8.2 kΩ`. */
export function resistanceLine(
  { resistance }: PickupPart<string>,
  what: 'face.humbucker' | 'face.single-coil',
  language: Language,
): string {
  const say = sayIn(language);
  const value = figuresIn(language).quantity(resistance.value, 'ohm');
  return `${say(what)}, ${resistance.from === 'default' ? say('face.assumed', { value }) : value}`;
}

/** A pickup lying down, its two leads leaving on the right. `what` is the second line's first word. */
export function pickupOutline(
  part: PickupPart<string>,
  what: 'face.humbucker' | 'face.single-coil',
  language: Language,
): Outline {
  const below = resistanceLine(part, what, language);
  const names = nameLines(part.label, Math.max(LINE, textWidth(below, TYPE.value)));
  const columns = Math.max(9, Math.ceil((SYMBOL + widestLine(names, below) + 26) / g(1)));
  const rows = 4 + names.length;
  const body = { x: 0, y: g(0), width: g(columns), height: g(rows) };
  const lugX = columns + 2;
  const first = g(rows / 2) + 0.5 - (NAME_LINE * (names.length - 1) + BELOW_NAME) / 2;
  const labels = titleLabels(names, below, (line) =>
    at(
      SYMBOL + (body.width - SYMBOL - 20) / 2,
      first + NAME_LINE * line + (line === names.length ? BELOW_NAME - NAME_LINE : 0),
    ),
  );
  return {
    width: g(columns + 2),
    height: g(rows),
    body,
    blocked: [body],
    lugs: pickupLugs.map(({ name: lug }, i) => {
      const y = i === 0 ? 1 : rows - 1;
      const tag = { x: body.width - 16, y: g(y) - 10, width: 56, height: 20 };
      return { lug, tag, ports: tagPorts(tag, lugX, y, ['right', 'up', 'down']) };
    }),
    labels,
  };
}

/** Width of the link between two coils. */
const LINK = 2.5;
const COIL = { width: 20, height: 56, turns: 3 } as const;

/** How far below its coil the ground lead of a coil that stands behind another runs. */
const UNDER = 6;

/** One coil seen from above, by its centre. */
export const coilShapes = (x: number, y: number): readonly Shape[] =>
  Array.from({ length: COIL.turns }, (_, turn) => {
    const width = COIL.width - 6 * turn;
    const rect = around(x, y, width, COIL.height - 6 * turn);
    return { shape: 'rect', role: turn === 0 ? 'coil' : 'turn', rect, radius: width / 2 };
  });

/**
 * Coils seen from above as the racetracks they are, and the two leads leaving them. Two are joined inside, one after the other: hot
 * leaves the last, a link leads from it to the first, and ground leaves that.
 *
 * @param centres of the coils, drawing units from the body's left edge
 * @param radius of the cover's corners
 */
export function pickupFace({ outline }: Seen, centres: readonly number[], radius: number): readonly Shape[] {
  const { body } = outline;
  const middle = body.y + body.height / 2;
  const xs = centres.map((x) => body.x + x);
  const [first, last] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [middle - COIL.height / 2, middle + COIL.height / 2];
  const [hot, ground] = [tagCentre(outline, HOT.name), tagCentre(outline, GROUND.name)];
  const under = bottom + UNDER;
  const past = last + COIL.width / 2 + 4;
  const back =
    first === last
      ? run(at(last, bottom), at(last, ground.y), at(ground.x - 28, ground.y))
      : run(
          at(first, bottom),
          at(first, under),
          at(past, under),
          at(past, ground.y),
          at(ground.x - 28, ground.y),
        );
  const link = [at(first + COIL.width / 2, middle), at(last - COIL.width / 2, middle)];
  return [
    plate(body, radius),
    ...xs.flatMap((x) => coilShapes(x, middle)),
    conductor(1.5, run(at(last, top), at(last, hot.y), at(hot.x - 28, hot.y)), back),
    ...(first === last
      ? []
      : [
          conductor(LINK, run(...link)),
          ...link.map((centre): Shape => ({ shape: 'circle', role: 'dot', centre, radius: LINK })),
        ]),
  ];
}
