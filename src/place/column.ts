/** A kit placed in a narrow column: as wide as is asked for, or else the least that its wires need. */
import type { Joint } from '../describe/kit.ts';
import { isPickup, orientationsOf } from '../parts/index.ts';
import type { Arrangement } from './arrangement.ts';
import { clearCrossings } from './clear.ts';
import type { Effort } from './improve.ts';
import { byNeighbourhood } from './pack.ts';
import type { GridPart } from './placement.ts';
import { search } from './search.ts';
import type { Outlined } from './seating.ts';
import { boxOf } from './settle.ts';
import type { Wiring } from './wiring.ts';

/** Grid units kept free between parts: two wires side by side. */
const BETWEEN = 3;
/** More of it, where a crossing hides the end of a wire: tried in the same width, before it is widened; without a search only room helps. */
const SEARCHED = [0, 1] as const;
const UNSEARCHED = [0, 2, 5] as const;
const SEEDS = 1000;
/** By how much a column is widened where wires find no way in it, grid units: one after the other. */
const WIDER = [0, 2, 4, 7, 11, 16, 24, 40] as const;

/** A column of more grid units has room for lanes on both sides of any part in its usual form. */
const NARROW = 32;

/** Whether parts take the form that is narrow, where they have one, in what an arrangement leaves of width. */
export const narrowIn = ({ widest = Number.POSITIVE_INFINITY }: Pick<Arrangement, 'widest'>): boolean =>
  widest <= NARROW;

/**
 * The wiring of a kit in a column; `undefined` where no width that is tried has a way for every wire that shows all its crossings and ends.
 *
 * @param widest grid units across that parts and wires are to take
 * @param margin free rows above and below the parts
 */
export function wiredInColumn(
  parts: readonly Outlined[],
  joints: readonly Joint[],
  widest: number,
  margin: number,
  effort: Effort,
): Wiring | undefined {
  const least = Math.max(widest, ...parts.map(leastAcross));
  for (const more of WIDER) {
    const width = least + more;
    for (const roomier of effort.steps > 0 ? SEARCHED : UNSEARCHED) {
      const between = BETWEEN + roomier;
      // Another seed as well: what hid a wire's end the first time is not met again.
      const again = { ...effort, seed: effort.seed + SEEDS * roomier };
      const first = stackedIn(parts, joints, width, between);
      const isGood = (wiring: Wiring): boolean => clearCrossings(wiring) === 0;
      const column = { widest: width, patient: more === 0, isGood };
      const wiring = search(first, joints, between, margin, again, column);
      if (wiring && isGood(wiring)) return wiring;
      if (!wiring && effort.steps > 0) break;
    }
  }
  return undefined;
}

const UPRIGHT = { turn: 0, mirror: false } as const;

const standingAs = (
  { part, outline }: Outlined,
  { turn, mirror }: Pick<GridPart, 'turn' | 'mirror'>,
): GridPart => ({
  part,
  outline,
  column: 0,
  row: 0,
  turn,
  mirror,
  fixed: false,
  turnable: true,
});

/** Grid units across of a part the way it is narrowest. */
const leastAcross = (one: Outlined): number =>
  Math.min(...orientationsOf(one.part, one.outline).map((way) => Math.ceil(boxOf(standingAs(one, way)).x1)));

/** Parts in rows from top to bottom, pickups first, then each near what it is joined to, as many abreast as there is room for. */
function stackedIn(
  parts: readonly Outlined[],
  joints: readonly Joint[],
  widest: number,
  between: number,
): readonly GridPart[] {
  const byName = new Map(parts.map((one) => [one.part.name, one]));
  const near = byNeighbourhood(parts, joints).flatMap((name) => byName.get(name) ?? []);
  const isFirst = ({ part }: Outlined): boolean => isPickup(part);
  const order = [...parts.filter(isFirst), ...near.filter((one) => !isFirst(one))];
  const places = new Map<string, GridPart>();
  let [column, row, below] = [0, 0, 0];
  for (const one of order) {
    const standing = standingAs(one, orientationsOf(one.part, one.outline)[0] ?? UPRIGHT);
    const { x1, y1 } = boxOf(standing);
    if (column > 0 && column + x1 > widest) {
      column = 0;
      row = below + between;
    }
    places.set(one.part.name, { ...standing, column, row });
    column += Math.ceil(x1) + between;
    below = Math.max(below, row + Math.ceil(y1));
  }
  return parts.flatMap(({ part }) => places.get(part.name) ?? []);
}
