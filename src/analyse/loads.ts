/** What each sounding pickup works into, in every state, beside what it was made to work into. */
import { atOutputOf, type Circuit, perOutput, type State } from '../circuit/circuit.ts';
import { must, nth } from '../common/must.ts';
import { remembered } from '../common/remembered.ts';
import type { OutputLoad } from '../describe/kit.ts';
import { isPickup, type Pickup } from '../parts/index.ts';
import { type Loads, loadsOf } from '../solve/measure.ts';
import { makeNetlist, type Netlist } from '../solve/netlist.ts';
import { type Branch, withoutPickups } from '../solve/network.ts';
import { withOutputLoad } from '../solve/output.ts';
import { LEVEL_FREQUENCY, magnitudeOf, transfersOf } from '../solve/sounding.ts';
import { isHumCancelling } from './hum.ts';
import { pickupPort } from './ports.ts';
import { referenceCircuit } from './reference.ts';
import { chainsOf, type Relation, relationsIn } from './relations.ts';

export interface LoadOptions {
  /** Hertz for signal and total load, in place of the kit's own. */
  readonly frequency?: number;
}

/** One pickup's loads in one state, ohms: infinite when open, zero when shorted. How it is joined to the others, too. */
export interface PickupLoads extends Loads, Relation {
  readonly pickup: string;
  /** The same two loads in the plain harness the pickup was made for. */
  readonly reference: Loads;
  /** The same two with the other sounding pickups, cable and amplifier connected. */
  readonly total: Loads;
  /** How far `dcLoad` and `signalLoad` lie from the reference. */
  readonly difference: { readonly dcLoad: Difference; readonly signalLoad: Difference };
}

export interface Difference {
  readonly ohms: number;
  readonly percent: number;
}

export interface StateLoads {
  /** Index into `circuit.states`. */
  readonly index: number;
  readonly state: State;
  /** One entry a sounding pickup, in the order written. */
  readonly pickups: readonly PickupLoads[];
  /** Decibels at 1 kHz, 0 or less; see `relations.ts`. */
  readonly output: number;
  /** Two or more sound each by itself, and cancel one another. */
  readonly silentTogether: boolean;
  /** See `hum.ts`; absent where the kit does not give the winding directions that it hangs on. */
  readonly humCancelling?: boolean;
}

/** Loads of every sounding pickup in every state, all controls at full. */
export const solveLoads = (circuit: Circuit, { frequency }: LoadOptions = {}): readonly StateLoads[] =>
  frequency === undefined ? atUsualFrequency(circuit) : loadsAt(circuit, frequency);

const atUsualFrequency = remembered((circuit: Circuit) =>
  loadsAt(circuit, circuit.kit.outputLoad.frequency.value),
);

function loadsAt(circuit: Circuit, frequency: number): readonly StateLoads[] {
  const { outputLoad } = circuit.kit;
  const pickups = circuit.kit.parts.filter(isPickup);
  const references = new Map(
    pickups.map((pickup) => [pickup.name, referenceOf(pickup, outputLoad, frequency)] as const),
  );
  const levelOf = ({ name }: Pickup): number => references.get(name)?.level ?? 1;
  return circuit.states.map((state, index) => {
    const netlist = makeNetlist(circuit, state);
    const views = perOutput(state);
    const each = views.map((view) => relationsIn(circuit, view, levelOf));
    const sounding = each.filter((_, i) => (views[i]?.sounding.length ?? 0) > 0);
    const output = sounding.length === 0 ? 0 : Math.max(...sounding.map((one) => one.output));
    const silentTogether = sounding.length > 0 && sounding.every((one) => one.silentTogether);
    const solved = pickups.flatMap((pickup) => {
      const relation = each[atOutputOf(state, pickup.name).output ?? 0]?.of.get(pickup.name);
      if (!relation) return [];
      const { port, kept } = pickupPort(pickup, state, netlist);
      const { loads: reference } = must(references.get(pickup.name), `reference of ${pickup.name}`);
      const own = loadsOf(pickupLoadBranches(netlist, relation.series, kept), port, frequency);
      const total = loadsOf(totalLoadBranches(circuit, state, netlist, pickup.name, kept), port, frequency);
      const difference = {
        dcLoad: differenceOf(own.dcLoad, reference.dcLoad),
        signalLoad: differenceOf(own.signalLoad, reference.signalLoad),
      };
      return [{ pickup: pickup.name, ...own, reference, total, difference, ...relation }];
    });
    const hums = views
      .filter(({ sounding }) => sounding.length > 0)
      .map((view) => isHumCancelling(circuit, view));
    // Of several outputs each must be.
    const humCancelling =
      hums.length === 0 || hums.includes(undefined) ? undefined : hums.every((one) => one === true);
    return {
      index,
      state,
      pickups: solved,
      output,
      silentTogether,
      ...(humCancelling === undefined ? {} : { humCancelling }),
    };
  });
}

/**
 * What loads a pickup: the network without pickups, but for those of its own series chain. Their sources are shorts and
 * their windings stay, as the current of this pickup passes through them: without them it would see an open circuit.
 *
 * @param kept coils of the pickup itself that stay; see `ports.ts`
 */
export const pickupLoadBranches = (
  netlist: Netlist,
  chain: readonly string[],
  kept: readonly string[],
): readonly Branch[] => withoutPickups(netlist.branches, (name) => !chain.includes(name), kept);

/** Names of the pickups in series with one, in a state. */
export function chainOf(circuit: Circuit, state: State, pickup: string): readonly string[] {
  const view = atOutputOf(state, pickup);
  return view.sounding.length < 2 ? [] : (chainsOf(circuit, view).get(pickup) ?? []);
}

interface Reference {
  readonly loads: Loads;
  /** Volts at the jack per volt, at 1 kHz. */
  readonly level: number;
}

/** The two loads of the plain harness that a pickup was made for, and what it gives there. */
function referenceOf(pickup: Pickup, outputLoad: OutputLoad, frequency: number): Reference {
  const circuit = referenceCircuit(pickup, outputLoad);
  const netlist = makeNetlist(circuit, nth(circuit.states, 0));
  const { port, kept } = pickupPort(pickup, nth(circuit.states, 0), netlist);
  const branches = withOutputLoad(netlist, outputLoad);
  return {
    loads: loadsOf(pickupLoadBranches(netlist, [], kept), port, frequency),
    level: magnitudeOf(transfersOf(branches, netlist.jack, [LEVEL_FREQUENCY]).get(pickup.name)?.[0]) || 1,
  };
}

/** The network as played, without the one pickup that is looked out of and those that are silent. */
export function totalLoadBranches(
  circuit: Circuit,
  state: State,
  netlist: Netlist,
  own: string,
  kept: readonly string[],
): readonly Branch[] {
  const gone = (name: string) => name === own || !state.sounding.includes(name);
  return withoutPickups(withOutputLoad(netlist, circuit.kit.outputLoad), gone, kept);
}

/** What two ways of solving the same network may differ by, as a share. */
const SAME = 1e-9;

/** Signed distance from a reference; of two infinite figures, and of two that only solving tells apart, none. */
export function differenceOf(value: number, reference: number): Difference {
  if (value === reference || Math.abs(value / reference - 1) <= SAME) return { ohms: 0, percent: 0 };
  return { ohms: value - reference, percent: (value / reference - 1) * 100 };
}
