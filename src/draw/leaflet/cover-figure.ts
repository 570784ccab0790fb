/** The wiring as a picture for a title page: no words, which nobody could read in that size. */
import { is } from '../../parts/index.ts';
import { rectToSheet } from '../../place/frame.ts';
import { CLASS } from '../classes.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import { drawFace, type Look, tagLook } from '../part.ts';
import { Pen } from '../pen.ts';
import { themes } from '../theme.ts';
import { type Box, cropAbout, type Figure, figureOf, type PrintTheme, scaleIn } from './figure.ts';
import { harnessOf, roomsOf } from './harness.ts';
import { drawHarness } from './harness-drawing.ts';
import type { Made } from './joint-ends.ts';

const AIR = 8;

/**
 * All parts, lugs and joints without their names.
 *
 * @param box millimetres; the picture is as large as it allows
 */
export function coverFigure(
  prepared: Prepared,
  box: Box,
  { alt, theme: name = 'light' }: { readonly alt: string; readonly theme?: PrintTheme },
): Figure {
  const sheet = sheetOf(prepared);
  const theme = themes[name];
  const id = `${sheet.id}-leaflet-cover`;
  const made = sheet.lines.map((): Made => 'plain');
  // Nothing is named, so that no lug's tag is larger than its place.
  const harness = harnessOf({ sheet, theme, made, concerned: new Set(), type: 0 });
  const look: Look = {
    theme,
    language: sheet.language,
    closed: sheet.closed,
    turned: sheet.turned,
    joined: new Set(),
    meeting: new Set(),
    highlighted: new Set(),
    tints: sheet.tints,
    least: Number.POSITIVE_INFINITY,
  };
  const lines = harness.paths.flat().map(({ x, y }) => ({ x: x - 4, y: y - 4, width: 8, height: 8 }));
  const crop = cropAbout([...harness.parts.flatMap(roomsOf), ...lines], AIR);
  const frame = { crop, scale: scaleIn(crop, box), type: 0 };
  return figureOf({ id, title: sheet.title, language: sheet.language, alt, ...frame, theme }, (pen) => {
    const drawing = pen.group({ id: `${id}-drawing` });
    for (const placed of harness.parts) {
      const group = drawing.group({ id: `${id}-part-${placed.part.name}` });
      drawFace(new Pen(group.into, placed.frame), placed, look);
      const lugs = is(placed.part, 'component') ? [] : placed.outline.lugs.filter(({ surface }) => !surface);
      for (const { tag } of lugs)
        group.rect(rectToSheet(placed.frame, tag), { class: CLASS.tag, ...tagLook(theme, true) });
    }
    // The joints alone: the parts stand already.
    drawHarness(drawing, id, { ...harness, parts: [] }, crop);
  });
}
