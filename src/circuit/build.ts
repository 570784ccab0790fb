/** From the kit to the graph: every lug, the nets that joints make, every state and what sounds in it. */
import type { Joint, Kit } from '../describe/kit.ts';
import { contactsOf, elementsOf, isPickup, lugsOf, type Part } from '../parts/index.ts';
import { type Circuit, type Lug, type LugId, lugId, type Net, type State } from './circuit.ts';
import { signalPaths } from './paths.ts';
import { Union } from './union.ts';

/** The graph of a kit whose joints name existing parts and lugs; `faults.ts` has checked that. */
export function buildCircuit(kit: Kit): Circuit {
  const joined = new Union();
  for (const joint of kit.joints) joined.join(endId(joint.from), endId(joint.to));
  const specs = kit.parts.flatMap((part) =>
    lugsOf(part).map((spec) => ({ ...spec, part: part.name, id: lugId(part.name, spec.name) })),
  );
  const nets = netsOf(specs, joined);
  const netOf = new Map(nets.flatMap((net) => net.lugs.map((id) => [id, net.index] as const)));
  const lugs = new Map(
    specs.map((spec): [LugId, Lug] => [spec.id, { ...spec, net: netOf.get(spec.id) ?? -1 }]),
  );
  return { kit, lugs, joints: kit.joints, nets, states: statesOf(kit) };
}

const endId = (end: Joint['from']): LugId => lugId(end.part, end.lug);

function netsOf(specs: readonly Omit<Lug, 'net'>[], joined: Union): readonly Net[] {
  const groups = new Map<string, Omit<Lug, 'net'>[]>();
  for (const spec of specs) {
    const root = joined.find(spec.id);
    const group = groups.get(root);
    if (group) group.push(spec);
    else groups.set(root, [spec]);
  }
  return [...groups.values()].map((group, index): Net => {
    const has = (role: Lug['role']) => group.some((lug) => lug.role === role);
    const hots = group.filter((lug) => lug.role === 'hot');
    const only = hots.length === 1 ? hots[0]?.part : undefined;
    const role = has('sleeve') ? 'ground' : has('tip') ? 'output' : only !== undefined ? 'pickup' : 'other';
    return {
      index,
      lugs: group.map((lug) => lug.id),
      role,
      ...(role === 'pickup' && only !== undefined ? { pickup: only } : {}),
    };
  });
}

/** Every combination of every switch's positions, the first switch turning slowest. */
function statesOf(kit: Kit): readonly State[] {
  type Setting = Pick<State, 'settings' | 'joins'>;
  let settings: Setting[] = [{ settings: {}, joins: [] }];
  for (const part of kit.parts) {
    const contacts = contactsOf(part);
    if (contacts.length === 0) continue;
    settings = settings.flatMap((before) =>
      contacts.map((contact) => ({
        settings: { ...before.settings, [part.name]: contact.position },
        joins: [...before.joins, ...contact.joins.map((group) => group.map((lug) => lugId(part.name, lug)))],
      })),
    );
  }
  return settings.map((setting) => ({ ...setting, ...soundingIn(kit, setting.joins) }));
}

function soundingIn(kit: Kit, joins: State['joins']): Pick<State, 'sounding' | 'shorted'> {
  const node = new Union();
  for (const joint of kit.joints) node.join(endId(joint.from), endId(joint.to));
  for (const group of joins) for (const id of group.slice(1)) node.join(group[0] ?? id, id);
  // Controls at full: the wiper stands at the clockwise end.
  for (const part of kit.parts)
    for (const element of elementsOf(part))
      if (element.kind === 'track')
        node.join(lugId(part.name, element.wiper), lugId(part.name, element.clockwise));
  const jack = kit.parts.find((part) => part.kind === 'jack');
  if (!jack) return { sounding: [], shorted: false };
  const tip = node.find(lugId(jack.name, 'tip'));
  const sleeve = node.find(lugId(jack.name, 'sleeve'));
  const coils = kit.parts.filter(isPickup).flatMap((part: Part) =>
    elementsOf(part).flatMap((element) =>
      element.kind === 'coil'
        ? [
            {
              pickup: part.name,
              a: node.find(lugId(part.name, element.hot)),
              b: node.find(lugId(part.name, element.return)),
            },
          ]
        : [],
    ),
  );
  const heard = signalPaths(coils, tip, sleeve);
  return {
    sounding: kit.parts.filter((part) => heard.has(part.name)).map((part) => part.name),
    shorted: tip === sleeve,
  };
}
