/** The part of a placement's score that does not depend on its wires: its size, and how its pickups stand beside those on the instrument. */
import { nth } from '../common/must.ts';
import { isPickup } from '../parts/index.ts';
import { type GridPart, looseOnes } from './placement.ts';
import { wayOf } from './places.ts';
import { bounds } from './wiring.ts';

/** Price of a grid step of the drawing's width and of its height. */
const SPRAWL = 10;
/** The same before a wire is laid: a small sheet is narrow, and what wires pay for that shows only later. */
export const SPRAWL_UNLAID = 5;
/** Prices of two neighbouring pickups in the wrong order, facing different ways, not aligned, and with hot on top in only one. */
const DISORDER = 1000;
const FACING = 100;
const NOT_ALIGNED = 60;
const UPSIDE_DOWN = 20;

/** Numbers of the pickups that a seat does not say everything about. */
export const loosePickups = (gridParts: readonly GridPart[]): readonly number[] =>
  looseOnes(gridParts).filter((i) => isPickup(nth(gridParts, i).part));

/**
 * Half grid steps, as everything that a search weighs.
 *
 * @param inColumn whether the drawing's width is given, so that only its height has a price
 */
export function spread(gridParts: readonly GridPart[], inColumn: boolean): number {
  const box = bounds(gridParts);
  const stands = {
    column: gridParts.map(({ column }) => column),
    row: gridParts.map(({ row }) => row),
    way: gridParts.map(wayOf),
  };
  return (
    SPRAWL * Math.round((inColumn ? 0 : box.width) + box.height) + untidiness(stands, loosePickups(gridParts))
  );
}

/** By part. */
interface Stands {
  readonly column: ArrayLike<number>;
  readonly row: ArrayLike<number>;
  readonly way: ArrayLike<number>;
}

/** Left for right, however it came about: by the mirror or by half a turn. */
const facesLeft = (way: number): boolean => ((way & 1) === 1) !== (way >> 1 === 2);

/** @param pickups numbers of those that count, in the instrument's order */
export function untidiness({ column, row, way }: Stands, pickups: readonly number[]): number {
  let price = 0;
  for (let i = 1; i < pickups.length; i++) {
    const [upper, lower] = [nth(pickups, i - 1), nth(pickups, i)];
    const aside = nth(column, upper) - nth(column, lower);
    const down = nth(row, upper) - nth(row, lower);
    const [a, b] = [nth(way, upper), nth(way, lower)];
    if (down > 0 || (down === 0 && aside > 0)) price += DISORDER;
    if (facesLeft(a) !== facesLeft(b)) price += FACING;
    if (a >> 1 !== b >> 1) price += UPSIDE_DOWN;
    if (aside !== 0 && down !== 0) price += NOT_ALIGNED;
  }
  return price;
}
