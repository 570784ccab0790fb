/** Preferred numbers. Source: IEC 60063:2015, read in two copies. */
import { describe, expect, it } from 'vitest';
import { nearestAvailable, series } from '../../src/common/series.ts';

const E24 = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];
const E96 =
  `100 102 105 107 110 113 115 118 121 124 127 130 133 137 140 143 147 150 154 158 162 165 169 174 178 182 187
  191 196 200 205 210 215 221 226 232 237 243 249 255 261 267 274 280 287 294 301 309 316 324 332 340 348 357 365 374 383
  392 402 412 422 432 442 453 464 475 487 499 511 523 536 549 562 576 590 604 619 634 649 665 681 698 715 732 750 768 787
  806 825 845 866 887 909 931 953 976`
    .split(/\s+/)
    .map(Number);

describe('IEC 60063', () => {
  it('E24, and every second of it down to E6', () => {
    expect(series.E24).toEqual(E24);
    expect(series.E12).toEqual([10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82]);
    expect(series.E6).toEqual([10, 15, 22, 33, 47, 68]);
    expect(series.E3).toEqual([10, 22, 47]);
  });

  it('E96, and E48 as every second of it from 100', () => {
    expect(series.E96).toEqual(E96);
    expect(series.E48).toEqual(E96.filter((_, i) => i % 2 === 0));
  });

  it('eight values of E24 are not a rounded geometric step', () => {
    const odd = series.E24.filter((value, i) => value !== Math.round(10 * 10 ** (i / 24)));
    expect(odd).toEqual([27, 30, 33, 36, 39, 43, 47, 82]);
  });

  it('18 of the 24 are not in E96', () => {
    expect(
      series.E24.filter((value) => nearestAvailable(value * 1e4, 'E96')?.value !== value * 1e4),
    ).toHaveLength(18);
  });
});

describe('nearest by ratio', () => {
  it('to 500k: 470k in E12, 510k in E24, 499k in E96', () => {
    expect(nearestAvailable(500e3, 'E12')).toEqual({ value: 470e3, below: 390e3, above: 560e3 });
    expect(nearestAvailable(500e3, 'E24')).toEqual({ value: 510e3, below: 470e3, above: 560e3 });
    expect(nearestAvailable(500e3, 'E96')).toEqual({ value: 499e3, below: 487e3, above: 511e3 });
  });

  it('crosses decades and takes the larger of two equally near', () => {
    expect(nearestAvailable(9.9e5, 'E12')).toEqual({ value: 1e6, below: 820e3, above: 1.2e6 });
    expect(nearestAvailable(500e3, { stock: [1e6, 250e3] })).toEqual({ value: 1e6, below: 250e3 });
  });

  it('refuses a stock that is empty or holds something other than a value', () => {
    for (const stock of [[], [0], [470e3, -5], [NaN], [Infinity]])
      expect(() => nearestAvailable(500e3, { stock }), String(stock)).toThrow(RangeError);
    expect(() => nearestAvailable(0, { stock: [] })).toThrow('the stock is empty');
  });

  it('has no answer to nothing', () => {
    expect(nearestAvailable(0, 'E12')).toBeUndefined();
    expect(nearestAvailable(Infinity, 'E12')).toBeUndefined();
  });
});
