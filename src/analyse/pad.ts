/**
 * The padding choice: for every pickup whose load is off its reference, the resistor from its own lug to ground that
 * fixes it, found by solving; what is available near that value, and what it does to every other position.
 */

import type { Circuit } from '../circuit/circuit.ts';
import { must } from '../common/must.ts';
import { type AvailableValues, nearestAvailable } from '../common/series.ts';
import { findPart, type Kit } from '../describe/kit.ts';
import { ohmBounds } from '../parts/fields.ts';
import { isPickup, resistorOf } from '../parts/index.ts';
import { buildCircuit } from '../solve/build.ts';
import { rolesOf } from './controls.ts';
import { resistorsToGround, signalLug, withoutPart } from './kit-changes.ts';
import { chainOf, type StateLoads } from './loads.ts';
import { type Asked, causesOf, elsewhere, otherPots, sparePoles } from './pad-alternatives.ts';
import {
  effectsOf,
  judgedIn,
  loadFor,
  loadsIn,
  loadsOfKit,
  logDistance,
  type Match,
  percentOff,
  worsened,
} from './pad-effects.ts';
import { fitted, idealPad, optionOf, placeFor } from './pad-fit.ts';
import { movesOf, netOfPickup, toneJumpers } from './pad-moves.ts';
import type { Judged, PadAdvice, PadOption, PadOptions, PadPlan } from './pad-plan.ts';

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
  const now = loadsOfKit(kit);
  for (const { name: pickup } of circuit.kit.parts.filter(isPickup)) {
    const net = netOfPickup(circuit, now, pickup);
    const next = advise(kit, { pickup, match, series, near }, owners.get(net));
    advice.push(next);
    if ((next.kind === 'pad' || next.kind === 'fits') && !owners.has(net)) owners.set(net, pickup);
    if (next.kind === 'pad' && !next.present) kit = fitted(kit, placeIn(next), next.chosen.ohms);
  }
  return { match, series, advice, kit, effects: effectsOf(now, kit, match) };
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

interface Wish {
  readonly pickup: string;
  readonly match: Match;
  readonly series: AvailableValues;
  readonly near: number;
}

function advise(kit: Kit, wish: Wish, owner: string | undefined): PadAdvice {
  const { pickup, match, near } = wish;
  const now = loadsOfKit(kit);
  const index = judgedIn(now, pickup)?.index;
  const judged = index === undefined ? undefined : judge(now, pickup, index, match);
  if (index === undefined || !judged) return { kind: 'silent', pickup };
  const first = judged.pair?.find((one) => isBefore(kit, one, pickup));
  if (first !== undefined) return { kind: 'pair', ...judged, first };
  const circuit = buildCircuit(kit);
  const state = must(circuit.states[index], `state ${index}`);
  const lug = signalLug(circuit, state, pickup, chainOf(circuit, state, pickup));
  const replaces = resistorsToGround(circuit, lug?.net);
  const notInStock = missing(kit, replaces, wish.series);
  const isNear = ({ percent }: Judged): boolean => Math.abs(percent) <= near * 100;
  if (isNear(judged) && notInStock === undefined) {
    // It may fit by a resistor that is no pad of its own, as one on a free pole.
    const others = causesOf(circuit, pickup, index, match).map(({ part }) => part);
    const without = missing(kit, others, wish.series);
    return { kind: 'fits', ...judged, ...(without === undefined ? {} : { notInStock: without }) };
  }
  if (!lug) return { kind: 'out-of-reach', ...judged };
  if (owner !== undefined && replaces.length > 0) return { kind: 'shares', ...judged, pads: replaces, owner };
  const bareKit = replaces.reduce(withoutPart, kit);
  const bareLoads = loadsOfKit(bareKit);
  const bare = judge(bareLoads, pickup, index, match) ?? judged;
  const asked: Asked = { kit, now, circuit: buildCircuit(bareKit), pickup, index, match, lug };
  const place = placeFor(circuit, asked, replaces);
  const ideal = place && idealPad(asked, bare.reference, place);
  const found = ideal === undefined ? undefined : nearestAvailable(ideal, wish.series);
  const toneless = match === 'signal' && isWithoutTone(asked, bareLoads, near);
  if (replaces.length > 0 && (isNear(bare) || (toneless && judged.load < judged.reference))) {
    const alternatives = movesOf(asked, near, wish.series).filter(({ kind }) => kind === 'move');
    return { kind: 'needless', ...judged, pads: replaces, without: bare.load, alternatives };
  }
  if (bare.load < bare.reference) {
    const alternatives = [...movesOf(asked, near, wish.series), ...otherPots({ ...asked, circuit })];
    return { kind: 'too-heavy', ...judged, causes: causesOf(circuit, pickup, index, match), alternatives };
  }
  if (toneless)
    return {
      kind: 'no-tone',
      ...judged,
      others: [...rolesOf(circuit).values()].includes('tone'),
      ...(found && replaces.length === 0 ? { standIn: found.value } : {}),
      alternatives: toneJumpers(asked),
    };
  if (!place || ideal === undefined || !found) return { kind: 'out-of-reach', ...judged };
  const option = (ohms: number): PadOption => optionOf(asked, place, bare.reference, ohms);
  const chosen = option(found.value);
  const present = replaces.length === 1 && ohmsOf(kit, place.part) === found.value;
  // A pad that cannot be had has to be better than none.
  const worst = notInStock === undefined ? judged.load : bare.load;
  const missed = notInStock === undefined ? {} : { notInStock };
  if (!present && logDistance(chosen.load, bare.reference) >= logDistance(worst, bare.reference))
    return { kind: 'no-stock', ...judged, ideal, nearest: chosen, ...missed };
  const pad = { part: place.part, from: place.from, to: place.to, ohms: found.value };
  return {
    kind: 'pad',
    ...bare,
    ...place,
    ...missed,
    present,
    ideal,
    chosen,
    worse: chosen.effects.filter(
      (effect) => (effect.index !== index || effect.pickup !== pickup) && worsened(match, effect),
    ),
    ...(found.below === undefined ? {} : { below: option(found.below) }),
    ...(found.above === undefined ? {} : { above: option(found.above) }),
    alternatives: [
      ...(match === 'signal' ? toneJumpers(asked) : []),
      ...elsewhere(asked, pad),
      ...sparePoles(asked, pad),
      ...otherPots(asked),
    ],
  };
}

