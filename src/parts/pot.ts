import { z } from 'zod';
import { around, at, type Point, type Rect } from '../common/geometry.ts';
import { formatQuantity, given, givenOr, type Sourced } from '../common/units.ts';
import { fraction, ohms } from './fields.ts';
import { fitLabels } from './fit.ts';
import { definePart, type LugSpec, type PartBase, type Seen, type Taper } from './kind.ts';
import {
  g,
  type LabelSlot,
  type Outline,
  type Port,
  type Strap,
  TYPE,
  tagCentre,
  tagPorts,
} from './outline.ts';
import { conductor, run, type Shape } from './shape.ts';

export interface Pot extends PartBase<'pot'> {
  /** Resistance of the whole track, ohms. */
  readonly value: Sourced;
  readonly taper: Sourced<Taper>;
  readonly tolerance: Sourced;
  /** Share of the track below the wiper at half rotation, for the log laws. */
  readonly midpoint: Sourced;
}

const LUGS = [
  { name: '1', role: 'anticlockwise' },
  { name: '2', role: 'wiper' },
  { name: '3', role: 'clockwise' },
  { name: 'case', role: 'case', room: 11 },
] as const satisfies readonly LugSpec[];
const [ANTICLOCKWISE, WIPER, CLOCKWISE, CASE] = LUGS;

/**
 * Potentiometer. Terminals are electrical: 1 the anticlockwise end, 2 the wiper, 3 the clockwise end, seen from
 * the shaft. The case is a place to solder to and no part of the circuit inside. Tolerance ±20 % and a log
 * midpoint of 15 % are common practice, no source; so is the range of usual values.
 */
export const pot = definePart({
  kind: 'pot',
  what: 'pot',
  is: ['pot'],
  mirrors: false,
  turns: 'quarters',
  fields: {
    value: ohms('Resistance of the whole track'),
    taper: z.enum(['linear', 'log', 'reverse-log']).optional().describe('Taper; log by default'),
    tolerance: fraction('Tolerance of the track').optional(),
    midpoint: fraction(
      'Resistance from lug 1 to the wiper at half rotation, as a fraction of the track (log tapers)',
    ).optional(),
  },
  build: (base, written): Pot => ({
    ...base,
    value: given(written.value),
    taper: givenOr<Taper>(written.taper, 'log'),
    tolerance: givenOr(written.tolerance, 0.2),
    midpoint: givenOr(written.midpoint, 0.15),
  }),
  lugs: LUGS,
  elements: (part) => [
    {
      kind: 'track',
      id: 'track',
      anticlockwise: ANTICLOCKWISE.name,
      wiper: WIPER.name,
      clockwise: CLOCKWISE.name,
      ohms: part.value,
      tolerance: part.tolerance,
      taper: part.taper,
      midpoint: part.midpoint,
    },
  ],
  usual: ({ value }) => [
    { field: 'value', what: 'a pot', value: value.value, unit: 'ohm', least: 10e3, most: 2e6 },
  ],
  withOhms: (part, ohms) => ({ ...part, value: given(ohms) }),
  outline: (part) => potOutline(part),
  face: (_, seen) => potFace(seen),
});

/** Radius of the case. */
const RADIUS = g(3.5);
const CENTRE: Point = { x: g(4), y: g(4) };
const LUG_ROW = 8;

/** Column of each terminal: from the solder side, lugs down, they read 3, 2, 1 from left to right. */
const COLUMNS = [
  [CLOCKWISE.name, 1],
  [WIPER.name, 4],
  [ANTICLOCKWISE.name, 7],
] as const;

/** How far inside the case's edge a ground wire ends: on the bare rim, clear of the track seen through the case. */
const CASE_INSET = 7;

/** A way onto the case along a grid line: straight in until just inside the edge. */
function casePort(node: Point, inward: Point, price = 0): Port {
  const off = inward.x === 0 ? node.x - CENTRE.x : node.y - CENTRE.y;
  const reach = Math.sqrt(RADIUS ** 2 - off ** 2) - CASE_INSET;
  const spot =
    inward.x === 0
      ? { x: node.x, y: CENTRE.y - inward.y * reach }
      : { x: CENTRE.x - inward.x * reach, y: node.y };
  return { node, inward, spot, price };
}

const caseTag: Rect = around(CENTRE.x, CENTRE.y, 2 * RADIUS, 2 * RADIUS);

/** Ground joints between the lugs are hard to get at with an iron: only where nothing else is left. */
const BETWEEN_LUGS = 500;

/** Tolerance round the rim so that no two solder joints touch, nor one a lug's stem or strap; between the lugs last. */
const casePorts: readonly Port[] = [
  ...[4, 2, 6, 3, 5].map((x) => casePort({ x: g(x), y: g(0) }, { x: 0, y: 1 })),
  ...[4, 3].map((y) => casePort({ x: g(0), y: g(y) }, { x: 1, y: 0 })),
  ...[4, 3].map((y) => casePort({ x: g(8), y: g(y) }, { x: -1, y: 0 })),
  ...[3, 5].map((x) => casePort({ x: g(x), y: g(LUG_ROW) }, { x: 0, y: -1 }, BETWEEN_LUGS)),
];

