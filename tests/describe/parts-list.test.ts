/** Parts lists, in YAML and as a spreadsheet exports them: what is read, and where each mistake is told of. */
import { describe, expect, it } from 'vitest';
import { formatDiagnostic } from '../../src/describe/diagnostics.ts';
import { readPartsList } from '../../src/describe/read-stock.ts';
import type { PartsList } from '../../src/describe/stock.ts';

const said = ({ diagnostics }: PartsList): readonly string[] =>
  diagnostics.map(({ place, code }) => `${place.line}:${place.column} ${code}`);
const words = ({ diagnostics }: PartsList): string => diagnostics.map(formatDiagnostic).join('\n');
/** Everything of the items but where they are written. */
const bought = ({ items }: PartsList) =>
  items.map(({ place: _, places, fields, ...item }) => ({ ...item, fields: Object.keys(fields).sort() }));

const GOOD = `currency: EUR
stock:
  - { code: R-470K, kind: resistor, value: 470k, tolerance: 5%, price: 0.04, in-stock: no, replaced-by: R-510K }
  - { code: R-510K, kind: resistor, value: 510k, tolerance: 5%, price: 0.05, in-stock: 200, supplier: "drawer 3; left" }
  - { code: C-22N, kind: capacitor, value: 22n, price: 0.35 }
  - { code: P-250, kind: pot, value: 250k, taper: log, price: 3.2, in-stock: yes }
  - { code: ST-1, kind: stacked-pot, a: { value: 250k }, b: { value: 500k, taper: linear }, in-stock: 0 }
  - { code: MT-1, kind: mini-toggle, action: on-on, poles: 2 }
  - { code: H-1, kind: humbucker, resistance: 8.4k }
`;
/** The same in a German export: another order, capitals, semicolons, decimal commas, quotes, currency, a blank row. */
const GERMAN = `\uFEFFKind;Code;Value;Price;In stock;Replaced by;Tolerance;Supplier;Taper;a.value;b.value;b.taper;action;poles;resistance;
Resistor;R-470K;470k;0,04 €;no;R-510K;5%;;;;;;;;;
resistor;R-510K;"0,51 MΩ";0,05 €;200;;5 %;"drawer 3; left";;;;;;;;
;;;;;;;;;;;;;;;
Capacitor;C-22N;22 nF;0,35;;;;;;;;;;;;
pot;P-250;250000;3,20;Yes;;;;Log;;;;;;;
stacked-pot;ST-1;;;0;;;;;250k;500k;Linear;;;;
mini-toggle;MT-1;;;;;;;;;;;on-on;2;;
humbucker;H-1;;;;;;;;;;;;;8,4k;
`;
const english = (text: string): string =>
  text
    .replaceAll(',', '.')
    .replaceAll('"drawer 3; left"', '"drawer 3# left"')
    .replaceAll(';', ',')
    .replaceAll('#', ';')
    .replaceAll('\n', '\r\n');

describe('a list', () => {
  const yaml = readPartsList(GOOD, 'parts.yaml');
  it('is read with its prices and its stock', () => {
    expect(words(yaml)).toBe('');
    expect(yaml.currency).toBe('EUR');
    expect(yaml.items).toMatchObject([
      { code: 'R-470K', kind: 'resistor', inStock: false, replacedBy: 'R-510K', price: 0.04 },
      { code: 'R-510K', inStock: true, pieces: 200, supplier: 'drawer 3; left' },
      { code: 'C-22N', inStock: true, part: { value: { value: 22e-9 } } },
      { code: 'P-250', inStock: true },
      { code: 'ST-1', inStock: false, pieces: 0, part: { b: { value: { value: 500e3 } } } },
      { code: 'MT-1', fields: { action: 'on-on', poles: 2 } },
      { code: 'H-1', part: { resistance: { value: 8400 } } },
    ]);
    expect(yaml.items[1]?.place).toMatchObject({ line: 4, column: 5 });
    expect(yaml.items[1]?.places.get('value')).toMatchObject({ file: 'parts.yaml', line: 4, column: 44 });
  });
  it.each([
    ['semicolons and decimal commas', GERMAN],
    ['commas and decimal points', english(GERMAN)],
    ['tabs', GERMAN.replaceAll(';', '\t').replace('3\t left', '3; left')],
    ['a line that names the separator', GERMAN.replace('\uFEFF', '\uFEFFsep=;\r\n')],
  ])('is the same as CSV with %s', (_, text) => {
    const csv = readPartsList(text, 'parts.csv', 'EUR');
    expect(words(csv)).toBe('');
    expect(csv.currency).toBe('EUR');
    expect(bought(csv)).toEqual(bought(yaml));
  });
  it('is the same as JSON', () => {
    const json = readPartsList(
      '{ "stock": [{ "code": "R-470K", "kind": "resistor", "value": 470000, "in-stock": false }] }',
      'list.json',
    );
    expect(words(json)).toBe('');
    expect(json.items).toMatchObject([{ code: 'R-470K', inStock: false, part: { value: { value: 470e3 } } }]);
  });
});

