/** Wires that pass close by a lug which they do not end at, moved a little away from it, so that its solder is not taken for theirs. */
import { lugIdOf } from '../../circuit/circuit.ts';
import type { Point, Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import type { PlacedWire } from '../../place/placement.ts';
import type { Made } from './joint-ends.ts';
import { AIR, EDGE, type Tag } from './lug-tags.ts';

/** Between the middles of two wires, and where both have the outline of new ones; and the farthest that a wire is moved, drawing units. */
const APART = { wires: 9, outlines: 13 } as const;
const FARTHEST = 8;
/** How many others a stretch may push before it, one by the other. */
const PUSHES = 2;
/** Of a stretch before or behind one that is moved: what is left of it. */
const LEFT = 4;
/** Between the ends of two stretches that pass each other. */
const PAST = 4;

type Axis = 'x' | 'y';

/** What a stretch that moves has before it. */
interface Room {
  readonly lugs: number;
  readonly others: readonly { readonly stretch: Stretch; readonly room: number }[];
}

/** A stretch of a wire along an axis, at a place across it. */
interface Stretch {
  readonly wire: number;
  /** Which of its wire, counted from 0. */
  readonly i: number;
  readonly along: Axis;
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

const stretchOf = (wire: number, a: Point, b: Point, i: number): Stretch => {
  const along: Axis = a.y === b.y ? 'x' : 'y';
  const at = along === 'x' ? a.y : a.x;
  return { wire, i, along, at, from: Math.min(a[along], b[along]), to: Math.max(a[along], b[along]) };
};

/** A tag across an axis, and along it. */
const sidesOf = ({ x, y, width, height }: Rect, along: Axis) =>
  along === 'x'
    ? { low: y, high: y + height, from: x, to: x + width }
    : { low: x, high: x + width, from: y, to: y + height };

interface Lug extends Tag {
  /** Where wires end at it. */
  readonly ends: readonly { readonly wire: number; readonly point: Point }[];
}

/**
 * @param paths points of each wire from edge to edge of its tags
 * @returns the same with stretches moved
 */
export function keptClear(
  paths: readonly (readonly Point[])[],
  wires: readonly PlacedWire[],
  made: readonly Made[],
  tags: ReadonlyMap<string, Tag>,
): readonly (readonly Point[])[] {
  const lugs = lugsOf(paths, wires, tags);
  const moved = paths.map((path) => [...path]);
  const stretches = (): readonly Stretch[] =>
    moved.flatMap((path, wire) => path.slice(1).map((b, i) => stretchOf(wire, nth(path, i), b, i)));
  for (const [wire, path] of moved.entries()) {
    // The first and the last stretch end at lugs.
    for (let i = 1; i < path.length - 2; i++) {
      const stretch = stretchOf(wire, nth(path, i), nth(path, i + 1), i);
      const wanted = wantedOf(stretch, lugs);
      if (wanted !== 0) move(stretch, Math.sign(wanted) * Math.min(Math.abs(wanted), FARTHEST), PUSHES);
    }
  }
  return moved;

  /** Moves a stretch as far as there is room, for which others may have to move before it. */
  function move(stretch: Stretch, wanted: number, pushes: number): void {
    const path = nth(moved, stretch.wire);
    const spare = spareOf(path, stretch.i, wanted, stretch.along);
    const far = Math.min(Math.abs(wanted), spare);
    let room = roomFor(stretch, wanted, stretches(), lugs, made);
    for (const other of room.others)
      if (pushes > 0 && other.room < far && isFree(other.stretch))
        move(other.stretch, Math.sign(wanted) * (far - other.room), pushes - 1);
    if (room.others.some((other) => other.room < far))
      room = roomFor(stretch, wanted, stretches(), lugs, made);
    const by =
      Math.sign(wanted) * Math.max(0, Math.min(far, room.lugs, ...room.others.map((other) => other.room)));
    const across: Axis = stretch.along === 'x' ? 'y' : 'x';
    for (const k of [stretch.i, stretch.i + 1])
      path[k] = { ...nth(path, k), [across]: nth(path, k)[across] + by };
  }

  /** Whether a stretch ends at no lug. */
  function isFree({ wire, i }: Stretch): boolean {
    return i > 0 && i < nth(moved, wire).length - 2;
  }
}

const lugsOf = (
  paths: readonly (readonly Point[])[],
  wires: readonly PlacedWire[],
  tags: ReadonlyMap<string, Tag>,
): readonly Lug[] => {
  const ends = new Map<string, Lug['ends'][number][]>();
  for (const [wire, { joint }] of wires.entries()) {
    const path = nth(paths, wire);
    for (const [end, point] of [
      [joint.from, path[0]],
      [joint.to, path.at(-1)],
    ] as const)
      if (point) ends.set(lugIdOf(end), [...(ends.get(lugIdOf(end)) ?? []), { wire, point }]);
  }
  return [...tags.values()].map((tag) => ({ ...tag, ends: ends.get(tag.id) ?? [] }));
};

/** Between a stretch and a lug that it passes, on the stretch's own side: less than 0 where the lug is behind it; nothing where it does not pass. */
function beside({ wire, along, at, from, to }: Stretch, { rect, ends }: Lug) {
  const { low, high, from: first, to: last } = sidesOf(rect, along);
  if (from > last + PAST || to < first - PAST) return undefined;
  const across: Axis = along === 'x' ? 'y' : 'x';
  const before = at <= low;
  if (!before && at < high) return undefined;
  const solder = ends.some(
    (end) =>
      end.wire !== wire && (before ? end.point[across] <= low + EDGE : end.point[across] >= high - EDGE),
  );
  // To its own lug a wire may come as close as it likes, but not to what else is soldered there.
  if (!solder && ends.some((end) => end.wire === wire)) return undefined;
  return { gap: before ? low - at : at - high, way: before ? -1 : 1, air: solder ? AIR.solder : AIR.wire };
}

/** How far a stretch is to be moved across itself; 0 where it is clear of all lugs, or between two. */
function wantedOf(stretch: Stretch, lugs: readonly Lug[]): number {
  let [less, more] = [0, 0];
  for (const lug of lugs) {
    const past = beside(stretch, lug);
    if (!past || past.gap >= past.air) continue;
    const by = past.way * (past.air - past.gap);
    less = Math.min(less, by);
    more = Math.max(more, by);
  }
  return less < 0 && more > 0 ? 0 : less + more;
}

/** How far it can be moved that way before it comes too close to a lug, and to each other stretch. */
function roomFor(
  stretch: Stretch,
  wanted: number,
  stretches: readonly Stretch[],
  lugs: readonly Lug[],
  made: readonly Made[],
): Room {
  const way = Math.sign(wanted);
  let room = Math.abs(wanted);
  const others: Room['others'][number][] = [];
  for (const other of stretches) {
    if (other.wire === stretch.wire || other.along !== stretch.along) continue;
    if (other.from > stretch.to + PAST || other.to < stretch.from - PAST) continue;
    const gap = (other.at - stretch.at) * way;
    const outlined = made[stretch.wire] === 'new' && made[other.wire] === 'new';
    if (gap > 0) others.push({ stretch: other, room: gap - (outlined ? APART.outlines : APART.wires) });
  }
  for (const lug of lugs) {
    const past = beside(stretch, lug);
    // Towards a lug no closer than to the one that it is moved away from.
    if (past && past.way !== way) room = Math.min(room, past.gap - past.air);
  }
  return { lugs: room, others };
}

/** How far a stretch can be moved before one of those next to it is used up. */
function spareOf(path: readonly Point[], i: number, wanted: number, along: Axis): number {
  const across: Axis = along === 'x' ? 'y' : 'x';
  const way = Math.sign(wanted);
  const spare = [
    [i, i - 1],
    [i + 1, i + 2],
  ].map(([near = 0, far = 0]) => {
    const towards = (nth(path, far)[across] - nth(path, near)[across]) * way;
    return towards > 0 ? towards - LEFT : Number.POSITIVE_INFINITY;
  });
  return Math.max(0, Math.min(...spare));
}
