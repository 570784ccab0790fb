/** What the two ends of a joint need: solder at a lug, or nothing, as where a component leg leaves its body. */
import { type Graph, type LugId, lugAt, lugIdOf } from '../circuit/circuit.ts';
import { findPart, type Joint, type Kit } from '../describe/kit.ts';
import { is, isPickup } from '../parts/index.ts';

/** A component by whose leg a joint is made: the end of the leg itself needs no solder. */
const isComponent = (kit: Pick<Kit, 'parts'>, name: string): boolean => {
  const part = findPart(kit, name);
  return part !== undefined && is(part, 'component');
};

/**
 * The end of a joint that needs no solder: where a component leg leaves its body, or the lug that is bent.
 * Absent for wires, jumpers and braids. Of a joint between two legs it is the one written first.
 */
export function unsolderedEnd(kit: Pick<Kit, 'parts'>, { kind, from, to }: Joint): 'from' | 'to' | undefined {
  if (kind === 'bend') return 'from';
  if (kind !== 'leg') return undefined;
  return isComponent(kit, from.part) ? 'from' : isComponent(kit, to.part) ? 'to' : undefined;
}

/** The lugs that must be soldered before a joint conducts: two of a wire, one of a leg or a bent lug. */
export function solderedLugs({ kit }: Pick<Graph, 'kit'>, joint: Joint): readonly LugId[] {
  const own = unsolderedEnd(kit, joint);
  return (['from', 'to'] as const).filter((end) => end !== own).map((end) => lugIdOf(joint[end]));
}

/** Components that a leg joint belongs to; empty for other joints. */
export const componentsOf = ({ kit }: Pick<Graph, 'kit'>, { kind, from, to }: Joint): readonly string[] =>
  kind === 'leg' ? [from.part, to.part].filter((name) => isComponent(kit, name)) : [];

/** A joint with an end at a pickup: one of its leads, or what is soldered to them. */
export const isAtPickup = ({ kit }: Pick<Graph, 'kit'>, { from, to }: Joint): boolean =>
  [from, to].some(({ part: name }) => {
    const part = findPart(kit, name);
    return part !== undefined && isPickup(part);
  });

/** A surface to solder to, such as a pot's case: nothing can be hooked through it, so that a joint to it is soldered at once. */
export const isSurface = (graph: Pick<Graph, 'lugs'>, id: LugId): boolean => {
  const { role } = lugAt(graph, id);
  return role === 'case' || role === 'point';
};
