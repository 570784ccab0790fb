/** What each sounding pickup works into, in every state, beside what it was made to work into. */
import { type Circuit, lugId, type State } from '../circuit/circuit.ts';
import type { Surroundings } from '../describe/kit.ts';
import { elementsOf, isPickup, lugsOf, type Part, type Pickup } from '../parts/index.ts';
import { type Loads, loadsOf } from './measure.ts';
import { makeNetlist, type Netlist } from './netlist.ts';
import { type Branch, capacitor, type Port, resistor, withoutPickups } from './network.ts';
import { referenceCircuit } from './reference.ts';

export interface LoadOptions {
  /** Hertz for signal and total load, in place of the kit's own. */
  readonly frequency?: number;
}

/** One pickup's loads in one state, ohms: infinite when open, zero when shorted. */
export interface PickupLoads extends Loads {
  readonly pickup: string;
  /** The same two loads in the plain harness the pickup was made for. */
  readonly reference: Loads;
  /** The same two with the other sounding pickups, cable and amplifier connected. */
  readonly total: Loads;
  /** How far `dcLoad` and `signalLoad` lie from the reference. */
  readonly difference: { readonly dcLoad: Difference; readonly signalLoad: Difference };
}

export interface Difference {
  readonly ohms: number;
  readonly percent: number;
}

export interface StateLoads {
  /** Index into `circuit.states`. */
  readonly index: number;
  readonly state: State;
  /** One entry a sounding pickup, in the order written. */
  readonly loads: readonly PickupLoads[];
}

/** Loads of every sounding pickup in every state, all controls at full. */
export function solveLoads(circuit: Circuit, options: LoadOptions = {}): readonly StateLoads[] {
  const frequency = options.frequency ?? circuit.kit.surroundings.frequency.value;
  const pickups = circuit.kit.parts.filter(isPickup);
  const references = new Map(
    pickups.map(
      (pickup) => [pickup.name, referenceLoads(pickup, circuit.kit.surroundings, frequency)] as const,
    ),
  );
  return circuit.states.map((state, index) => {
    const netlist = makeNetlist(circuit, state);
    const loads = pickups.flatMap((pickup) => {
      const port = pickupPort(pickup, netlist);
      const reference = references.get(pickup.name);
      if (!state.sounding.includes(pickup.name) || !port || !reference) return [];
      const alone = loadsOf(
        withoutPickups(netlist.branches, () => true),
        port,
        frequency,
      );
      const total = loadsOf(played(circuit, state, netlist, pickup.name), port, frequency);
      const difference = {
        dcLoad: differenceOf(alone.dcLoad, reference.dcLoad),
        signalLoad: differenceOf(alone.signalLoad, reference.signalLoad),
      };
      return [{ pickup: pickup.name, ...alone, reference, total, difference }];
    });
    return { index, state, loads };
  });
}

/** The two loads of the plain harness that a pickup was made for. */
export function referenceLoads(pickup: Pickup, surroundings: Surroundings, frequency: number): Loads {
  const circuit = referenceCircuit(pickup, surroundings);
  const state = circuit.states[0];
  const netlist = state && makeNetlist(circuit, state);
  const port = netlist && pickupPort(pickup, netlist);
  if (!netlist || !port) return { dcLoad: Infinity, signalLoad: Infinity };
  return loadsOf(
    withoutPickups(netlist.branches, () => true),
    port,
    frequency,
  );
}

/** A pickup's own two terminals at the harness: its hot lug and its return. */
export function pickupPort(pickup: Part, netlist: Netlist): Port | undefined {
  const coil = elementsOf(pickup).find((element) => element.kind === 'coil');
  const lug = (role: 'hot' | 'return') => lugsOf(pickup).find((spec) => spec.role === role)?.name;
  const from = netlist.nodeOf.get(lugId(pickup.name, lug('hot') ?? coil?.hot ?? ''));
  const to = netlist.nodeOf.get(lugId(pickup.name, lug('return') ?? coil?.return ?? ''));
  return from === undefined || to === undefined ? undefined : { from, to };
}

/** What the jack is plugged into: the cable's capacitance and the amplifier's input resistance. */
export const outside = (surroundings: Surroundings, jack: Port | undefined): readonly Branch[] =>
  jack === undefined || jack.from === jack.to
    ? []
    : [
        capacitor(jack.from, jack.to, surroundings.cable.value, 'cable'),
        resistor(jack.from, jack.to, surroundings.amplifier.value, 'amplifier'),
      ];

/** The network as played, without the one pickup that is looked out of and those that are silent. */
export function played(circuit: Circuit, state: State, netlist: Netlist, own: string): readonly Branch[] {
  const gone = (name: string) => name === own || !state.sounding.includes(name);
  return [...withoutPickups(netlist.branches, gone), ...outside(circuit.kit.surroundings, netlist.jack)];
}

/** Signed distance from a reference; of two infinite figures, none. */
export function differenceOf(value: number, reference: number): Difference {
  if (value === reference) return { ohms: 0, percent: 0 };
  return { ohms: value - reference, percent: (value / reference - 1) * 100 };
}
