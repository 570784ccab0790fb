/** A kit with the two ends of a control's tracks exchanged: the usual mistake with a pot seen from the wrong side. */
import { nth } from '../common/must.ts';
import type { End, Joint, Kit } from '../describe/kit.ts';
import type { Control } from '../parts/index.ts';

interface ExchangedLugs {
  readonly kit: Kit;
  /** Names of the two lugs: the anticlockwise end of the track, the clockwise one; of all tracks one after the other. */
  readonly ends: readonly string[];
  /** Which of these have joints, and so are what a person must move. */
  readonly used: readonly string[];
  /** Joints at those lugs, as written; the one at the clockwise end, if any, first. */
  readonly joints: readonly { readonly joint: Joint; readonly end: 'from' | 'to'; readonly lug: string }[];
}

export function exchanged(kit: Kit, { part: pot, tracks }: Control): ExchangedLugs {
  const ends = tracks.flatMap(({ anticlockwise, clockwise }) => [anticlockwise, clockwise]);
  const swap = (end: End): End => {
    const place = end.part === pot ? ends.indexOf(end.lug) : -1;
    // The other end of the same track stands beside it in the list.
    return place < 0 ? end : { ...end, lug: nth(ends, place ^ 1) };
  };
  const at = (lug: string) =>
    kit.joints.flatMap((joint) =>
      (['from', 'to'] as const).flatMap((end) =>
        joint[end].part === pot && joint[end].lug === lug ? [{ joint, end, lug }] : [],
      ),
    );
  const joints = tracks.flatMap(({ anticlockwise, clockwise }) => [...at(clockwise), ...at(anticlockwise)]);
  return {
    kit: {
      ...kit,
      joints: kit.joints.map((joint) => ({ ...joint, from: swap(joint.from), to: swap(joint.to) })),
    },
    ends,
    used: ends.filter((lug) => joints.some((one) => one.lug === lug)),
    joints,
  };
}
