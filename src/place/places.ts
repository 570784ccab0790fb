/**
 * Where every part stands, in numbers: a search that tries a hundred thousand places makes none of them an object. A part's way
 * to stand is one number too, twice its quarter turns and one more where it is mirrored.
 */
import { nth } from '../common/must.ts';
import type { Orientation } from '../parts/index.ts';
import type { GridPart } from './placement.ts';
import { boxOf, lugCentre } from './settle.ts';

export const WAYS = 8;
export const wayOf = ({ turn, mirror }: Orientation): number => turn * 2 + (mirror ? 1 : 0);
const orientationOf = (way: number): Orientation => ({
  turn: (way >> 1) as Orientation['turn'],
  mirror: (way & 1) === 1,
});
export const turnedThus = (gridPart: GridPart, way: number): GridPart => ({
  ...gridPart,
  ...orientationOf(way),
});

/** One or two parts that stand elsewhere then. */
export class Move {
  count = 0;
  readonly part = new Int32Array(2);
  readonly column = new Int32Array(2);
  readonly row = new Int32Array(2);
  readonly way = new Int32Array(2);

  clear(): void {
    this.count = 0;
  }

  add(part: number, column: number, row: number, way: number): void {
    this.part[this.count] = part;
    this.column[this.count] = column;
    this.row[this.count] = row;
    this.way[this.count] = way;
    this.count++;
  }
}

/** By part: grid units. The arrays are for reading; `set` writes. */
export class Places {
  readonly column: Int32Array;
  readonly row: Int32Array;
  readonly way: Uint8Array;
  /** Width and height by part and way, `WAYS` a part. */
  readonly width: Float64Array;
  readonly height: Float64Array;
  /** As the parts stood when they were last asked for; a step back puts back what it was before. */
  known: readonly GridPart[];

  constructor(gridParts: readonly GridPart[]) {
    this.column = Int32Array.from(gridParts, ({ column }) => column);
    this.row = Int32Array.from(gridParts, ({ row }) => row);
    this.way = Uint8Array.from(gridParts, wayOf);
    const boxes = gridParts.flatMap((gridPart) =>
      Array.from({ length: WAYS }, (_, way) => boxOf(turnedThus(gridPart, way))),
    );
    this.width = Float64Array.from(boxes, ({ x0, x1 }) => x1 - x0);
    this.height = Float64Array.from(boxes, ({ y0, y1 }) => y1 - y0);
    this.known = gridParts;
  }

  get count(): number {
    return this.column.length;
  }

  set(part: number, column: number, row: number, way: number): void {
    this.column[part] = column;
    this.row[part] = row;
    this.way[part] = way;
  }

  /** The parts as they stand; those that have not moved since they were last asked for are the same objects. */
  get gridParts(): readonly GridPart[] {
    const { column, row, way } = this;
    const moved = this.known.some(
      (one, i) => one.column !== column[i] || one.row !== row[i] || wayOf(one) !== way[i],
    );
    if (moved)
      this.known = this.known.map((one, i) =>
        one.column === column[i] && one.row === row[i] && wayOf(one) === way[i]
          ? one
          : turnedThus({ ...one, column: nth(column, i), row: nth(row, i) }, nth(way, i)),
      );
    return this.known;
  }
}

/** Middles of a part's lug from its own column and row, in every way it may stand: column and row, one after another. */
export function lugOffsets(gridPart: GridPart, lug: string): Int32Array {
  return Int32Array.from(
    Array.from({ length: WAYS }, (_, way) => {
      const { x, y } = lugCentre({ ...turnedThus(gridPart, way), column: 0, row: 0 }, lug);
      return [x, y];
    }).flat(),
  );
}
