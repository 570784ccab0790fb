/**
 * Placements that are kept for another time. Placing takes nearly all of a drawing's time and reads little of a kit: outlines and how
 * parts may stand, which lugs are joined and how, the arrangement's seats, the hand and the effort. A kit of other values has most
 * often the same of all that, and so the same placement. Pure: where placements are kept is passed in.
 */
import { z } from 'zod';
import type { Joint } from '../describe/kit.ts';
import { is, isPickup, mayMirror, orientationsOf, type Part, seatOf } from '../parts/index.ts';
import type { Outline } from '../parts/outline.ts';
import { outlineTurned } from '../parts/outline.ts';
import type { Arrangement } from './arrangement.ts';
import type { Effort } from './improve.ts';
import type { Placement } from './placement.ts';

/** Where placements are kept, by a text that says all that placing reads. */
export interface PlacementStore {
  /** What `keep` was given for the same text, of whatever origin: it is checked before it is used. */
  readonly find: (asked: string) => unknown;
  readonly keep: (asked: string, placement: StoredPlacement) => void;
}

/** A part, with its outline as it is when it is not turned. */
export interface OutlinedPart {
  readonly part: Part;
  readonly outline: Outline;
}

interface Asked {
  readonly parts: readonly OutlinedPart[];
  readonly joints: readonly Joint[];
  readonly arrangement: Arrangement;
  readonly hand: string;
  readonly effort: Effort;
}

/** All that placing reads, as a text: two circuits of the same text have the same placement. */
export const askedText = ({ parts, joints, arrangement, hand, effort }: Asked): string =>
  JSON.stringify({
    parts: parts.map(({ part, outline }) => ({
      name: part.name,
      seat: seatOf(part),
      is: [is(part, 'component'), is(part, 'pot'), isPickup(part), mayMirror(part)],
      ways: orientationsOf(part, outline),
      outline: withoutWords(outline),
    })),
    joints: joints.map(({ kind, from, to }) => [kind, from.part, from.lug, to.part, to.lug]),
    seats: arrangement.seats,
    widest: arrangement.widest,
    hand,
    effort,
  });

/** Words have had their say in the size of an outline; placing does not read them. */
function withoutWords({ labels: _, asideLabels: _a, marks: _m, aside, ...rest }: Outline): object {
  return { ...rest, ...(aside ? { aside: withoutWords(aside) } : {}) };
}

const number = z.number();
const point = z.strictObject({ x: number, y: number });
const storedSchema = z.strictObject({
  width: number.positive(),
  height: number.positive(),
  parts: z.array(
    z.strictObject({
      name: z.string(),
      frame: z.strictObject({
        x: number,
        y: number,
        width: number,
        height: number,
        turn: z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3)]),
        mirror: z.boolean(),
      }),
    }),
  ),
  wires: z.array(
    z.strictObject({ joint: z.int().min(0), points: z.array(point).min(2), own: z.array(z.string()) }),
  ),
});

/** A placement without what the kit says itself: joints by their place in the kit's list, parts by name. */
type StoredPlacement = z.output<typeof storedSchema>;

/** A placement as it is kept. */
export const storedOf = (placement: Placement, joints: readonly Joint[]): StoredPlacement => ({
  width: placement.width,
  height: placement.height,
  parts: placement.parts.map(({ part, frame }) => ({ name: part.name, frame: { ...frame } })),
  wires: placement.wires.map(({ joint, points, own }) => ({
    joint: joints.indexOf(joint),
    points: points.map(({ x, y }) => ({ x, y })),
    own: [...own],
  })),
});

/** The placement of a kit from what was kept; absent where that is not a placement of this kit, so that it must be placed anew. */
export function restored(
  kept: unknown,
  parts: readonly OutlinedPart[],
  joints: readonly Joint[],
): Placement | undefined {
  const read = storedSchema.safeParse(kept);
  if (!read.success) return undefined;
  const byName = new Map(parts.map((one) => [one.part.name, one]));
  const placed = read.data.parts.flatMap(({ name, frame }) => {
    const one = byName.get(name);
    byName.delete(name);
    return one ? [{ part: one.part, outline: outlineTurned(one.outline, frame.turn), frame }] : [];
  });
  const wires = read.data.wires.flatMap(({ joint, ...wire }) => {
    const found = joints[joint];
    return found ? [{ ...wire, joint: found }] : [];
  });
  const whole =
    byName.size === 0 &&
    placed.length === read.data.parts.length &&
    new Set(wires.map(({ joint }) => joint)).size === joints.length &&
    wires.length === joints.length;
  return whole ? { width: read.data.width, height: read.data.height, parts: placed, wires } : undefined;
}
