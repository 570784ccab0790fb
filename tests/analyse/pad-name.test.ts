/** A new pad’s name: free, and no longer than a part’s name may be. */
import { expect, it } from 'vitest';
import { padName } from '../../src/analyse/kit-changes.ts';
import { makeKit } from './kits.ts';

const LONGEST = 24;

it('is that of the pickup, with a number where that is taken, at most 24 characters', () => {
  const jack = { kind: 'jack' };
  const kit = makeKit({ parts: { 'pad-neck': jack, 'pad-neck-2': jack, out: jack }, joints: [] });
  expect(padName(kit, 'neck')).toBe('pad-neck-3');
  expect(padName(kit, 'bridge')).toBe('pad-bridge');
  const pickup = 'p'.repeat(LONGEST);
  const first = padName(kit, pickup);
  const taken = makeKit({ parts: { [first]: jack }, joints: [] });
  for (const name of [first, padName(taken, pickup)]) expect(name.length).toBeLessThanOrEqual(LONGEST);
  expect(padName(taken, pickup)).not.toBe(first);
});