it('tells every mistake of a YAML list at once, in its place', () => {
  const list = readPartsList(
    `currency: euro
stock:
  - { code: R-1, kind: resistor, value: 47Q }
  - { code: R-2, kind: resitor, value: 47k }
  - { code: R-3, kind: resistor }
  - { code: R-3, kind: resistor, value: 1k, price: free }
  - { kind: resistor, value: 1k }
  - { code: R-4, kind: resistor, value: 1k, replaced-by: R-4 }
  - { code: R-5, kind: resistor, value: 1k, replaced-by: R-6 }
  - { code: R-6, kind: resistor, value: 1k, replaced-by: R-5 }
  - { code: R-7, kind: resistor, value: 1k, replaced-by: C-1 }
  - { code: C-1, kind: capacitor, value: 22n, in-stock: maybe, replaced-by: C-9 }
  - { code: R-8, kind: resistor, value: 1k, in-stock: no, replaced-by: R-9 }
  - { code: R-9, kind: resistor, value: 1k, in-stock: no }
  - { code: P-1, kind: pot, value: 250k, taper: audio, price: -1 }
  - { code: 470, kind: resistor, value: 470, tolerence: 5%, label: Pad, in-stock: 1.5 }
  - R-470K
  - { code: R-10, kind: resistor, value: "=A1" }
`,
    'parts.yaml',
  );
  expect(said(list)).toEqual([
    '1:11 bad-value',
    '3:41 bad-quantity',
    '4:24 bad-choice',
    '5:5 missing-key',
    '6:13 duplicate-code',
    '6:52 bad-value',
    '7:5 missing-key',
    '8:58 replaced-by-itself',
    '9:58 replaced-in-circle',
    '11:58 replaced-by-other-kind',
    '12:57 bad-value',
    '12:77 replaced-by-unknown',
    '13:72 replacement-not-in-stock',
    '15:49 bad-choice',
    '15:63 bad-value',
    '16:13 wrong-type',
    '16:46 unknown-key',
    '16:61 unknown-key',
    '16:83 bad-value',
    '17:5 wrong-type',
    '18:42 bad-quantity',
  ]);
  // No word of a library, and every report says what to do.
  expect(words(list)).not.toMatch(/zod|undefined|\[object|null|NaN|Invalid input/i);
  for (const { remedy } of list.diagnostics) expect(remedy.trim()).not.toBe('');
  // A replacement that is not in stock concerns only the kits that need it.
  expect(list.diagnostics.filter(({ severity }) => severity === 'warning').map(({ code }) => code)).toEqual([
    'replacement-not-in-stock',
  ]);
  expect(words(list)).toContain('“R-5” is replaced by R-6'.replace('“R-5”', 'R-5'));
});

it('tells every mistake of a spreadsheet at once, by row and column', () => {
  const list = readPartsList(
    `code;kind;value;tolerence;price;Code;shelf;in-stock;
R-1;resistor;=B2*1000;;0,04;;A1;yes;
R-2;resistor;470.000;;1.234,56 €;;;;
R-3;resistor;#REF!;;x;;;perhaps;
R-1;resistor;47k;;;;;;stray
;resistor;47k;;;;;;
R-4;capacitor;4,7x;;;;;;
"R-5
b";pot;250k;;;;;;
R-6;lever-5;250k;;;;;;
`,
    'parts.csv',
  );
  expect(
    list.diagnostics.map(
      ({ place, code, message }) => `${place.line}:${place.column} ${code} ${message.split(':')[0]}`,
    ),
  ).toEqual([
    '1:17 column-unknown row 1, column D',
    '1:33 column-twice row 1, column F',
    '1:38 column-not-read row 1, column G',
    '2:14 bad-value row 2, column C “value”',
    '3:14 bad-value row 3, column C “value”',
    '3:23 bad-value row 3, column E “price”',
    '4:14 bad-value row 4, column C “value”',
    '4:21 bad-value row 4, column E “price”',
    '4:25 bad-value row 4, column H “in-stock”',
    '5:1 duplicate-code row 5, column A “code”',
    '5:23 cell-without-column row 5, column I “”',
    '6:1 missing-key row 6',
    '7:15 bad-quantity row 7, column C “value”',
    '10:13 unknown-key row 9, column C “value”',
  ]);
  expect(words(list)).not.toMatch(/zod|undefined|\[object|null|NaN|Invalid input/i);
});

it('tells of a column that is not there once, and of one of your own in a note', () => {
  const rows = ['R-1,470k,5,a', 'R-2,510k,5%,b', 'R-3,220k,0.05,c'].join('\n');
  for (const [head, code] of [
    ['code,value,tolerance,Shelf', 'column-missing'],
    ['code,value,tolerance,kidn', 'column-unknown'],
  ] as const) {
    const { diagnostics } = readPartsList(`${head}\n${rows}\n`, 'p.csv');
    const errors = diagnostics.filter(({ severity }) => severity === 'error');
    expect(errors.map((one) => one.code)).toEqual([code]);
  }
  const list = readPartsList(
    `code,value,tolerance,Shelf,kind\n${rows.replaceAll('\n', ',resistor\n')},resistor\n`,
    'p.csv',
  );
  expect(list.items.map((item) => item.code)).toEqual(['R-2', 'R-3']);
  expect(list.diagnostics.map(({ severity, code }) => [severity, code])).toEqual([
    ['note', 'column-not-read'],
    ['error', 'bad-quantity'],
  ]);
  const [note, percent] = list.diagnostics;
  for (const column of ['code', 'kind', 'value', 'taper', 'in-stock', 'replaced-by', 'a.value'])
    expect(note?.remedy).toMatch(new RegExp(`[ ,]${column.replace('.', '\\.')}[,.]`));
  expect(percent?.message).toContain('row 2, column C “tolerance”: “5”: must be between 0 % and 100 %');
  expect(percent?.remedy).toBe('Write a value such as 5%.');
});

it.each([
  ['no column of codes', 'kind;value\nresistor;470k\n', '1:1 column-missing'],
  ['a quote left open', 'code;kind;value\nR-1;resistor;"470k\nR-2;resistor;1k\n', '2:14 bad-value'],
  ['text behind a quote', 'code;kind;value\n"R-1"x;resistor;470k\n', '2:6 bad-value'],
  ['nothing', '', '1:1 list-empty'],
  ['blank rows', '\n;;\n', '1:1 list-empty'],
])('refuses a spreadsheet with %s', (_, text, place) =>
  expect(said(readPartsList(text, 'parts.csv'))[0]).toBe(place),
);

it.each([
  ['nothing', ' \n', '1:1 list-empty'],
  ['a comment', '# to do\n', '1:1 list-empty'],
  ['a text', 'hello', '1:1 list-shape'],
  ['another map', 'kit: a\n', '1:1 list-shape'],
  ['a misspelt key', 'stok: []\n', '1:1 missing-key'],
  ['a map of items', 'stock: { R-1: 470k }\n', '1:8 wrong-type'],
  ['broken YAML', 'stock: [\n', '2:1 bad-syntax'],
])('refuses a file with %s', (_, text, place) =>
  expect(said(readPartsList(text, 'parts.yaml'))).toEqual([place]),
);

/** A number a country writes another way is never taken for another number; values by hand. */
describe.each([
  ['comma', 'parts by commas', ','],
  ['semicolon', 'parts by semicolons', ';'],
])('numbers between cells of a %s', (_, __, delimiter) => {
  const read = (cell: string) =>
    readPartsList(
      `code${delimiter}kind${delimiter}value\nR${delimiter}resistor${delimiter}"${cell}"\n`,
      'p.csv',
    );
  const ohms = (cell: string) => {
    const [item] = read(cell).items;
    return item && 'value' in item.part ? item.part.value.value : undefined;
  };
  it.each([
    ['4,7k', 4700],
    ['4.7k', 4700],
    ['4k7', 4700],
    ['0,47M', 470e3],
    ['470 kΩ', 470e3],
    ['470000', 470e3],
    ['4,7E+05', 470e3],
  ])('%s', (cell, value) => expect(ohms(cell)).toBe(value));
  it('with separators between thousands', () => {
    const grouped = delimiter === ',' ? '470,000' : '470.000';
    expect(ohms(grouped)).toBeUndefined();
    expect(said(read(grouped)).map((one) => one.split(' ')[1])).toEqual(['bad-value']);
    expect(said(read('1.470.000'))).toHaveLength(1);
    expect(said(read('1.234,56'))).toHaveLength(1);
  });
});
