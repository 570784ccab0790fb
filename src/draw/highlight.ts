/** Where a highlighted part has its box: faces draw it, colour codes keep off it. */
import type { Rect } from '../common/geometry.ts';
import type { Outline } from '../parts/outline.ts';

const INSET = 16;

/** In the part's own coordinates. */
export const highlightBox = ({ width, height }: Outline): Rect => ({
  x: INSET,
  y: -6,
  width: width - 2 * INSET,
  height: height + 10,
});
