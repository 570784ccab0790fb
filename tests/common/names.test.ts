/** Which misspellings are taken for a name. */
import { expect, it } from 'vitest';
import { nearest } from '../../src/common/nearest.ts';

it('a letter more, fewer or other than the name has', () => {
  expect(nearest('volum', ['volume', 'tone'])).toBe('volume');
  expect(nearest('volumee', ['volume', 'tone'])).toBe('volume');
  expect(nearest('ton', ['volume', 'tone'])).toBe('tone');
  // One letter is one edit from any other of two letters that has it.
  expect(nearest('a', ['ab', 'c'])).toBe('ab');
});
it('a single letter or digit is not another single one', () => {
  expect(nearest('a', ['b', 'c'])).toBeUndefined();
  expect(nearest('1', ['2', '3'])).toBeUndefined();
});
