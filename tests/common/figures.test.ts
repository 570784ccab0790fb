/** Figures as people read them; SI prefixes (BIPM, SI Brochure, 9th edition, table 7). */
import { expect, it } from 'vitest';
import { formatCount, roundedTo } from '../../src/common/figures.ts';
import { formatFigure, formatQuantity } from '../../src/common/units.ts';

it('a value is written without zeros that say nothing, a solved figure with three digits in any case', () => {
  for (const [value, plain, solved] of [
    [3400, '3.4 kΩ', '3.40 kΩ'],
    [500e3, '500 kΩ', '500 kΩ'],
    [1e6, '1 MΩ', '1.00 MΩ'],
    [98_950, '99 kΩ', '99.0 kΩ'],
    [242_268, '242 kΩ', '242 kΩ'],
    [999_700, '1 MΩ', '1.00 MΩ'],
    [0, '0 Ω', '0 Ω'],
    [Infinity, 'open', 'open'],
  ] as const) {
    expect(formatQuantity(value, 'ohm')).toBe(plain);
    expect(formatFigure(value, 'ohm')).toBe(solved);
  }
});

it('limits are rounded outwards, and what is exact stays', () => {
  expect(roundedTo(210_949, 3, Math.floor)).toBe(210e3);
  expect(roundedTo(210_949, 3, Math.ceil)).toBe(211e3);
  expect(roundedTo(0.0123456, 3, Math.ceil)).toBe(0.0124);
  for (const round of [Math.floor, Math.ceil]) {
    expect(roundedTo(470e3, 3, round)).toBe(470e3);
    expect(roundedTo(0, 3, round)).toBe(0);
    expect(roundedTo(Infinity, 3, round)).toBe(Infinity);
    // A digit that only the machine's numbers bring in is no reason to go on to the next step.
    expect(roundedTo(0.1 + 0.2, 3, round)).toBe(0.3);
  }
});

it('large counts have their thousands apart', () => {
  expect([999, 1000, 10_000, 1_234_567].map(formatCount)).toEqual(['999', '1,000', '10,000', '1,234,567']);
});
