/** How the pickups of a state sound together, in words: `in series`, `in parallel, out of phase`; in English, as reports are, where no language is given. */

import type { PickupLoads, StateLoads } from '../analyse/index.ts';
import type { StateOutput } from '../circuit/circuit.ts';
import { figuresIn } from '../messages/figures.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { apartIn, listIn, lugWords } from '../messages/words.ts';

/** What pickups are called. */
export type Labels = (pickup: string) => string;

/** Decibels: a pickup less far down than this is as loud as any. */
const DOWN = 1;

/** Decibels: what is further down is nothing but rounding, as of two coils that cancel. */
const NOTHING = -150;

/** `5.0 dB quieter`; absent where it is less than a decibel. */
export const levelText = (
  { level }: Pick<PickupLoads, 'level'>,
  language: Language = DEFAULT_LANGUAGE,
): string | undefined =>
  level < NOTHING
    ? sayIn(language)('level.none')
    : level < -DOWN
      ? sayIn(language)('level.down', { level: figuresIn(language).of(`${(-level).toFixed(1)} dB`) })
      : undefined;

/** Absent where there is nothing to say, as of one single coil; of a jack with several outputs, what is at which. */
export function joiningText(
  { state, pickups, output, silentTogether }: StateLoads,
  label: Labels,
  language: Language = DEFAULT_LANGUAGE,
): string | undefined {
  const naming = { label, language };
  const say = sayIn(language);
  if (state.outputs) return outputsText(state.outputs, pickups, naming);
  const several = pickups.length > 1;
  const all = several ? levelText({ level: output }, language) : undefined;
  const said = [
    ...(several ? [joined(pickups, naming), ...phaseWords(pickups, naming)] : []),
    ...allCoilWords(pickups, naming),
    ...(all === undefined ? [] : [say('joined.together', { level: all })]),
  ];
  if (said.length === 0) return undefined;
  const words = said.join(', ');
  return silentTogether ? say('joined.cancel', { words }) : words;
}

/** What pickups are called, in which language. */
interface Naming {
  readonly label: Labels;
  readonly language: Language;
}

/** Absent where hum is not cancelled, or nobody can tell. */
export const humText = (
  { silentTogether, humCancelling }: StateLoads,
  language: Language = DEFAULT_LANGUAGE,
): string | undefined => (humCancelling && !silentTogether ? sayIn(language)('joined.hum') : undefined);

/** Said once where it is the same of every pickup: a card is as wide as these words. */
function allCoilWords(pickups: readonly PickupLoads[], { label, language }: Naming): readonly string[] {
  if (pickups.length === 1) return pickups.flatMap((one) => coilWords(one, { whose: 'own' }, language));
  const [first = [], ...rest] = pickups.map((one) => coilWords(one, { whose: 'each' }, language));
  if (rest.every((words) => words.join() === first.join())) return first;
  return pickups.flatMap((one) => coilWords(one, { whose: 'other', pickup: label(one.pickup) }, language));
}

/** Two coils of one pickup; in series and in phase it is one pickup as it is made, and needs no words. */
function coilWords(
  { coils }: PickupLoads,
  of: { readonly whose: 'own' | 'each' } | { readonly whose: 'other'; readonly pickup: string },
  language: Language,
): readonly string[] {
  if (!coils || (coils.joined === 'series' && !coils.outOfPhase)) return [];
  const say = sayIn(language);
  const how = [
    ...(coils.joined === 'parallel' ? [say('joined.parallel')] : []),
    ...(coils.outOfPhase ? [say('joined.phase')] : []),
  ];
  return [say('joined.coils', { pickup: '', ...of, how: listIn(language, how) })];
}

/** `tip: Bridge; ring: Middle + Neck in parallel`. */
function outputsText(
  outputs: readonly StateOutput[],
  pickups: readonly PickupLoads[],
  naming: Naming,
): string | undefined {
  const { label, language } = naming;
  const words = outputs.flatMap(({ name, sounding }) => {
    const own = pickups.filter(({ pickup }) => sounding.includes(pickup));
    const names = own.map(({ pickup }) => label(pickup)).join(' + ');
    const how = own.length < 2 ? [] : [joined(own, naming), ...phaseWords(own, naming)];
    return own.length === 0
      ? []
      : [
          sayIn(language)('named.list', {
            name: lugWords(language, name),
            words: [names, how.join(', ')].join(' ').trim(),
          }),
        ];
  });
  return words.length === 0 ? undefined : apartIn(language, words);
}

function joined(loads: readonly PickupLoads[], { label, language }: Naming): string {
  const say = sayIn(language);
  const chains = chainsOf(loads);
  if (chains.every((chain) => chain.length === 1)) return say('joined.parallel');
  const straight = chains.every((chain) =>
    chain.every((one) => chain.every((other) => one === other || one.series.includes(other.pickup))),
  );
  if (!straight) return say('joined.both');
  if (chains.length === 1) return say('joined.series');
  const named = chains.map((chain) => {
    const names = chain.map(({ pickup }) => label(pickup)).join(' + ');
    return chain.length > 1 ? say('joined.chain', { pickups: names }) : names;
  });
  return named.reduce((first, next) => say('joined.with', { first, next }));
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

function phaseWords(loads: readonly PickupLoads[], { label, language }: Naming): readonly string[] {
  const say = sayIn(language);
  const against = loads.filter(({ outOfPhase }) => outOfPhase.length > 0);
  if (against.length === 0) return [];
  if (loads.length === 2) return [say('joined.phase')];
  return [say('joined.phase-of', { pickups: listIn(language, exchangedAmong(loads).map(label)) })];
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
