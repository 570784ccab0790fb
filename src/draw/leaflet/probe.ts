/** A multimeter's probe: a needle whose tip touches a lug, a handle, and a flag that says which probe it is. */
import { lugId, lugIdOf } from '../../circuit/circuit.ts';
import { around, centreOf, overlaps, type Point, type Rect } from '../../common/geometry.ts';
import { must, nth } from '../../common/must.ts';
import { textWidth } from '../../common/text.ts';
import { rectToSheet } from '../../place/frame.ts';
import type { Pen } from '../pen.ts';
import { LINE, type Theme } from '../theme.ts';
import { pathsAt } from './alone.ts';
import { runsOf } from './beads.ts';
import { bodiesOf, inkOf } from './faces.ts';
import type { Harness } from './harness.ts';
import { freeEnds } from './joint-ends.ts';

export interface Probe {
  readonly tip: Point;
  /** Unit vector from the tip to the hand. */
  readonly out: Point;
  /** Of the needle, drawing units. */
  readonly needle: number;
  readonly flag: Rect;
  /** What stands on the flag: the probe's colour. */
  readonly words: string;
}

/** A lug, and the words on the flag of the probe that is held to it. */
interface Held {
  readonly lug: string;
  readonly words: string;
}

/** Sizes of a probe by the size of type: needles from the shortest on, the handle from where one ends, and the flag's box. */
const SIZE = { needles: [1.3, 2, 3, 4.2, 5.6], handle: 1.9, thick: 0.8, tall: 1.5, air: 0.9 } as const;

/**
 * What it costs to hide a word, a lug or another probe, and with the flag a wire of the very lug; with the flag the face of a part or another
 * wire; with the needle and the handle those, and to come close to another lug; to hide what is drawn on a face; and each unit of a longer needle.
 */
const PRICE = {
  word: 1000,
  own: 600,
  flag: 150,
  face: 40,
  line: 250,
  lug: 500,
  ink: 30,
  length: 1.2,
} as const;
const WAYS = 32;
/** How far from the middle of a case to its edge the tip stands. */
const ON_CASE = 0.82;
/** How far a needle stays from a lug that it does not touch. */
const APART = 6;
/** Left free about a flag. */
const CLEAR = 3;

/** A place for a probe on each of these lugs, one after another: where it hides the least. */
export function probesOf(harness: Harness, held: readonly Held[]): readonly Probe[] {
  const { type } = harness;
  const faces = harness.parts.flatMap(bodiesOf);
  const drawn = inkOf(harness.sheet);
  const ink = harness.parts.flatMap(({ part }) => drawn.get(part.name) ?? []);
  const runs = (paths: readonly (readonly Point[])[]) => paths.flatMap((path) => runsOf(path, 4));
  const lines = runs(harness.paths.filter((_, i) => harness.made[i] !== 'absent'));
  const behind = [...faces, ...lines];
  const placed: Rect[] = [];
  return held.map(({ lug, words }) => {
    const own = runs(pathsAt(harness, lug));
    const closed = [...harness.words, ...placed];
    const others = [...harness.tags.values()].flatMap(({ id, rect }) =>
      id === lug ? [] : [widened(rect, APART)],
    );
    let best: Probe | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const probe of spotsOf(harness, lug, words)) {
      let cost = PRICE.length * probe.needle;
      const price = (one: number, rects: readonly Rect[], room: readonly Rect[]): void => {
        // What costs more already is not looked at any further.
        for (const rect of rects) {
          if (cost >= least) return;
          if (room.some((part) => overlaps(part, rect))) cost += one;
        }
      };
      const flag = [widened(probe.flag, CLEAR)];
      price(PRICE.word, closed, flag);
      price(PRICE.own, own, flag);
      price(PRICE.flag, behind, flag);
      if (cost >= least) continue;
      const hand = [...needleRoom(probe), ...handleRoom(probe, type)];
      price(PRICE.word, closed, hand);
      price(PRICE.lug, others, hand);
      price(PRICE.ink, ink, [...hand, probe.flag]);
      price(PRICE.face, faces, hand);
      price(PRICE.line, lines, hand);
      if (cost < least) [best, least] = [probe, cost];
    }
    const probe = must(best, `a place to hold a probe to ${lug}`);
    placed.push(...probeRoom(probe, type));
    return probe;
  });
}

const widened = ({ x, y, width, height }: Rect, by: number): Rect => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by,
});

/** The end of the wire to a lug that stays free on the bench: there a probe is held to the wire. */
function freeEndAt({ sheet: { placement }, made, paths }: Harness, id: string): Point | undefined {
  for (const [i, { joint }] of placement.wires.entries()) {
    if (made[i] === 'absent') continue;
    const end = freeEnds(placement, i).find((one) => lugIdOf(joint[one]) === id);
    if (end !== undefined) return nth(paths, i).at(end === 'from' ? 0 : -1);
  }
  return undefined;
}

