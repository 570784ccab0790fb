/** A part's face by itself, for a parts list: upright whatever way it lies in the wiring, without words beside it. */
import { around, centreOf, round2 } from '../../common/geometry.ts';
import { faceOf, is, outlineOf, type Part } from '../../parts/index.ts';
import type { Outline } from '../../parts/outline.ts';
import { CLASS } from '../classes.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import { drawFace, tagLook } from '../part.ts';
import { Pen } from '../pen.ts';
import { themes } from '../theme.ts';
import { type Box, cropAbout, type Figure, figureOf, frameIn, type PrintTheme } from './figure.ts';

/** How much of a component's legs is seen on either side of its body. */
const LEG = 22;
const AIR = 3;

/**
 * The picture of a part as large as the box allows. Its smallest type is that printed on the part, as a capacitor's code is, or 0 where nothing is.
 */
export function partPicture(
  prepared: Prepared,
  part: Part,
  box: Box,
  { alt, theme: name = 'light' }: { readonly alt: string; readonly theme?: PrintTheme },
): Figure {
  const sheet = sheetOf(prepared);
  const theme = themes[name];
  const outline = trimmed(part, outlineOf(part));
  const { width, height } = outline;
  const frame = { x: 0, y: 0, width, height, turn: 0, mirror: false } as const;
  const tags = is(part, 'component') ? [] : outline.lugs.filter(({ surface }) => !surface);
  const { crop, scale } = frameIn(box, () =>
    cropAbout([outline.body, ...outline.lugs.map(({ tag }) => tag)], AIR),
  );
  const printed = faceOf(part, { outline, closed: [] }).flatMap((shape) =>
    shape.shape === 'text' ? [shape.size] : [],
  );
  const type = printed.length === 0 ? 0 : Math.min(...printed);
  const id = `${sheet.id}-leaflet-part-${part.name}`;
  return figureOf(
    { id, title: part.label, language: sheet.language, alt, crop, scale, type, theme },
    (pen) => {
      const group = new Pen(pen.into.group({ id: `${id}-drawing` }), frame);
      drawFace(
        group,
        { part, frame, outline },
        {
          theme,
          language: sheet.language,
          closed: sheet.closed,
          turned: sheet.turned,
          joined: new Set(),
          meeting: new Set(),
          highlighted: new Set(),
          tints: sheet.tints,
        },
      );
      for (const { tag } of tags) group.rect(tag, { class: CLASS.tag, ...tagLook(theme, true) });
    },
  );
}

/** The outline of a component with its legs cut short. */
function trimmed(part: Part, outline: Outline): Outline {
  if (!is(part, 'component')) return outline;
  const { body } = outline;
  const { y } = centreOf(body);
  const [left, right] = [body.x - LEG, body.x + body.width + LEG].map(round2);
  return {
    ...outline,
    lugs: outline.lugs.map((lug, i) => ({ ...lug, tag: around((i === 0 ? left : right) ?? 0, y, 4, 4) })),
  };
}
