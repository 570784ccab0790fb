/** What can be done instead of a pad on the pickup's own lug, each solved; and what makes a load too heavy. */
import type { Circuit, LugId, State } from '../circuit/circuit.ts';
import { contactsOf, elementsLike, is, isPickup, resistorOf } from '../parts/index.ts';
import { loadsOf } from '../solve/measure.ts';
import { makeNetlist } from '../solve/netlist.ts';
import type { Branch } from '../solve/network.ts';
import { controlsAt, knobsAtFull, rolesOf } from './controls.ts';
import { hotNet, lugFor, type NewResistor, withResistor, withValues } from './kit-changes.ts';
import { chainOf, loading, pickupPort } from './loads.ts';
import { type Effect, effectsOf, loadFor, loadsOfKit, type Match } from './pad-effects.ts';

export type Alternative =
  /** The same resistor where the signal reaches the volume: in circuit in every position. */
  | { readonly kind: 'elsewhere'; readonly pad: NewResistor; readonly effects: readonly Effect[] }
  /** The same resistor on a pole that is free: in circuit only where that pole's contact is closed. */
  | {
      readonly kind: 'spare-pole';
      readonly pad: NewResistor;
      /** Indices of the states it is in circuit in. */
      readonly states: readonly number[];
      readonly effects: readonly Effect[];
    }
  /** Pots of the values in the pickup's reference harness instead; ohms by part name. */
  | {
      readonly kind: 'pots';
      readonly pots: Readonly<Record<string, number>>;
      readonly effects: readonly Effect[];
    };

/** A part that loads a pickup, and what its load would be without it: ohms, infinite when nothing else loads it. */
export interface Cause {
  readonly part: string;
  readonly without: number;
}

/** Pots and resistors whose removal raises a pickup's load, the heaviest first. */
export function causesOf(circuit: Circuit, pickup: string, index: number, match: Match): readonly Cause[] {
  const state = circuit.states[index];
  const own = circuit.kit.parts.find((part) => part.name === pickup);
  const netlist = state && makeNetlist(circuit, state);
  const port = netlist && own && pickupPort(own, netlist);
  if (!netlist || !port) return [];
  const bare = loading(netlist, chainOf(circuit, state, pickup));
  const frequency = circuit.kit.outputLoad.frequency.value;
  const load = (branches: readonly Branch[]) => loadFor(match, loadsOf(branches, port, frequency));
  const now = load(bare);
  return circuit.kit.parts
    .filter((part) => is(part, 'pot') || resistorOf(part) !== undefined)
    .map((part) => ({
      part: part.name,
      without: load(bare.filter(({ of }) => !of.startsWith(`${part.name}.`))),
    }))
    .filter(({ without }) => without > now * (1 + 1e-9))
    .sort((a, b) => (a.without === b.without ? 0 : b.without - a.without));
}

/** The pad at the volume's input, if that is another net than the pickup's own. */
export function elsewhere(
  circuit: Circuit,
  pickup: string,
  pad: NewResistor,
  state: number,
  match: Match,
): readonly Alternative[] {
  const own = hotNet(circuit, pickup);
  const before = loadsOfKit(circuit.kit);
  const inputs = volumesInPath(circuit, state, pickup).flatMap((volume) => {
    const ends = [...circuit.lugs.values()].filter((lug) => lug.part === volume && lug.role === 'clockwise');
    return ends.filter((lug) => lug.net !== own);
  });
  return inputs.map((lug): Alternative => {
    const moved = { part: pad.part, ohms: pad.ohms, from: lugFor(circuit, lug.net) ?? lug.id, to: pad.to };
    return {
      kind: 'elsewhere',
      pad: moved,
      effects: effectsOf(before, withResistor(circuit.kit, moved), match),
    };
  });
}

/** Volume pots whose clockwise end is one node with the pickup's hot end in a state. */
function volumesInPath(circuit: Circuit, index: number, pickup: string): readonly string[] {
  const state = circuit.states[index];
  const hot = [...circuit.lugs.values()].find((lug) => lug.part === pickup && lug.role === 'hot')?.id;
  if (!state || hot === undefined) return [];
  const roles = rolesOf(circuit);
  const { nodeOf } = makeNetlist(circuit, state, controlsAt(roles, knobsAtFull));
  return [...roles].flatMap(([name, role]) => {
    const end = [...circuit.lugs.values()].find((lug) => lug.part === name && lug.role === 'clockwise')?.id;
    return role === 'volume' && end !== undefined && nodeOf.get(end) === nodeOf.get(hot) ? [name] : [];
  });
}

/** The pad behind a pole that nothing is joined to: its common on the pickup's lug, its throw to the pad. */
export function sparePoles(
  circuit: Circuit,
  pad: NewResistor,
  judged: number,
  match: Match,
): readonly Alternative[] {
  const before = loadsOfKit(circuit.kit);
  return freePoles(circuit).flatMap(({ common, throws }) =>
    throws.flatMap((lug): Alternative[] => {
      const states = circuit.states.flatMap((state, i) => (touches(state, common, lug) ? [i] : []));
      if (!states.includes(judged)) return [];
      const behind: NewResistor = {
        part: pad.part,
        ohms: pad.ohms,
        from: lug,
        to: pad.to,
        wires: [[pad.from, common]],
      };
      const effects = effectsOf(before, withResistor(circuit.kit, behind), match);
      return [{ kind: 'spare-pole', pad: behind, states, effects }];
    }),
  );
}

const touches = (state: State, a: LugId, b: LugId): boolean =>
  state.joins.some((group) => group.includes(a) && group.includes(b));

/** Poles of which no lug is joined to anything. */
function freePoles(
  circuit: Circuit,
): readonly { readonly common: LugId; readonly throws: readonly LugId[] }[] {
  const lugs = [...circuit.lugs.values()];
  return circuit.kit.parts
    .filter((part) => contactsOf(part).length > 0)
    .flatMap((part) => {
      const own = lugs.filter((lug) => lug.part === part.name);
      const poles = [...new Set(own.map((lug) => lug.pole))];
      return poles.flatMap((pole) => {
        const pins = own.filter((lug) => lug.pole === pole);
        const common = pins.find((lug) => lug.role === 'common');
        const free = pins.every((lug) => (circuit.nets[lug.net]?.lugs.length ?? 0) === 1);
        const throws = pins.filter((lug) => lug.role === 'throw').map((lug) => lug.id);
        return free && common ? [{ common: common.id, throws }] : [];
      });
    });
}

/** The pots that load a pickup, changed to the values of its reference harness. */
export function otherPots(
  circuit: Circuit,
  pickup: string,
  state: number,
  match: Match,
): readonly Alternative[] {
  const reference = circuit.kit.parts.filter(isPickup).find((part) => part.name === pickup)?.reference;
  if (!reference) return [];
  const loading = new Set(causesOf(circuit, pickup, state, match).map((cause) => cause.part));
  const pots: Record<string, number> = {};
  for (const [name, role] of rolesOf(circuit)) {
    const [track] = circuit.kit.parts.flatMap((part) =>
      part.name === name ? elementsLike(part, 'track') : [],
    );
    const wanted = role === 'volume' ? reference.volume.value : reference.tone.value;
    if (role !== 'other' && loading.has(name) && track && track.ohms.value !== wanted) pots[name] = wanted;
  }
  if (Object.keys(pots).length === 0) return [];
  const after = withValues(circuit.kit, pots);
  return [{ kind: 'pots', pots, effects: effectsOf(loadsOfKit(circuit.kit), after, match) }];
}