function* spotsOf(harness: Harness, id: string, words: string): Generator<Probe> {
  const { parts, tags, type } = harness;
  const free = freeEndAt(harness, id);
  const width = textWidth(words, type, 'bold') + SIZE.air * type;
  const height = SIZE.tall * type;
  for (const { part, frame, outline } of parts)
    for (const { lug, tag, surface } of outline.lugs) {
      if (lugId(part.name, lug) !== id) continue;
      const rect = free
        ? around(free.x, free.y, 0, 0)
        : surface
          ? rectToSheet(frame, outline.body)
          : (tags.get(id)?.rect ?? rectToSheet(frame, tag));
      const share = surface && !free ? ON_CASE : 1;
      const { x, y } = centreOf(rect);
      for (const size of SIZE.needles)
        for (let way = 0; way < WAYS; way++) {
          const angle = (2 * Math.PI * (way + 0.5)) / WAYS;
          const out = { x: Math.cos(angle), y: Math.sin(angle) };
          // On a case along its round edge, on a tag where the needle's line leaves it.
          const reach = surface
            ? { x: (share * rect.width) / 2, y: (share * rect.height) / 2 }
            : edgeAlong(rect, out);
          const tip = { x: x + reach.x * out.x, y: y + reach.y * out.y };
          const needle = size * type;
          const far = lengthOf(needle, type);
          const flag = around(
            tip.x + out.x * (far + width / 2),
            tip.y + out.y * (far + height / 2),
            width,
            height,
          );
          yield { tip, out, needle, flag, words };
        }
    }
}

/** From the middle of a rectangle to its edge. */
function edgeAlong({ width, height }: Rect, { x, y }: Point): Point {
  const t = Math.min(width / 2 / Math.abs(x), height / 2 / Math.abs(y));
  return { x: t, y: t };
}

const lengthOf = (needle: number, type: number): number => needle + SIZE.handle * type;

/** Squares along a probe. */
function along({ tip, out }: Probe, from: number, to: number, wide: number): readonly Rect[] {
  const count = Math.ceil((to - from) / 3);
  return Array.from({ length: count + 1 }, (_, i) => {
    const s = from + ((to - from) * i) / count;
    return around(tip.x + out.x * s, tip.y + out.y * s, wide, wide);
  });
}

// The tip itself touches the lug.
const needleRoom = (probe: Probe): readonly Rect[] => along(probe, 4, probe.needle, 3);

const handleRoom = (probe: Probe, type: number): readonly Rect[] =>
  along(probe, probe.needle, lengthOf(probe.needle, type), SIZE.thick * type);

/** What a probe takes: squares along it, and its flag. */
export const probeRoom = (probe: Probe, type: number): readonly Rect[] => [
  ...needleRoom(probe),
  ...handleRoom(probe, type),
  probe.flag,
];

/**
 * The first probe is the red one, in the meter's socket for resistance, by convention of multimeters (common practice, no source). They differ by form too,
 * for a copy in black and white: the red one's flag is round and light, the black one's square and dark.
 *
 * @param number 0 for the red probe, 1 for the black one
 */
export function drawProbe(pen: Pen, probe: Probe, number: number, type: number, theme: Theme): void {
  const { tip, out, needle, flag, words } = probe;
  const red = number === 0;
  const on = (s: number): Point => ({ x: tip.x + out.x * s, y: tip.y + out.y * s });
  const thick = SIZE.thick * type;
  const cap = { 'stroke-linecap': red ? 'round' : 'butt' } as const;
  const fill = red ? (theme.bands.RD ?? theme.paper) : theme.ink;
  pen.line([tip, on(needle)], {
    stroke: theme.ink,
    'stroke-width': LINE.outline + 1,
    'stroke-linecap': 'round',
  });
  pen.circle(tip, 2.6, { fill: theme.ink });
  const end = lengthOf(needle, type) - thick / 2;
  const edge = red ? 0 : thick / 2;
  const handle = (inset: number): readonly Point[] => [
    on(needle + thick / 2 - edge + inset),
    on(end + edge - inset),
  ];
  pen.line(handle(0), { stroke: theme.ink, 'stroke-width': thick, ...cap });
  pen.line(handle(red ? 0 : 1.5), { stroke: fill, 'stroke-width': thick - 3, ...cap });
  pen.rect(flag, {
    ...(red ? { rx: flag.height / 2 } : {}),
    fill: red ? theme.paper : theme.ink,
    stroke: theme.ink,
    'stroke-width': LINE.outline,
  });
  pen.text(words, centreOf(flag), { size: type, weight: 'bold', fill: red ? theme.ink : theme.paper });
}
