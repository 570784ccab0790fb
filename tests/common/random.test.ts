/** Chance that can be repeated: the published mixer, in whole numbers of any size, and even draws. */
import { expect, it } from 'vitest';
import { seeded } from '../../src/common/random.ts';

const WORD = 1n << 32n;
const times = (a: bigint, b: bigint): bigint => (a * b) % WORD;

/** mulberry32 (public domain), with the wrap-around of 32 bits written out. */
function draws(seed: bigint, count: number): readonly number[] {
  let counter = ((seed % WORD) + WORD) % WORD;
  return Array.from({ length: count }, () => {
    counter = (counter + 0x6d2b79f5n) % WORD;
    let mixed = times(counter ^ (counter >> 15n), counter | 1n);
    mixed ^= (mixed + times(mixed ^ (mixed >> 7n), mixed | 61n)) % WORD;
    return Number(mixed ^ (mixed >> 14n)) / Number(WORD);
  });
}

it('is the published mixer, whatever the seed', () => {
  for (const seed of [0, 1, 2, 3, 60617, 2 ** 31, 2 ** 32 - 1, -1, -60617]) {
    const random = seeded(seed);
    expect(
      Array.from({ length: 50 }, () => random()),
      String(seed),
    ).toEqual(draws(BigInt(seed), 50));
  }
});

it('draws evenly from 0 up to, but not including, 1', () => {
  const random = seeded(7);
  const tenths = Array.from({ length: 10 }, () => 0);
  for (let i = 0; i < 20_000; i++) {
    const tenth = Math.floor(random() * 10);
    tenths[tenth] = (tenths[tenth] ?? 0) + 1;
  }
  expect(tenths).toHaveLength(10);
  for (const count of tenths) expect(Math.abs(count - 2000)).toBeLessThan(200);
});
