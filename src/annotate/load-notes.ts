/**
 * Notes on loads, by pickup: a load well off its reference in the positions where the pickup is heard alone, and two tone controls
 * that load at once. Where pickups share a position each loads the others, which no resistor value can correct; the cards say so there.
 */
import {
  type Lost,
  largerPots,
  type PickupLoads,
  type StateLoads,
  toneControlsIn,
} from '../analyse/index.ts';
import type { Circuit, State } from '../circuit/circuit.ts';
import { whereText } from '../circuit/position.ts';
import { must } from '../common/must.ts';
import { type Problem, problem } from '../common/problem.ts';
import { formatQuantity, writeQuantity } from '../common/units.ts';

/** A load further off its reference than this is worth a note (common practice, no source). */
const OFF = 0.2;

/** How far DC load and signal load are off their references. */
const sharesOf = ({
  dcLoad,
  signalLoad,
  reference,
}: Pick<PickupLoads, 'dcLoad' | 'signalLoad' | 'reference'>) => [
  dcLoad / reference.dcLoad - 1,
  signalLoad / reference.signalLoad - 1,
];
const isOff = (shares: readonly number[]): boolean =>
  shares.every((share) => Number.isFinite(share) && Math.abs(share) > OFF);

/** The smallest pots with which both loads of a pickup are within limits wherever it is heard alone. */
function largerFor(circuit: Circuit, pickup: string) {
  const found = largerPots(circuit, (loads) =>
    loads.every(({ pickups }) =>
      pickups.every(
        (one) =>
          one.pickup !== pickup ||
          pickups.length > 1 ||
          sharesOf(one).every((share) => Math.abs(share) <= OFF),
      ),
    ),
  );
  return found ? { larger: { pots: found.pots, value: writeQuantity(found.ohms, 'ohm') } } : {};
}

/**
 * One note for each pickup whose DC load and signal load are both more than 20 % off: which of the two to match is a choice, and
 * with either matched there is nothing to complain of. Where its treble is `lost` the load says nothing of the sound, and
 * the warning on that is enough.
 */
export function loadNotes(
  circuit: Circuit,
  loads: readonly StateLoads[],
  lost: readonly Pick<Lost, 'state' | 'pickup'>[] = [],
): readonly Problem[] {
  const alone = loads.filter(({ pickups: entries }) => entries.length === 1);
  const off = alone.flatMap(({ state, pickups: entries }) =>
    entries
      .filter((entry) => !lost.some((one) => one.state === state && one.pickup === entry.pickup))
      .flatMap(({ pickup, signalLoad, dcLoad, reference }) => {
        const shares = sharesOf({ signalLoad, dcLoad, reference });
        if (!isOff(shares)) return [];
        return [
          { state, pickup, signalLoad, reference: reference.signalLoad, below: Math.max(...shares) < 0 },
        ];
      }),
  );
  return [...new Set(off.map(({ pickup }) => pickup))].map((pickup) => {
    const own = off.filter((one) => one.pickup === pickup);
    const first = must(own[0], `position in which the load of ${pickup} is off`);
    const below = own.every((one) => one.below);
    const figures = groups(own, ({ signalLoad }) => formatQuantity(signalLoad, 'ohm')).map(
      ([load, some]) => ({
        load,
        percent: Math.round((must(some[0], 'position').signalLoad / first.reference - 1) * 100),
        where: whereText(
          circuit,
          some.map(({ state }) => state),
        ),
      }),
    );
    return problem(
      'load-off-reference',
      ['parts', pickup],
      {
        part: pickup,
        figures,
        reference: formatQuantity(first.reference, 'ohm'),
        below,
        ...(below ? largerFor(circuit, pickup) : {}),
      },
      'key',
    );
  });
}

/** One note for each set of tone controls that load together in a position, the largest sets only: fewer load less. */
export function toneNotes(circuit: Circuit, loads: readonly StateLoads[]): readonly Problem[] {
  const found = loads.flatMap(({ state, pickups: entries }) => {
    const tones = toneControlsIn(circuit, state);
    const [heaviest] = [...entries].sort((a, b) => a.signalLoad - b.signalLoad);
    return tones.length < 2 || !heaviest ? [] : [{ state, tones, load: heaviest.signalLoad }];
  });
  const within = (some: readonly string[], all: readonly string[]): boolean =>
    some.length < all.length && some.every((one) => all.includes(one));
  const largest = found.filter(({ tones }) => !found.some((other) => within(tones, other.tones)));
  return groups(largest, ({ tones }) => tones.join()).map(([, some]) => {
    const { tones } = must(some[0], 'position with two tone controls');
    const states: readonly State[] = some.map(({ state }) => state);
    const load = formatQuantity(Math.min(...some.map((one) => one.load)), 'ohm');
    return problem(
      'two-tone-controls',
      // A stacked pot's shaft has a field of its own in its part.
      ['parts', ...must(tones[1], 'second tone control').split('.')],
      { tones, where: whereText(circuit, states), load },
      'key',
    );
  });
}

/** Items by a key, keys in the order found. */
function groups<T>(
  items: readonly T[],
  keyOf: (item: T) => string,
): readonly (readonly [string, readonly T[]])[] {
  const found = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    found.set(key, [...(found.get(key) ?? []), item]);
  }
  return [...found];
}
