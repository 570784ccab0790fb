/** Kits of any shape, with long and odd labels, in every language: longer words must not push anything out of its place. */
import { expect, it } from 'vitest';
import { kitFromValue } from '../../src/describe/read.ts';
import { randomKit } from '../random/kits.ts';
import { drawnIn, translated } from './drawn.ts';

const COUNT = Number(process.env.LANGUAGE_KITS ?? 5);
const seeds = Array.from({ length: COUNT }, (_, i) => 4116 + i);

it.each(seeds)('kit %i', { timeout: 120_000 }, async (seed) => {
  const { kit } = kitFromValue(randomKit(seed), 'random.ts');
  if (!kit) throw new Error(`seed ${seed} is not a kit`);
  for (const language of translated) {
    const { findings } = await drawnIn(kit, language, [{}, { state: 0 }]);
    // Lines that cross or run far are what a search is for, and none was made.
    expect(findings, language).toEqual([]);
  }
});
