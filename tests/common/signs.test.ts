/** Frequencies, levels and shares as people read them, at the limits where their writing changes. */
import { expect, it } from 'vitest';
import {
  formatDecibels,
  formatHertz,
  formatSigned,
  plainHertz,
  roundedTo,
} from '../../src/common/figures.ts';
import { around, at, PITCH } from '../../src/common/geometry.ts';
import { must, nth } from '../../src/common/must.ts';

it('a frequency that was solved has three figures, in kilohertz from a thousand on', () => {
  for (const [hertz, text] of [
    [4420, '4.42 kHz'],
    [1000, '1.00 kHz'],
    [999.6, '1.00 kHz'],
    [999.4, '999 Hz'],
    [82, '82.0 Hz'],
    [9.996, '10.0 Hz'],
    [12_345, '12.3 kHz'],
  ] as const)
    expect(formatHertz(hertz)).toBe(text);
});

it('a frequency that was chosen is written as it was', () => {
  expect([1000, 999, 440, 2500, 20_000].map(plainHertz)).toEqual([
    '1 kHz',
    '999 Hz',
    '440 Hz',
    '2.5 kHz',
    '20 kHz',
  ]);
});

it('a sign stands before what is not zero once it is rounded', () => {
  expect([3.25, 0.4, 0.05, 0.04, 0, -0.04, -0.4, -3.25].map((value) => formatSigned(value, 1))).toEqual([
    '+3.3',
    '+0.4',
    '+0.1',
    '0.0',
    '0.0',
    '0.0',
    '−0.4',
    '−3.3',
  ]);
  expect([35, 0.3, -12].map((value) => formatSigned(value, 0))).toEqual(['+35', '0', '−12']);
  expect([2.34, -0.01, -6].map(formatDecibels)).toEqual(['+2.3 dB', '0.0 dB', '−6.0 dB']);
});

it('a number is cut to its figures in either direction, whatever its size and sign', () => {
  for (const size of [1e-12, 1e-3, 1, 1e3, 1e9])
    for (const [value, down, up] of [
      [1.2345, 1.23, 1.24],
      [9.999, 9.99, 10],
      [-1.2345, -1.24, -1.23],
      [4.7, 4.7, 4.7],
    ] as const) {
      expect(roundedTo(value * size, 3, Math.floor) / (down * size)).toBeCloseTo(1, 12);
      expect(roundedTo(value * size, 3, Math.ceil) / (up * size)).toBeCloseTo(1, 12);
    }
  expect(roundedTo(123_456, 1, Math.floor)).toBe(100e3);
  expect(roundedTo(0.5, 3, Math.floor)).toBe(0.5);
});

it('a rectangle lies evenly about its centre', () => {
  expect(around(10, 20, 6, 8)).toEqual({ x: 7, y: 16, width: 6, height: 8 });
  expect(at(3, 4)).toEqual({ x: 3, y: 4 });
  // The pitch that the README and every layout reckon with.
  expect(PITCH).toBe(16);
});

it('what must be there is given back, even if it is nothing much; else the error says what was missing', () => {
  for (const value of [0, '', false]) expect(must(value, 'value')).toBe(value);
  for (const none of [undefined, null]) expect(() => must(none, 'jack')).toThrow('there is no jack');
  expect(nth([0, 7], 0)).toBe(0);
  expect(nth([0, 7], 1)).toBe(7);
  for (const i of [-1, 2]) expect(() => nth([0, 7], i)).toThrow(RangeError);
});
