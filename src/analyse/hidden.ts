/** Pots that at full keep a pickup down: figures are given at full, where it is hardly heard. */
import type { Circuit, State } from '../circuit/circuit.ts';
import { controlsOf, isPickup } from '../parts/index.ts';
import { makeNetlist, type PotRotations } from '../solve/netlist.ts';
import { withOutputLoad } from '../solve/output.ts';
import { LEVEL_FREQUENCY, magnitudeOf, transfersOf } from '../solve/sounding.ts';

interface Hidden {
  readonly pickup: string;
  readonly pot: string;
  /** Where turning the pot down brings it out; never empty. */
  readonly states: readonly State[];
}

/** Half way and at zero: one of them brings out what is hidden. */
const TURNED = [0.5, 0];
/** Hidden: more than 12 dB below the loudest pickup; brought out: 6 dB more, and heard. Common practice, no source. */
const DOWN = 0.25;
const RISE = 2;
const BROUGHT_OUT = 0.1;

export function hiddenPickups(circuit: Circuit): readonly Hidden[] {
  const { kit, states } = circuit;
  // A blend is shown in the middle and at either end.
  const pots = kit.parts.flatMap(controlsOf).filter(({ id }) => circuit.fullAt?.get(id) !== 'middle');
  const pickups = kit.parts.filter(isPickup).map(({ name }) => name);
  const found = new Map<string, { pickup: string; pot: string; states: State[] }>();
  for (const state of states) {
    const full = pickupLevels(circuit, state, {});
    const loudest = Math.max(0, ...pickups.map(full));
    const quiet = pickups.filter((pickup) => full(pickup) < DOWN * loudest);
    if (quiet.length === 0) continue;
    for (const { id: pot } of pots) {
      const turned = TURNED.map((x) => pickupLevels(circuit, state, { [pot]: x }));
      for (const pickup of quiet) {
        const most = Math.max(...turned.map((sizes) => sizes(pickup)));
        if (most < BROUGHT_OUT || most < RISE * full(pickup)) continue;
        const key = `${pickup} ${pot}`;
        const entry = found.get(key) ?? { pickup, pot, states: [] };
        entry.states.push(state);
        found.set(key, entry);
      }
    }
  }
  return [...found.values()];
}

/** Volts at the jack per volt in each pickup, at the output where that is most. */
function pickupLevels(circuit: Circuit, state: State, controls: PotRotations): (pickup: string) => number {
  const netlist = makeNetlist(circuit, state, controls);
  const branches = withOutputLoad(netlist, circuit.kit.outputLoad);
  const found = netlist.outputs.map((port) => transfersOf(branches, port, [LEVEL_FREQUENCY]));
  return (pickup) => Math.max(0, ...found.map((one) => magnitudeOf(one.get(pickup)?.[0])));
}
