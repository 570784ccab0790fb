import fc from 'fast-check';
import { expect, it } from 'vitest';
import { arrangementNames } from '../../src/files/layouts.ts';
import { checkRandom } from './check.ts';
import { circuits } from './circuits.ts';

const WITHOUT_SEATS = ['free-flow', 'narrow-column'];
const seated = arrangementNames().filter((name) => !WITHOUT_SEATS.includes(name));

it('random circuits in arrangements with seats: nothing is found', { timeout: 600_000 }, () =>
  checkRandom(30, seated),
);

it('the circuits are of many sorts', () => {
  const made = fc.sample(circuits, { seed: 60757, numRuns: 200 });
  const share = (has: (text: string) => boolean): number =>
    made.filter((one) => has(JSON.stringify(one))).length / made.length;
  for (const word of [
    'lever-3',
    'lever-5',
    'humbucker',
    'neck-pad',
    'tone-2',
    'bleed-res',
    'braid',
    '"bend"',
    '"jumper"',
    'sleeving":"both',
    'reverse-log',
    'colour',
  ])
    expect(
      share((text) => text.includes(word)),
      word,
    ).toBeGreaterThan(0.1);
  expect(share((text) => !text.includes('selector'))).toBeGreaterThan(0.1);
  expect(new Set(made.map((one) => JSON.stringify(one))).size).toBe(made.length);
});
