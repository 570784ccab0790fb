/** What a column has no room for, as far as it is known before a wire is laid. */
import type { Lines } from './lines.ts';
import { type Places, WAYS } from './places.ts';

/** How far parts that reach from `left` to `right` leave a column from 0, grid units. */
export const outside = (left: number, right: number, widest: number): number =>
  Math.max(0, -left) + Math.max(0, right - widest);

/** How many wires too many go past the parts: each part lets as many by as there are columns free at the height of its middle. */
export function wiresWithoutLane(places: Places, lines: Lines, widest: number): number {
  const { row, way, height, count } = places;
  let missing = 0;
  for (let i = 0; i < count; i++) {
    const middle = (row[i] ?? 0) + (height[i * WAYS + (way[i] ?? 0)] ?? 0) / 2;
    missing += Math.max(0, lines.passing(middle) - lanesAt(middle, places, widest));
  }
  return missing;
}

/** Columns that no part takes up at a height. */
function lanesAt(y: number, { row, way, width, height, count }: Places, widest: number): number {
  let lanes = widest + 1;
  for (let k = 0; k < count; k++) {
    const turned = k * WAYS + (way[k] ?? 0);
    const top = row[k] ?? 0;
    if (y >= top && y <= top + (height[turned] ?? 0)) lanes -= (width[turned] ?? 0) + 1;
  }
  return lanes;
}
