/**
 * The padding choice: for every pickup whose load is off its reference, the resistor from its own lug to ground that
 * fixes it, found by solving; what is available near that value, and what it does to every other position.
 */

import type { Circuit, LugId } from '../circuit/circuit.ts';
import { type Choice, nearest } from '../common/series.ts';
import type { Kit } from '../describe/kit.ts';
import { ohmBounds } from '../parts/fields.ts';
import { isPickup, resistorOf } from '../parts/index.ts';
import { buildCircuit } from '../solve/build.ts';
import { parallelResistanceOf, resistanceOf } from '../solve/measure.ts';
import { makeNetlist } from '../solve/netlist.ts';
import { resistor } from '../solve/network.ts';
import { Solver } from '../solve/solver.ts';
import {
  groundLug,
  hotNet,
  lugFor,
  type NewResistor,
  padLabel,
  padName,
  padsOf,
  placeOfPad,
  withoutPart,
  withResistor,
  withValues,
} from './kit-changes.ts';
import { chainOf, loading, pickupPort } from './loads.ts';
import { causesOf, elsewhere, otherPots, sparePoles } from './pad-alternatives.ts';
import { effectsOf, judgedIn, loadFor, loadsIn, loadsOfKit, type Match, percentOff } from './pad-effects.ts';
import type { Judged, Option, PadAdvice, PadOptions, PadPlan } from './pad-plan.ts';

/**
 * Chooses the pads of a kit, pickup by pickup in the order written, each with those before it fitted.
 *
 * @throws RangeError when the stock is empty or holds a value that no resistor has, or `near` is not a fraction
 */
export function choosePads(circuit: Circuit, options: PadOptions = {}): PadPlan {
  const { match = 'dc', series = 'E12', near = 0.05 } = options;
  if (!(near >= 0 && near < 1)) throw new RangeError(`near is ${near}: it must be a fraction from 0 to 1`);
  if (typeof series !== 'string') checkStock(series.stock);
  const advice: PadAdvice[] = [];
  /** By net, the first pickup that the pads on it suit. */
  const owners = new Map<number | undefined, string>();
  let kit = circuit.kit;
  for (const pickup of circuit.kit.parts.filter(isPickup)) {
    const net = hotNet(circuit, pickup.name);
    const next = advise(kit, pickup.name, match, series, near, owners.get(net));
    advice.push(next);
    if ((next.kind === 'pad' || next.kind === 'fits') && !owners.has(net)) owners.set(net, pickup.name);
    if (next.kind === 'pad' && !next.present) kit = fitted(kit, placeIn(next), next.chosen.ohms);
  }
  return { match, series, advice, kit, effects: effectsOf(loadsOfKit(circuit.kit), kit, match) };
}

const placeIn = ({ part, label, from, to, sleeved, replaces }: Extract<PadAdvice, { kind: 'pad' }>) => ({
  part,
  ...(label === undefined ? {} : { label }),
  from,
  to,
  sleeved,
  replaces,
});

function checkStock(stock: readonly number[]): void {
  const [least, most] = ohmBounds;
  if (stock.length === 0) throw new RangeError('the stock is empty: give at least one value');
  const wrong = stock.find((ohms) => !(ohms >= least && ohms <= most));
  if (wrong !== undefined)
    throw new RangeError(`the stock holds ${wrong} Ω: a resistor has ${least} Ω to ${most} Ω`);
}

