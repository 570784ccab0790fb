/** A hundred and fifty random kits of shapes that nobody has thought of; `npm run random-kits` takes three thousand. */
import { expect, it } from 'vitest';
import { buildCircuit } from '../../src/solve/build.ts';
import { randomKit } from './kits.ts';
import { drawingFaults, kitOfSeed, LOW, solvingFaults } from './proof.ts';

const SEEDS = Array.from({ length: 150 }, (_, i) => i + 1);
const kits = SEEDS.flatMap((seed) => {
  const kit = kitOfSeed(seed);
  return 'parts' in kit ? [{ seed, kit }] : [];
});

it('nearly all are kits without fault, the same for the same seed', () => {
  expect(kits.length).toBeGreaterThan(130);
  expect(randomKit(7)).toEqual(randomKit(7));
});

it.each([0, 1, 2, 3, 4])(
  'each that the check passes is drawn in every arrangement without a finding, and two readers find its joints, part %i of 5',
  async (part) => {
    for (const { seed, kit } of kits.filter((_, i) => i % 5 === part))
      expect(await drawingFaults(kit, seed, LOW)).toEqual([]);
  },
  300_000,
);

it('sounding, level, phase, loads and readings are those of ngspice', async () => {
  expect(await solvingFaults(kits.map(({ kit }) => buildCircuit(kit)))).toEqual([]);
}, 300_000);
