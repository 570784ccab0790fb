/** What an ohmmeter reads on the finished harness: at the jack, and from every joined lug to ground. */
import type { Circuit, LugId, State } from '../circuit/circuit.ts';
import { directResistance } from '../solve/measure.ts';
import { makeNetlist } from '../solve/netlist.ts';
import { withoutPickups } from '../solve/network.ts';
import { controlsAt, type Roles, rolesOf } from './controls.ts';

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
  return circuit.states.flatMap((state, index) => {
    const volumeFull = readAt(circuit, state, roles, 10);
    const volumeZero = readAt(circuit, state, roles, 0);
    return volumeFull && volumeZero ? [{ index, state, volumeFull, volumeZero }] : [];
  });
}

function readAt(circuit: Circuit, state: State, roles: Roles, volume: number): HarnessReadings | undefined {
  const { nodeOf, jack, branches } = makeNetlist(circuit, state, controlsAt(roles, { volume, tone: 10 }));
  if (!jack) return undefined;
  const bare = withoutPickups(branches, () => true);
  const read = (from: number): Reading => ({
    disconnected: directResistance(bare, { from, to: jack.to }),
    connected: directResistance(branches, { from, to: jack.to }),
  });
  const lugs = circuit.nets.flatMap((net): LugReading[] => {
    const from = nodeOf.get(net.lugs[0] ?? '');
    return net.role === 'ground' || net.lugs.length < 2 || from === undefined
      ? []
      : [{ net: net.index, lugs: net.lugs, ...read(from) }];
  });
  return { jack: read(jack.from), lugs };
}

/**
 * Tip to sleeve of every state with all controls at full and the pickups connected, ohms: the one reading a load card
 * shows. Empty for a kit without a jack.
 */
export const readJack = (circuit: Circuit): readonly number[] =>
  circuit.states.flatMap((state) => {
    const { jack, branches } = makeNetlist(circuit, state);
    return jack ? [directResistance(branches, jack)] : [];
  });
