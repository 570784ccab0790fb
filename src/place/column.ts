/** A kit placed in a narrow column: as wide as is asked for, or else the least that its wires need. */
import type { Joint } from '../describe/kit.ts';
import { isPickup, orientationsOf } from '../parts/index.ts';
import { clearCrossings } from './clear.ts';
import type { Effort } from './improve.ts';
import { byNeighbourhood } from './pack.ts';
import type { GridPart } from './placement.ts';
import { search } from './search.ts';
import type { Outlined } from './seating.ts';
import { boxOf } from './settle.ts';
import type { Wiring } from './wiring.ts';

/** What is added to the seed of a search in the same width. */
const AGAIN = [0, 1000] as const;
/** Grid units kept free between parts: two wires side by side. */
const BETWEEN = 3;
/** By how much a column is widened where wires find no way in it, grid units: one after the other. */
const WIDER = [0, 2, 4, 7, 11, 16, 24, 40] as const;

/**
 * The wiring of a kit in a column; `undefined` where no width that is tried has a way for every wire.
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
  let best: { readonly wiring: Wiring; readonly spoilt: number } | undefined;
  for (const more of WIDER) {
    const width = least + more;
    const first = stackedIn(parts, joints, width);
    // Where wires have their ways but one hides the end of another, other places in the same width may do.
    for (const again of AGAIN) {
      const seed = effort.seed + again;
      const wiring = search(first, joints, BETWEEN, margin, { ...effort, seed }, width);
      if (!wiring) break;
      const spoilt = clearCrossings(wiring);
      if (spoilt === 0) return wiring;
      if (!best || spoilt < best.spoilt) best = { wiring, spoilt };
    }
  }
  return best?.wiring;
}

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
  Math.min(...orientationsOf(one.part).map((way) => Math.ceil(boxOf(standingAs(one, way)).x1)));

/** Parts in rows from top to bottom, pickups first, then each near what it is joined to, as many abreast as there is room for. */
function stackedIn(
  parts: readonly Outlined[],
  joints: readonly Joint[],
  widest: number,
): readonly GridPart[] {
  const byName = new Map(parts.map((one) => [one.part.name, one]));
  const near = byNeighbourhood(parts, joints).flatMap((name) => byName.get(name) ?? []);
  const isFirst = ({ part }: Outlined): boolean => isPickup(part);
  const order = [...parts.filter(isFirst), ...near.filter((one) => !isFirst(one))];
  const places = new Map<string, GridPart>();
  let [column, row, below] = [0, 0, 0];
  for (const one of order) {
    const upright = standingAs(one, { turn: 0, mirror: false });
    const { x1, y1 } = boxOf(upright);
    if (column > 0 && column + x1 > widest) {
      column = 0;
      row = below + BETWEEN;
    }
    places.set(one.part.name, { ...upright, column, row });
    column += Math.ceil(x1) + BETWEEN;
    below = Math.max(below, row + Math.ceil(y1));
  }
  return parts.flatMap(({ part }) => places.get(part.name) ?? []);
}
