/**
 * The drawings of a kit's soldering steps, all cropped alike: to everything that the parts and wires of the whole kit take up. So every part is at the same place
 * and of the same size from step to step, and who looks from one to the next sees only what is new.
 */
import { lugIdOf } from '../../circuit/circuit.ts';
import { type Point, round2 } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { is } from '../../parts/index.ts';
import { rectToSheet } from '../../place/frame.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import type { Pen } from '../pen.ts';
import type { Sheet } from '../sheet.ts';
import { type Theme, themes } from '../theme.ts';
import { type Bead, beadsOf, type End, pointAt, runsOf } from './beads.ts';
import {
  type Box,
  cropAbout,
  type Figure,
  type Frame,
  figureOf,
  frameIn,
  type PrintTheme,
} from './figure.ts';
import {
  drawHarness,
  type EndName,
  endNames,
  extentOf,
  type Harness,
  harnessOf,
  type Made,
} from './harness.ts';

/** Whether an end of a joint is soldered in its step, is only hooked until a later one, or needs no solder, as where a component leg leaves its body. */
export type Soldered = 'now' | 'none' | { readonly later: number };

/** What a figure needs to know of a step. */
export interface FigureStep {
  /** Counted from 1. */
  readonly number: number;
  /** Its joints in the order of the checklist's lines; `index` into the circuit's joints. */
  readonly details: readonly {
    readonly index: number;
    readonly from: { readonly soldered: Soldered };
    readonly to: { readonly soldered: Soldered };
  }[];
}

interface StepLook<S extends FigureStep = FigureStep> {
  readonly theme?: PrintTheme;
  /** What each figure shows, in words. */
  readonly altOf: (step: S) => string;
}

/** Around everything, so that numbers beside the outermost lugs have room. */
const MARGIN = 20;

/** The frame that all steps of a kit have in common: all of its parts and joints. */
function frameOf(sheet: Sheet, theme: Theme, box: Box): Frame {
  const concerned = new Set(sheet.placement.parts.map(({ part }) => part.name));
  const made = sheet.lines.map((): Made => 'new');
  return frameIn(box, (type) =>
    cropAbout(extentOf(harnessOf({ sheet, theme, made, concerned, type })), MARGIN),
  );
}

/**
 * A figure a step, in their order. The joints of a step are numbered as they stand in it, at both ends: on a filled disc where the end is soldered in
 * this step, on an open one where it is only hooked in.
 */
export function stepFigures<S extends FigureStep>(
  prepared: Prepared,
  steps: readonly S[],
  box: Box,
  { theme: name = 'light', altOf }: StepLook<S>,
): readonly Figure[] {
  const sheet = sheetOf(prepared);
  const theme = themes[name];
  const frame = frameOf(sheet, theme, box);
  return steps.map((step, i) => {
    const before = new Set(steps.slice(0, i).flatMap(({ details }) => details.map(({ index }) => index)));
    const now = step.details.map(({ index }) => index);
    const made = sheet.lines.map(
      (_, joint): Made => (now.includes(joint) ? 'new' : before.has(joint) ? 'before' : 'absent'),
    );
    const concerned = new Set(
      now.flatMap((joint) => {
        const { from, to } = nth(sheet.placement.wires, joint).joint;
        return [from.part, to.part];
      }),
    );
    const hooked = (joint: number, end: EndName): boolean => {
      const soldered = steps.flatMap(({ details }) => details).find(({ index }) => index === joint)?.[
        end
      ].soldered;
      return typeof soldered === 'object' && soldered.later > step.number;
    };
    const harness = harnessOf({ sheet, theme, made, concerned, type: frame.type, hooked });
    const id = `${sheet.id}-leaflet-step-${step.number}`;
    return figureOf(
      { id, title: sheet.title, language: sheet.language, alt: altOf(step), ...frame, theme },
      (pen) => {
        const drawing = pen.group({ id: `${id}-drawing` });
        drawHarness(drawing, id, harness, frame.crop);
        drawNumbers(drawing.group({ id: `${id}-numbers` }), id, harness, step, frame);
      },
    );
  });
}

/** A number as large as names, in a ring. */
const radiusOf = (type: number, numbers: readonly number[]): number =>
  round2(type * (Math.max(...numbers) > 9 ? 0.95 : 0.8));
/** Of a solder joint's dot. */
const DOT = 4.4;

interface Numbered {
  readonly joint: number;
  readonly end: EndName;
  readonly number: number;
  readonly hooked: boolean;
  readonly line: End;
}

function drawNumbers(
  pen: Pen,
  id: string,
  harness: Harness,
  { details }: FigureStep,
  { crop, type }: Frame,
): void {
  const { paths, theme } = harness;
  const ends = details.flatMap((detail, i) =>
    endNames.flatMap((end): Numbered | [] => {
      const { index: joint } = detail;
      const { soldered } = detail[end];
      if (soldered === 'none') return [];
      const path = nth(paths, joint);
      const others = details.flatMap(({ index }) => (index === joint ? [] : runsOf(nth(paths, index), WIDE)));
      const line = { points: end === 'from' ? path : [...path].reverse(), others };
      return { joint, end, number: i + 1, hooked: soldered !== 'now', line };
    }),
  );
  const bodies = harness.parts.flatMap(({ part, frame, outline }) =>
    is(part, 'component') ? [rectToSheet(frame, outline.body)] : [],
  );
  const radius = radiusOf(
    type,
    ends.map(({ number }) => number),
  );
  const beads = beadsOf(
    ends.map(({ line }) => line),
    radius,
    [...harness.words, ...bodies],
    crop,
  );
  ends.forEach((one, i) => {
    drawNumber(pen, id, one, nth(beads, i), dotAt(harness, one), { radius, type, theme });
  });
}

/** How far along its line the dot stands before a tag, so that it touches the tag and hides nothing of the lug's name. */
const BEFORE_TAG = 4.5;

/** Where an end's dot stands: before its tag, or on the surface that it is soldered to. */
function dotAt({ sheet, tags }: Harness, { joint, end, line }: Numbered): Point {
  const lug = lugIdOf(nth(sheet.placement.wires, joint).joint[end]);
  return pointAt(line.points, tags.has(lug) ? BEFORE_TAG : 0);
}

/** Width of a new line with its outline, near enough. */
const WIDE = 14;

function drawNumber(
  pen: Pen,
  id: string,
  { joint, end, number, hooked }: Numbered,
  { centre, beside }: Bead,
  tip: Point,
  { radius, type, theme }: { radius: number; type: number; theme: Theme },
): void {
  const group = pen.group({ id: `${id}-end-${joint + 1}-${end}` });
  const ring = { stroke: theme.ink, 'stroke-width': 2 };
  if (beside) group.line([tip, centre], { stroke: theme.ink, 'stroke-width': 1.5 });
  // Paper about the dot, so that it is seen on a black wire too.
  group.circle(tip, DOT + 2.4, { fill: theme.paper });
  group.circle(tip, DOT, { fill: hooked ? theme.paper : theme.ink, ...ring });
  group.circle(centre, radius, { fill: hooked ? theme.paper : theme.ink, ...ring });
  group.text(String(number), centre, {
    size: type,
    weight: 'bold',
    fill: hooked ? theme.ink : theme.paper,
  });
}
