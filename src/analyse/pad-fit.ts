/** One resistor for one pickup: where it goes, what it makes of the loads, and the value that would meet the reference. */
import { type Circuit, lugAt } from '../circuit/circuit.ts';
import { must } from '../common/must.ts';
import { type Kit, partNamed } from '../describe/kit.ts';
import { parallelResistanceOf, resistanceOf } from '../solve/measure.ts';
import { makeNetlist } from '../solve/netlist.ts';
import { resistor } from '../solve/network.ts';
import { Solver } from '../solve/solver.ts';
import {
  groundLug,
  lugFor,
  type NewResistor,
  padLabel,
  padName,
  placeOfPad,
  withoutPart,
  withResistor,
  withValues,
} from './kit-changes.ts';
import { chainOf, differenceOf, pickupLoadBranches } from './loads.ts';
import type { Asked } from './pad-alternatives.ts';
import { effectsOf, loadFor, loadsIn, loadsOfKit } from './pad-effects.ts';
import type { PadOption } from './pad-plan.ts';
import { pickupPort } from './ports.ts';

type Place = Omit<NewResistor, 'ohms'> & {
  readonly replaces: readonly string[];
  readonly sleeved: boolean;
};

/** Where the pad's two legs go: where the one that is there has them, else on the pickup's signal lead and on ground. */
export function placeFor(circuit: Circuit, asked: Asked, replaces: readonly string[]): Place | undefined {
  const { circuit: bare, lug, kit, pickup } = asked;
  const [pad] = replaces;
  const own = lugAt(bare, lug.id);
  const there = pad === undefined ? undefined : placeOfPad(circuit, pad, lug.net);
  // A net may have been held together by the pad's legs; then the lug is looked for anew.
  const stays = there && bare.lugs.get(there[0])?.net === own.net && there.every((one) => bare.lugs.has(one));
  const [from, to] = stays ? there : [lugFor(bare, own.net), groundLug(bare)];
  if (from === undefined || to === undefined) return undefined;
  const label = padLabel(kit, pickup);
  return {
    part: pad ?? padName(kit, pickup),
    ...(label === undefined ? {} : { label }),
    from,
    to,
    sleeved: lugAt(circuit, from).pole !== undefined,
    replaces,
  };
}

/** The kit with a value fitted, solved. */
export function optionOf(asked: Asked, place: Place, reference: number, ohms: number): PadOption {
  const { kit, now, pickup, index, match } = asked;
  const after = fitted(kit, place, ohms);
  const loads = loadsIn(loadsOfKit(after), index, pickup);
  // A resistor of next to nothing silences the pickup, which then has no loads of its own.
  const load = loads ? loadFor(match, loads) : (padLoad(asked, place)?.(ohms) ?? 0);
  return {
    ohms,
    load,
    percent: differenceOf(load, reference).percent,
    effects: effectsOf(now, after, match),
  };
}

/** The kit with a pad in its place: of those it has the first with another value and the others out, else a new one. */
export function fitted(
  kit: Kit,
  place: Omit<Place, 'sleeved'> & Pick<NewResistor, 'sleeved'>,
  ohms: number,
): Kit {
  const { replaces, ...pad } = place;
  const [kept, ...others] = replaces;
  return kept === undefined
    ? withResistor(kit, { ...pad, ohms })
    : withValues(others.reduce(withoutPart, kit), { [kept]: ohms });
}

/** Beyond these no resistor is sold, and none is looked for. Ohms. */
const LEAST = 1;
const MOST = 1e10;

/** The resistor that brings a load to its reference, by bisection on the solver: a load never rises as it falls. */
export function idealPad(asked: Asked, reference: number, place: Place): number | undefined {
  const load = padLoad(asked, place);
  if (!load || load(LEAST) > reference) return undefined;
  let [low, high] = [LEAST, MOST];
  for (let i = 0; i < 80; i++) {
    const middle = Math.sqrt(low * high);
    if (load(middle) > reference) high = middle;
    else low = middle;
  }
  return Math.sqrt(low * high);
}

/** The load of the pickup with a resistor of so many ohms in that place. */
function padLoad(
  { circuit, pickup, index, match }: Asked,
  place: Place,
): ((ohms: number) => number) | undefined {
  const state = must(circuit.states[index], `state ${index}`);
  const part = partNamed(circuit.kit, pickup);
  const netlist = makeNetlist(circuit, state);
  const { port, kept } = pickupPort(part, state, netlist);
  const [a, b] = [netlist.nodeOf.get(place.from), netlist.nodeOf.get(place.to)];
  if (a === undefined || b === undefined) return undefined;
  const branches = [
    ...pickupLoadBranches(netlist, chainOf(circuit, state, pickup), kept),
    resistor(a, b, 1, 'pad'),
  ];
  const solver = new Solver(branches, port, { direct: match === 'dc' });
  const frequency = circuit.kit.outputLoad.frequency.value;
  return (ohms) => {
    solver.scale(new Map([['pad', ohms]]));
    return match === 'dc' ? resistanceOf(solver) : parallelResistanceOf(solver, frequency);
  };
}
