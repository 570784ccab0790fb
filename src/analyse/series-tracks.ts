/** Pots whose track lies in series with a pickup that is heard, all controls at full: a blend wired by the wrong lugs. */
import type { Circuit, State } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { controlsOf, isPickup } from '../parts/index.ts';
import { makeNetlist } from '../solve/netlist.ts';
import { type Branch, elementName, type Port } from '../solve/network.ts';
import { withOutputLoad } from '../solve/output.ts';
import { LEVEL_FREQUENCY, magnitudeOf, transfersOf } from '../solve/sounding.ts';
import { decibels } from './peak.ts';

interface SeriesTrack {
  readonly pickup: string;
  readonly pot: string;
  /** Decibels that the track takes, at most, at 1 kHz or far below, whichever is less. */
  readonly fall: number;
  /** Never empty. */
  readonly states: readonly State[];
}

/**
 * What a pickup may lose to a track, decibels. Two like pickups in parallel load each other, so that each alone gives half of its
 * voltage: that much is usual (from the voltage divider of two equal impedances), and what loses more than that to a pot besides
 * is not in balance with any other. That it is where to warn is common practice, no source.
 */
const MOST_LOST = 20 * Math.log10(2);
/** Hertz: one that no capacitor takes any of, since without its track a tone control resonates with the pickup; and the one of levels. */
const PROBES = [0.1, LEVEL_FREQUENCY];
/** A wire, ohms: small beside anything in a guitar. */
const WIRE = 1e-3;

/** Each pickup with the pot in series with it, and where; of a blend only its centre is looked at, as at its ends one is meant to be down. */
export function seriesTracks(circuit: Circuit): readonly SeriesTrack[] {
  const { kit, states } = circuit;
  const tracks = kit.parts.flatMap(controlsOf).flatMap(({ id, part, tracks: own }) =>
    // A plain pot that blends has half of its one track in series with each pickup: that is how it blends.
    own.length === 1 && circuit.fullAt?.get(id) === 'middle'
      ? []
      : own.map((track) => ({ pot: id, of: elementName(part, track) })),
  );
  const names = kit.parts.filter(isPickup).map(({ name }) => name);
  const found = new Map<string, { pickup: string; pot: string; fall: number; states: State[] }>();
  for (const state of states) {
    if (Object.values(state.turned ?? {}).some((at) => at !== 0.5)) continue;
    const netlist = makeNetlist(circuit, state);
    const branches = withOutputLoad(netlist, kit.outputLoad);
    const grounds = new Set(netlist.outputs.map(({ to }) => to));
    for (const { pot, of } of tracks) {
      // What leads to ground is across the signal.
      const isSeries = (one: Branch): boolean =>
        one.kind === 'resistor' && one.of === of && !grounds.has(one.a) && !grounds.has(one.b);
      if (!branches.some(isSeries)) continue;
      const here = levelsIn(branches, netlist.outputs);
      const without = levelsIn(
        branches.map((one) => (isSeries(one) ? { ...one, ohms: WIRE } : one)),
        netlist.outputs,
      );
      for (const pickup of names) {
        if (!state.sounding.includes(pickup)) continue;
        const falls = PROBES.map(
          (_, k) => decibels(nth(without, k)(pickup)) - decibels(nth(here, k)(pickup)),
        );
        const fall = Math.min(...falls);
        if (!(fall > MOST_LOST)) continue;
        const key = `${pickup} ${pot}`;
        const entry = found.get(key) ?? { pickup, pot, fall, states: [] };
        found.set(key, {
          ...entry,
          fall: Math.max(fall, entry.fall),
          states: [...new Set([...entry.states, state])],
        });
      }
    }
  }
  return [...found.values()];
}

/** For each of the probes, volts at the jack per volt in each pickup, at the output where that is most. */
function levelsIn(
  branches: readonly Branch[],
  outputs: readonly Port[],
): readonly ((pickup: string) => number)[] {
  const found = outputs.map((port) => transfersOf(branches, port, PROBES));
  return PROBES.map(
    (_, k) => (pickup) => Math.max(0, ...found.map((one) => magnitudeOf(one.get(pickup)?.[k]))),
  );
}
