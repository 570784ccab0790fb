/**
 * Changes to a kit that the padding choice tries: a resistor added, one taken out, pots of other values. Each gives a new
 * kit, which is built and solved like any other; nothing is worked out from the old one's figures.
 */
import {
  type Circuit,
  endAt,
  jointsAtLugs,
  type Lug,
  type LugId,
  lugId,
  lugsJoinedTo,
  netAt,
  type State,
} from '../circuit/circuit.ts';
import { must, nth } from '../common/must.ts';
import { NAME_LONGEST } from '../common/names.ts';
import { type Joint, type Kit, labelOf, partNamed } from '../describe/kit.ts';
import { LABEL_LONGEST } from '../parts/fields.ts';
import { controlsOf, lugsWith, type Part, resistorOf, shaftOf, withOhms } from '../parts/index.ts';
import { LUG_ROOM, make } from '../parts/kind.ts';
import { newResistor, resistor } from '../parts/resistor.ts';
import { twoLegs } from '../parts/two-leg.ts';
import { makeNetlist } from '../solve/netlist.ts';

/** A resistor to be soldered between two lugs, and what must be done besides. */
export interface NewResistor {
  /** Name for the part; taken by no other part of the kit. */
  readonly part: string;
  readonly ohms: number;
  readonly from: LugId;
  readonly to: LugId;
  /** What the drawing calls it, in place of its name. */
  readonly label?: string;
  /** Whether its first leg gets a tube, as one that passes a switch should. */
  readonly sleeved?: boolean;
  /** Wires the change needs besides the resistor's legs. */
  readonly wires?: readonly (readonly [LugId, LugId])[];
}

/** Both legs of a new resistor, each with what it is soldered to. */
export function legsOf({ part, from, to }: Pick<NewResistor, 'part' | 'from' | 'to'>) {
  const [first, second] = twoLegs;
  return [
    [lugId(part, first.name), from],
    [lugId(part, second.name), to],
  ] as const;
}

/** The kit with a resistor more, its joints last. */
export function withResistor(kit: Kit, added: NewResistor): Kit {
  const part = make(resistor, { name: added.part, label: added.label ?? added.part }, newResistor(added));
  return withJoints({ ...kit, parts: [...kit.parts, part] }, [
    ...(added.wires ?? []).map(([from, to]) => ['wire', from, to] as const),
    ...legsOf(added).map(([leg, to]) => ['leg', leg, to] as const),
  ]);
}

/** The kit with a resistor's legs on other lugs. */
export const withMoved = (kit: Kit, moved: Pick<NewResistor, 'part' | 'from' | 'to'>): Kit =>
  withJoints(
    {
      ...kit,
      joints: kit.joints.filter(({ from, to }) => from.part !== moved.part && to.part !== moved.part),
    },
    legsOf(moved).map(([leg, to]) => ['leg', leg, to] as const),
  );

export const withJumper = (kit: Kit, from: LugId, to: LugId): Kit => withJoints(kit, [['jumper', from, to]]);

/** The kit with joints more, last in order. */
const withJoints = (kit: Kit, joints: readonly (readonly [Joint['kind'], LugId, LugId])[]): Kit => ({
  ...kit,
  joints: [
    ...kit.joints,
    ...joints.map(
      ([kind, from, to], i): Joint => ({
        kind,
        from: endAt(from),
        to: endAt(to),
        index: kit.joints.length + i,
      }),
    ),
  ],
});

/** The kit without a part, its joints gone with it. */
export const withoutPart = (kit: Kit, name: string): Kit => ({
  ...kit,
  parts: kit.parts.filter((part) => part.name !== name),
  joints: kit.joints.filter((joint) => joint.from.part !== name && joint.to.part !== name),
});

/** The kit with other values for some pots and resistors, by part name or, of a pot with several shafts, by control; ohms. All else about them stays. */
export const withValues = (kit: Kit, values: Readonly<Record<string, number>>): Kit => ({
  ...kit,
  parts: kit.parts.map((part): Part => {
    const ids = [part.name, ...controlsOf(part).map(({ id }) => id)];
    return [...new Set(ids)].reduce((changed, id) => {
      const ohms = Object.hasOwn(values, id) ? values[id] : undefined;
      return ohms === undefined ? changed : withOhms(changed, ohms, shaftOf(id));
    }, part);
  }),
});

export const groundNet = (circuit: Circuit): number | undefined =>
  circuit.nets.find((net) => net.role === 'ground')?.index;

