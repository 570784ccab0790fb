/** What of a placement's price the wires have no part in: how far it spreads, and pickups that stand otherwise than on the instrument. */
import { isPickup } from '../parts/index.ts';
import type { GridPart } from './placement.ts';
import { bounds } from './wiring.ts';

/** Price of a grid step of the drawing's width and of its height. */
const SPRAWL = 10;
/** Prices of pickups out of order, facing different ways, out of line, and with hot on top in one and at the bottom in another. */
const DISORDER = 300;
const FACING = 100;
const OUT_OF_LINE = 60;
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
    if (upper.column !== lower.column && upper.row !== lower.row) price += OUT_OF_LINE;
  });
  return price;
}
