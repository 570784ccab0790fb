/** Seventy random kits of shapes that nobody has thought of; `npm run random-kits` takes three thousand. */
import { expect, it } from 'vitest';
import { arrangementNames } from '../../src/files/layouts.ts';
import { drawingErrors, kitOfSeed, LOW } from './proof.ts';

const SEEDS = Array.from({ length: 70 }, (_, i) => i + 1);
export const kits = SEEDS.flatMap((seed) => {
  const kit = kitOfSeed(seed);
  return 'parts' in kit ? [{ seed, kit }] : [];
});

/** Placing in it takes as long as in all others together: one kit in thirty is. */
const NARROW = 'narrow-column';
/** Every second arrangement, of one kit these and of the next the others. */
const half = (seed: number): readonly string[] => [
  ...arrangementNames()
    .filter((name) => name !== NARROW)
    .filter((_, i) => (i + seed) % 2 === 0),
  ...(seed % 30 === 0 ? [NARROW] : []),
];

/** Of how many files each draws its share, so that they run side by side. */
const FILES = 2;

/** Draws every second kit, beginning with the one of that number. */
export const drawn = (file: number): void => {
  const share = kits.filter((_, i) => i % FILES === file);
  it.each([0, 1, 2])(
    'each that the check passes is drawn in half of the arrangements, by turns, without a finding, and two readers find its joints, part %i of 3',
    async (part) => {
      for (const { seed, kit } of share.filter((_, i) => i % 3 === part))
        expect(await drawingErrors(kit, seed, LOW, half(seed))).toEqual([]);
    },
    300_000,
  );
};
