/** What a change does to every pickup in every state, by solving the circuit before and after. */

import type { State } from '../circuit/circuit.ts';
import type { Kit } from '../describe/kit.ts';
import { buildCircuit } from '../solve/build.ts';
import type { Loads } from '../solve/measure.ts';
import { type PickupLoads, type StateLoads, solveLoads } from './loads.ts';

/** Which of the two loads is to meet its reference. */
export type Match = 'dc' | 'signal';

export const loadFor = (match: Match, loads: Loads): number =>
  match === 'dc' ? loads.dcLoad : loads.signalLoad;

export interface Effect {
  readonly index: number;
  readonly state: State;
  readonly pickup: string;
  readonly before: Loads;
  readonly after: Loads;
  readonly reference: Loads;
  /** How far the matched load lies from its reference after the change. */
  readonly percent: number;
}

/** Loads of a kit in every state. */
export const loadsOfKit = (kit: Kit): readonly StateLoads[] => solveLoads(buildCircuit(kit));

/** The effect of going from one kit to another; both have the same pickups and switches. */
export function effectsOf(before: readonly StateLoads[], after: Kit, match: Match): readonly Effect[] {
  return loadsOfKit(after).flatMap(({ index, state, pickups }) =>
    pickups.flatMap((now): Effect[] => {
      const was = loadsIn(before, index, now.pickup);
      if (!was) return [];
      return [
        {
          index,
          state,
          pickup: now.pickup,
          before: twoOf(was),
          after: twoOf(now),
          reference: now.reference,
          percent: percentOff(match, now),
        },
      ];
    }),
  );
}

const twoOf = ({ dcLoad, signalLoad }: Loads): Loads => ({ dcLoad, signalLoad });

export const loadsIn = (
  states: readonly StateLoads[],
  index: number,
  pickup: string,
): PickupLoads | undefined => states[index]?.pickups.find((loads) => loads.pickup === pickup);

/** Signed per cent of the matched load from its reference. */
export const percentOff = (match: Match, loads: PickupLoads): number =>
  (match === 'dc' ? loads.difference.dcLoad : loads.difference.signalLoad).percent;

/** Distance by ratio: half a load is as far off as twice that load. */
export const logDistance = (load: number, reference: number): number => Math.abs(Math.log(load / reference));

/** A load that gets worse by more than this is reported (common practice, no source). */
const WORSE = Math.log(1.1);

/** Whether a change takes a load over 10 % further from its reference. */
export const worsened = (match: Match, { before, after, reference }: Effect): boolean =>
  logDistance(loadFor(match, after), loadFor(match, reference)) -
    logDistance(loadFor(match, before), loadFor(match, reference)) >
  WORSE;

/**
 * Whether a change brings a pickup's load nearer its reference where it is judged, and makes none worse where that one is
 * judged. In positions that several share it may, which is to be said with the offer.
 */
export function improves(
  match: Match,
  now: readonly StateLoads[],
  effects: readonly Effect[],
  pickup: string,
): boolean {
  const judged = effects.filter(({ index, pickup: name }) => judgedIn(now, name)?.index === index);
  const own = judged.find((effect) => effect.pickup === pickup);
  if (!own || judged.some((effect) => worsened(match, effect))) return false;
  const off = (loads: Loads): number => logDistance(loadFor(match, loads), loadFor(match, own.reference));
  return off(own.after) < off(own.before) - NEARER;
}

/** Less than a per cent nearer is no improvement. */
const NEARER = Math.log(1.01);

/**
 * The state in which a pickup's load is judged: where the fewest sound with it, best none, as other pickups' pads load
 * it too; of several such the first.
 */
export function judgedIn(states: readonly StateLoads[], pickup: string): StateLoads | undefined {
  const heard = states.filter((state) => state.pickups.some((loads) => loads.pickup === pickup));
  const fewest = Math.min(...heard.map((state) => state.pickups.length));
  return heard.find((state) => state.pickups.length === fewest);
}
