/** What an ohmmeter reads at the jack, and from every joined lug to ground: before the pickups are soldered, and when all is. */
import type { Circuit, LugId, State } from '../circuit/circuit.ts';
import { must } from '../common/must.ts';
import { remembered } from '../common/remembered.ts';
import { is } from '../parts/index.ts';
import { directResistance } from '../solve/measure.ts';
import { makeNetlist, type Netlist, type PotRotations } from '../solve/netlist.ts';
import type { Port } from '../solve/network.ts';
import { knobsAtFull, type Roles, rolesOf, rotationsAt } from './controls.ts';
import { beforePickups, probeLug } from './soldered.ts';

/** Ohms: infinite when the meter shows an open circuit, zero when it shows none. */
export interface Reading {
  /** Before the first lead of a pickup is soldered, of what is soldered by then. */
  readonly disconnected: number;
  /** Of the finished harness. */
  readonly connected: number;
}

/** From a lug to the jack's sleeve. */
export interface LugReading extends Reading {
  readonly net: number;
  /** Where the probe is held. */
  readonly probe: LugId;
  /** All lugs of the net, which read the same as soon as its joints are soldered. */
  readonly lugs: readonly LugId[];
}

export interface HarnessReadings {
  /** Tip to sleeve. */
  readonly jack: Reading;
  /** Every net of two lugs or more but ground itself, in the order of the nets. */
  readonly lugs: readonly LugReading[];
}

export interface StateReadings {
  readonly index: number;
  readonly state: State;
  /** All controls at full. */
  readonly volumeFull: HarnessReadings;
  /** Volume pots at zero, the rest at full. */
  readonly volumeZero: HarnessReadings;
}

/** Meter readings of every state; empty for a kit without a jack. Nothing is plugged in. */
export function readMeter(circuit: Circuit, roles: Roles = rolesOf(circuit)): readonly StateReadings[] {
  if (!circuit.kit.parts.some((part) => is(part, 'jack'))) return [];
  const down = rotationsAt(roles, { ...knobsAtFull, volume: 0 });
  return circuit.states.map((state, index) => ({
    index,
    state,
    volumeFull: readAt(circuit, state, {}),
    volumeZero: readAt(circuit, state, down),
  }));
}

function readAt(circuit: Circuit, state: State, controls: PotRotations): HarnessReadings {
  const before = makeNetlist(beforePickups(circuit), state, controls);
  const finished = makeNetlist(circuit, state, controls);
  const read = (portIn: (netlist: Netlist) => Port): Reading => ({
    disconnected: directResistance(before.branches, portIn(before)),
    connected: directResistance(finished.branches, portIn(finished)),
  });
  const lugs = circuit.nets.flatMap((net): LugReading[] => {
    if (net.role === 'ground' || net.lugs.length < 2) return [];
    const probe = probeLug(circuit.kit, net.lugs);
    const reading = read((netlist) => lugPort(netlist, probe));
    return [{ net: net.index, probe, lugs: net.lugs, ...reading }];
  });
  return { jack: read(jackPort), lugs };
}

/** From the output that is looked at to the sleeve. */
export const jackPort = ({ jack }: Netlist): Port => must(jack, 'jack');

/** From a lug to the jack's sleeve. */
export const lugPort = (netlist: Netlist, lug: LugId): Port => ({
  from: must(netlist.nodeOf.get(lug), `node of ${lug}`),
  to: jackPort(netlist).to,
});

/**
 * Each output to the sleeve in every state with all controls at full and the pickups connected, ohms: the readings a load card
 * shows. Of a kit without a jack there are none.
 */
export const readOutputs = remembered((circuit: Circuit): readonly (readonly number[])[] =>
  circuit.states.map((state) => {
    const { outputs, branches } = makeNetlist(circuit, state);
    return outputs.map((port) => directResistance(branches, port));
  }),
);

/** The same at the first output alone, which is the tip. Empty for a kit without a jack. */
export const readJack = (circuit: Circuit): readonly number[] =>
  readOutputs(circuit).flatMap(([tip]) => tip ?? []);
