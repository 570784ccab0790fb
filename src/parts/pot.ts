import { z } from 'zod';
import { around, at, type Point, type Rect } from '../common/geometry.ts';
import { must } from '../common/must.ts';
import { formatQuantity, given, givenOr, type Sourced } from '../common/units.ts';
import { fraction, ohms } from './fields.ts';
import { firstFit, settingsOf } from './fit.ts';
import { definePart, type LugSpec, type PartBase, type Seen, type Taper } from './kind.ts';
import { g, type LabelSlot, type Outline, type Port, type Strap, tagCentre, tagPorts } from './outline.ts';
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

/** How much larger than the usual case a long name makes it; grid units, to every side. */
const LARGEST = 8;
const USUAL = { middle: 4, radius: 3.5 } as const;

/** What depends on the size of the case, drawing units. */
interface Size {
  readonly centre: Point;
  readonly radius: number;
  /** Grid units. */
  readonly middle: number;
  readonly lugRow: number;
  /** Radius of the track's middle, and how far below the centre the wiper's arm leaves room for words. */
  readonly track: number;
  readonly free: number;
}

function sizeOf(more: number): Size {
  const middle = USUAL.middle + more;
  const radius = g(USUAL.radius + more);
  const track = radius - TRACK_INSET;
  return {
    centre: at(g(middle), g(middle)),
    radius,
    middle,
    lugRow: 2 * middle,
    track,
    free: Math.cos(radians(OPENING + BEFORE_END)) * (track - SHORT_OF_TRACK) - ARM_ROOM,
  };
}
/** The size of a pot by its outline. */
const sizeSeen = ({ width }: Outline): Size => sizeOf(width / g(2) - USUAL.middle);

/** Column of each terminal from the middle: from the solder side, lugs down, they read 3, 2, 1 from left to right. */
const COLUMNS = [
  [CLOCKWISE.name, -3],
  [WIPER.name, 0],
  [ANTICLOCKWISE.name, 3],
] as const;

/** How far inside the case's edge a ground wire ends: on the bare rim, clear of the track seen through the case. */
const CASE_INSET = 7;

/** A way onto the case along a grid line: straight in until just inside the edge. */
function casePort({ centre, radius }: Size, node: Point, inward: Point, price = 0): Port {
  const off = inward.x === 0 ? node.x - centre.x : node.y - centre.y;
  const reach = Math.sqrt(radius ** 2 - off ** 2) - CASE_INSET;
  const spot =
    inward.x === 0
      ? { x: node.x, y: centre.y - inward.y * reach }
      : { x: centre.x - inward.x * reach, y: node.y };
  return { node, inward, spot, price };
}

/** Ground joints between the lugs are hard to get at with an iron: only where nothing else is left. */
const BETWEEN_LUGS = 500;

/** Tolerance round the rim so that no two solder joints touch, nor one a lug's stem or strap; between the lugs last. */
function casePorts(size: Size): readonly Port[] {
  const { middle, lugRow } = size;
  const from = (off: number): number => g(middle + off);
  return [
    ...[0, -2, 2, -1, 1].map((x) => casePort(size, { x: from(x), y: 0 }, { x: 0, y: 1 })),
    ...[0, -1].map((y) => casePort(size, { x: 0, y: from(y) }, { x: 1, y: 0 })),
    ...[0, -1].map((y) => casePort(size, { x: g(2 * middle), y: from(y) }, { x: -1, y: 0 })),
    ...[-1, 1].map((x) => casePort(size, { x: from(x), y: g(lugRow) }, { x: 0, y: -1 }, BETWEEN_LUGS)),
  ];
}

/** The strap of a lug bent over onto the case: from its tag straight to the rim. */
function strapOf(tag: Rect, { centre, radius }: Size): Strap {
  const x = tag.x + tag.width / 2;
  const reach = Math.sqrt(radius ** 2 - (x - centre.x) ** 2);
  return { to: CASE.name, from: { x, y: tag.y + 1 }, end: { x, y: centre.y + reach - 9 } };
}

const TAPERS = { linear: 'lin', log: 'log', 'reverse-log': 'rev log' } as const;

/** Pot from the solder side: round case above, three lugs below. */
function potOutline(part: Pot): Outline {
  const value = `${formatQuantity(part.value.value, 'ohm')} ${TAPERS[part.taper.value]}`;
  const { size, labels, asideLabels } = wordsOf(part.label, value);
  const { centre, radius, middle, lugRow } = size;
  const caseTag = around(centre.x, centre.y, 2 * radius, 2 * radius);
  const inner = g(2 * middle - 2);
  return {
    width: g(2 * middle),
    height: g(lugRow + 1),
    body: caseTag,
    blocked: [{ x: g(1), y: g(1), width: inner, height: inner }],
    lugs: [
      ...COLUMNS.map(([lug, column]) => {
        const x = middle + column;
        const tag = around(g(x), g(lugRow), 18, 20);
        return {
          lug,
          tag,
          ports: tagPorts(tag, x, lugRow, ['down', 'left', 'right']),
          strap: strapOf(tag, size),
        };
      }),
      { lug: CASE.name, tag: caseTag, ports: casePorts(size), surface: true },
    ],
    labels,
    asideLabels,
  };
}

