/** Ways to show two probes: both in one window, or, where their parts lie far apart, each in its own, beside or below the other. */
import { lugId } from '../../circuit/circuit.ts';
import type { Point, Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import type { Sheet } from '../sheet.ts';
import type { Theme } from '../theme.ts';
import { alone, pathsBetween } from './alone.ts';
import { runsOf } from './beads.ts';
import { cropAbout } from './figure.ts';
import { type Harness, harnessOf, roomsOf, wordsOf } from './harness.ts';
import type { EndLook, EndName, Made } from './joint-ends.ts';
import { type Probe, probeRoom, probesOf } from './probe.ts';

interface ProbeSpot {
  readonly part: string;
  readonly lug: string;
  /** On its flag. */
  readonly words: string;
}

/** A test to be shown. */
export interface Probing {
  /** Unique in the leaflet. */
  readonly id: string;
  readonly alt: string;
  /** Those made by then, indices into the circuit's joints. */
  readonly joints: readonly number[];
  /** Of the first probe, which is red, and of the second, which is black. */
  readonly spots: readonly [ProbeSpot, ProbeSpot];
  /** Whether an end of one of the joints is only hooked in by then; none where left out. */
  readonly hooked?: (joint: number, end: EndName) => boolean;
}

const MARGIN = 10;
/** Of a line. */
const WIDE = 6;
/** Between two windows. */
const GUTTER = 12;

/** A window in which nothing is cut off. */
const EVERYWHERE: Rect = { x: -1e6, y: -1e6, width: 2e6, height: 2e6 };

/** Some of the harness through a window, with the probes that are seen there. */
export interface View {
  readonly harness: Harness;
  readonly window: Rect;
  readonly probes: readonly { readonly number: number; readonly probe: Probe }[];
}

/** Views at a size of type, and where the windows of all stand in the figure. */
export interface Layout {
  readonly views: readonly View[];
  readonly places: readonly Point[];
  readonly crop: Rect;
}

/** The layouts of a test at a size of type: one window first. */
export function layoutsOf(
  sheet: Sheet,
  theme: Theme,
  { joints, spots, hooked }: Probing,
  type: number,
): readonly Layout[] {
  const made = sheet.lines.map((_, i): Made => (joints.includes(i) ? 'before' : 'absent'));
  /** Through one window the lugs of these numbers. */
  const viewOf = (numbers: readonly number[]): View => {
    const concerned = new Set(numbers.map((number) => nth(spots, number).part));
    const scene = { sheet, theme, made, concerned, named: concerned, type };
    const before = (joint: number, end: EndName): EndLook => (hooked?.(joint, end) ? 'hooked' : 'soldered');
    const whole = harnessOf({ ...scene, before });
    const held = numbers.map((number) => {
      const { part, lug, words } = nth(spots, number);
      return { part, lug: lugId(part, lug), words };
    });
    const harness = alone(whole, concerned, EVERYWHERE);
    const probes = probesOf(harness, held).map((probe, i) => ({ number: nth(numbers, i), probe }));
    const parts = harness.parts.filter(({ part }) => concerned.has(part.name));
    const window = cropAbout(
      [
        ...parts.flatMap((placed) => [...roomsOf(placed), ...wordsOf(harness, placed)]),
        ...probes.flatMap(({ probe }) => probeRoom(probe, type)),
        ...pathsBetween(harness, concerned).flatMap((path) => runsOf(path, WIDE)),
      ],
      MARGIN,
    );
    return { harness: alone(harness, concerned, window), window, probes };
  };
  const both = viewOf([0, 1]);
  const one: Layout = { views: [both], places: [both.window], crop: cropAbout([both.window], 1) };
  if (spots[0].part === spots[1].part) return [one];
  const views = [viewOf([0]), viewOf([1])] as const;
  const [a, b] = [views[0].window, views[1].window];
  const [aside, below] = [
    {
      second: { x: a.width + GUTTER, y: 0 },
      width: a.width + GUTTER + b.width,
      height: Math.max(a.height, b.height),
    },
    {
      second: { x: 0, y: a.height + GUTTER },
      width: Math.max(a.width, b.width),
      height: a.height + GUTTER + b.height,
    },
  ];
  return [
    one,
    ...[aside, below].map(
      ({ second, width, height }): Layout => ({
        views,
        places: [{ x: 0, y: 0 }, second],
        crop: cropAbout([{ x: 0, y: 0, width, height }], 1),
      }),
    ),
  ];
}
