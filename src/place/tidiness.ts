/** The part of a placement's score that does not depend on its wires: its size, and how its pickups stand beside those on the instrument. */
import { isPickup } from '../parts/index.ts';
import type { GridPart } from './placement.ts';
import { bounds } from './wiring.ts';

/** Price of a grid step of the drawing's width and of its height. */
const SPRAWL = 10;
/** Prices of two neighbouring pickups in the wrong order, facing different ways, not aligned, and with hot on top in only one. */
const DISORDER = 300;
const FACING = 100;
const NOT_ALIGNED = 60;
const UPSIDE_DOWN = 20;

/** Half grid steps, as everything that a search weighs. */
export function spread(gridParts: readonly GridPart[]): number {
  const box = bounds(gridParts);
  return SPRAWL * Math.round(box.width + box.height) + untidiness(gridParts);
}

/** Left for right, however it came about: by the mirror or by half a turn. */
const facesLeft = ({ turn, mirror }: GridPart): boolean => mirror !== (turn === 2);

function untidiness(gridParts: readonly GridPart[]): number {
  const pickups = gridParts.filter(({ part, fixed }) => isPickup(part) && !fixed);
  let price = 0;
  pickups.slice(1).forEach((lower, i) => {
    const upper = pickups[i];
    if (!upper) return;
    if (upper.row > lower.row || (upper.row === lower.row && upper.column > lower.column)) price += DISORDER;
    if (facesLeft(upper) !== facesLeft(lower)) price += FACING;
    if (upper.turn !== lower.turn) price += UPSIDE_DOWN;
    if (upper.column !== lower.column && upper.row !== lower.row) price += NOT_ALIGNED;
  });
  return price;
}
