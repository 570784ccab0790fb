/** Six hundred spoilt descriptions; `npm run fuzz` takes twenty thousand. */
import { expect, it } from 'vitest';
import { mutant } from './mutations.ts';
import { prove } from './prove.ts';
import { sumUp, type Tally, tallyOf } from './tally.ts';

const PIECES = 6;
const COUNT = 100;
const tallies: Tally[] = [];

it.each(Array.from({ length: PIECES }, (_, i) => 1 + i * COUNT))(
  'each is drawn, or refused with a place and words, within two seconds: a hundred from seed %i',
  async (first) => {
    const tally = await tallyOf(first, COUNT, prove);
    expect(tally.errors).toEqual([]);
    tallies.push(tally);
  },
  120_000,
);

it('many get past the reader, and many do not; the same for the same seed', () => {
  const { drawn, refused } = sumUp(tallies);
  expect(drawn).toBeGreaterThan(30);
  expect(refused).toBeGreaterThan(300);
  expect(mutant(7)).toBe(mutant(7));
});
