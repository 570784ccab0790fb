/** One gang of a pot: a track with its wiper. What a person may write about it, what it is electrically, and its words. */

import { z } from 'zod';
import { given, givenOr, type Sourced } from '../common/units.ts';
import type { MessageKey } from '../messages/en.ts';
import { figuresIn } from '../messages/figures.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { fraction, ohms } from './fields.ts';
import {
  type CircuitElement,
  type ControlRole,
  controlRoles,
  type LugSpec,
  type PartBase,
  type Taper,
  type TrackEnd,
  type TrackLaw,
  trackEnds,
  type UsualValue,
} from './kind.ts';

export interface Gang {
  /** Resistance of the whole track, ohms. */
  readonly value: Sourced;
  readonly taper: Sourced<TrackLaw>;
  readonly tolerance: Sourced;
  /** Share of the track below the wiper at half rotation, for the log laws. */
  readonly midpoint: Sourced;
  /** At this end the wiper leaves the track. */
  readonly noLoad?: TrackEnd;
}

export const tapers = ['linear', 'log', 'reverse-log'] as const satisfies readonly Taper[];
const tolerance = fraction('Tolerance of the track').optional();
const midpoint = fraction(
  'Resistance from lug 1 to the wiper at half rotation, as a fraction of the track (log tapers)',
).optional();

/** Of a track of any law. */
export const trackFields = { value: ohms('Resistance of the whole track'), tolerance, midpoint };

export const gangFields = {
  value: trackFields.value,
  taper: z.enum(tapers).optional().describe('Taper; log by default'),
  tolerance,
  midpoint,
  'no-load': z
    .literal([true, false, ...trackEnds])
    .optional()
    .describe(
      'No-load pot: the wiper leaves the track and is not connected, at the end that is full for the hand of the kit; or at the end that is written',
    ),
};

export const roleField = z
  .enum(controlRoles)
  .optional()
  .describe('What the control is for; worked out from the circuit where it is not written');

type Written = z.output<z.ZodObject<typeof gangFields>>;

/**
 * Tolerance ±20 % and a log midpoint of 15 % are common practice, no source; so is that a no-load pot opens at the end that is full: at
 * the clockwise one, or in a pot for left-handed players at the anticlockwise one.
 */
export const buildGang = ({ leftHanded }: Pick<PartBase, 'leftHanded'>, written: Written): Gang => ({
  value: given(written.value),
  taper: givenOr<TrackLaw>(written.taper, 'log'),
  tolerance: givenOr(written.tolerance, 0.2),
  midpoint: givenOr(written.midpoint, 0.15),
  ...noLoadOf(written['no-load'], leftHanded ? 'anticlockwise' : 'clockwise'),
});

const noLoadOf = (written: Written['no-load'], full: TrackEnd): Pick<Gang, 'noLoad'> =>
  written === undefined || written === false ? {} : { noLoad: written === true ? full : written };

/** The role as a part holds it. */
export const roleOf = (role: ControlRole | undefined): { readonly role?: ControlRole } =>
  role === undefined ? {} : { role };

/** Lugs of the gang `a` or `b` of a pot with two: `a1`, `a2`, `a3`. */
export const gangLugs = <G extends string>(gang: G) =>
  [
    { name: `${gang}1`, role: 'anticlockwise' },
    { name: `${gang}2`, role: 'wiper' },
    { name: `${gang}3`, role: 'clockwise' },
  ] as const satisfies readonly LugSpec[];

/** Names of a gang's lugs. */
export interface GangLugs {
  readonly anticlockwise: string;
  readonly wiper: string;
  readonly clockwise: string;
}

export const lugNames = ([one, two, three]: readonly [LugSpec, LugSpec, LugSpec]): GangLugs => ({
  anticlockwise: one.name,
  wiper: two.name,
  clockwise: three.name,
});

type Track = Extract<CircuitElement, { readonly kind: 'track' }>;

/** The gang's element. */
export const trackOf = (
  id: string,
  { anticlockwise, wiper, clockwise }: GangLugs,
  gang: Gang,
  turned: Pick<Track, 'shaft' | 'role'> = {},
): Track => ({
  kind: 'track',
  id,
  anticlockwise,
  wiper,
  clockwise,
  ohms: gang.value,
  tolerance: gang.tolerance,
  taper: gang.taper,
  midpoint: gang.midpoint,
  ...(gang.noLoad ? { noLoad: gang.noLoad } : {}),
  ...turned,
});

/** The range of usual values is common practice, no source. */
export const usualGang = ({ value }: Gang, field = 'value'): UsualValue => ({
  field,
  what: 'a pot',
  value: value.value,
  unit: 'ohm',
  least: 10e3,
  most: 2e6,
});

const TAPERS = {
  linear: 'taper.linear',
  log: 'taper.log',
  'reverse-log': 'taper.reverse-log',
  'lower-half': 'taper.lower-half',
  'upper-half': 'taper.upper-half',
} as const satisfies Readonly<Record<TrackLaw, MessageKey>>;

/** `250 kΩ log`, `250 kΩ log, no-load`. */
export function gangWords({ value: ohms, taper, noLoad }: Gang, language: Language): string {
  const say = sayIn(language);
  const value = `${figuresIn(language).quantity(ohms.value, 'ohm')} ${say(TAPERS[taper.value])}`;
  return noLoad ? say('face.no-load', { value }) : value;
}
