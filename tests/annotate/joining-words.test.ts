/** How pickups are joined, in words, from relations written down: every kind of chain, and who is out of phase. */
import { describe, expect, it } from 'vitest';
import type { PickupLoads, StateLoads } from '../../src/analyse/index.ts';
import { exchangedAmong, joiningText, levelText } from '../../src/annotate/joining.ts';

interface Written {
  /** Names in series, as `a b`. */
  readonly series?: readonly string[];
  /** Names out of phase, as `a b`. */
  readonly against?: readonly string[];
  readonly reversed?: string;
  readonly output?: number;
  readonly silent?: boolean;
  /** Names of pickups whose two coils are in parallel. */
  readonly coils?: string;
}
const others = (pairs: readonly string[], name: string): readonly string[] =>
  pairs.filter((pair) => pair.includes(name)).map((pair) => pair.replace(name, '').trim());

function state(names: string, written: Written = {}): StateLoads {
  const pickups = [...names].map((pickup) => {
    const series = others(written.series ?? [], pickup);
    const one: Partial<PickupLoads> = {
      pickup,
      series,
      parallel: [...names].filter((name) => name !== pickup && !series.includes(name)),
      outOfPhase: others(written.against ?? [], pickup),
      reversed: (written.reversed ?? '').includes(pickup),
      ...((written.coils ?? '').includes(pickup)
        ? { coils: { joined: 'parallel' as const, outOfPhase: false } }
        : {}),
    };
    return one as PickupLoads;
  });
  return {
    index: 0,
    state: { positions: {}, positionNames: {}, closedContacts: [], sounding: [...names], shorted: false },
    pickups,
    output: written.output ?? 0,
    silentTogether: written.silent ?? false,
  };
}
const words = (names: string, written?: Written): string | undefined =>
  joiningText(state(names, written), (name) => name.toUpperCase());

describe('a level', () => {
  it('is told when it is more than a decibel down', () => {
    expect([levelText({ level: 0 }), levelText({ level: -0.99 })]).toEqual([undefined, undefined]);
    expect([levelText({ level: -1.01 }), levelText({ level: -12.34 })]).toEqual([
      '1.0 dB quieter',
      '12.3 dB quieter',
    ]);
  });
});

describe('chains', () => {
  it('none for one pickup or for none', () =>
    expect([words(''), words('a')]).toEqual([undefined, undefined]));
  it.each([
    ['ab', [], 'in parallel'],
    ['abc', [], 'in parallel'],
    ['ab', ['a b'], 'in series'],
    ['abc', ['a b', 'b c', 'a c'], 'in series'],
    ['abc', ['a b'], 'A + B in series, in parallel with C'],
    ['abc', ['b c'], 'A, in parallel with B + C in series'],
    ['abc', ['a c'], 'A + C in series, in parallel with B'],
    ['abcd', ['a d', 'b c'], 'A + D in series, in parallel with B + C in series'],
    ['abcd', ['a c', 'b d'], 'A + C in series, in parallel with B + D in series'],
    // In series with each of two that are in parallel with one another.
    ['abc', ['a b', 'a c'], 'in series and in parallel'],
    ['abc', ['a c', 'b c'], 'in series and in parallel'],
    ['abcd', ['a b', 'b c', 'c d'], 'in series and in parallel'],
    ['abcd', ['a d', 'c d'], 'in series and in parallel'],
  ] as const)('%s joined as %j: %s', (names, series, said) => expect(words(names, { series })).toBe(said));

  it('are followed by the phase, by the level of all, and by silence', () => {
    expect(words('ab', { against: ['a b'], reversed: 'b' })).toBe('in parallel, out of phase');
    expect(words('ab', { output: -5 })).toBe('in parallel, together 5.0 dB quieter');
    expect(words('ab', { output: -0.5 })).toBe('in parallel');
    expect(words('ab', { series: ['a b'], against: ['a b'], output: -3.04, silent: true })).toBe(
      'in series, out of phase, together 3.0 dB quieter: they cancel, no output',
    );
    expect(words('abc', { against: ['a c', 'b c'], reversed: 'c' })).toBe('in parallel, C out of phase');
    expect(words('abcd', { against: ['a c', 'b c', 'a d', 'b d'], reversed: 'cd' })).toBe(
      'in parallel, C and D out of phase',
    );
  });
});

describe('of pickups out of phase, to blame are', () => {
  const blamed = (names: string, written: Written): string =>
    exchangedAmong(state(names, written).pickups).join('');
  it('none where all are in phase', () => expect(blamed('abc', {})).toBe(''));
  it('those whose leads the jack shows to be exchanged', () => {
    expect(blamed('ab', { against: ['a b'], reversed: 'a' })).toBe('a');
    expect(blamed('ab', { against: ['a b'], reversed: 'b' })).toBe('b');
    // Two of three: they are more, and to blame all the same.
    expect(blamed('abc', { against: ['a c', 'b c'], reversed: 'ab' })).toBe('ab');
  });
  it('but not one exchanged that is out of phase with none', () =>
    expect(blamed('abc', { against: ['a b'], reversed: 'ac' })).toBe('a'));
  it('else the fewer: those that are out of phase with most', () => {
    expect(blamed('abc', { against: ['a c', 'b c'] })).toBe('c');
    expect(blamed('abc', { against: ['a c', 'b c'], reversed: 'abc' })).toBe('c');
    expect(blamed('ab', { against: ['a b'] })).toBe('ab');
    expect(blamed('ab', { against: ['a b'], reversed: 'ab' })).toBe('ab');
  });
});

it('coils of pickups: by name, or once where all are alike', () => {
  expect(words('a', { coils: 'a' })).toBe('coils in parallel');
  expect(words('ab', { coils: 'b' })).toBe('in parallel, coils of B in parallel');
  expect(words('ab', { coils: 'ab' })).toBe('in parallel, coils of each in parallel');
  expect(words('abc', { coils: 'ab' })).toBe('in parallel, coils of A in parallel, coils of B in parallel');
});
