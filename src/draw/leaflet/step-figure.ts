/**
 * The drawings of a kit's soldering steps, all cropped alike: to everything that the parts and wires of the whole kit take up. So every part is at the same place
 * and of the same size from step to step, and who looks from one to the next sees only what is new.
 */
import type { Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { is } from '../../parts/index.ts';
import { TYPE } from '../../parts/outline.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import type { Sheet } from '../sheet.ts';
import { ruled, type Theme, themes } from '../theme.ts';
import {
  type Box,
  cropAbout,
  type Figure,
  type Frame,
  figureOf,
  frameIn,
  type PrintTheme,
} from './figure.ts';
import { extentOf, type Harness, harnessOf } from './harness.ts';
import { drawHarness } from './harness-drawing.ts';
import type { EndLook, EndName, Made } from './joint-ends.ts';
import { drawMarks, type Marks, marksOf } from './marks.ts';
import { type SampleName, samplesOf } from './samples.ts';
import type { FigureStep } from './step.ts';

interface StepLook<S extends FigureStep = FigureStep> {
  readonly theme?: PrintTheme;
  /** How high figures may be where they are crowded and become larger by it, millimetres; as high as the box where it is left out. */
  readonly tallest?: number;
  /** What each figure shows, in words. */
  readonly altOf: (step: S) => string;
  /** The room of a sample, millimetres, and what it shows, in words; none are drawn where it is left out. */
  readonly sample?: { readonly box: Box; readonly alt: (name: SampleName) => string };
}

/** Around everything, so that numbers beside the outermost lugs have room. */
const MARGIN = 20;

/** By how much larger figures are higher than usual. */
const WORTH = 1.08;

/** The harness of a kit with all of its parts, joints and words. */
function wholeOf(sheet: Sheet, theme: Theme, type: number, within?: Rect): Harness {
  const { parts } = sheet.placement;
  const concerned = new Set(parts.map(({ part }) => part.name));
  const made = sheet.lines.map((): Made => 'new');
  const values = componentsOf(concerned, sheet);
  return harnessOf({ sheet, theme, made, concerned, type, values, ...(within ? { within } : {}) });
}

/** Of some parts those that are components. */
const componentsOf = (names: ReadonlySet<string>, { placement }: Sheet): ReadonlySet<string> =>
  new Set(
    placement.parts.flatMap(({ part }) => (names.has(part.name) && is(part, 'component') ? part.name : [])),
  );

/** A step as it is drawn. */
interface Drawn<S extends FigureStep> {
  readonly step: S;
  readonly harness: Harness;
  readonly marks: Marks;
}

/** The figures of a kit's steps, and what explains them. */
interface StepFigures {
  /** A figure a step, in their order. */
  readonly figures: readonly Figure[];
  /** Pieces of them that show what a mark looks like; without those of which the kit has none. */
  readonly samples: Readonly<Partial<Record<SampleName, Figure>>>;
}

/**
 * Figures of steps. The joints of a step are numbered as they stand in it, at both ends: on a filled disc where the end is soldered in
 * this step, on an open one where it is only hooked in. What was hooked in earlier and is soldered in this step has a mark of its own.
 */
export function stepFigures<S extends FigureStep>(
  prepared: Prepared,
  steps: readonly S[],
  box: Box,
  { theme: name = 'light', tallest = box.height, altOf, sample }: StepLook<S>,
): StepFigures {
  const sheet = sheetOf(prepared);
  const theme = themes[name];
  const frameFor = (room: Box): Frame =>
    frameIn(room, (type) => cropAbout(extentOf(wholeOf(sheet, theme, type)), MARGIN));
  const usual = frameFor(box);
  const high = usual.type > TYPE.lug && tallest > box.height ? frameFor({ ...box, height: tallest }) : usual;
  const frame = high.scale > WORTH * usual.scale ? high : usual;
  // Every step has every word at the same place.
  const { told } = wholeOf(sheet, theme, frame.type, frame.crop);
  const drawn = steps.map((step, i): Drawn<S> => {
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
    const endLook = (joint: number, end: EndName): EndLook => {
      const soldered = steps.flatMap(({ details }) => details).find(({ index }) => index === joint)?.[
        end
      ].soldered;
      if (typeof soldered !== 'object' || soldered.later < step.number) return 'soldered';
      return soldered.later === step.number ? 'gathered' : 'hooked';
    };
    const values = componentsOf(concerned, sheet);
    const harness = harnessOf({
      sheet,
      theme,
      made,
      concerned,
      type: frame.type,
      values,
      told,
      before: endLook,
    });
    return { step, harness, marks: marksOf(harness, step, frame) };
  });
  const look = { title: sheet.title, language: sheet.language, ...frame, theme };
  return {
    figures: drawn.map(({ step, harness, marks }) => {
      const id = `${sheet.id}-leaflet-step-${step.number}`;
      return figureOf({ ...look, id, alt: altOf(step) }, (pen) => {
        const drawing = pen.group({ id: `${id}-drawing` });
        drawHarness(drawing, id, harness, frame.crop);
        drawMarks(drawing, id, harness, marks, frame, frame.crop);
      });
    }),
    samples: sample
      ? Object.fromEntries(
          samplesOf(drawn, frame, sample.box).map(({ name: of, harness, marks, crop }) => {
            const id = `${sheet.id}-leaflet-sample-${of}`;
            const figure = figureOf({ ...look, id, alt: sample.alt(of), crop }, (pen) => {
              const drawing = pen.group({ id: `${id}-drawing` });
              drawHarness(drawing, id, harness, crop);
              drawMarks(drawing, id, harness, marks, frame, crop);
              drawing.rect(crop, { fill: 'none', ...ruled(theme) });
            });
            return [of, figure];
          }),
        )
      : {},
  };
}