const isBefore = ({ parts }: Kit, one: string, other: string): boolean => {
  const names = parts.map(({ name }) => name);
  return names.indexOf(one) < names.indexOf(other);
};

function ohmsOf(kit: Kit, name: string): number | undefined {
  const part = findPart(kit, name);
  return part && resistorOf(part)?.ohms.value;
}

/** Ohms of the first of the pads that are there whose value the stock has not. */
function missing(kit: Kit, pads: readonly string[], series: AvailableValues): number | undefined {
  if (typeof series === 'string') return undefined;
  return pads.flatMap((pad) => ohmsOf(kit, pad) ?? []).find((ohms) => !series.stock.includes(ohms));
}

/** Whether a pickup's DC load fits without pads of its own, and no tone control loads it where it is judged. */
function isWithoutTone(
  { circuit, pickup, index }: Asked,
  loads: readonly StateLoads[],
  near: number,
): boolean {
  const roles = rolesOf(circuit);
  const dc = loadsIn(loads, index, pickup)?.difference.dcLoad.percent;
  return (
    dc !== undefined &&
    Math.abs(dc) <= near * 100 &&
    causesOf(circuit, pickup, index, 'signal').every(({ part }) => roles.get(part) !== 'tone')
  );
}

function judge(
  states: readonly StateLoads[],
  pickup: string,
  state: number,
  match: Match,
): Judged | undefined {
  const loads = loadsIn(states, state, pickup);
  if (!loads) return undefined;
  const [load, reference] = [loadFor(match, loads), loadFor(match, loads.reference)];
  const pair = alwaysInSeries(states, pickup);
  return {
    pickup,
    state,
    load,
    reference,
    percent: percentOff(match, loads),
    ...(pair.length === 0 ? {} : { pair }),
  };
}

/** Pickups that a pickup is in series with wherever it sounds. */
function alwaysInSeries(states: readonly StateLoads[], pickup: string): readonly string[] {
  const chains = states.flatMap(({ pickups }) =>
    pickups.filter((one) => one.pickup === pickup).map(({ series }) => series),
  );
  const [first = [], ...rest] = chains;
  return first.filter((name) => rest.every((chain) => chain.includes(name)));
}
