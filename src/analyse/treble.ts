/**
 * What each sounding pickup keeps of its treble: its −3 dB point beside that in the harness it was made for. A load is
 * a resistance, and blind to a capacitor that lies straight across the signal: at 1 kHz such a one hardly conducts, and
 * yet it takes everything above. Cards are made with every drawing, so that a few frequencies must do here.
 */
import { atOutputOf, type Circuit, perOutput, type State } from '../circuit/circuit.ts';
import { remembered } from '../common/remembered.ts';
import { elementsLike, isPickup, type Pickup } from '../parts/index.ts';
import { makeNetlist, type PotRotations } from '../solve/netlist.ts';
import { elementName, withoutPickups } from '../solve/network.ts';
import { chainOf } from './loads.ts';
import { decibels, type Gain, HIGHEST, PLATEAU } from './peak.ts';
import { referenceCircuit } from './reference.ts';
import { gainOf, makeStateSolver, type StateSolver, solverOf } from './response.ts';

export interface Treble {
  /** The −3 dB point lies below half the reference's, and not for what leads through another pickup only. */
  readonly lost: boolean;
  /** Decibels at the reference's −3 dB point, above what the reference has there. */
  readonly level: number;
  /** The −3 dB point lies below the reference's. */
  readonly lower: boolean;
}

const HALF_POWER = Math.SQRT1_2;

/** For every state, each sounding pickup by name; all controls at full. */
export const trebleOf = remembered((circuit: Circuit): readonly ReadonlyMap<string, Treble>[] => {
  const cutoffs = referenceCutoffs(circuit);
  return circuit.states.map((state) => {
    const views = perOutput(state).map((view) => makeStateSolver(circuit, view));
    return new Map(
      state.sounding.flatMap((pickup) => {
        const cutoff = cutoffs.get(pickup);
        const heard = views[atOutputOf(state, pickup).output ?? 0];
        if (!heard || cutoff === undefined) return [];
        const treble = trebleAt(ownGain(heard, pickup), cutoff);
        const lost =
          treble.lost &&
          lostAlone(circuit, state, pickup, cutoff) &&
          capacitorsOn(circuit, state, pickup).length > 0;
        return [[pickup, { ...treble, lost }]];
      }),
    );
  });
});

/** Whether a pickup's treble is lost, with the controls where they are said to stand. */
export function isLost(
  circuit: Circuit,
  state: State,
  pickup: string,
  cutoff: number,
  controls: PotRotations = {},
): boolean {
  const heard = makeStateSolver(circuit, atOutputOf(state, pickup), controls);
  return heard !== undefined && trebleAt(ownGain(heard, pickup), cutoff).lost;
}

/**
 * Whether the treble is lost with the pickups taken out that sound beside this one. A capacitor that leads to ground only
 * through another pickup does not shorten this one's treble: it holds back that pickup's bass, as is meant.
 */
function lostAlone(circuit: Circuit, state: State, pickup: string, cutoff: number): boolean {
  const chain = [pickup, ...chainOf(circuit, state, pickup)];
  const heard = solverOf(circuit, state, makeNetlist(circuit, atOutputOf(state, pickup)), (branches) =>
    withoutPickups(branches, (name) => !chain.includes(name)),
  );
  return heard !== undefined && trebleAt(ownGain(heard, pickup), cutoff).lost;
}

/** Ohms of a capacitor are next to none with so many farads. */
const SHORT = 1;
/** Decibels. */
const HELD_BACK = 3;

/**
 * Capacitors that lie straight across a pickup: with one of them shorted there is hardly any output left. Behind a tone control's
 * track it may be shorted and the signal stays.
 */
export function capacitorsOn(
  circuit: Circuit,
  state: State,
  pickup: string,
  controls: PotRotations = {},
): readonly string[] {
  const netlist = makeNetlist(circuit, state, controls);
  const level = (shorted?: ReadonlySet<string>): number => {
    const heard = solverOf(circuit, state, netlist, (branches) =>
      branches.map((branch) =>
        branch.kind === 'capacitor' && shorted?.has(branch.of) ? { ...branch, farads: SHORT } : branch,
      ),
    );
    return heard ? decibels(ownGain(heard, pickup)(PLATEAU)) : Number.NEGATIVE_INFINITY;
  };
  const now = level();
  return circuit.kit.parts.flatMap((part) => {
    const own = new Set(elementsLike(part, 'capacitance').map((one) => elementName(part.name, one)));
    return own.size > 0 && level(own) < now - HELD_BACK ? [part.name] : [];
  });
}

export const ownGain = (heard: StateSolver, pickup: string): Gain =>
  gainOf(
    heard,
    heard.windings.filter((winding) => winding.pickup === pickup),
  );

function trebleAt(gain: Gain, cutoff: number): Treble {
  const wanted = gain(PLATEAU) * HALF_POWER;
  const [quarter = 0, half = 0, whole = 0] = [cutoff / 4, cutoff / 2, cutoff].map(gain);
  // Silence has no treble to lose.
  if (decibels(wanted) <= -100) return { lost: false, level: 0, lower: false };
  const level = decibels(whole) - decibels(wanted);
  return { lost: half < wanted, level, lower: Math.min(quarter, half, whole) < wanted };
}

/** Hertz by pickup: where each has fallen by 3 dB in its reference harness, or the end of hearing. */
export const referenceCutoffs = (circuit: Circuit): ReadonlyMap<string, number> =>
  new Map(
    circuit.kit.parts.filter(isPickup).map((pickup) => [pickup.name, referenceCutoff(circuit, pickup)]),
  );

function referenceCutoff(circuit: Circuit, pickup: Pickup): number {
  const plain = referenceCircuit(pickup, circuit.kit.outputLoad);
  const state = plain.states[0];
  const heard = state && makeStateSolver(plain, state);
  return heard ? cutoffFromAbove(gainOf(heard, heard.windings)) : HIGHEST;
}

/**
 * The highest frequency below which a curve stays above half power, sought downwards by octaves and then
 * halved to a ten-thousandth: beyond the peak of a plain harness the curve only falls.
 */
function cutoffFromAbove(gain: Gain): number {
  const wanted = gain(PLATEAU) * HALF_POWER;
  let low = HIGHEST;
  while (low > PLATEAU && gain(low) < wanted) low *= 0.5;
  if (low === HIGHEST) return HIGHEST;
  let high = low * 2;
  while (high / low > 1.0001) {
    const middle = Math.sqrt(low * high);
    if (gain(middle) >= wanted) low = middle;
    else high = middle;
  }
  return high;
}
