/** What the figures of a leaflet have in common: the box on the page that one is drawn for, and what is known of it then. */
import { type Rect, rectAbout, round2 } from '../../common/geometry.ts';
import type { Language } from '../../messages/language.ts';
import { TYPE } from '../../parts/outline.ts';
import { openSheet } from '../head.ts';
import { textOf } from '../headless.ts';
import type { Pen } from '../pen.ts';
import type { Theme, ThemeName } from '../theme.ts';

/** Room for a figure on the paper, millimetres. */
export interface Box {
  readonly width: number;
  readonly height: number;
}

/** Paper to print on is light: in colour, or for a printer without. */
export type PrintTheme = Extract<ThemeName, 'light' | 'print'>;

export interface Figure {
  /** The text of an SVG file whose size is in millimetres. */
  readonly svg: string;
  /** Millimetres; no more than the box. */
  readonly width: number;
  readonly height: number;
  /** What it shows, for those who cannot see it. */
  readonly alt: string;
  /** Its smallest type, points (1/72 inch). */
  readonly smallest: number;
}

/** Millimetres of a point, 1/72 inch. */
export const POINT = 25.4 / 72;
/** The least type of a leaflet, points. */
export const LEAST = 7;
/** Millimetres of a drawing unit at most: larger, lines would look coarse. */
const MOST = 0.34;

/** Millimetres of a drawing unit where the crop fills the box. */
export const scaleIn = (crop: Rect, { width, height }: Box): number =>
  Math.min(MOST, width / crop.width, height / crop.height);

/** The size of type that is so many points on paper, drawing units. */
export const sizeOf = (points: number, scale: number): number => (points * POINT) / scale;

/** Draws a figure of what lies in `crop`. */
export function figureOf(
  {
    id,
    title,
    language,
    alt,
    crop,
    scale,
    type,
    theme,
  }: {
    readonly id: string;
    readonly title: string;
    readonly language: Language;
    readonly alt: string;
    readonly crop: Rect;
    /** Millimetres of a drawing unit. */
    readonly scale: number;
    /** Size of the smallest type, drawing units. */
    readonly type: number;
    readonly theme: Theme;
  },
  drawing: (pen: Pen) => void,
): Figure {
  // Down, so that the figure is never larger than its box.
  const down = (n: number): number => Math.floor(n * 100 + 1e-6) / 100;
  const [width, height] = [down(crop.width * scale), down(crop.height * scale)];
  const svg = textOf((root) => {
    const head = {
      id,
      title,
      language,
      description: alt,
      box: crop,
      width: `${width}mm`,
      height: `${height}mm`,
    };
    drawing(openSheet(root, head, theme));
  });
  return { svg, width, height, alt, smallest: round2((type * scale) / POINT) };
}

/** Rounds in which type grows with what a unit comes to, and the crop with what type takes up. */
const ROUNDS = 12;

/** The crop of a figure, millimetres of its drawing unit, and the size of its type, drawing units. */
export interface Frame {
  readonly crop: Rect;
  readonly scale: number;
  readonly type: number;
}

/** The frame of a figure in a box with type of `LEAST` points or more, where its crop grows with its type. */
export function frameIn(box: Box, cropAt: (type: number) => Rect): Frame {
  let type: number = TYPE.lug;
  let crop = cropAt(type);
  for (let round = 0; round < ROUNDS; round++) {
    const least = sizeOf(LEAST, scaleIn(crop, box));
    if (type >= least) break;
    // A little more than it lacks, as the crop grows too.
    type = Math.ceil(least * 10.1) / 10;
    crop = cropAt(type);
  }
  return { crop, scale: scaleIn(crop, box), type };
}

/** A crop about rectangles with so much air, to hundredths. */
export function cropAbout(rects: readonly Rect[], air: number): Rect {
  const { x, y, width, height } = rectAbout(rects);
  return {
    x: round2(x - air),
    y: round2(y - air),
    width: round2(width + 2 * air),
    height: round2(height + 2 * air),
  };
}
