/** What a column has no room for, as far as it is known before a wire is laid. */
import { nth } from '../common/must.ts';
import type { Joint } from '../describe/kit.ts';
import { directionToSheet } from './frame.ts';
import type { Lines } from './lines.ts';
import { type GridPart, standing } from './placement.ts';
import { type Places, turnedThus, WAYS } from './places.ts';
import { frameOf } from './wiring.ts';

export class Lanes {
  readonly #widest: number;
  /** By part and way it stands: how many wires leave it to the left, and to the right. */
  readonly #leaving: Int32Array;

  /** @param widest grid units: of a column from 0 */
  constructor(gridParts: readonly GridPart[], joints: readonly Joint[], widest: number) {
    this.#widest = widest;
    this.#leaving = Int32Array.from(
      gridParts.flatMap((one) =>
        Array.from({ length: WAYS }, (_, way) => leaving(turnedThus(one, way), joints)).flat(),
      ),
    );
  }

  /** How far parts that reach from `left` to `right` leave the column. */
  outside(left: number, right: number): number {
    return Math.max(0, -left) + Math.max(0, right - this.#widest);
  }

  /**
   * How many wires too many there are: each part lets as many by as there are columns free at the height of its middle, and between a
   * part and the edge of the column each lane takes one wire up and one down.
   */
  missing(places: Places, lines: Lines): number {
    const { column, row, way, width, height, count } = places;
    let missing = 0;
    for (let i = 0; i < count; i++) {
      const turned = i * WAYS + (way[i] ?? 0);
      const middle = (row[i] ?? 0) + (height[turned] ?? 0) / 2;
      missing += Math.max(0, lines.passing(middle) - this.#lanesAt(middle, places));
      const left = column[i] ?? 0;
      const right = this.#widest - left - (width[turned] ?? 0);
      missing += Math.max(0, (this.#leaving[2 * turned] ?? 0) - 2 * (left + 1));
      missing += Math.max(0, (this.#leaving[2 * turned + 1] ?? 0) - 2 * (right + 1));
    }
    return missing;
  }

  /** Columns that no part takes up at a height. */
  #lanesAt(y: number, { row, way, width, height, count }: Places): number {
    let lanes = this.#widest + 1;
    for (let k = 0; k < count; k++) {
      const turned = k * WAYS + (way[k] ?? 0);
      const top = row[k] ?? 0;
      if (y >= top && y <= top + (height[turned] ?? 0)) lanes -= (width[turned] ?? 0) + 1;
    }
    return lanes;
  }
}

/** How many of the joints of a part as it stands leave it to the left, and to the right, from lugs that have one usual side. */
function leaving(gridPart: GridPart, joints: readonly Joint[]): readonly [number, number] {
  const { lugs } = standing(gridPart);
  const frame = frameOf({ ...gridPart, column: 0, row: 0 }, 0, 0);
  const sides = joints
    .flatMap(({ from, to }) => [from, to])
    .flatMap((end) => {
      const lug = end.part === gridPart.part.name ? lugs.find((one) => one.lug === end.lug) : undefined;
      return lug && !lug.surface ? [-directionToSheet(frame, nth(lug.ports, 0).inward).x] : [];
    });
  return [sides.filter((x) => x < 0).length, sides.filter((x) => x > 0).length];
}
