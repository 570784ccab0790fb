/** What has changed between two records of one kit, figure by figure, and whether a player would hear it. */
import { formatDecibels, formatHertz } from '../../common/figures.ts';
import { formatQuantity } from '../../common/units.ts';
import { AT_JACK, type KitFigures, type Ohms, type Shape, type StateFigures } from './figures.ts';

/**
 * From here on a player hears a difference, listening to one right after the other. Levels: about 1 dB is the least difference in
 * level that is noticed (a common figure of psychoacoustics, from memory). Frequencies of a resonance or of where treble ends: 5 %, the upper
 * end of what is given for the least noticed shift of a vowel's formant, 3 to 5 % (from memory). Loads and readings are not heard
 * by themselves, but through these.
 */
export const HEARD = { decibels: 1, share: 0.05 } as const;

/** One figure that was and is another. Both in words, and as numbers where there are any: ohms, hertz, decibels. */
interface Change {
  readonly position: string;
  /** What sounds, a load, what is heard of it, a reading at the jack, or one at a lug inside. */
  readonly sort: 'sounding' | 'load' | 'sound' | 'reading' | 'lug';
  readonly what: string;
  readonly before: string;
  readonly after: string;
  readonly values: readonly [number | null, number | null];
  /** Absent for what is not heard but measured. */
  readonly heard?: boolean;
}

type Problem = KitFigures['problems'][number];

export interface KitChanges {
  readonly kit: string;
  readonly title: string;
  /** `failed`: it has errors now, so that nothing can be drawn. */
  readonly became: 'new' | 'removed' | 'changed' | 'failed' | 'same';
  readonly figures: readonly Change[];
  readonly heard: boolean;
  readonly price?: readonly [before: string, after: string];
  /** How many of its parts have no price now, so that it is too low. */
  readonly unpriced: number;
  /** Substitutions that are there now, and were not. */
  readonly substitutions: readonly string[];
  /** Errors and warnings that are there now, and were not; and those that are gone. */
  readonly problems: readonly Problem[];
  readonly solved: readonly Problem[];
  /** Whether its drawings show something else; where parts stand is known only once they are drawn. */
  readonly drawing: boolean;
  /** Revision marks, before and now, where they are known. */
  readonly marks: readonly [string | null, string | null];
}

/** @param before absent for a kit that was never built, @param after absent for one that is no longer in the catalogue */
export function compareKit(before: KitFigures | undefined, after: KitFigures | undefined): KitChanges {
  const known = after ?? before;
  const errors = after?.problems.filter(({ severity }) => severity === 'error') ?? [];
  if (after && errors.length > 0) return failedKit(before, after, errors);
  const figures = before && after ? changesOf(before, after) : [];
  const [old, now] = [before?.problems ?? [], after?.problems ?? []];
  const prices = [before, after].map((one) => (one?.price ? priceText(one.price) : 'none'));
  const [wasPrice = '', isPrice = ''] = prices;
  const drawing = before?.shown !== after?.shown || differ(before?.mark, after?.mark);
  const rest = {
    kit: known?.kit ?? '',
    title: known?.title ?? '',
    figures,
    heard: figures.some(({ heard }) => heard === true),
    ...(wasPrice === isPrice || !before || !after ? {} : { price: [wasPrice, isPrice] as const }),
    unpriced: after?.price?.without.length ?? 0,
    substitutions: (after?.substitutions ?? []).filter((one) => !before?.substitutions.includes(one)),
    problems: without(now, old),
    solved: without(old, now),
    drawing,
    marks: [before?.mark ?? null, after?.mark ?? null] as const,
  };
  return { ...rest, became: becameOf(before, after, rest) };
}

/** Of a kit with errors nothing is worked out, so there is nothing to compare but these. */
const failedKit = (
  before: KitFigures | undefined,
  { kit, title }: KitFigures,
  problems: readonly Problem[],
): KitChanges => ({
  kit,
  title: before?.title ?? title,
  became: 'failed',
  figures: [],
  heard: false,
  unpriced: 0,
  substitutions: [],
  problems,
  solved: [],
  drawing: false,
  marks: [before?.mark ?? null, null],
});

function becameOf(
  before: KitFigures | undefined,
  after: KitFigures | undefined,
  rest: Omit<KitChanges, 'became'>,
): KitChanges['became'] {
  if (!after) return 'removed';
  if (!before) return 'new';
  const { figures, substitutions, problems, solved, drawing, price } = rest;
  const some = figures.length + substitutions.length + problems.length + solved.length > 0;
  return some || drawing || price !== undefined ? 'changed' : 'same';
}

/** What is known on one side only is no difference. */
const differ = (a: string | null | undefined, b: string | null | undefined): boolean =>
  a !== b && typeof a === 'string' && typeof b === 'string';

/** Those that the others have not: by their codes and words, without the figures in these, which may move by themselves. */
function without(some: readonly Problem[], others: readonly Problem[]): readonly Problem[] {
  const known = new Set(others.map(plain));
  return some.filter((one) => !known.has(plain(one)));
}
const plain = ({ severity, code, message }: Problem): string =>
  `${severity} ${code} ${message.replace(/[\d.,+−]+(?: [kMGmµnp]?(?:Ω|F|H|Hz|%|dB))?/gu, '#')}`;

