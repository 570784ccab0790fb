/** The wiring by itself, cropped to its parts and wires, as large as a box on the paper allows whichever way that is turned. */
import type { Rect } from '../../common/geometry.ts';
import { TYPE } from '../../parts/outline.ts';
import { labelsToSheet, rectToSheet } from '../../place/frame.ts';
import { chipsOf } from '../chips.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import { highlightBox } from '../highlight.ts';
import { drawWiring, type Sheet } from '../sheet.ts';
import { themes } from '../theme.ts';
import { runsOf } from './beads.ts';
import { type Box, cropAbout, type Figure, figureOf, type PrintTheme, scaleIn } from './figure.ts';
import { roomsOf } from './harness.ts';
import { roomOf } from './tags.ts';

const AIR = 6;
/** Of the widest line. */
const WIDE = 14;

interface WiringFigure extends Figure {
  /** Whether it is drawn for the box turned by a quarter, in which it is larger. */
  readonly turned: boolean;
}

/** @param box the room on a page as it stands; a page that is turned has it turned too */
export function wiringFigure(
  prepared: Prepared,
  box: Box,
  { alt, theme: name = 'light' }: { readonly alt: string; readonly theme?: PrintTheme },
): WiringFigure {
  const sheet = sheetOf(prepared);
  const theme = themes[name];
  const crop = cropAbout(contentsOf(sheet), AIR);
  const aside = { width: box.height, height: box.width };
  const turned = scaleIn(crop, aside) > scaleIn(crop, box);
  const scale = scaleIn(crop, turned ? aside : box);
  const id = `${sheet.id}-leaflet-wiring`;
  const figure = figureOf(
    { id, title: sheet.title, language: sheet.language, alt, crop, scale, type: TYPE.lug, theme },
    (pen) => drawWiring(pen, { ...sheet, id }, { x: 0, y: 0 }, theme),
  );
  return { ...figure, turned };
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