interface Words {
  readonly size: Size;
  readonly labels: readonly LabelSlot[];
  readonly asideLabels: readonly LabelSlot[];
}

/** Name and value inside the track, whether the pot stands or lies on its side: in the smallest case that holds them. */
const wordsOf = (label: string, value: string): Words =>
  must(roomFor(label, value), `a pot that holds “${label}”`);

function roomFor(label: string, value: string): Words | undefined {
  const settings = settingsOf(label, value);
  for (let more = 0; more <= LARGEST; more++) {
    const size = sizeOf(more);
    const { x, y } = size.centre;
    // Near the middle of the free room first.
    const offs = Array.from({ length: 16 + 8 * more }, (_, i) => i);
    const upright = offs.map((off) => at(x, y - 0.5 - off));
    const lying = offs.map((off) => at(x, y - off));
    const labels = settings
      .flatMap((lines) => upright.map((middle) => firstFit(lines, [middle], insideEitherWay(size, middle))))
      .find((found) => found !== undefined);
    const asideLabels = settings
      .flatMap((lines) => lying.map((middle) => firstFit(lines, [middle], besideWiper(size, middle))))
      .find((found) => found !== undefined);
    if (labels && asideLabels) return { size, labels, asideLabels };
  }
  return undefined;
}

const TRACK_WIDTH = 5;
/** From the case's edge to the middle of the track. */
const TRACK_INSET = 15;
/** Half of the opening at the bottom of the track, degrees; and how far before its end the wiper stands. */
const OPENING = 36;
const BEFORE_END = 4;
/** How far inside the track's middle the wiper's tip is, and the room between its arm and words. */
const SHORT_OF_TRACK = 4;
const ARM_ROOM = 4;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const onTrack = ({ centre, track }: Size, degrees: number, inside = 0): Point => {
  const [angle, radius] = [radians(degrees), track - inside];
  return at(centre.x + radius * Math.sin(angle), centre.y - radius * Math.cos(angle));
};

/** Words keep so far from the middle. */
const innerRadius = ({ track }: Size): number => track - TRACK_WIDTH / 2 - 1;

/** Whether a box does so, and with the pot turned upside down as well, where words stand in their order about the same middle. */
const insideEitherWay =
  (size: Size, middle: Point) =>
  (box: Rect): boolean => {
    const inside = insideTrack(size);
    return inside(box) && inside({ ...box, y: 2 * middle.y - box.y - box.height });
  };

/** Whether a box lies inside the track and above the wiper. */
const insideTrack =
  (size: Size) =>
  ({ x, y, height }: Rect): boolean =>
    y + height <= size.centre.y + size.free &&
    // Words are centred, so that one end of them is as near to the track as the other.
    [y, y + height].every((py) => Math.hypot(x - size.centre.x, py - size.centre.y) <= innerRadius(size));

/**
 * Whether a box about a middle, upright on a pot that lies on its side, lies inside the track and beside the wiper, which then is on
 * its left or its right.
 */
const besideWiper =
  (size: Size, middle: Point) =>
  ({ y, width, height }: Rect): boolean => {
    const off = middle.y - size.centre.y;
    const [far, near] = [off - width / 2, off + width / 2];
    return (
      near <= size.free &&
      [y, y + height].every((py) =>
        [far, near].every((end) => Math.hypot(end, py - middle.y) <= innerRadius(size)),
      )
    );
  };

/** The case, and seen through it the track from lug 1 to lug 3 and the wiper, standing at full. */
function potFace({ outline }: Seen): readonly Shape[] {
  const size = sizeSeen(outline);
  const { centre, radius, track } = size;
  const [clockwise, anticlockwise] = [onTrack(size, 180 + OPENING), onTrack(size, 180 - OPENING)];
  const lugTop = (lug: string): Point => {
    const { x, y } = tagCentre(outline, lug);
    return at(x, y - 10);
  };
  // The wiper: from its lug up to a hub, and from there an arm to the clockwise end of the track.
  const hub = at(centre.x, centre.y + track - 1);
  const tip = onTrack(size, 180 + OPENING + BEFORE_END, SHORT_OF_TRACK);
  return [
    { shape: 'circle', role: 'case', centre, radius },
    {
      shape: 'path',
      role: 'track',
      runs: [[{ to: clockwise }, { to: anticlockwise, radius: track, large: true, clockwise: true }]],
      width: TRACK_WIDTH,
    },
    conductor(1.5, run(clockwise, lugTop(CLOCKWISE.name)), run(anticlockwise, lugTop(ANTICLOCKWISE.name))),
    conductor(2, run(lugTop(WIPER.name), hub, tip)),
    { shape: 'circle', role: 'dot', centre: hub, radius: 2.5 },
    { shape: 'circle', role: 'dot', centre: tip, radius: 3 },
  ];
}
