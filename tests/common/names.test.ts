/** Which misspellings are taken for a name. */
import { expect, it } from 'vitest';
import { closestName } from '../../src/common/nearest.ts';

it('a letter more, fewer or other than the name has', () => {
  expect(closestName('volum', ['volume', 'tone'])).toBe('volume');
  expect(closestName('volumee', ['volume', 'tone'])).toBe('volume');
  expect(closestName('ton', ['volume', 'tone'])).toBe('tone');
  // One letter is one edit from any other of two letters that has it.
  expect(closestName('a', ['ab', 'c'])).toBe('ab');
});
it('a single letter or digit is not another single one', () => {
  expect(closestName('a', ['b', 'c'])).toBeUndefined();
  expect(closestName('1', ['2', '3'])).toBeUndefined();
});