/** The strap of a lug bent over onto the case: from its tag straight to the rim. */
function strapOf(tag: Rect): Strap {
  const x = tag.x + tag.width / 2;
  const reach = Math.sqrt(RADIUS ** 2 - (x - CENTRE.x) ** 2);
  return { to: CASE.name, from: { x, y: tag.y + 1 }, end: { x, y: CENTRE.y + reach - 9 } };
}

const TAPERS = { linear: 'lin', log: 'log', 'reverse-log': 'rev log' } as const;

/** Pot from the solder side: round case above, three lugs below. */
function potOutline(part: Pot): Outline {
  const value = `${formatQuantity(part.value.value, 'ohm')} ${TAPERS[part.taper.value]}`;
  const lines = ({ x, y }: Point): readonly LabelSlot[] => [
    { text: part.label, centre: { x, y: y - 9 }, size: TYPE.name, weight: 'bold' },
    { text: value, centre: { x, y: y + 8 }, size: TYPE.value, weight: 'regular' },
  ];
  return {
    width: g(8),
    height: g(9),
    body: caseTag,
    blocked: [{ x: g(1), y: g(1), width: g(6), height: g(6) }],
    lugs: [
      ...COLUMNS.map(([lug, x]) => {
        const tag = around(g(x), g(LUG_ROW), 18, 20);
        return { lug, tag, ports: tagPorts(tag, x, LUG_ROW, ['down', 'left', 'right']), strap: strapOf(tag) };
      }),
      { lug: CASE.name, tag: caseTag, ports: casePorts, surface: true },
    ],
    labels: fitLabels(lines(CENTRE), insideTrack),
    asideLabels: fitLabels(lines(ASIDE), besideWiper),
  };
}

const TRACK = 39;
const TRACK_WIDTH = 5;
/** Half of the opening at the bottom of the track, degrees. */
const OPENING = 48;

const onTrack = (degrees: number, radius = TRACK): Point => {
  const angle = (degrees * Math.PI) / 180;
  return at(CENTRE.x + radius * Math.sin(angle), CENTRE.y - radius * Math.cos(angle));
};

/** How far below the middle the wiper's arm leaves room for words. */
const ABOVE_WIPER = 19;

/** Whether a box lies inside the track and above the wiper. */
const insideTrack = ({ x, y, height }: Rect): boolean =>
  y + height <= CENTRE.y + ABOVE_WIPER &&
  // Words are centred, so that one end of them is as near to the track as the other.
  [y, y + height].every((py) => Math.hypot(x - CENTRE.x, py - CENTRE.y) <= TRACK - TRACK_WIDTH / 2 - 1);

/** Middle of the words of a pot that lies on its side: further from the wiper, which then is on their left or right. */
const ASIDE: Point = at(CENTRE.x, CENTRE.y - 7);
/** Whether a box about that middle, upright on a pot that lies on its side, lies inside the track and beside the wiper. */
const besideWiper = ({ x, y, width, height }: Rect): boolean => {
  const [near, far] = [ASIDE.y - CENTRE.y - width / 2, ASIDE.y - CENTRE.y + width / 2];
  const tops = [y, y + height].map((py) => py - ASIDE.y);
  return (
    Math.abs(x + width / 2 - ASIDE.x) < 1 &&
    -near <= TRACK - TRACK_WIDTH / 2 - 1 &&
    far <= ABOVE_WIPER &&
    tops.every((py) => Math.hypot(Math.abs(near), py) <= TRACK - TRACK_WIDTH / 2 - 1)
  );
};

/** The case, and seen through it the track from lug 1 to lug 3 and the wiper, standing at full. */
function potFace({ outline }: Seen): readonly Shape[] {
  const [clockwise, anticlockwise] = [onTrack(180 + OPENING), onTrack(180 - OPENING)];
  const lugTop = (lug: string): Point => {
    const { x, y } = tagCentre(outline, lug);
    return at(x, y - 10);
  };
  // The wiper: from its lug up to a hub, and from there an arm to the clockwise end of the track.
  const hub = at(CENTRE.x, CENTRE.y + 30);
  const tip = onTrack(180 + OPENING + 4, TRACK - 4);
  return [
    { shape: 'circle', role: 'case', centre: CENTRE, radius: RADIUS },
    {
      shape: 'path',
      role: 'track',
      runs: [[{ to: clockwise }, { to: anticlockwise, radius: TRACK, large: true, clockwise: true }]],
      width: TRACK_WIDTH,
    },
    conductor(1.5, run(clockwise, lugTop(CLOCKWISE.name)), run(anticlockwise, lugTop(ANTICLOCKWISE.name))),
    conductor(2, run(lugTop(WIPER.name), hub, tip)),
    { shape: 'circle', role: 'dot', centre: hub, radius: 2.5 },
    { shape: 'circle', role: 'dot', centre: tip, radius: 3 },
  ];
}