/** Resistors straight from a net to ground: on a pickup's signal lead, the pads it has already. */
export function resistorsToGround(circuit: Circuit, net: number | undefined): readonly string[] {
  const ground = groundNet(circuit);
  return circuit.kit.parts.flatMap((part) => {
    if (!resistorOf(part) || net === ground) return [];
    const nets = lugsWith(part, 'leg').map((leg) => netAt(circuit, lugId(part.name, leg)).index);
    return [net, ground].every((end) => nets.some((one) => one === end)) ? [part.name] : [];
  });
}

/** The lugs a pad's two legs are soldered to, the one on a net first. */
export function placeOfPad(circuit: Circuit, pad: string, net: number): readonly [LugId, LugId] | undefined {
  const far = (leg: LugId): LugId | undefined => lugsJoinedTo(circuit.joints, leg)[0];
  const part = partNamed(circuit.kit, pad);
  const legs = lugsWith(part, 'leg').map((leg) => lugId(pad, leg));
  const [hot, other] = netAt(circuit, nth(legs, 0)).index === net ? legs : [...legs].reverse();
  const [from, to] = [far(must(hot, 'leg')), far(must(other, 'leg'))];
  return from === undefined || to === undefined ? undefined : [from, to];
}

/**
 * The lug of a pickup, or of one in its series chain, on which the signal leaves: not at ground and not where one pickup of
 * the chain meets the next. With exchanged leads that is the lead called ground.
 */
export function signalLug(
  circuit: Circuit,
  state: State,
  pickup: string,
  chain: readonly string[],
): Lug | undefined {
  const { nodeOf } = makeNetlist(circuit, state);
  const ground = [...circuit.lugs.values()].find((lug) => lug.role === 'sleeve');
  const leads = [pickup, ...chain].flatMap((name) =>
    (['hot', 'return'] as const).flatMap((role) =>
      [...circuit.lugs.values()].filter((lug) => lug.part === name && lug.role === role),
    ),
  );
  const nodes = leads.map(({ id }) => nodeOf.get(id));
  return leads.find((_, i) => {
    const node = nodes[i];
    return nodes.filter((one) => one === node).length === 1 && node !== (ground && nodeOf.get(ground.id));
  });
}

/**
 * Where a pad's leg is soldered on a net: best on the switch, else on a pot, else wherever the net is; where there is
 * the choice, on a lug that has room.
 */
export function lugFor(circuit: Circuit, net: number): LugId | undefined {
  const all = [...circuit.lugs.values()].filter((lug) => lug.net === net);
  const joints = jointsAtLugs(circuit.joints);
  const roomy = all.filter((lug) => (joints.get(lug.id)?.length ?? 0) < (lug.room ?? LUG_ROOM));
  const best = (lugs: readonly Lug[]): LugId | undefined => {
    const first = (...roles: readonly string[]) => lugs.find((lug) => roles.includes(lug.role))?.id;
    return (
      first('throw') ??
      first('common') ??
      first('clockwise', 'anticlockwise', 'wiper') ??
      first('output') ??
      lugs[0]?.id
    );
  };
  return best(roomy) ?? best(all);
}

/** Where its other leg is grounded: the case with most room, which is a pot's rather than a switch's frame, else the jack's sleeve. */
export function groundLug(circuit: Circuit): LugId | undefined {
  const ground = groundNet(circuit);
  const lugs = [...circuit.lugs.values()].filter((lug) => lug.net === ground);
  const cases = lugs.filter((lug) => lug.role === 'case');
  const most = Math.max(...cases.map(({ room = LUG_ROOM }) => room));
  const roomy = cases.find(({ room = LUG_ROOM }) => room === most);
  return (roomy ?? lugs.find((lug) => lug.role === 'sleeve'))?.id;
}

/** What the drawing calls a pickup's pad; a label too long for it is left to the part's name. */
export function padLabel(kit: Kit, pickup: string): string | undefined {
  const label = `${labelOf(kit, pickup)} pad`;
  return label.length <= LABEL_LONGEST ? label : undefined;
}

/** A name for a pad that no part has yet. */
export function padName(kit: Kit, pickup: string): string {
  const taken = new Set(kit.parts.map((part) => part.name));
  // Room is left for a number behind it.
  const stem = `pad-${pickup}`.slice(0, NAME_LONGEST - 3).replace(/-$/, '');
  for (let i = 1; ; i++) {
    const name = i === 1 ? stem : `${stem}-${i}`;
    if (!taken.has(name)) return name;
  }
}
