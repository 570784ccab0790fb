import { describe, expect, test } from 'vitest';
import { formatQuantity, parseQuantity, writeQuantity } from '../../src/common/units.ts';
import { headFields } from '../../src/describe/schema.ts';
import { colourField, hertzField, isName, parseLength } from '../../src/describe/words.ts';
import { farads, fraction, henries, ohms } from '../../src/parts/fields.ts';

describe('quantities', () => {
  // IEC 60062, letter code for values; 22n from memory.
  test.each([
    ['R47', 0.47],
    ['4R7', 4.7],
    ['470R', 470],
    ['4K7', 4700],
    ['47K3', 47300],
    ['470K', 470e3],
    ['4M7', 4.7e6],
    ['1M0', 1e6],
  ])('%s is %d Ω', (text, ohms) => {
    expect(parseQuantity(text, 'ohm')).toBe(ohms);
  });

  test.each([
    ['4n7', 4.7e-9],
    ['10p', 10e-12],
    ['1µ0', 1e-6],
    ['22n', 22e-9],
    ['0.022u', 22e-9],
    ['0.022uF', 22e-9],
  ])('%s is %d F', (text, farads) => {
    expect(parseQuantity(text, 'farad')).toBe(farads);
  });

  // Common practice, no source: how workshops write values.
  test.each([
    ['470 kΩ', 'ohm', 470e3],
    ['8.2k', 'ohm', 8200],
    ['1e3', 'ohm', 1000],
    [470, 'ohm', 470],
    ['2.4H', 'henry', 2.4],
    ['900m', 'henry', 0.9],
  ] as const)('%s as %s is %d', (text, unit, value) => {
    expect(parseQuantity(text, unit)).toBe(value);
  });

  test.each([
    ['', 'ohm'],
    ['k', 'ohm'],
    ['470n', 'ohm'],
    ['470F', 'ohm'],
    ['22k', 'farad'],
    ['5,7k', 'ohm'],
    ['4k7k', 'ohm'],
    ['1e999', 'ohm'],
    [Number.NaN, 'ohm'],
  ] as const)('%s is no %s', (text, unit) => {
    expect(parseQuantity(text, unit)).toBeUndefined();
  });

  test('what is written into a description is short, and reads back as the very value', () => {
    const written = [470e3, 1e6, 2.2e6, 499e3, 4700, 220, 0.47, 8.2].map((ohms) =>
      writeQuantity(ohms, 'ohm'),
    );
    expect(written).toEqual(['470k', '1M', '2.2M', '499k', '4.7k', '220', '470m', '8.2']);
    for (const odd of [123_456.789_012_345, 1 / 3, 250e3 + 1e-9])
      expect(parseQuantity(writeQuantity(odd, 'ohm'), 'ohm')).toBe(odd);
    expect(writeQuantity(22e-9, 'farad')).toBe('22n');
  });

  test('what is printed reads back as what it was', () => {
    for (const [value, unit] of [
      [470e3, 'ohm'],
      [22e-9, 'farad'],
      [2.4, 'henry'],
      [0.47, 'ohm'],
      [680e-12, 'farad'],
    ] as const)
      expect(parseQuantity(formatQuantity(value, unit), unit)).toBe(value);
  });
});

describe('values of nothing, and out of range', () => {
  const words =
    (field: { safeParse: (written: unknown) => { error?: { issues: { message: string }[] } } }) =>
    (written: unknown) =>
      field.safeParse(written).error?.issues[0]?.message;

  test.each([
    ['0', 'a resistance must be more than zero'],
    ['-470k', 'a resistance must be more than zero'],
    ['0.01', 'a resistance out of range; allowed: 100 mΩ to 1 GΩ'],
    ['250G', 'a resistance out of range; allowed: 100 mΩ to 1 GΩ'],
    ['many', 'not a resistance'],
  ])('%s: %s', (written, why) => expect(words(ohms(''))(written)).toBe(why));

  test('each says what is allowed', () => {
    expect(words(farads(''))('470F')).toBe('a capacitance out of range; allowed: 0.1 pF to 1 mF');
    expect(words(henries(''))('0')).toBe('an inductance must be more than zero');
    expect(words(henries(''))('2k')).toBe('not an inductance');
    for (const share of ['120%', '100%', '0', '-5%', 5, '', 'half'])
      expect(words(fraction(''))(share), String(share)).toBe('must be between 0 % and 100 %');
    for (const share of ['5%', 0.05, '99.9%']) expect(words(fraction(''))(share)).toBeUndefined();
  });
});

test('lengths need their unit', () => {
  expect(['180mm', '18cm', '0.18m', '18 cm'].map(parseLength)).toEqual([0.18, 0.18, 0.18, 0.18]);
  // An inch is 25.4 mm exactly (international yard and pound agreement, 1959; from memory).
  expect(['10in', '10 in', '10"', '0.5in'].map(parseLength)).toEqual([0.254, 0.254, 0.254, 0.0127]);
  expect(['180', '18km', 'mm', '1,8m', ''].map(parseLength)).toEqual(Array(5).fill(undefined));
});

test('colours are those of IEC 60757, combined in the order of its table', () => {
  const codes = [
    'BK',
    'BN',
    'RD',
    'OG',
    'YE',
    'GN',
    'BU',
    'VT',
    'GY',
    'WH',
    'PK',
    'GD',
    'TQ',
    'SR',
    'GNYE',
    'RDBU',
  ];
  for (const code of codes) expect(colourField.safeParse(code).success, code).toBe(true);
  // IEC 60445: green and yellow are combined only as green-and-yellow.
  for (const code of ['YEGN', 'GNWH', 'BKYE', 'RDGN', 'RDRD', 'BURD', 'red', 'BLK', ''])
    expect(colourField.safeParse(code).success, code).toBe(false);
});

test('frequencies are those that can be heard', () => {
  expect(['1kHz', '440', '2.5k', 1000, '20Hz'].map((text) => hertzField.parse(text))).toEqual([
    1000, 440, 2500, 1000, 20,
  ]);
  for (const text of ['1', '30k', '-5', 'kHz', '']) expect(hertzField.safeParse(text).success).toBe(false);
});

test('a kit id can name a file and nothing else', () => {
  const isKitId = (text: string): boolean => headFields.kit.safeParse(text).success;
  for (const id of ['a', 'heron-ss', 'kit-2', 'constructor']) expect(isKitId(id), id).toBe(true);
  for (const id of [
    '../evil',
    'a/b',
    'A',
    '2a',
    'a--b',
    '-a',
    'a-',
    '',
    'a.b',
    'a\n',
    'x'.repeat(41),
    '__proto__',
  ])
    expect(isKitId(id), id).toBe(false);
  expect(isName('x'.repeat(24))).toBe(true);
  expect(isName('x'.repeat(25))).toBe(false);
});
