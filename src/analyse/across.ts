/**
 * Capacitors that lie straight across the signal with the controls at full, and what puts them there. Found by solving:
 * the treble is lost with that capacitor alone in circuit, and there with none. The pot to blame is the one that,
 * turned back, brings it there again.
 */

import { atOutputOf, type Circuit, type State } from '../circuit/circuit.ts';
import { controlsOf, elementsLike, type Part } from '../parts/index.ts';
import { shapeOf } from './peak.ts';
import { makeStateSolver } from './response.ts';
import { capacitorsOn, isLost, ownGain, referenceCutoffs, trebleOf } from './treble.ts';

export interface Lost {
  readonly state: State;
  readonly pickup: string;
  /** Hertz of the −3 dB point, here and in the harness the pickup was made for. */
  readonly cutoff: number;
  readonly reference: number;
}

export interface Across {
  readonly capacitor: string;
  /** The pot that at full puts it there; absent when no pot affects it. */
  readonly control?: string;
  /** Never empty. */
  readonly lost: readonly Lost[];
}

export function capacitorsAcross(circuit: Circuit): readonly Across[] {
  const lost = lostIn(circuit);
  const capacitors = circuit.kit.parts.filter(isCapacitor).map((part) => part.name);
  const without = (kept: string | undefined): Circuit => ({
    ...circuit,
    kit: {
      ...circuit.kit,
      parts: circuit.kit.parts.filter((part) => !isCapacitor(part) || part.name === kept),
    },
  });
  const bare = without(undefined);
  const blamed = lost.filter((one) => !still(bare, one));
  return capacitors.flatMap((capacitor): Across[] => {
    const only = without(capacitor);
    const own = blamed.filter(
      (one) => still(only, one) && capacitorsOn(circuit, one.state, one.pickup).includes(capacitor),
    );
    return own.length === 0 ? [] : [{ capacitor, ...blame(circuit, only, own), lost: own }];
  });
}

const isCapacitor = (part: Part): boolean => elementsLike(part, 'capacitance').length > 0;

const still = (circuit: Circuit, { state, pickup, reference }: Lost, controls = {}): boolean =>
  isLost(circuit, state, pickup, reference, controls);

function lostIn(circuit: Circuit): readonly Lost[] {
  const found = trebleOf(circuit);
  const references = referenceCutoffs(circuit);
  return circuit.states.flatMap((state, index) => {
    const names = state.sounding.filter((pickup) => found[index]?.get(pickup)?.lost);
    return names.flatMap((pickup) => {
      const heard = makeStateSolver(circuit, atOutputOf(state, pickup));
      const cutoff = heard && shapeOf(ownGain(heard, pickup)).cutoff;
      const reference = references.get(pickup);
      return cutoff === undefined || reference === undefined ? [] : [{ state, pickup, cutoff, reference }];
    });
  });
}

/** The pot to blame. */
function blame(circuit: Circuit, only: Circuit, lost: readonly Lost[]): Pick<Across, 'control'> {
  const control = circuit.kit.parts
    .flatMap(controlsOf)
    .find(({ id }) => lost.every((one) => !still(only, one, { [id]: 0 }) && sounds(only, one, { [id]: 0 })));
  return control === undefined ? {} : { control: control.id };
}

const sounds = (circuit: Circuit, { state, pickup }: Lost, controls: Record<string, number>): boolean => {
  const heard = makeStateSolver(circuit, atOutputOf(state, pickup), controls);
  return heard !== undefined && ownGain(heard, pickup)(100) > 0.1;
};
