/**
 * Finds a place for parts that no seat holds: each in turn goes where its wires are shortest, clear of the others,
 * until none would rather stand elsewhere. Whole numbers throughout, ties to the first found, so the outcome is the
 * same everywhere.
 */
import { PITCH } from '../common/geometry.ts';
import { must } from '../common/must.ts';
import type { Joint } from '../describe/kit.ts';
import { mayMirror } from '../parts/index.ts';
import { toSheet } from './frame.ts';
import { type GridPart, standing } from './placement.ts';
import { frameOf } from './wiring.ts';

/** Grid units kept free between parts, for wires. */
interface Room {
  readonly between: number;
}

interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export function boxOf(gridPart: GridPart): Box {
  const { column, row, turn } = gridPart;
  const outline = standing(gridPart);
  const lying = turn % 2 === 1;
  const width = (lying ? outline.height : outline.width) / PITCH;
  const height = (lying ? outline.width : outline.height) / PITCH;
  return { x0: column, y0: row, x1: column + width, y1: row + height };
}

/** A component's legs are short, so they pull harder than a wire does. */
const PULL = { wire: 2, leg: 5, jumper: 2, bend: 2, braid: 2 } as const;

/** Moves the parts that are not fixed; `reach` is how far from where it stands each may go, grid units. */
export function settle(
  gridParts: readonly GridPart[],
  joints: readonly Joint[],
  room: Room,
  reach: number,
): readonly GridPart[] {
  const placed = new Map(gridParts.map((gridPart) => [gridPart.part.name, gridPart]));
  for (let round = 0; round < 4; round++) {
    let moved = false;
    for (const { part } of gridParts) {
      const gridPart = placed.get(part.name);
      if (!gridPart || gridPart.fixed) continue;
      const next = bestPosition(gridPart, placed, joints, room, reach);
      if (next.column !== gridPart.column || next.row !== gridPart.row || next.mirror !== gridPart.mirror) {
        placed.set(part.name, next);
        moved = true;
      }
    }
    if (!moved) break;
  }
  return gridParts.map((gridPart) => placed.get(gridPart.part.name) ?? gridPart);
}

/**
 * The parts with none on or too near another: those that are fixed stay, each of the others in its turn goes to the
 * nearest place that is free, however far that is.
 *
 * @param widest of a column from 0 that no part may leave, grid units; without it there is none
 */
export function apart(gridParts: readonly GridPart[], gap: number, widest?: number): readonly GridPart[] {
  const taken: Box[] = gridParts.filter(({ fixed }) => fixed).map(boxOf);
  return gridParts.map((gridPart) => {
    if (gridPart.fixed) return gridPart;
    const box = boxOf(gridPart);
    const { dx, dy } = nearestFree(box, taken, gap, widest);
    taken.push(shifted(box, dx, dy));
    return dx === 0 && dy === 0
      ? gridPart
      : { ...gridPart, column: gridPart.column + dx, row: gridPart.row + dy };
  });
}

const shifted = ({ x0, y0, x1, y1 }: Box, dx: number, dy: number): Box => ({
  x0: x0 + dx,
  y0: y0 + dy,
  x1: x1 + dx,
  y1: y1 + dy,
});

/** How far a box must move to be free; of places equally near the one further down, then further right. */
function nearestFree(
  box: Box,
  taken: readonly Box[],
  gap: number,
  widest: number | undefined,
): { readonly dx: number; readonly dy: number } {
  // A part wider than the column has its place at the edge.
  const within = (dx: number): boolean =>
    widest === undefined || (box.x0 + dx >= 0 && box.x0 + dx <= Math.max(0, widest - box.x1 + box.x0));
  const free = (dx: number, dy: number): boolean =>
    within(dx) && !taken.some((other) => clash(shifted(box, dx, dy), other, gap));
  for (let reach = 0; ; reach++)
    for (let across = 0; across <= reach; across++) {
      const down = reach - across;
      for (const [dx, dy] of [
        [across, down],
        [-across, down],
        [across, -down],
        [-across, -down],
      ] as const)
        if (free(dx, dy)) return { dx, dy };
    }
}

function bestPosition(
  gridPart: GridPart,
  placed: ReadonlyMap<string, GridPart>,
  joints: readonly Joint[],
  room: Room,
  reach: number,
): GridPart {
  const others = [...placed.values()].filter((other) => other.part.name !== gridPart.part.name).map(boxOf);
  let best = gridPart;
  let least = Number.POSITIVE_INFINITY;
  for (const mirror of mayMirror(gridPart.part) ? [false, true] : [gridPart.mirror]) {
    const turned = { ...gridPart, mirror };
    const own = boxOf(turned);
    const pulls = pullsOn(turned, placed, joints);
    // What a move across costs is the same however far it goes down.
    const along = (axis: 'x' | 'y'): readonly number[] =>
      Array.from({ length: 2 * reach + 1 }, (_, i) =>
        pulls.reduce((sum, pull) => sum + pull.weight * Math.abs(pull[axis] + i - reach), 0),
      );
    const [across, down] = [along('x'), along('y')];
    for (let dy = -reach; dy <= reach; dy++)
      for (let dx = -reach; dx <= reach; dx++) {
        const stays = dx === 0 && dy === 0 ? 1 : 0;
        const cost = (across[dx + reach] ?? 0) + (down[dy + reach] ?? 0) - stays;
        if (cost >= least) continue;
        const box = { x0: own.x0 + dx, y0: own.y0 + dy, x1: own.x1 + dx, y1: own.y1 + dy };
        if (others.some((other) => clash(box, other, room.between))) continue;
        least = cost;
        best = { ...turned, column: gridPart.column + dx, row: gridPart.row + dy };
      }
  }
  return best;
}

export const clash = (a: Box, b: Box, gap: number): boolean =>
  a.x0 < b.x1 + gap && b.x0 < a.x1 + gap && a.y0 < b.y1 + gap && b.y0 < a.y1 + gap;

/** For each joint of the part, how far its lug is from the other end now, grid units. */
function pullsOn(
  gridPart: GridPart,
  placed: ReadonlyMap<string, GridPart>,
  joints: readonly Joint[],
): readonly { readonly x: number; readonly y: number; readonly weight: number }[] {
  return joints.flatMap((joint) => {
    const [own, other] =
      joint.from.part === gridPart.part.name
        ? [joint.from, joint.to]
        : joint.to.part === gridPart.part.name
          ? [joint.to, joint.from]
          : [undefined, undefined];
    if (!own || !other || own.part === other.part) return [];
    const far = must(placed.get(other.part), `place of ${other.part}`);
    const [a, b] = [lugCentre(gridPart, own.lug), lugCentre(far, other.lug)];
    return [{ x: a.x - b.x, y: a.y - b.y, weight: PULL[joint.kind] }];
  });
}

/** Middle of a lug, grid units, rounded. */
export function lugCentre(gridPart: GridPart, lug: string): { x: number; y: number } {
  const tag = standing(gridPart).lugs.find((candidate) => candidate.lug === lug)?.tag;
  if (!tag) return { x: gridPart.column, y: gridPart.row };
  const p = toSheet(frameOf(gridPart, 0, 0), { x: tag.x + tag.width / 2, y: tag.y + tag.height / 2 });
  return { x: Math.round(p.x / PITCH), y: Math.round(p.y / PITCH) };
}
