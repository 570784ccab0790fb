/**
 * The drawings of a kit's soldering steps, all cropped alike: to everything that the parts and wires of the whole kit take up. So every part is at the same place
 * and of the same size from step to step, and who looks from one to the next sees only what is new.
 */
import { nth } from '../../common/must.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import type { Sheet } from '../sheet.ts';
import { type Theme, themes } from '../theme.ts';
import {
  type Box,
  cropAbout,
  type Figure,
  type Frame,
  figureOf,
  frameIn,
  type PrintTheme,
} from './figure.ts';
import { type EndName, extentOf, harnessOf, type Made } from './harness.ts';
import { drawHarness } from './harness-drawing.ts';
import { drawMarks } from './marks.ts';
import type { FigureStep } from './step.ts';

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
        drawMarks(drawing, id, harness, step, frame);
      },
    );
  });
}
