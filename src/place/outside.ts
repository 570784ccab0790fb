/** What it costs a wire to run outside all parts: one that goes round the sheet is hard to follow. */
import type { Rect } from '../common/geometry.ts';
import type { Grid, RoutedPath } from './route/grid.ts';

/**
 * Price of a grid step outside the box about all parts, besides what any step costs: a ground that runs round the sheet is harder
 * to follow than one that crosses another wire in its midst.
 */
const OUTSIDE = 1;

/** Price of every side of the box beyond the first that a wire runs round, half grid steps. */
const RING = 240;

/** Charges (`by` 1) every node outside a box on the grid, or takes that back (`by` −1). */
export function chargeOutside(grid: Grid, box: Rect, by: 1 | -1): void {
  const { columns, rows } = grid;
  const [right, bottom] = [box.x + box.width, box.y + box.height];
  for (let y = 0; y < rows; y++) {
    const within = y >= box.y && y <= bottom;
    for (let x = 0; x < columns; x++)
      if (!within || x < box.x || x > right) grid.charge(grid.node(x, y), by * OUTSIDE);
  }
}

/** Closes what lies beside a column: no wire leaves it. */
export function closeBeside(grid: Grid, first: number, widest: number): void {
  for (let x = 0; x < grid.columns; x++)
    if (x < first || x > first + widest) for (let y = 0; y < grid.rows; y++) grid.close(grid.node(x, y), 1);
}

/** Added to the score for wires that run round more than one side of a box. */
export function ringsPrice({ columns }: Grid, paths: readonly (RoutedPath | undefined)[], box: Rect): number {
  const [right, bottom] = [box.x + box.width, box.y + box.height];
  let rings = 0;
  for (const path of paths) {
    if (!path) continue;
    let sides = 0;
    for (const node of path.nodes) {
      const x = node % columns;
      const y = Math.floor(node / columns);
      sides |= (x < box.x ? 1 : 0) | (x > right ? 2 : 0) | (y < box.y ? 4 : 0) | (y > bottom ? 8 : 0);
    }
    rings += RING * Math.max(0, bitsOf(sides) - 1);
  }
  return rings;
}

const bitsOf = (sides: number): number => [1, 2, 4, 8].filter((side) => (sides & side) !== 0).length;
