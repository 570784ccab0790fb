/** Which larger pots would bring a load that is too heavy within limits. */
import type { Circuit } from '../circuit/circuit.ts';
import { controlsOf } from '../parts/index.ts';
import { buildCircuit } from '../solve/build.ts';
import { rolesOf } from './controls.ts';
import { withValues } from './kit-changes.ts';
import { type StateLoads, solveLoads } from './loads.ts';

/** Ohms: what volume and tone pots are sold as. Common practice, no source. */
const POTS = [100e3, 250e3, 500e3, 1e6];

interface LargerPots {
  /** Names of parts, never empty. */
  readonly pots: readonly string[];
  /** Ohms, of each of them. */
  readonly ohms: number;
}

/**
 * The smallest usual value, and as few volume and tone pots as will do, with which the loads fit; absent where no usual value is
 * large enough.
 */
export function largerPots(
  circuit: Circuit,
  isWithin: (loads: readonly StateLoads[]) => boolean,
): LargerPots | undefined {
  const { kit } = circuit;
  const roles = rolesOf(circuit);
  const controls = kit.parts
    .flatMap(controlsOf)
    .filter(({ id }) => ['volume', 'tone'].includes(roles.get(id) ?? ''));
  const fits = (pots: readonly string[], ohms: number): boolean =>
    isWithin(
      solveLoads(
        buildCircuit(withValues(kit, Object.fromEntries(pots.map((name) => [name, ohms] as const)))),
      ),
    );
  for (const ohms of POTS) {
    const smaller = controls.filter(({ tracks }) => tracks.every((track) => track.ohms.value < ohms));
    let pots = [...new Set(smaller.map(({ part }) => part))];
    if (pots.length === 0 || !fits(pots, ohms)) continue;
    for (const name of pots) {
      const fewer = pots.filter((one) => one !== name);
      if (fewer.length > 0 && fits(fewer, ohms)) pots = fewer;
    }
    return { pots, ohms };
  }
  return undefined;
}
