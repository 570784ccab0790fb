/** From the kit to the graph: every lug, the nets that joints make, and every setting of the switches. */
import { must } from '../common/must.ts';
import type { Kit } from '../describe/kit.ts';
import { contactsOf, lugsOf } from '../parts/index.ts';
import { type Graph, type Lug, type LugId, lugId, lugIdOf, type Net, type Setting } from './circuit.ts';
import { DisjointSet } from './disjoint-set.ts';

/**
 * The graph of a kit.
 *
 * @throws RangeError when a joint names a part or lug that does not exist: a kit that the reader gave has none
 */
export function buildGraph(kit: Kit): Graph {
  const joined = new DisjointSet();
  for (const joint of kit.joints) joined.join(lugIdOf(joint.from), lugIdOf(joint.to));
  const specs = kit.parts.flatMap((part) =>
    lugsOf(part).map((spec) => ({ ...spec, part: part.name, id: lugId(part.name, spec.name) })),
  );
  const known = new Set(specs.map(({ id }) => id));
  for (const { from, to } of kit.joints)
    for (const id of [lugIdOf(from), lugIdOf(to)])
      if (!known.has(id)) throw new RangeError(`a joint of kit ${kit.id} names ${id}, which does not exist`);
  const nets = netsOf(specs, joined);
  const netOf = new Map(nets.flatMap((net) => net.lugs.map((id) => [id, net.index] as const)));
  const lugs = new Map(
    specs.map((spec): [LugId, Lug] => [
      spec.id,
      { ...spec, net: must(netOf.get(spec.id), `net of ${spec.id}`) },
    ]),
  );
  return { kit, lugs, joints: kit.joints, nets, settings: settingsOf(kit) };
}

function netsOf(specs: readonly Omit<Lug, 'net'>[], joined: DisjointSet): readonly Net[] {
  const groups = new Map<string, Omit<Lug, 'net'>[]>();
  for (const spec of specs) {
    const root = joined.find(spec.id);
    const group = groups.get(root);
    if (group) group.push(spec);
    else groups.set(root, [spec]);
  }
  return [...groups.values()].map((group, index): Net => {
    const has = (role: Lug['role']) => group.some((lug) => lug.role === role);
    const [only, ...others] = new Set(
      group.filter((lug) => lug.role === 'hot' || lug.role === 'link').map((lug) => lug.part),
    );
    const role = has('sleeve')
      ? 'ground'
      : has('output')
        ? 'output'
        : only !== undefined && others.length === 0
          ? 'pickup'
          : 'other';
    return {
      index,
      lugs: group.map((lug) => lug.id),
      role,
      ...(role === 'pickup' && only !== undefined ? { pickup: only } : {}),
    };
  });
}

/** Every combination of every switch's positions, the first switch turning slowest. */
function settingsOf(kit: Kit): readonly Setting[] {
  let settings: Setting[] = [{ positions: {}, positionNames: {}, closedContacts: [] }];
  for (const part of kit.parts) {
    const contacts = contactsOf(part);
    if (contacts.length === 0) continue;
    settings = settings.flatMap((before) =>
      contacts.map((contact) => ({
        positions: { ...before.positions, [part.name]: contact.position },
        positionNames:
          contact.called === undefined
            ? before.positionNames
            : { ...before.positionNames, [part.name]: contact.called },
        closedContacts: [
          ...before.closedContacts,
          ...contact.joins.map((group) => group.map((lug) => lugId(part.name, lug))),
        ],
      })),
    );
  }
  return settings;
}
