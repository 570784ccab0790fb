/** What an ohmmeter reads on the finished harness: at the jack, and from every joined lug to ground. */
import type { Circuit, LugId, State } from '../circuit/circuit.ts';
import { must, nth } from '../common/must.ts';
import { remembered } from '../common/remembered.ts';
import { is } from '../parts/index.ts';
import { directResistance } from '../solve/measure.ts';
import { makeNetlist, type PotRotations } from '../solve/netlist.ts';
import { withoutPickups } from '../solve/network.ts';
import { knobsAtFull, type Roles, rolesOf, rotationsAt } from './controls.ts';

/** Ohms: infinite when the meter shows an open circuit, zero when it shows none. */
export interface Reading {
  /** Before the pickups are connected. */
  readonly disconnected: number;
  /** With the pickups connected. */
  readonly connected: number;
}

/** From the lugs of one net, which any joint holds together, to the jack's sleeve. */
export interface LugReading extends Reading {
  readonly net: number;
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
  const { nodeOf, jack: port, branches } = makeNetlist(circuit, state, controls);
  const jack = must(port, 'jack');
  const bare = withoutPickups(branches, () => true);
  const read = (from: number): Reading => ({
    disconnected: directResistance(bare, { from, to: jack.to }),
    connected: directResistance(branches, { from, to: jack.to }),
  });
  const lugs = circuit.nets.flatMap((net): LugReading[] => {
    if (net.role === 'ground' || net.lugs.length < 2) return [];
    const lug = nth(net.lugs, 0);
    return [{ net: net.index, lugs: net.lugs, ...read(must(nodeOf.get(lug), `node of ${lug}`)) }];
  });
  return { jack: read(jack.from), lugs };
}

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
