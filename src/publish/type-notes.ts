/** What is said of a drawing whose type comes out too small to read. */
import type { Aspect } from '../draw/compose.ts';
import { LEAST_TYPE, smallestType } from '../inspect/index.ts';

/** CSS pixels; smaller type is read only by those who make it larger. */
const LEAST_ON_SCREEN = 11;

export function typeNotes(
  name: string,
  svg: string,
  page: string | undefined,
  { width, step }: Aspect,
): readonly string[] {
  const size = width === undefined && page === undefined ? undefined : smallestType(svg);
  if (size === undefined) return [];
  const shown = (Math.floor(size * 10) / 10).toFixed(1);
  if (width === undefined)
    return size < LEAST_TYPE
      ? [
          `note      ${name}: type on ${page} is only ${shown} mm high; at least ${LEAST_TYPE} mm is readable. Use a larger page${step === undefined ? ', or --step' : ''}.`,
        ]
      : [];
  return size < LEAST_ON_SCREEN
    ? [
        `note      ${name}: type in the drawing is ${shown} px high at this width; at least ${LEAST_ON_SCREEN} px is readable. Let the page’s visitors enlarge the drawing.`,
      ]
    : [];
}
