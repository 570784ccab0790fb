import { z } from 'zod';
import { at, type Point } from '../common/geometry.ts';
import { givenOr, type Sourced } from '../common/units.ts';
import type { Language } from '../messages/language.ts';
import { fraction } from './fields.ts';
import {
  type CircuitElement,
  definePart,
  type LugSpec,
  type PartBase,
  type PickupPart,
  type Polarity,
  polarities,
  type Seen,
  type Wind,
  winds,
} from './kind.ts';
import {
  belowLines,
  g,
  type LabelSlot,
  nameLines,
  type Outline,
  TYPE,
  tagCentre,
  tagPorts,
  titleLabels,
  widestLine,
} from './outline.ts';
import {
  buildPickup,
  coilShapes,
  polarityField,
  resistanceLine,
  usualWinding,
  windField,
  windingFields,
} from './pickup.ts';
import { conductor, plate, run, type Shape } from './shape.ts';

interface FourLeadHumbucker extends PickupPart<'four-lead-humbucker'> {
  /** Of its coils, with the sign for currents from hot to return; see `couplingOf`. */
  readonly coupling: Sourced;
  /** How the second coil is made, beside the first: opposite where nothing else is given. */
  readonly windsOpposite: boolean;
  readonly polesOpposite: boolean;
}

/**
 * Common practice, no source: two coils side by side share little of their fields, since each has its own core. Two halves of
 * 4.4 H measured alone come to about 1.9 H each.
 */
const COUPLING = 0.15;

const LUGS = [
  { name: 'a-start', role: 'hot' },
  { name: 'a-finish', role: 'link' },
  { name: 'b-finish', role: 'link' },
  { name: 'b-start', role: 'return' },
  { name: 'shield', role: 'shield' },
] as const satisfies readonly LugSpec[];
const [A_START, A_FINISH, B_FINISH, B_START, SHIELD] = LUGS;

const each = <T extends z.ZodType>(field: T, values: readonly [string, string], about: string) =>
  z
    .strictObject(
      {
        a: field.optional().describe(`Of coil A, ${about}`),
        b: field.optional().describe(`Of coil B, ${about}`),
      },
      { error: `expected a value for each coil, such as { a: ${values[0]}, b: ${values[1]} }` },
    )
    .optional();

/** What is not written of one coil is the opposite of the other. */
function both<T>(values: readonly T[], written: { a?: T | undefined; b?: T | undefined } | undefined) {
  const other = (one: T | undefined): T | undefined =>
    one === undefined ? undefined : values.find((value) => value !== one);
  const a = written?.a ?? other(written?.b);
  return { a, opposite: written?.b === undefined || written.b !== a };
}

/**
 * Humbucker with four leads and a shield, so that its coils can be joined in any way. In series, as it is made for, the two
 * finishes are soldered together, and the signal is between the two starts (common practice, no source). Defaults as of the one
 * with two leads. `resistance`, `inductance` and `capacitance` are of both coils in series, and half of the first belongs to each.
 */
export const fourLeadHumbucker = definePart({
  kind: 'four-lead-humbucker',
  what: 'four-lead humbucker pickup',
  is: ['pickup'],
  mirrors: true,
  turns: 'halves',
  fields: {
    ...windingFields,
    coupling: fraction('Coupling coefficient of the two coils; 0.15 by default').optional(),
    wind: each(
      windField,
      winds,
      'which way the wire runs from the hot end to the return as in series: from a-start to a-finish, from b-finish to b-start; seen from the strings',
    ).describe('Winding directions of the two coils; opposite by default'),
    polarity: each(polarityField, polarities, 'the magnetic pole that faces the strings').describe(
      'Magnetic poles of the two coils; opposite by default',
    ),
  },
  build: (base: PartBase<'four-lead-humbucker'>, written): FourLeadHumbucker => {
    const { wind, polarity, coupling, ...others } = written;
    const [w, p] = [both<Wind>(winds, wind), both<Polarity>(polarities, polarity)];
    const first = { wind: w.a, polarity: p.a };
    return {
      ...buildPickup(
        base,
        { ...others, ...first },
        { resistance: 8.2e3, inductance: 4.4, capacitance: 130e-12, pots: 500e3 },
      ),
      coupling: givenOr(coupling, COUPLING),
      windsOpposite: w.opposite,
      polesOpposite: p.opposite,
    };
  },
  lugs: LUGS,
  elements: (part) => coilsOf(part),
  usual: (part) => usualWinding(part),
  outline: (part, _, language, narrow) =>
    narrow ? narrowOutline(part, language) : outlineOf(part, language),
  face: (_, seen) => faceOf(seen),
});

/**
 * Two halves that are coupled. The field of one coil returns through the other, so that coils wound opposite ways aid each other in series:
 * L = La + Lb + 2M, which is the whole pickup's inductance. Each half has twice the capacitance and half the core loss, so that in
 * series they are those of the whole.
 */
function coilsOf(part: FourLeadHumbucker): readonly CircuitElement[] {
  const factor = part.windsOpposite ? part.coupling.value : -part.coupling.value;
  const of = (value: Sourced, times: number): Sourced => ({ ...value, value: value.value * times });
  const common = {
    kind: 'coil',
    resistance: of(part.resistance, 1 / 2),
    inductance: of(part.inductance, 1 / (2 * (1 + factor))),
    capacitance: of(part.capacitance, 2),
    ...(part.coreLoss ? { coreLoss: of(part.coreLoss, 1 / 2) } : {}),
    tolerances: [part.tolerance, part.inductanceTolerance, part.capacitanceTolerance],
  } as const;
  return [
    {
      ...common,
      id: 'coil-a',
      called: 'coil A',
      hot: A_START.name,
      return: A_FINISH.name,
      signal: 1 / 2,
      hum: 1,
    },
    {
      ...common,
      id: 'coil-b',
      called: 'coil B',
      hot: B_FINISH.name,
      return: B_START.name,
      signal: part.windsOpposite === part.polesOpposite ? 1 / 2 : -1 / 2,
      hum: part.windsOpposite ? -1 : 1,
    },
    {
      kind: 'coupling',
      id: 'coupling',
      coils: ['coil-a', 'coil-b'],
      factor: of(part.coupling, Math.sign(factor)),
    },
  ];
}

