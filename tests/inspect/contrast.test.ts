/** Contrast ratios of WCAG 2.2; the formula and the examples from memory. */
import { expect, it } from 'vitest';
import { contrast } from '../../src/common/contrast.ts';

it('black on white is 21:1, an ink on itself 1:1, whichever is the ground', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#ffffff', '#000000')).toBeCloseTo(21, 10);
  expect(contrast('#7a4300', '#7a4300')).toBe(1);
});

it('the greys nearest to the limit on white: #767676 passes, #777777 does not', () => {
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

it('pure red on white is 4:1 to two figures', () =>
  expect(contrast('#ff0000', '#ffffff')).toBeCloseTo(4.0, 1));
