/**
 * The drawings of a kit's soldering steps, all cropped alike: to everything that the parts and wires of the whole kit take up. So every part is at the same place
 * and of the same size from step to step, and who looks from one to the next sees only what is new.
 */
import { type Point, round2 } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { is } from '../../parts/index.ts';
import { rectToSheet } from '../../place/frame.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import type { Pen } from '../pen.ts';
import type { Sheet } from '../sheet.ts';
import { type Theme, themes } from '../theme.ts';
import { type Bead, beadsOf, type End, runsOf } from './beads.ts';
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
  endAt,
  extentOf,
  type Harness,
  harnessOf,
  type Made,
  solderedEnds,
} from './harness.ts';

/** What a step's figure needs to know of a step. */
export interface FigureStep {
  /** Counted from 1. */
  readonly number: number;
  /** Indices into the circuit's joints. */
  readonly joints: readonly number[];
}

export interface StepLook {
  readonly theme?: PrintTheme;
  /** What each figure shows, by step, in words. */
  readonly altOf: (step: FigureStep) => string;
  /** The number of a joint's line in the step's checklist; as they stand in the step, counted from 1, where left out. */
  readonly numberOf?: (joint: number) => number;
  /** Whether an end of a new joint is only hooked in, to be soldered in a later step; none where left out. */
  readonly hooked?: (joint: number, end: EndName) => boolean;
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

/** A figure a step, in their order. */
export function stepFigures(
  prepared: Prepared,
  steps: readonly FigureStep[],
  box: Box,
  look: StepLook,
): readonly Figure[] {
  const sheet = sheetOf(prepared);
  const theme = themes[look.theme ?? 'light'];
  const frame = frameOf(sheet, theme, box);
  return steps.map((step, i) => {
    const before = new Set(steps.slice(0, i).flatMap(({ joints }) => joints));
    const made = sheet.lines.map(
      (_, joint): Made => (step.joints.includes(joint) ? 'new' : before.has(joint) ? 'before' : 'absent'),
    );
    const concerned = new Set(
      step.joints.flatMap((joint) => {
        const { from, to } = nth(sheet.placement.wires, joint).joint;
        return [from.part, to.part];
      }),
    );
    const harness = harnessOf({ sheet, theme, made, concerned, type: frame.type });
    const id = `${sheet.id}-leaflet-step-${step.number}`;
    const alt = look.altOf(step);
    return figureOf({ id, title: sheet.title, alt, ...frame, theme }, (pen) => {
      const drawing = pen.group({ id: `${id}-drawing` });
      drawHarness(drawing, id, harness, frame.crop);
      drawNumbers(drawing.group({ id: `${id}-numbers` }), id, harness, step, frame, look);
    });
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
  step: FigureStep,
  { crop, type }: Frame,
  { numberOf = (joint) => step.joints.indexOf(joint) + 1, hooked = () => false }: StepLook,
): void {
  const { sheet, paths, theme } = harness;
  const { wires } = sheet.placement;
  const ends = step.joints.flatMap((joint) =>
    solderedEnds(wires, nth(wires, joint)).map((end): Numbered => {
      const path = nth(paths, joint);
      return {
        joint,
        end,
        number: numberOf(joint),
        hooked: hooked(joint, end),
        line: {
          points: end === 'from' ? path : [...path].reverse(),
          others: step.joints.flatMap((other) => (other === joint ? [] : runsOf(nth(paths, other), WIDE))),
        },
      };
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
    drawNumber(pen, id, one, nth(beads, i), endAt(harness, one.joint, one.end), { radius, type, theme });
  });
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