/** Three rows a lug, so that a wire has room to turn between two of them. */
const [FIRST, ROW] = [1, 3];
const ROWS = 14;
/** Room for the coils and their letters at the left of the body. */
const SYMBOL = 92;
/** Room that a line of the name has before it is broken, and from the text to the tags for leads to turn in. */
const LINE = 130;
const RIGHT = 44;
const NAME_LINE = 16;

function outlineOf(part: FourLeadHumbucker, language: Language): Outline {
  const below = resistanceLine(part, 'face.humbucker', language);
  const names = nameLines(part.label, Math.max(LINE, widestLine([], below)));
  const columns = Math.max(10, Math.ceil((SYMBOL + widestLine(names, below) + RIGHT + 6) / g(1)));
  const middle = g(ROWS / 2);
  return {
    ...bodyAndLugs(columns, 0),
    // Turned by half, lines of text keep their order about their middle: only in the body's own do the letters stay beside their coils.
    labels: [
      ...titleLabels(names, below, (line) =>
        at(SYMBOL + (g(columns) - SYMBOL - RIGHT) / 2, middle + NAME_LINE * (line - names.length / 2)),
      ),
      ...letters(middle),
    ],
  };
}

/** Least width of a body with its words above its coils, grid units; room beside such words, and from the edge to the first one's middle. */
const NARROW = 8;
const MARGIN = 8;
const TOP = 15;

/** The same with its words above the coils and leads, below them where it is turned by half. */
function narrowOutline(part: FourLeadHumbucker, language: Language): Outline {
  const room = g(NARROW) - 2 * MARGIN;
  const below = belowLines(resistanceLine(part, 'face.humbucker', language), room);
  const names = nameLines(part.label, Math.max(room, widestLine([], ...below)));
  const columns = Math.max(NARROW, Math.ceil((widestLine(names, ...below) + 2 * MARGIN) / g(1)));
  const more = names.length + below.length;
  return {
    narrow: true,
    ...bodyAndLugs(columns, more),
    labels: [
      ...titleLabels(names, below, (line) => at(g(columns / 2), TOP + NAME_LINE * line)),
      ...letters(g(more + ROWS / 2)).map((label, i) => ({ ...label, block: 1 + i })),
    ],
  };
}

/** @param more rows above those of the leads and coils */
function bodyAndLugs(columns: number, more: number): Omit<Outline, 'labels'> {
  const body = { x: 0, y: 0, width: g(columns), height: g(more + ROWS) };
  return {
    width: g(columns + 2),
    height: body.height,
    body,
    blocked: [body],
    lugs: LUGS.map(({ name: lug }, i) => {
      const y = more + FIRST + ROW * i;
      const tag = { x: body.width - 16, y: g(y) - 10, width: 56, height: 20 };
      return { lug, tag, ports: tagPorts(tag, columns + 2, y, ['right', 'up', 'down']) };
    }),
  };
}

/** Beside each coil its letter. */
const letters = (height: number): readonly LabelSlot[] =>
  (
    [
      ['A', COIL_A - ASIDE],
      ['B', COIL_B + ASIDE],
    ] as const
  ).map(([text, x]) => ({ text, centre: at(x, height), size: TYPE.value, weight: 'regular' }));

/** Heights of the leads that run past the words or the coils, below the first lug: of the first coil above, of the second below. */
const LANES = { a: 14, bFinish: g(ROWS) - 70, bStart: g(ROWS) - 58 } as const;
/** Coils, from the body's left edge, and how far from their middles their leads leave. */
const [COIL_A, COIL_B, BESIDE] = [34, 62, 4];
/** Between a coil's middle and its letter's. */
const ASIDE = 19;

/** Both coils with their letters, and each of the four leads on its own way to its tag; the shield comes from the cover. */
function faceOf({ outline }: Seen): readonly Shape[] {
  const { body } = outline;
  const right = body.x + body.width;
  const end = (lug: string): Point => at(right - 16, tagCentre(outline, lug).y);
  const [aStart, aFinish, bFinish] = [end(A_START.name), end(A_FINISH.name), end(B_FINISH.name)];
  const [bStart, shield] = [end(B_START.name), end(SHIELD.name)];
  const middle = aStart.y + g(ROWS / 2 - FIRST);
  const [top, bottom] = [middle - 27, middle + 27];
  const [a, b] = [body.x + COIL_A, body.x + COIL_B];
  const down = (from: Point, lane: number, x: number, to: Point) =>
    run(from, at(from.x, aStart.y + lane), at(x, aStart.y + lane), at(x, to.y), to);
  return [
    plate(body, 14),
    ...[a, b].flatMap((x) => coilShapes(x, middle)),
    conductor(
      1.5,
      run(at(a - BESIDE, top), at(a - BESIDE, aStart.y), aStart),
      down(at(a + BESIDE, top), LANES.a, right - 26, aFinish),
      down(at(b + BESIDE, bottom), LANES.bFinish, right - 34, bFinish),
      down(at(b - BESIDE, bottom), LANES.bStart, right - 26, bStart),
      run(at(right - 34, shield.y), shield),
    ),
    { shape: 'circle', role: 'dot', centre: at(right - 34, shield.y), radius: 2.5 },
  ];
}
