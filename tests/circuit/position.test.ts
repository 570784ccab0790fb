/** Where something holds, in words: read back, they name just the states that were meant. Invented switches. */
import { describe, expect, it } from 'vitest';
import type { State } from '../../src/circuit/circuit.ts';
import { atPosition, positionCell, positionText, whereText } from '../../src/circuit/position.ts';
import { seeded } from '../../src/common/random.ts';

/** Every setting of switches with so many positions each. */
function statesOf(switches: Readonly<Record<string, number>>): readonly State[] {
  let all: readonly Readonly<Record<string, number>>[] = [{}];
  for (const [name, count] of Object.entries(switches))
    all = all.flatMap((one) => Array.from({ length: count }, (_, i) => ({ ...one, [name]: i + 1 })));
  return all.map((settings) => ({
    positions: settings,
    positionNames: {},
    closedContacts: [],
    sounding: [],
    shorted: false,
  }));
}

/** The states that the words name, by a reader of their own. */
function named(words: string, among: readonly State[]): readonly State[] {
  if (words === ' in every position' || words === ' wherever they are selected together') return among;
  expect(words.startsWith(' with ')).toBe(true);
  return among.filter(({ positions }) =>
    words
      .slice(' with '.length)
      .split('; ')
      .some((group) => {
        const terms = [...group.matchAll(/(\w+) in positions? ((?:\d+(?:, (?=\d)| and )?)+)/g)];
        expect(terms.map(([text]) => text).join(', ')).toBe(group);
        return terms.every(([, name = '', list = '']) =>
          list.split(/, | and /).includes(String(positions[name])),
        );
      }),
  );
}

describe('the states that words name', () => {
  const states = statesOf({ selector: 5, phase: 2, blower: 2, mute: 3 });

  it('are those that were meant, whichever they are, of all or of some', () => {
    const random = seeded(7);
    for (let round = 0; round < 400; round++) {
      const among = round % 2 === 0 ? states : states.filter(() => random() < 0.6);
      const share = random();
      const some = among.filter(({ positions: { selector = 0, phase = 0 } }) =>
        // Half the time what holds depends on two switches only.
        round % 4 < 2 ? random() < share : (selector * 7 + phase * round) % 3 === 0,
      );
      if (some.length === 0) continue;
      expect(named(whereText({ states }, some, among), among)).toEqual(some);
    }
  });

  it('are told by the switches that matter alone', () => {
    const where = (test: (settings: State['positions']) => boolean): string =>
      whereText(
        { states },
        states.filter(({ positions }) => test(positions)),
      );
    expect(where(() => true)).toBe(' in every position');
    expect(where(({ phase }) => phase === 2)).toBe(' with phase in position 2');
    expect(where(({ phase, selector }) => phase === 2 && selector !== 3)).toBe(
      ' with selector in positions 1, 2, 4 and 5, phase in position 2',
    );
    expect(where(({ phase, mute }) => phase === 2 || mute === 1)).toBe(
      ' with mute in position 1; phase in position 2',
    );
  });

  it('of those in question only; where all of them are meant, no switch is named', () => {
    const among = states.filter(({ positions }) => positions.selector === 2);
    const some = among.filter(({ positions }) => positions.phase === 1);
    expect(whereText({ states }, some, among)).toBe(' with phase in position 1');
    expect(whereText({ states }, among, among)).toBe(' wherever they are selected together');
    expect(whereText({ states }, among)).toBe(' with selector in position 2');
  });

  it('of one switch alone, are told without its name', () => {
    const own = statesOf({ selector: 3 });
    expect(whereText({ states: own }, own.slice(0, 2))).toBe(' in positions 1 and 2');
    expect(whereText({ states: own }, own.slice(2))).toBe(' in position 3');
    expect(own.map(atPosition)).toEqual([' in position 1', ' in position 2', ' in position 3']);
  });

  it('have the names of positions that nobody counts', () => {
    const states = statesOf({ selector: 3, boost: 2 }).map((state) => ({
      ...state,
      positionNames: { boost: state.positions.boost === 1 ? 'pushed in' : 'pulled out' },
    }));
    const out = states.filter(({ positions }) => positions.boost === 2);
    expect(whereText({ states }, out)).toBe(' with boost pulled out');
    expect(whereText({ states }, out.slice(0, 1))).toBe(' with selector in position 1, boost pulled out');
    expect(states.slice(0, 2).map(positionCell)).toEqual([
      'selector 1, boost pushed in',
      'selector 1, boost pulled out',
    ]);
    expect(states.slice(1, 2).map(positionText)).toEqual(['selector in position 1, boost pulled out']);
  });

  it('are not told of a kit without a switch', () => {
    const [only] = statesOf({});
    expect(whereText({ states: only ? [only] : [] }, only ? [only] : [])).toBe('');
    expect(whereText({ states }, [])).toBe('');
  });
});
