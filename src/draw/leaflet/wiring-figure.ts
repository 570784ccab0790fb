/** The wiring by itself, cropped to its parts and wires, as large as a box on the paper allows. */
import type { Rect } from '../../common/geometry.ts';
import { TYPE } from '../../parts/outline.ts';
import { labelsToSheet, rectToSheet } from '../../place/frame.ts';
import { chipsOf, drawChip } from '../chips.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import { highlightBox } from '../highlight.ts';
import { drawWiring, type Sheet } from '../sheet.ts';
import { themes } from '../theme.ts';
import { runsOf } from './beads.ts';
import { codesOf } from './codes.ts';
import {
  type Box,
  cropAbout,
  type Figure,
  figureOf,
  frameIn,
  LEAST,
  type PrintTheme,
  scaleIn,
  sizeOf,
} from './figure.ts';
import { extentOf, type Harness, harnessOf, roomsOf } from './harness.ts';
import { drawHarness } from './harness-drawing.ts';
import type { Made } from './joint-ends.ts';
import { roomOf } from './tags.ts';

const AIR = 6;
/** Of the widest line. */
const WIDE = 14;

/**
 * The wiring in a box. Where its smallest type would be less than that of a leaflet, names, values, tags and codes are drawn larger, and what the annotation
 * says of parts is left out.
 *
 * @param box millimetres
 */
export function wiringFigure(
  prepared: Prepared,
  box: Box,
  { alt, theme: name = 'light' }: { readonly alt: string; readonly theme?: PrintTheme },
): Figure {
  const sheet = sheetOf(prepared);
  const theme = themes[name];
  const id = `${sheet.id}-leaflet-wiring`;
  const crop = cropAbout(contentsOf(sheet), AIR);
  const scale = scaleIn(crop, box);
  const head = { id, title: sheet.title, language: sheet.language, alt, theme };
  if (TYPE.lug >= sizeOf(LEAST, scale)) {
    const plain = { ...head, crop, scale, type: TYPE.lug };
    return figureOf(plain, (pen) => drawWiring(pen, { ...sheet, id }, { x: 0, y: 0 }, theme));
  }
  const concerned = new Set(sheet.placement.parts.map(({ part }) => part.name));
  const made = sheet.lines.map((): Made => 'plain');
  const harnessAt = (type: number, within?: Rect): Harness =>
    harnessOf({ sheet, theme, made, concerned, type, values: 'all', ...(within ? { within } : {}) });
  const frame = frameIn(box, (type) => {
    const harness = harnessAt(type);
    return cropAbout([...extentOf(harness), ...codesOf(harness).map(({ rect }) => rect)], AIR);
  });
  const harness = harnessAt(frame.type, frame.crop);
  return figureOf({ ...head, ...frame }, (pen) => {
    const drawing = pen.group({ id: `${id}-drawing` });
    drawHarness(drawing, id, harness, frame.crop);
    const codes = drawing.group({ id: `${id}-colours` });
    for (const { code, rect } of codesOf(harness)) drawChip(codes, code, rect, theme, frame.type);
  });
}

/** What there is on the paper. */
function contentsOf({ placement, highlighted }: Sheet): readonly Rect[] {
  return [
    ...placement.parts.flatMap((placed) => [
      ...roomsOf(placed),
      ...labelsToSheet(placed.frame, placed.outline).map(roomOf),
      ...(highlighted.has(placed.part.name) ? [rectToSheet(placed.frame, highlightBox(placed.outline))] : []),
    ]),
    ...placement.wires.flatMap(({ points }) => runsOf(points, WIDE)),
    ...chipsOf(placement, highlighted).map(({ rect }) => rect),
  ];
}
