/** What a column has no room for, as far as it is known before a wire is laid. */
import { nth } from '../common/must.ts';
import type { Joint } from '../describe/kit.ts';
import { directionToSheet } from './frame.ts';
import type { Lines } from './lines.ts';
import { type GridPart, standing } from './placement.ts';
import { type Places, turnedThus, WAYS } from './places.ts';
import { frameOf } from './wiring.ts';

/** Prices of a wire without a lane, half grid steps. */
const JAM = 50;
const STRICT_JAM = 200;

export interface Column {
  /** From 0, grid units. */
  readonly widest: number;
  /** Whether lanes count for more, and those between a part and the column's edge as well: more can be wired then, and is higher. */
  readonly strict?: boolean;
}

export class Lanes {
  readonly #widest: number;
  readonly #strict: boolean;
  /** By part and way it stands: how many wires leave it to the left, and to the right. */
  readonly #leaving: Int32Array;

  constructor(gridParts: readonly GridPart[], joints: readonly Joint[], { widest, strict = false }: Column) {
    this.#widest = widest;
    this.#strict = strict;
    this.#leaving = Int32Array.from(
      (strict ? gridParts : []).flatMap((one) =>
        Array.from({ length: WAYS }, (_, way) => leaving(turnedThus(one, way), joints)).flat(),
      ),
    );
  }

  /** How far parts that reach from `left` to `right` leave the column. */
  outside(left: number, right: number): number {
    return Math.max(0, -left) + Math.max(0, right - this.#widest);
  }

  /** What it costs that there are too many wires: each part lets as many by as there are columns free at the height of its middle. */
  price(places: Places, lines: Lines): number {
    const { row, way, height, count } = places;
    let missing = 0;
    for (let i = 0; i < count; i++) {
      const middle = (row[i] ?? 0) + (height[i * WAYS + (way[i] ?? 0)] ?? 0) / 2;
      missing += Math.max(0, lines.passing(middle) - this.#lanesAt(middle, places));
    }
    return this.#strict ? STRICT_JAM * (missing + this.#besides(places)) : JAM * missing;
  }

  /** How many wires leave parts for where there is no room: between a part and the column's edge each lane takes one up and one down. */
  #besides({ column, way, width, count }: Places): number {
    let missing = 0;
    for (let i = 0; i < count; i++) {
      const turned = i * WAYS + (way[i] ?? 0);
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
