/** The part of a placement's score that does not depend on its wires: its size, and how its pickups stand beside those on the instrument. */
import { nth } from '../common/must.ts';
import { isPickup } from '../parts/index.ts';
import { type GridPart, looseOnes } from './placement.ts';
import { type Box, boxOf } from './settle.ts';

/** Price of a grid step of the drawing's width and of its height. */
const SPRAWL = 10;
/** The same before a wire is laid: a small sheet is narrow, and what wires pay for that shows only later. */
export const SPRAWL_UNLAID = 5;
/** Prices of two neighbouring pickups in the wrong order, facing different ways, not aligned, and with hot on top in only one. */
const DISORDER = 300;
const FACING = 100;
const NOT_ALIGNED = 60;
const UPSIDE_DOWN = 20;

/** Numbers of the pickups that a seat does not say everything about. */
export const loosePickups = (gridParts: readonly GridPart[]): readonly number[] =>
  looseOnes(gridParts).filter((i) => isPickup(nth(gridParts, i).part));

/**
 * Half grid steps, as everything that a search weighs.
 *
 * @param boxes of the parts, where they are known
 * @param pickups as `loosePickups` tells them
 * @param sprawl price of a grid step of width or height
 */
export function spread(
  gridParts: readonly GridPart[],
  boxes: readonly Box[] = gridParts.map(boxOf),
  pickups = loosePickups(gridParts),
  sprawl = SPRAWL,
): number {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x0, y0, x1, y1 } of boxes) {
    if (x0 < left) left = x0;
    if (y0 < top) top = y0;
    if (x1 > right) right = x1;
    if (y1 > bottom) bottom = y1;
  }
  return sprawl * Math.round(right - left + bottom - top) + untidiness(gridParts, pickups);
}

/** Left for right, however it came about: by the mirror or by half a turn. */
const facesLeft = ({ turn, mirror }: GridPart): boolean => mirror !== (turn === 2);

function untidiness(gridParts: readonly GridPart[], pickups: readonly number[]): number {
  let price = 0;
  for (let i = 1; i < pickups.length; i++) {
    const upper = nth(gridParts, nth(pickups, i - 1));
    const lower = nth(gridParts, nth(pickups, i));
    if (upper.row > lower.row || (upper.row === lower.row && upper.column > lower.column)) price += DISORDER;
    if (facesLeft(upper) !== facesLeft(lower)) price += FACING;
    if (upper.turn !== lower.turn) price += UPSIDE_DOWN;
    if (upper.column !== lower.column && upper.row !== lower.row) price += NOT_ALIGNED;
  }
  return price;
}
