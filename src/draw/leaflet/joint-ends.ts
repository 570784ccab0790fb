/** What joints are in the figures of a leaflet: how far made, and soldered at which ends. */
import { nth } from '../../common/must.ts';
import { remembered } from '../../common/remembered.ts';
import type { Placement } from '../../place/placement.ts';
import { unsolderedEnds } from '../../soldering/ends.ts';
import { leavesBody } from '../wires.ts';

/** Of a joint: not there yet, made before, made now, or as it is where none is told from another. */
export type Made = 'absent' | 'before' | 'new' | 'plain';

/**
 * An end of a joint as it is drawn: its solder; only hooked through the lug as yet; or hooked in an earlier step and soldered in this one,
 * with what else comes to that lug.
 */
export type EndLook = 'soldered' | 'hooked' | 'gathered';

/** Either end of a joint. */
export type EndName = 'from' | 'to';
export const endNames = ['from', 'to'] as const;

const unsoldered = remembered(({ parts, wires }: Placement) => {
  const kit = { parts: parts.map(({ part }) => part), joints: wires.map(({ joint }) => joint) };
  return kit.joints.map((joint) => unsolderedEnds(kit, joint));
});

/** A joint's ends that are soldered on the bench: not where a component leg leaves its body or a lead its pickup, not a lug that is bent, and not an end that stays free. */
export const solderedEnds = (placement: Placement, joint: number): readonly EndName[] =>
  endNames.filter((end) => {
    const why = nth(unsoldered(placement), joint)[end];
    // Other legs may be soldered to the end of a leg.
    return why === undefined || (why === 'leg' && !leaves(placement, joint, end));
  });

/** As the finished wiring shows them: all but where a component leg leaves its body. */
export const drawnEnds = (placement: Placement, joint: number): readonly EndName[] =>
  endNames.filter((end) => !leaves(placement, joint, end));

const leaves = ({ wires }: Placement, joint: number, end: EndName): boolean => {
  const wire = nth(wires, joint);
  return leavesBody(wires, wire, wire.joint[end]);
};

/** The ends of a joint that stay free on the bench. */
export const freeEnds = (placement: Placement, joint: number): readonly EndName[] =>
  endNames.filter((end) => nth(unsoldered(placement), joint)[end] === 'free');