function advise(
  kit: Kit,
  pickup: string,
  match: Match,
  series: Choice,
  near: number,
  owner: string | undefined,
): PadAdvice {
  const circuit = buildCircuit(kit);
  const now = loadsOfKit(kit);
  const index = judgedIn(now, pickup)?.index ?? -1;
  const judged = judge(kit, pickup, index, match);
  if (!judged) return { kind: 'silent', pickup };
  if (Math.abs(judged.percent) <= near * 100) return { kind: 'fits', ...judged };
  const replaces = padsOf(circuit, pickup);
  if (owner !== undefined && replaces.length > 0) return { kind: 'shares', ...judged, pads: replaces, owner };
  const bareKit = replaces.reduce(withoutPart, kit);
  const bare = judge(bareKit, pickup, index, match) ?? judged;
  if (replaces.length > 0 && Math.abs(bare.percent) <= near * 100)
    return { kind: 'needless', ...judged, pads: replaces, without: bare.load };
  if (bare.load < bare.reference) {
    const alternatives = otherPots(circuit, pickup, index, match);
    return { kind: 'too-heavy', ...judged, causes: causesOf(circuit, pickup, index, match), alternatives };
  }
  const bareCircuit = buildCircuit(bareKit);
  const ends = endsOf(circuit, bareCircuit, pickup, replaces[0]);
  const ideal = ends && idealPad(bareCircuit, pickup, index, match, bare.reference, ...ends);
  if (ends === undefined || ideal === undefined) return { kind: 'out-of-reach', ...judged };
  const [from, to] = ends;
  const found = nearest(ideal, series);
  // The bisection's answer is a number above zero, to which every choice has a nearest.
  if (!found) return { kind: 'out-of-reach', ...judged };
  const label = padLabel(kit, pickup);
  const place = {
    part: replaces[0] ?? padName(kit, pickup),
    ...(label === undefined ? {} : { label }),
    from,
    to,
    sleeved: circuit.lugs.get(from)?.pole !== undefined,
    replaces,
  };
  const option = (ohms: number): Option => {
    const after = fitted(kit, place, ohms);
    const loads = loadsIn(loadsOfKit(after), index, pickup);
    return {
      ohms,
      load: loads ? loadFor(match, loads) : NaN,
      percent: loads ? percentOff(match, loads) : NaN,
      effects: effectsOf(now, after, match),
    };
  };
  const chosen = option(found.value);
  const present = replaces.length === 1 && ohmsOf(kit, place.part) === found.value;
  if (!present && farOff(chosen.load, bare.reference) >= farOff(judged.load, bare.reference))
    return { kind: 'no-stock', ...judged, ideal, nearest: chosen };
  const pad = { part: place.part, from, to, ohms: found.value };
  return {
    kind: 'pad',
    ...bare,
    ...place,
    present,
    ideal,
    chosen,
    ...(found.below === undefined ? {} : { below: option(found.below) }),
    ...(found.above === undefined ? {} : { above: option(found.above) }),
    alternatives: [
      ...elsewhere(bareCircuit, pickup, pad, index, match),
      ...sparePoles(bareCircuit, pad, index, match),
      ...otherPots(bareCircuit, pickup, index, match),
    ],
  };
}

/** Distance by ratio: half a load is as far off as twice that load. */
const farOff = (load: number, reference: number): number => Math.abs(Math.log(load / reference));

function ohmsOf(kit: Kit, name: string): number | undefined {
  const part = kit.parts.find((one) => one.name === name);
  return part && resistorOf(part)?.ohms.value;
}

/** Where the pad's two legs go: where the one that is there has them, else on the pickup's own net and on ground. */
function endsOf(
  circuit: Circuit,
  bare: Circuit,
  pickup: string,
  pad: string | undefined,
): readonly [LugId, LugId] | undefined {
  const [own, bareNet] = [hotNet(circuit, pickup), hotNet(bare, pickup)];
  const there = pad === undefined || own === undefined ? undefined : placeOfPad(circuit, pad, own);
  // A net may have been held together by the pad's legs; then the lug is looked for anew.
  if (there && bare.lugs.get(there[0])?.net === bareNet && there.every((lug) => bare.lugs.has(lug)))
    return there;
  const from = bareNet === undefined ? undefined : lugFor(bare, bareNet);
  const to = groundLug(bare);
  return from === undefined || to === undefined ? undefined : [from, to];
}

function judge(kit: Kit, pickup: string, state: number, match: Match): Judged | undefined {
  const loads = loadsIn(loadsOfKit(kit), state, pickup);
  if (!loads) return undefined;
  const [load, reference] = [loadFor(match, loads), loadFor(match, loads.reference)];
  return { pickup, state, load, reference, percent: percentOff(match, loads) };
}

/** The kit with a pad in its place: of those it has the first with another value and the others out, else a new one. */
function fitted(
  kit: Kit,
  place: Omit<NewResistor, 'ohms'> & { readonly replaces: readonly string[] },
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
function idealPad(
  circuit: Circuit,
  pickup: string,
  index: number,
  match: Match,
  reference: number,
  from: LugId,
  to: LugId,
): number | undefined {
  const state = circuit.states[index];
  const part = circuit.kit.parts.find((one) => one.name === pickup);
  const netlist = state && makeNetlist(circuit, state);
  const port = netlist && part && pickupPort(part, netlist);
  const [a, b] = [netlist?.nodeOf.get(from), netlist?.nodeOf.get(to)];
  if (!netlist || !port || a === undefined || b === undefined) return undefined;
  const branches = [...loading(netlist, chainOf(circuit, state, pickup)), resistor(a, b, 1, 'pad')];
  const solver = new Solver(branches, port, { direct: match === 'dc' });
  const frequency = circuit.kit.outputLoad.frequency.value;
  const load = (ohms: number): number => {
    solver.scale(new Map([['pad', ohms]]));
    return match === 'dc' ? resistanceOf(solver) : parallelResistanceOf(solver, frequency);
  };
  if (load(LEAST) > reference) return undefined;
  let [low, high] = [LEAST, MOST];
  for (let i = 0; i < 80; i++) {
    const middle = Math.sqrt(low * high);
    if (load(middle) > reference) high = middle;
    else low = middle;
  }
  return Math.sqrt(low * high);
}
