/** How the pickups of a state sound together, in words: `in series`, `in parallel, out of phase`. */

import type { PickupLoads, StateLoads } from '../analyse/index.ts';
import type { StateOutput } from '../circuit/circuit.ts';
import { andList } from '../common/quoting.ts';

/** What pickups are called. */
export type Labels = (pickup: string) => string;

/** Decibels: a pickup less far down than this is as loud as any. */
const DOWN = 1;

/** Decibels: what is further down is nothing but rounding, as of two coils that cancel. */
const NOTHING = -150;

/** `5.0 dB down`; absent where it is less than a decibel. */
export const levelText = ({ level }: Pick<PickupLoads, 'level'>): string | undefined =>
  level < NOTHING ? 'no output' : level < -DOWN ? `${(-level).toFixed(1)} dB down` : undefined;

/** Absent where there is nothing to say, as of one single coil; of a jack with several outputs, what is at which. */
export function joiningText(
  { state, pickups, output, silentTogether }: StateLoads,
  label: Labels,
): string | undefined {
  if (state.outputs) return outputsText(state.outputs, pickups, label);
  const several = pickups.length > 1;
  const all = several ? levelText({ level: output }) : undefined;
  const words = [
    ...(several ? [joined(pickups, label), ...phaseWords(pickups, label)] : []),
    ...allCoilWords(pickups, label),
    ...(all === undefined ? [] : [`together ${all}`]),
  ];
  return words.length === 0
    ? undefined
    : `${words.join(', ')}${silentTogether ? ': they cancel, no output' : ''}`;
}

export const HUM_CANCELLING = 'hum-cancelling';

/** Absent where hum is not cancelled, or nobody can tell. */
export const humText = ({ silentTogether, humCancelling }: StateLoads): string | undefined =>
  humCancelling && !silentTogether ? HUM_CANCELLING : undefined;

/** Said once where it is the same of every pickup: a card is as wide as these words. */
function allCoilWords(pickups: readonly PickupLoads[], label: Labels): readonly string[] {
  if (pickups.length === 1) return pickups.flatMap((one) => coilWords(one, undefined));
  const [first = [], ...rest] = pickups.map((one) => coilWords(one, 'each'));
  if (rest.every((words) => words.join() === first.join())) return first;
  return pickups.flatMap((one) => coilWords(one, label(one.pickup)));
}

/** Two coils of one pickup; in series and in phase it is one pickup as it is made, and needs no words. */
function coilWords({ coils }: PickupLoads, label: string | undefined): readonly string[] {
  if (!coils || (coils.joined === 'series' && !coils.outOfPhase)) return [];
  const how = [
    ...(coils.joined === 'parallel' ? ['in parallel'] : []),
    ...(coils.outOfPhase ? ['out of phase'] : []),
  ];
  return [`${label === undefined ? 'coils' : `coils of ${label}`} ${how.join(' and ')}`];
}

/** `tip: Bridge; ring: Middle + Neck in parallel`. */
function outputsText(
  outputs: readonly StateOutput[],
  pickups: readonly PickupLoads[],
  label: Labels,
): string | undefined {
  const words = outputs.flatMap(({ name, sounding }) => {
    const own = pickups.filter(({ pickup }) => sounding.includes(pickup));
    const names = own.map(({ pickup }) => label(pickup)).join(' + ');
    const how = own.length < 2 ? [] : [joined(own, label), ...phaseWords(own, label)];
    return own.length === 0 ? [] : [`${name}: ${[names, how.join(', ')].join(' ').trim()}`];
  });
  return words.length === 0 ? undefined : words.join('; ');
}

function joined(loads: readonly PickupLoads[], label: Labels): string {
  const chains = chainsOf(loads);
  if (chains.every((chain) => chain.length === 1)) return 'in parallel';
  const straight = chains.every((chain) =>
    chain.every((one) => chain.every((other) => one === other || one.series.includes(other.pickup))),
  );
  if (!straight) return 'in series and in parallel';
  if (chains.length === 1) return 'in series';
  const named = chains.map((chain) => {
    const names = chain.map(({ pickup }) => label(pickup)).join(' + ');
    return chain.length > 1 ? `${names} in series` : names;
  });
  return `${named.join(', in parallel with ')}`;
}

/** Pickups that chains hold together, in the order written. */
function chainsOf(loads: readonly PickupLoads[]): readonly (readonly PickupLoads[])[] {
  let chains: readonly (readonly PickupLoads[])[] = [];
  for (const one of loads) {
    const linked = (other: PickupLoads): boolean =>
      other.series.includes(one.pickup) || one.series.includes(other.pickup);
    const own = chains.filter((chain) => chain.some(linked));
    chains = [...chains.filter((chain) => !own.includes(chain)), [...own.flat(), one]];
  }
  const first = (chain: readonly PickupLoads[]): number =>
    Math.min(...chain.map((one) => loads.indexOf(one)));
  return [...chains].sort((a, b) => first(a) - first(b));
}

function phaseWords(loads: readonly PickupLoads[], label: Labels): readonly string[] {
  const against = loads.filter(({ outOfPhase }) => outOfPhase.length > 0);
  if (against.length === 0) return [];
  if (loads.length === 2) return ['out of phase'];
  return [`${andList(exchangedAmong(loads).map(label))} out of phase`];
}

/**
 * Of pickups that are out of phase with one another, those to blame: the ones whose leads are exchanged, or, where the
 * jack does not show it, the fewer.
 */
export function exchangedAmong(loads: readonly PickupLoads[]): readonly string[] {
  const against = loads.filter(({ outOfPhase }) => outOfPhase.length > 0);
  const reversed = against.filter((one) => one.reversed);
  if (reversed.length > 0 && reversed.length < against.length) return reversed.map(({ pickup }) => pickup);
  const most = Math.max(0, ...against.map(({ outOfPhase }) => outOfPhase.length));
  return against.filter(({ outOfPhase }) => outOfPhase.length === most).map(({ pickup }) => pickup);
}