const priceText = ({ amount, currency }: NonNullable<KitFigures['price']>): string =>
  `${amount.toFixed(2)}${currency === null ? '' : ` ${currency}`}`;

function changesOf(before: KitFigures, after: KitFigures): readonly Change[] {
  const old = new Map(before.states.map((state) => [state.position, state]));
  const now = new Set(after.states.map(({ position }) => position));
  const gone = before.states.filter(({ position }) => !now.has(position));
  return [
    ...after.states.flatMap((state) => {
      const was = old.get(state.position);
      return was ? changesIn(was, state) : [wholly(state.position, 'none', soundingOf(state))];
    }),
    ...gone.map((state) => wholly(state.position, soundingOf(state), 'none')),
  ];
}

const soundingOf = ({ sounding }: StateFigures): string => sounding.join(' + ') || 'no output';

const wholly = (position: string, before: string, after: string): Change => ({
  position,
  sort: 'sounding',
  what: 'sounding',
  before,
  after,
  values: [null, null],
  heard: true,
});

function changesIn(before: StateFigures, after: StateFigures): readonly Change[] {
  const { position } = after;
  const [was, is] = [soundingOf(before), soundingOf(after)];
  const pickups = after.pickups.flatMap((pickup): readonly Change[] => {
    const old = before.pickups.find((one) => one.pickup === pickup.pickup);
    if (!old) return [];
    const { label } = pickup;
    return [
      ...ohmsChange(position, 'load', `${label}, DC load`, old.dcLoad, pickup.dcLoad),
      ...ohmsChange(position, 'load', `${label}, signal load`, old.signalLoad, pickup.signalLoad),
      ...ohmsChange(position, 'load', `${label}, total load`, old.totalLoad, pickup.totalLoad),
      ...(old.shape && pickup.shape ? shapeChanges(position, label, old.shape, pickup.shape) : []),
    ];
  });
  const several = after.sounding.length > 1;
  const together = after.together.flatMap(({ output, shape }) => {
    const old = before.together.find((one) => one.output === output);
    // Of one pickup its own curve says the same.
    return old && several
      ? shapeChanges(position, output === '' ? 'together' : `together, ${output}`, old.shape, shape)
      : [];
  });
  const readings = after.readings.flatMap((reading) => {
    const { measured, volume, pickups: state } = reading;
    const old = before.readings.find(
      (one) => one.measured === measured && one.volume === volume && one.pickups === state,
    );
    const when = state === 'connected' ? 'finished' : 'before the pickups are soldered';
    const what = `${measured}, volume on ${volume}, ${when}`;
    return old
      ? ohmsChange(
          position,
          measured === AT_JACK ? 'reading' : 'lug',
          `reading: ${what}`,
          old.ohms,
          reading.ohms,
        )
      : [];
  });
  return [...(was === is ? [] : [wholly(position, was, is)]), ...pickups, ...together, ...readings];
}

const ohmsText = (value: Ohms): string => (value === 'open' ? 'open' : formatQuantity(value, 'ohm', 4));
const numberOf = (value: Ohms): number | null => (value === 'open' ? null : value);

/** What reads the same is no change. */
function ohmsChange(
  position: string,
  sort: Change['sort'],
  what: string,
  before: Ohms,
  after: Ohms,
): readonly Change[] {
  const [was, is] = [ohmsText(before), ohmsText(after)];
  return was === is
    ? []
    : [{ position, sort, what, before: was, after: is, values: [numberOf(before), numberOf(after)] }];
}

function shapeChanges(position: string, label: string, before: Shape, after: Shape): readonly Change[] {
  const figure = (
    what: string,
    key: keyof Shape,
    text: (value: number) => string,
    none: string,
    isHeard: (a: number, b: number) => boolean,
  ): readonly Change[] => {
    const [a, b] = [before[key], after[key]];
    const [was, is] = [a, b].map((value) => (value === null ? none : text(value)));
    if (was === undefined || is === undefined || was === is) return [];
    // A peak that comes or goes is heard when it is high enough; that the treble ends within what is heard, always.
    const peak = Math.max(before.height ?? 0, after.height ?? 0);
    const heard = a !== null && b !== null ? isHeard(a, b) : key === 'cutoff' || peak >= HEARD.decibels;
    return [
      { position, sort: 'sound', what: `${label}, ${what}`, before: was, after: is, values: [a, b], heard },
    ];
  };
  const louder = (a: number, b: number): boolean => Math.abs(a - b) >= HEARD.decibels;
  const higher = (a: number, b: number): boolean => Math.abs(b / a - 1) >= HEARD.share;
  return [
    ...figure('level', 'plateau', formatDecibels, 'none', louder),
    ...figure('resonance', 'resonance', formatHertz, 'no peak', higher),
    ...figure('height of the peak', 'height', formatDecibels, 'no peak', louder),
    ...figure('−3 dB at', 'cutoff', formatHertz, 'over 20 kHz', higher),
  ];
}
