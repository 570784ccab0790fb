/**
 * Where a multimeter's probes are put: the parts concerned in full, the joints made so far thin, and a probe on each of two lugs that hides nothing. The red one
 * and the black one are told apart by the words and the form of their flags too. All tests of a kit are drawn at one scale, so that a part is as large in each.
 */
import { type Point, round2 } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { TYPE } from '../../parts/outline.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import type { Pen } from '../pen.ts';
import { ruled, type Theme, themes } from '../theme.ts';
import { type Box, type Figure, figureOf, LEAST, POINT, type PrintTheme } from './figure.ts';
import { drawHarness } from './harness-drawing.ts';
import { drawProbe } from './probe.ts';
import { type Layout, layoutsOf, type Probing, type View } from './probe-views.ts';

/** Points of type in such a picture. */
const POINTS = LEAST + 0.1;
/** From one size of type to the next that is tried. */
const LARGER = 1.06;
/** A layout may be so much higher than the lowest where its parts lie as they do in the wiring. */
const HIGHER = 1.3;
/** How much larger than parts are drawn for type may be in all: one test that needs more is drawn smaller by itself, or it would make all others hard to read. */
const WORTH = 1.7;
/** Tries, after which type is some twelve times as large as parts are drawn for. */
const TRIES = 44;

/** Millimetres of a drawing unit at which type of this size is large enough. */
const scaleAt = (type: number): number => (POINTS * POINT) / type;

/**
 * A figure a test, in their order: each no larger than the box, and all at the largest scale that every one of them has room for; but one
 * that would take too much of all others' size is drawn smaller by itself.
 *
 * @param box millimetres
 */
export function probeFigures(
  prepared: Prepared,
  probings: readonly Probing[],
  box: Box,
  { theme: name = 'light' }: { readonly theme?: PrintTheme } = {},
): readonly Figure[] {
  const sheet = sheetOf(prepared);
  const theme = themes[name];
  /** The layout that shows a test at a size of type within the box. */
  const layoutAt = (probing: Probing, type: number): Layout | undefined => {
    const scale = scaleAt(type);
    const fitting = layoutsOf(sheet, theme, probing, type).filter(
      ({ crop }) => crop.width * scale <= box.width && crop.height * scale <= box.height,
    );
    const least = Math.min(...fitting.map(({ crop }) => crop.height));
    return fitting.find(({ crop }) => crop.height <= HIGHER * least);
  };
  const typeFor = (probing: Probing, from: number): number => {
    let type = from;
    for (let tried = 0; tried < TRIES && !layoutAt(probing, type); tried++)
      type = Math.ceil(type * LARGER * 10) / 10;
    return type;
  };
  const common = probings.reduce<number>(
    (type, probing) => Math.min(typeFor(probing, type), WORTH * TYPE.lug),
    TYPE.lug,
  );
  return probings.map((probing) => {
    // With other type a name may have moved, and need more room than at a smaller scale.
    const type = typeFor(probing, common);
    const layout = layoutAt(probing, type) ?? nth(layoutsOf(sheet, theme, probing, type), 0);
    const scale = Math.min(scaleAt(type), box.width / layout.crop.width, box.height / layout.crop.height);
    const id = `${sheet.id}-leaflet-${probing.id}`;
    const { title, language } = sheet;
    return figureOf(
      { id, title, language, alt: probing.alt, crop: layout.crop, scale, type, theme },
      (pen) => {
        const drawing = pen.group({ id: `${id}-drawing` });
        layout.views.forEach((view, i) => {
          // A joint may be seen in both windows, and an id is one element's.
          drawView(drawing, id, i === 0 ? id : `${id}-far`, view, nth(layout.places, i), type, theme);
        });
      },
    );
  });
}

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
