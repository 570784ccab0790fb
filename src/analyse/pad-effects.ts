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
  return loadsOfKit(after).flatMap(({ index, state, loads }) =>
    loads.flatMap((now): Effect[] => {
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
): PickupLoads | undefined => states[index]?.loads.find((loads) => loads.pickup === pickup);

/** Signed per cent of the matched load from its reference. */
export const percentOff = (match: Match, loads: PickupLoads): number =>
  (match === 'dc' ? loads.difference.dcLoad : loads.difference.signalLoad).percent;

/**
 * The state in which a pickup's load is judged: where the fewest sound with it, best none, as other pickups' pads load
 * it too; of several such the first.
 */
export function judgedIn(states: readonly StateLoads[], pickup: string): StateLoads | undefined {
  const heard = states.filter((state) => state.loads.some((loads) => loads.pickup === pickup));
  const fewest = Math.min(...heard.map((state) => state.loads.length));
  return heard.find((state) => state.loads.length === fewest);
}
