/** What the two ends of a joint need: solder at a lug, or nothing, as where a component leg leaves its body, or a lead its pickup. */
import { type Graph, type LugId, lugAt, lugIdOf } from '../circuit/circuit.ts';
import { remembered } from '../common/remembered.ts';
import { type End, findPart, type Joint, type Kit } from '../describe/kit.ts';
import { is, isPickup, type Part } from '../parts/index.ts';

/** A component by whose leg a joint is made: the end of the leg itself needs no solder. */
const isComponent = (kit: Pick<Kit, 'parts'>, name: string): boolean => {
  const part = findPart(kit, name);
  return part !== undefined && is(part, 'component');
};

/** Why an end of a joint needs no solder, by the end. */
type Unsoldered = Partial<Record<'from' | 'to', 'leg' | 'bend' | 'lead' | 'free'>>;

/**
 * The ends of a joint that need no solder:
 *
 * - where a component `leg` leaves its body; of a joint between two legs it is the one written first;
 * - the lug that is bent (`bend`);
 * - where a `lead` comes out of its pickup: the end of a wire or a braid at a pickup's lug that no other joint comes to. Of a joint between two such lugs it
 *   is the one written first, since one lead is soldered to the other;
 * - the end of a wire or a braid at a ground point that no other joint comes to: the point is on the instrument, so that this end stays `free` on the bench.
 *
 * Leads and ground points are common practice, no source.
 */
export function unsolderedEnds(kit: Pick<Kit, 'parts' | 'joints'>, joint: Joint): Unsoldered {
  const { kind, from, to } = joint;
  if (kind === 'bend') return { from: 'bend' };
  if (kind === 'leg')
    return isComponent(kit, from.part) ? { from: 'leg' } : isComponent(kit, to.part) ? { to: 'leg' } : {};
  if (kind === 'jumper') return {};
  const alone = ({ part: name, lug }: End): Part | undefined =>
    (jointsAt(kit).get(`${name}.${lug}`) ?? 0) > 1 ? undefined : findPart(kit, name);
  const [one, other] = [alone(from), alone(to)];
  const lead = one && isPickup(one) ? 'from' : other && isPickup(other) ? 'to' : undefined;
  return {
    ...(one && is(one, 'ground-point') ? { from: 'free' } : {}),
    ...(other && is(other, 'ground-point') ? { to: 'free' } : {}),
    ...(lead === undefined ? {} : { [lead]: 'lead' }),
  };
}

/** How many joints come to each lug. */
const jointsAt = remembered(({ joints }: Pick<Kit, 'parts' | 'joints'>) => {
  const count = new Map<string, number>();
  for (const { from, to } of joints)
    for (const { part, lug } of [from, to])
      count.set(`${part}.${lug}`, (count.get(`${part}.${lug}`) ?? 0) + 1);
  return count;
});

/** The end of a joint at which a component's leg leaves its body; absent for other joints. */
export function legEnd(kit: Pick<Kit, 'parts' | 'joints'>, joint: Joint): 'from' | 'to' | undefined {
  const ends = unsolderedEnds(kit, joint);
  return (['from', 'to'] as const).find((end) => ends[end] === 'leg');
}

/** The lugs that must be soldered before a joint conducts: two of a wire, one of a leg, a bent lug or a pickup's lead. */
export function solderedLugs({ kit }: Pick<Graph, 'kit'>, joint: Joint): readonly LugId[] {
  const ends = unsolderedEnds(kit, joint);
  return (['from', 'to'] as const).filter((end) => ends[end] === undefined).map((end) => lugIdOf(joint[end]));
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
