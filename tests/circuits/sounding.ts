/**
 * What sounds in each state of the circuits that ship: written by hand from how each circuit is joined, never copied from
 * what the program says. Common practice, no source; levels are reckoned by hand where they are given.
 */

/** One thing that sounds: a pickup, or several joined. */
export type Sound =
  | { readonly pickup: string; readonly reversed: boolean; readonly down: number }
  | { readonly join: 'series' | 'parallel'; readonly of: readonly Sound[] };

/** One setting of every switch, by part and position, and what is heard there; nothing where it is silent. */
export interface Row {
  readonly at: Readonly<Record<string, number>>;
  readonly sound?: Sound;
}

type Written = string | Sound;
const leaf = (written: Written): Sound =>
  typeof written === 'string' ? { pickup: written, reversed: false, down: 0 } : written;

const series = (...of: readonly Written[]): Sound => ({ join: 'series', of: of.map(leaf) });
const parallel = (...of: readonly Written[]): Sound => ({ join: 'parallel', of: of.map(leaf) });
/** So many decibels below the loudest of its state at 1 kHz; of one alone, below its reference harness. */
const down = (decibels: number, pickup: string): Sound => ({ pickup, reversed: false, down: decibels });

/** The positions of one switch, from 1. */
const rows = (part: string, ...sounds: readonly Written[]): readonly Row[] =>
  sounds.map((sound, i) => ({ at: { [part]: i + 1 }, sound: leaf(sound) }));
/** The same with another switch set. */
const also = (part: string, position: number, given: readonly Row[]): readonly Row[] =>
  given.map((row) => ({ ...row, at: { ...row.at, [part]: position } }));
/** A harness without a switch. */
const only = (sound: Written): readonly Row[] => [{ at: {}, sound: leaf(sound) }];

/**
 * Of pickups in parallel each is heard through its own coil: two differ by the ratio of R + jωL, whatever lies across them.
 * At 1 kHz a single coil of 6 kΩ and 2.4 H has 16.2 kΩ, a humbucker of 8.2 kΩ and 4.4 H has 28.8 kΩ, which is 5.0 dB more; by the
 * resistances that the kits give it is 4.9 to 5.1 dB. Pickups of one kind differ by less than 1 dB.
 */
const THREE_WAY = rows('selector', 'bridge', parallel('neck', 'bridge'), 'neck');
const FIVE_WAY = rows(
  'selector',
  'bridge',
  parallel('middle', 'bridge'),
  'middle',
  parallel('neck', 'middle'),
  'neck',
);

/** A toggle: up, in the middle, down. */
const TOGGLE = rows('toggle', 'neck', parallel('neck', 'bridge'), 'bridge');

export const tables: Readonly<Record<string, readonly Row[]>> = {
  's-volume': only('bridge'),
  'h-1v1t': only('bridge'),
  's-1v1t-tone-before': only('bridge'),
  's-1v1t-tone-after': only('bridge'),
  'ss-lever-3-1v1t': THREE_WAY,
  'hs-lever-3-1v1t-pad': rows('selector', 'bridge', parallel(down(4.9, 'neck'), 'bridge'), 'neck'),
  'sh-lever-3-1v1t-pad': rows('selector', 'bridge', parallel('neck', down(5.1, 'bridge')), 'neck'),
  'sss-lever-5-1v2t': FIVE_WAY,
  'sss-lever-5-1v2t-bridge-tone': FIVE_WAY,
  'ssh-lever-5-1v2t-pads': rows(
    'selector',
    'bridge',
    parallel('middle', down(5.0, 'bridge')),
    'middle',
    parallel('neck', 'middle'),
    'neck',
  ),
  'hsh-lever-5-1v2t-pad': rows(
    'selector',
    'bridge',
    parallel('middle', down(5.0, 'bridge')),
    'middle',
    parallel(down(5.0, 'neck'), 'middle'),
    'neck',
  ),
  'hss-lever-5-1v2t-pads': rows(
    'selector',
    'bridge',
    parallel('middle', 'bridge'),
    'middle',
    parallel(down(5.0, 'neck'), 'middle'),
    'neck',
  ),
  // Pushed in, the five positions; pulled out, the neck pickup sounds in all of them.
  'sss-lever-5-1v2t-neck-on': [
    ...also('tone-2', 1, FIVE_WAY),
    ...also(
      'tone-2',
      2,
      rows(
        'selector',
        parallel('neck', 'bridge'),
        parallel('neck', 'middle', 'bridge'),
        parallel('neck', 'middle'),
        parallel('neck', 'middle'),
        'neck',
      ),
    ),
  ],
  'bass-ss-2v1t': only(parallel('neck', 'bridge')),
  // On 10 the bleed lies between two lugs that the wiper joins: it does nothing.
  'ss-lever-3-1v1t-bleed-cap': THREE_WAY,
  'ss-lever-3-1v1t-bleed-parallel': THREE_WAY,
  'ss-lever-3-1v1t-bleed-series': THREE_WAY,
  'hh-toggle-3-1v1t': TOGGLE,
  // On 10 the two ways of wiring a volume sound alike; they differ in what one volume on 0 does to the other pickup.
  'hh-toggle-3-2v2t-coupled': TOGGLE,
  'hh-toggle-3-2v2t-independent': TOGGLE,
  'ss-lever-4-1v1t-series': rows(
    'selector',
    'bridge',
    parallel('neck', 'bridge'),
    'neck',
    series('neck', 'bridge'),
  ),
  'h-1v1t-rotary-caps': rows('rotary', 'bridge', 'bridge', 'bridge', 'bridge', 'bridge', 'bridge'),
};

/** What is heard with some controls on 0 and the rest on 10: the pickups, in one setting of the switches. */
interface Turned {
  readonly at: Row['at'];
  readonly zero: readonly string[];
  readonly sounding: readonly string[];
}

/** Of circuits that differ in nothing else. Common practice, no source. */
export const turned: Readonly<Record<string, readonly Turned[]>> = {
  'hh-toggle-3-2v2t-coupled': [
    { at: { toggle: 2 }, zero: ['neck-volume'], sounding: [] },
    { at: { toggle: 2 }, zero: ['bridge-volume'], sounding: [] },
    { at: { toggle: 3 }, zero: ['neck-volume'], sounding: ['bridge'] },
  ],
  'hh-toggle-3-2v2t-independent': [
    { at: { toggle: 2 }, zero: ['neck-volume'], sounding: ['bridge'] },
    { at: { toggle: 2 }, zero: ['bridge-volume'], sounding: ['neck'] },
    { at: { toggle: 2 }, zero: ['neck-volume', 'bridge-volume'], sounding: [] },
  ],
  'bass-ss-2v1t': [
    { at: {}, zero: ['neck-volume'], sounding: ['bridge'] },
    { at: {}, zero: ['bridge-volume'], sounding: ['neck'] },
    { at: {}, zero: ['neck-volume', 'bridge-volume'], sounding: [] },
  ],
  's-volume': [{ at: {}, zero: ['volume'], sounding: [] }],
  // A tone control on 0 takes the treble, not the sound.
  'h-1v1t': [
    { at: {}, zero: ['volume'], sounding: [] },
    { at: {}, zero: ['tone'], sounding: ['bridge'] },
  ],
};
