/** Every value that a colour code or a three-digit code can hold, read back by the rules of IEC 60062 (from memory). */
import { describe, expect, it } from 'vitest';
import { capacitorCode, resistorBands } from '../../src/common/marking.ts';
import { series } from '../../src/common/series.ts';

const FIGURES = ['BK', 'BN', 'RD', 'OG', 'YE', 'GN', 'BU', 'VT', 'GY', 'WH'];
const POWERS = new Map([
  ...FIGURES.map((code, power) => [code, power] as const),
  ['GD', -1],
  ['SR', -2],
  ['PK', -3],
]);
/** Fractions that have a band, the narrowest first. */
const BANDS = [
  [0.001, 'VT'],
  [0.0025, 'BU'],
  [0.005, 'GN'],
  [0.01, 'BN'],
  [0.02, 'RD'],
  [0.05, 'GD'],
  [0.1, 'SR'],
] as const;

/** Figures, then the number of zeros, then the tolerance. */
function ohmsOf(bands: readonly string[]): number {
  const figures = bands.slice(0, -2).map((band) => FIGURES.indexOf(band));
  return Number(`${figures.join('')}e${POWERS.get(bands.at(-2) ?? '')}`);
}

const valuesOf = (digits: readonly number[], from: number, to: number): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => digits.map((d) => Number(`${d}e${from + i}`))).flat();

describe('bands of a resistor', () => {
  it('stand for its value: four where two figures hold it, five where it takes three', () => {
    for (const ohms of valuesOf(series.E24, -2, 9)) {
      const bands = resistorBands(ohms, 0.05);
      expect([bands.length, ohmsOf(bands)]).toEqual([4, ohms]);
    }
    const wrong = valuesOf(series.E96, -3, 8).filter((ohms) => {
      const bands = resistorBands(ohms, 0.01);
      return ohmsOf(bands) !== ohms || bands.length !== (ohms.toExponential(2).includes('0e') ? 4 : 5);
    });
    expect(wrong).toEqual([]);
  });

  it('hold three figures of a value that has more', () => {
    expect(ohmsOf(resistorBands(123_456, 0.01))).toBe(123e3);
    expect(ohmsOf(resistorBands(99_960, 0.01))).toBe(100e3);
  });

  it('end with the tolerance: each exactly, any other by the next wider, and none beyond 10 %', () => {
    BANDS.forEach(([tolerance, band], i) => {
      expect(resistorBands(4700, tolerance).at(-1)).toBe(band);
      expect(resistorBands(4700, tolerance * 0.9).at(-1)).toBe(band);
      const wider = BANDS[i + 1]?.[1];
      expect(resistorBands(4700, tolerance * 1.1)).toEqual([
        'YE',
        'VT',
        'RD',
        ...(wider === undefined ? [] : [wider]),
      ]);
    });
    // What a machine's numbers add to 5 % does not make it 10 %.
    expect(resistorBands(4700, 1.1 - 1.05).at(-1)).toBe('GD');
  });
});

/** Farads that a code stands for. */
function faradsOf(code: string): number {
  const [, figures, zeros] = /^(\d\d)(\d)$/.exec(code) ?? [];
  if (figures !== undefined) return Number(`${figures}e${Number(zeros) - 12}`);
  const [, whole, prefix, rest] = /^(\d+)([pnµ])(\d*)$/.exec(code) ?? [];
  return Number(`${whole}.${rest}e${{ p: -12, n: -9, µ: -6 }[prefix ?? ''] ?? Number.NaN}`);
}

describe('code of a capacitor', () => {
  it('is three digits from 10 pF up to 990 µF where two figures hold the value', () => {
    for (const farads of valuesOf(series.E24, -12, -5)) {
      expect(capacitorCode(farads)).toMatch(/^\d\d\d$/);
      expect(faradsOf(capacitorCode(farads))).toBe(farads);
    }
    expect(capacitorCode(10e-12)).toBe('100');
    expect(capacitorCode(100e-6)).toBe('107');
  });

  it('is written out, with the prefix for the point, where they do not', () => {
    for (const farads of [...valuesOf(series.E24, -13, -13), ...valuesOf([101, 475, 998], -12, -7)]) {
      expect(capacitorCode(farads)).toMatch(/[pnµ]/);
      expect(faradsOf(capacitorCode(farads))).toBe(farads);
    }
    // The prefix is the largest that leaves a whole figure before it.
    expect([999e-12, 1.01e-9, 999e-9, 1.01e-6, 123e-9].map(capacitorCode)).toEqual([
      '999p',
      '1n01',
      '999n',
      '1µ01',
      '123n',
    ]);
    expect(capacitorCode(1e-3)).toBe('1000µ');
    // Four figures are more than is ever made.
    expect(capacitorCode(1.23456e-6)).toBe('1µ235');
  });

  it('leaves aside what only a machine’s numbers add', () => {
    expect(capacitorCode(22e-9 * (1 + 1e-7))).toBe('223');
    expect(capacitorCode(0.1e-6 + 0.2e-6)).toBe('304');
  });
});
