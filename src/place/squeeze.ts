/** Rows of a column that nothing needs are taken out: steps that move one part at a time never bring all that is below it nearer. */
import { nth } from '../common/must.ts';
import { scoreOf } from './improve.ts';
import type { GridPart } from './placement.ts';
import { boxOf, clash } from './settle.ts';
import type { Wiring } from './wiring.ts';

/** Rows taken out at once, the most first. */
const ROWS = [16, 8, 4, 2, 1] as const;

/**
 * Takes rows out above each part, all parts that begin there or further down moving up together, as long as the score falls.
 *
 * @param between room kept free between parts, grid units
 */
export function squeeze(wiring: Wiring, between: number): void {
  for (const name of downwards(wiring.gridParts))
    for (const by of ROWS) while (takenOut(wiring, name, by, between));
}

const downwards = (gridParts: readonly GridPart[]): readonly string[] =>
  [...gridParts].sort((a, b) => a.row - b.row).map(({ part }) => part.name);

/** Whether so many rows above a part could be taken out; else all is as it was. */
function takenOut(wiring: Wiring, name: string, by: number, between: number): boolean {
  const { gridParts } = wiring;
  const top = gridParts.find(({ part }) => part.name === name)?.row ?? 0;
  const isAbove = gridParts.map(({ row }) => row < top);
  if (!isAbove.includes(true)) return false;
  const moved = gridParts.map((one, i) => (isAbove[i] ? one : { ...one, row: one.row - by }));
  const boxes = moved.map(boxOf);
  const meets = boxes.some((a, i) =>
    boxes.some(
      (b, k) =>
        isAbove[i] &&
        !isAbove[k] &&
        clash(a, b, between) &&
        !clash(boxOf(nth(gridParts, i)), boxOf(nth(gridParts, k)), between),
    ),
  );
  if (meets) return false;
  const before = wiring.remember();
  const score = scoreOf(wiring);
  if (wiring.move(moved, Number.POSITIVE_INFINITY) && scoreOf(wiring) < score) return true;
  wiring.restore(before);
  return false;
}
