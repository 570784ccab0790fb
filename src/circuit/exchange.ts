/** A kit with the two ends of one pot's track exchanged: the usual mistake with a pot seen from the wrong side. */
import type { End, Joint, Kit } from '../describe/kit.ts';

export interface ExchangedLugs {
  readonly kit: Kit;
  /** Which of the two lugs have joints, and so are what a person must move. */
  readonly used: readonly ('1' | '3')[];
  /** Joints at those lugs, as written; the one at the clockwise end, if any, first. */
  readonly joints: readonly { readonly joint: Joint; readonly end: 'from' | 'to'; readonly lug: '1' | '3' }[];
}

const OTHER: Readonly<Record<string, '1' | '3'>> = { 1: '3', 3: '1' };

export function exchanged(kit: Kit, pot: string): ExchangedLugs {
  const swap = (end: End): End => {
    const lug = end.part === pot ? OTHER[end.lug] : undefined;
    return lug === undefined ? end : { ...end, lug };
  };
  const at = (lug: '1' | '3') =>
    kit.joints.flatMap((joint) =>
      (['from', 'to'] as const).flatMap((end) =>
        joint[end].part === pot && joint[end].lug === lug ? [{ joint, end, lug }] : [],
      ),
    );
  const joints = [...at('3'), ...at('1')];
  return {
    kit: {
      ...kit,
      joints: kit.joints.map((joint) => ({ ...joint, from: swap(joint.from), to: swap(joint.to) })),
    },
    used: (['1', '3'] as const).filter((lug) => joints.some((one) => one.lug === lug)),
    joints,
  };
}
