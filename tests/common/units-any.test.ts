/** Every way of writing a quantity, and every size of one in print; prefixes by the SI Brochure (BIPM, 9th edition, table 7). */
import { describe, expect, it } from 'vitest';
import { series } from '../../src/common/series.ts';
import {
  formatFigure,
  formatQuantity,
  given,
  givenOr,
  parseQuantity,
  type Unit,
  writeQuantity,
} from '../../src/common/units.ts';

const POWERS: Readonly<Record<string, number>> = {
  p: -12,
  n: -9,
  u: -6,
  µ: -6,
  μ: -6,
  m: -3,
  R: 0,
  r: 0,
  k: 3,
  K: 3,
  M: 6,
  G: 9,
};
/** Those that are used with a unit in a workshop. */
const USED: Readonly<Record<Unit, string>> = { ohm: 'mRrkKMG', farad: 'pnuµμm', henry: 'uµμm' };
const NAMES: Readonly<Record<Unit, readonly string[]>> = {
  ohm: ['', 'Ω', 'Ω', 'ohm', 'ohms', 'Ohm', ' Ω'],
  farad: ['', 'F', ' farad', ' farads'],
  henry: ['', 'H', ' henry', ' henries'],
};
const units = ['ohm', 'farad', 'henry'] as const;

describe.each(units)('%s', (unit) => {
  it('is read with each of its prefixes, and with no other', () => {
    for (const [prefix, power] of Object.entries(POWERS))
      for (const [digits, infix] of [
        ['4.7', `4${prefix}7`],
        ['470', `470${prefix}0`],
        ['0.22', `${prefix}22`],
        ['-4.7', `-4${prefix}7`],
      ] as const) {
        const may = USED[unit].includes(prefix);
        const value = may ? Number(`${digits}e${power}`) : undefined;
        expect(parseQuantity(infix, unit), infix).toBe(value);
        expect(parseQuantity(`${digits}${prefix}`, unit), digits + prefix).toBe(value);
        expect(parseQuantity(`  ${digits} ${prefix} `, unit), `${digits} ${prefix}`).toBe(value);
      }
  });

  it('is read with its name or sign behind it, and with no other’s', () => {
    for (const name of NAMES[unit]) {
      expect(parseQuantity(`12${name}`, unit), name).toBe(12);
      expect(parseQuantity(`12m${name}`, unit), name).toBe(0.012);
    }
    for (const other of units)
      if (other !== unit)
        for (const name of NAMES[other].slice(1))
          expect(parseQuantity(`12${name}`, unit), name).toBeUndefined();
  });

  it('is read as a plain number, with or without a power of ten, and never as one that is not', () => {
    for (const [text, value] of [
      ['2.5', 2.5],
      ['.5', 0.5],
      ['5.', 5],
      ['+5', 5],
      ['-5', -5],
      ['1e3', 1000],
      ['1.5E-3', 0.0015],
      ['2e+2', 200],
      ['4.7e2m', 0.47],
    ] as const)
      expect(parseQuantity(text, unit), text).toBe(value);
    for (const number of [0, -3, 2.5, 1e300]) expect(parseQuantity(number, unit)).toBe(number);
    for (const none of [Number.NaN, Number.POSITIVE_INFINITY, '', ' ', '.', 'm', '1e', '1e400', '--5', '5 5'])
      expect(parseQuantity(none, unit), String(none)).toBeUndefined();
  });

  it('is written with the prefix that leaves one to three figures before the point', () => {
    const letters: Readonly<Record<Unit, string>> = { ohm: 'Rmk MG', farad: 'pnum', henry: 'um' };
    for (let power = { ohm: -4, farad: -13, henry: -7 }[unit]; power < 9; power++)
      for (const digits of [...series.E12, 100, 10.5, 47.5, 99.8]) {
        const value = Number(`${digits}e${power}`);
        const text = writeQuantity(value, unit);
        expect(parseQuantity(text, unit), text).toBe(value);
        const [, figure = '', prefix = ''] = /^([\d.]+)([a-zA-Z]?)$/.exec(text) ?? [];
        const powers = [...letters[unit]].map((letter) => POWERS[letter] ?? 0);
        const [least, most] = [Math.min(0, ...powers), Math.max(0, ...powers)];
        expect(prefix === '' || letters[unit].includes(prefix), text).toBe(true);
        // Below the smallest prefix and above the largest there is none that would do.
        if (value >= 10 ** least) expect(Number(figure), text).toBeGreaterThanOrEqual(1);
        if (value < 10 ** (most + 3)) expect(Number(figure), text).toBeLessThan(1000);
      }
  });

  it('is printed with the prefix that leaves one to three figures before the point', () => {
    const sign = { ohm: 'Ω', farad: 'F', henry: 'H' }[unit];
    const prefixes: Readonly<Record<string, number>> = {
      p: -12,
      n: -9,
      µ: -6,
      m: -3,
      '': 0,
      k: 3,
      M: 6,
      G: 9,
    };
    for (let power = -13; power < (unit === 'farad' ? -1 : 11); power++)
      for (const digits of [1, 1.01, 2.2, 4.75, 9.94, 9.996]) {
        const value = Number(`${digits}e${power}`);
        for (const minus of [false, true])
          for (const [text, figures] of [
            [formatQuantity(minus ? -value : value, unit), 3],
            [formatFigure(minus ? -value : value, unit), 3],
            [formatQuantity(minus ? -value : value, unit, 2), 2],
          ] as const) {
            const [, before = '', figure = '', prefix = '', behind] =
              /^(−?)([\d.]+) ([pnµmkMG]?)(\D)$/.exec(text) ?? [];
            expect(before === '−', text).toBe(minus);
            expect(behind, text).toBe(sign);
            // The same value, but for the figures that were left out.
            expect(Number(`${figure}e${prefixes[prefix]}`), text).toBe(Number(value.toPrecision(figures)));
            if (value >= 1e-12) expect(Number(figure), text).toBeGreaterThanOrEqual(1);
            if (value < 9.99e11) expect(Number(figure), text).toBeLessThan(1000);
          }
      }
    expect(formatQuantity(0, unit)).toBe(`0 ${sign}`);
    // Nobody writes farads: a thousand millifarads stay what they are.
    expect(formatQuantity(1, unit)).toBe(unit === 'farad' ? '1000 mF' : `1 ${sign}`);
    expect(formatQuantity(Number.POSITIVE_INFINITY, unit)).toBe('open');
  });
});

it('a value remembers whether it was written or filled in, nothing being zero too', () => {
  expect(given(5)).toEqual({ value: 5, from: 'given' });
  expect(givenOr(0, 5)).toEqual({ value: 0, from: 'given' });
  expect(givenOr(undefined, 5)).toEqual({ value: 5, from: 'default' });
});
