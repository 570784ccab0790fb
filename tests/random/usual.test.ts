/** At the usual effort seated pots turn where they stand, large ones close to one another: none may come to lie on another. */
import { expect, it } from 'vitest';
import { arrangementNames } from '../../src/files/layouts.ts';
import { DEFAULT_EFFORT, drawingErrors, kitOfSeed } from './proof.ts';

it('a random kit is drawn in every second arrangement at the usual effort without a finding', {
  timeout: 300_000,
}, async () => {
  const kit = kitOfSeed(5005);
  if (!('parts' in kit)) throw new Error('no kit');
  const seated = arrangementNames().filter((name, i) => !/free-flow|narrow-column/.test(name) && i % 2 === 0);
  expect(seated.length).toBeGreaterThan(1);
  expect(await drawingErrors(kit, 5005, DEFAULT_EFFORT, seated)).toEqual([]);
});
