/**
 * Where a multimeter's probes are put: the parts concerned in full, the joints made so far thin, and a probe on each of two lugs that hides nothing. The red one
 * and the black one are told apart by the words and the form of their flags too. Two parts that lie far apart are shown in two windows.
 */
import { lugId } from '../../circuit/circuit.ts';
import { type Point, type Rect, round2 } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { TYPE } from '../../parts/outline.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import type { Pen } from '../pen.ts';
import { ruled, type Theme, themes } from '../theme.ts';
import { alone, pathsBetween } from './alone.ts';
import { runsOf } from './beads.ts';
import {
  type Box,
  cropAbout,
  type Figure,
  type Frame,
  figureOf,
  frameIn,
  LEAST,
  POINT,
  type PrintTheme,
} from './figure.ts';
import { type Harness, harnessOf, type Made, roomsOf, wordsOf } from './harness.ts';
import { drawHarness } from './harness-drawing.ts';
import { drawProbe, type Probe, probeRoom, probesOf } from './probe.ts';

interface ProbeSpot {
  readonly part: string;
  readonly lug: string;
  /** On its flag. */
  readonly words: string;
}

const MARGIN = 10;
/** Of a line. */
const WIDE = 6;
/** Between two windows. */
const GUTTER = 12;
/** Two windows are drawn where they are so much larger than one. */
const WORTH = 1.25;

/** Millimetres of a drawing unit at most, where names are as small as they may be: larger, the same part would differ from picture to picture. */
const MOST = ((LEAST + 0.1) * POINT) / TYPE.lug;

/** A window in which nothing is cut off. */
const EVERYWHERE: Rect = { x: -1e6, y: -1e6, width: 2e6, height: 2e6 };

/** Some of the harness through a window, with the probes that are seen there. */
interface View {
  readonly harness: Harness;
  readonly window: Rect;
  readonly probes: readonly { readonly number: number; readonly probe: Probe }[];
}

/** Views at a size of type, and where the windows of all stand in the figure. */
interface Layout {
  readonly views: readonly View[];
  readonly places: readonly Point[];
  readonly crop: Rect;
}

/**
 * @param joints those made by then, indices into the circuit's joints
 * @param spots of the first probe, which is red, and of the second, which is black
 */
export function probeFigure(
  prepared: Prepared,
  joints: readonly number[],
  spots: readonly [ProbeSpot, ProbeSpot],
  box: Box,
  {
    id: name,
    alt,
    theme: themeName = 'light',
    hooked,
  }: {
    readonly id: string;
    readonly alt: string;
    readonly theme?: PrintTheme;
    /** Whether an end of one of the joints is only hooked in by then; none where left out. */
    readonly hooked?: Harness['hooked'];
  },
): Figure {
  const sheet = sheetOf(prepared);
  const theme = themes[themeName];
  const made = sheet.lines.map((_, i): Made => (joints.includes(i) ? 'before' : 'absent'));
  const known = new Map<string, View>();
  /** Through one window the lugs of these numbers; the same one is asked for beside and below the other. */
  const viewOf = (type: number, numbers: readonly number[]): View => {
    const key = `${type} ${numbers}`;
    const view = known.get(key) ?? newView(type, numbers);
    known.set(key, view);
    return view;
  };
  const newView = (type: number, numbers: readonly number[]): View => {
    const concerned = new Set(numbers.map((number) => nth(spots, number).part));
    const whole = harnessOf({
      sheet,
      theme,
      made,
      concerned,
      named: concerned,
      type,
      ...(hooked ? { hooked } : {}),
    });
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
  const one = (type: number): Layout => {
    const view = viewOf(type, [0, 1]);
    return { views: [view], places: [view.window], crop: cropAbout([view.window], 1) };
  };
  const two =
    (aside: boolean) =>
    (type: number): Layout => {
      const views = [0, 1].map((number) => viewOf(type, [number]));
      const [{ window: a }, { window: b }] = [nth(views, 0), nth(views, 1)];
      const second = aside ? { x: a.width + GUTTER, y: 0 } : { x: 0, y: a.height + GUTTER };
      const crop = aside
        ? { x: 0, y: 0, width: second.x + b.width, height: Math.max(a.height, b.height) }
        : { x: 0, y: 0, width: Math.max(a.width, b.width), height: second.y + b.height };
      return { views, places: [{ x: 0, y: 0 }, second], crop: cropAbout([crop], 1) };
    };
  const whole = framed(box, one);
  const apart = spots[0].part === spots[1].part ? [] : [true, false].map((aside) => framed(box, two(aside)));
  const best = [...apart].sort((a, b) => b.frame.scale - a.frame.scale)[0];
  const { frame, layout } = best && best.frame.scale > WORTH * whole.frame.scale ? best : whole;
  const id = `${sheet.id}-leaflet-${name}`;
  return figureOf({ id, title: sheet.title, language: sheet.language, alt, ...frame, theme }, (pen) => {
    const drawing = pen.group({ id: `${id}-drawing` });
    layout.views.forEach((view, i) => {
      // A joint may be seen in both windows, and an id is one element's.
      drawView(drawing, id, i === 0 ? id : `${id}-far`, view, nth(layout.places, i), frame.type, theme);
    });
  });
}

const framed = (box: Box, layoutAt: (type: number) => Layout) => {
  const whole: Frame = frameIn(box, (type) => layoutAt(type).crop);
  const frame = { ...whole, scale: Math.min(whole.scale, MOST) };
  return { frame, layout: layoutAt(frame.type) };
};

function drawView(
  pen: Pen,
  id: string,
  again: string,
  { harness, window, probes }: View,
  place: Point,
  type: number,
  theme: Theme,
): void {
  const apart = place.x !== window.x || place.y !== window.y;
  const group = apart
    ? pen.group({ transform: `translate(${round2(place.x - window.x)} ${round2(place.y - window.y)})` })
    : pen;
  group.rect(window, { rx: 6, fill: 'none', ...ruled(theme) });
  drawHarness(group, id, harness, window, again);
  for (const { number, probe } of probes)
    drawProbe(group.group({ id: `${id}-probe-${number + 1}` }), probe, number, type, theme);
}
