/** What placing hands to drawing: plain data, every coordinate final. */
import type { Point } from '../common/geometry.ts';
import type { Joint } from '../describe/kit.ts';
import { orientationsOf, type Part } from '../parts/index.ts';
import { type Outline, outlineTurned } from '../parts/outline.ts';
import type { Frame } from './frame.ts';

export interface PlacedPart {
  readonly part: Part;
  readonly frame: Frame;
  readonly outline: Outline;
}

export interface PlacedWire {
  readonly joint: Joint;
  /** Corners from the spot at the joint's first end to the spot at its second; every leg of it level or upright. */
  readonly points: readonly Point[];
  /** Names of the two-legged parts among its ends, whose bare leg a `leg` is. */
  readonly own: readonly string[];
}

export interface Placement {
  /** Size of the drawn area, its margin included. */
  readonly width: number;
  readonly height: number;
  readonly parts: readonly PlacedPart[];
  readonly wires: readonly PlacedWire[];
}

/** A part on the grid, while places are still being chosen. Column and row of its top left corner. */
export interface GridPart {
  readonly part: Part;
  /** As the part is when it is not turned; see `standing`. */
  readonly outline: Outline;
  readonly column: number;
  readonly row: number;
  readonly turn: Frame['turn'];
  readonly mirror: boolean;
  /** Seated by the arrangement: not to be moved. */
  readonly fixed: boolean;
  /** Whether it may stand otherwise than `turn` and `mirror` say: not where the arrangement does. */
  readonly turnable: boolean;
}

/** Numbers of the parts that a search may move or turn. */
export const looseOnes = (gridParts: readonly GridPart[]): readonly number[] =>
  gridParts.flatMap(({ part, outline, fixed, turnable }, i) =>
    !fixed || (turnable && orientationsOf(part, outline).length > 1) ? [i] : [],
  );

/** The outline of a part the way it is turned. */
export const standing = ({ outline, turn }: GridPart): Outline => outlineTurned(outline, turn);
