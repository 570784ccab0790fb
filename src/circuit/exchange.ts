/** A kit with the two ends of one pot's track exchanged: the usual mistake with a pot seen from the wrong side. */
import { must } from '../common/must.ts';
import { type End, type Joint, type Kit, partNamed } from '../describe/kit.ts';
import { elementsLike } from '../parts/index.ts';

export interface ExchangedLugs {
  readonly kit: Kit;
  /** Names of the two lugs: the anticlockwise end of the track, the clockwise one. */
  readonly ends: readonly [string, string];
  /** Which of the two have joints, and so are what a person must move. */
  readonly used: readonly string[];
  /** Joints at those lugs, as written; the one at the clockwise end, if any, first. */
  readonly joints: readonly { readonly joint: Joint; readonly end: 'from' | 'to'; readonly lug: string }[];
}

/** @param pot the name of a part with a track */
export function exchanged(kit: Kit, pot: string): ExchangedLugs {
  const part = partNamed(kit, pot);
  const { anticlockwise, clockwise } = must(elementsLike(part, 'track')[0], `track of ${pot}`);
  const ends = [anticlockwise, clockwise] as const;
  const swap = (end: End): End => {
    if (end.part !== pot) return end;
    if (end.lug === clockwise) return { ...end, lug: anticlockwise };
    return end.lug === anticlockwise ? { ...end, lug: clockwise } : end;
  };
  const at = (lug: string) =>
    kit.joints.flatMap((joint) =>
      (['from', 'to'] as const).flatMap((end) =>
        joint[end].part === pot && joint[end].lug === lug ? [{ joint, end, lug }] : [],
      ),
    );
  const joints = [...at(clockwise), ...at(anticlockwise)];
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
