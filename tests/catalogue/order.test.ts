/** `order`: quantities counted by hand, costs, what is short, wire; and tables that a spreadsheet opens as they are meant. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { csvParseRows, dsvFormat } from 'd3-dsv';
import { describe, expect, it } from 'vitest';
import { addOrder } from '../../src/commands/order.ts';
import { run } from '../commands/run.ts';
import { kitText, workshop } from './folder.ts';

/** 10 pots of 250 k, no other; 5 jacks and no word of how many capacitors. */
const LIST = `currency: EUR
stock:
  - { code: P-250, kind: pot, value: 250k, taper: log, price: 3.20, in-stock: 10, replaced-by: P-500 }
  - { code: P-500, kind: pot, value: 500k, taper: log, price: 3.30 }
  - { code: C-22, kind: capacitor, value: 22n, price: 0.355, supplier: "=1+1" }
  - { code: C-47, kind: capacitor, value: 47n, in-stock: no, replaced-by: C-22 }
  - { code: J-1, kind: jack, in-stock: 5 }
`;
const FILES = {
  'parts.yaml': LIST,
  'one.yaml': kitText('one'),
  'two.yaml':
    'extends: ./one.yaml\nkit: two\ntitle: T\nparts: { volume: { value: 500k }, tone-cap: { value: 47n } }\n',
  'solderleaf.yaml': 'kits: [one.yaml, two.yaml]\n',
};
const order = (folder: string, ...args: readonly string[]) => run(addOrder, 'order', folder, ...args);
const json = async (...args: readonly string[]) => {
  const { stdout, stderr } = await order(workshop(FILES), ...args, '--json');
  expect(stderr).toBe('');
  return JSON.parse(stdout);
};

describe('counted by hand', () => {
  it('one kit: its parts by stock code, its wires by colour', async () => {
    const { parts, wires, cost, currency } = await json('one=4');
    expect(
      parts.map(({ code, quantity, cost: its, pieces, short }: never) => [
        code,
        quantity,
        its,
        pieces,
        short,
      ]),
    ).toEqual([
      // One capacitor a kit at 0.355; one jack, of which 5 are there; two pots, of which 10 are there.
      ['C-22', 4, 1.42, undefined, undefined],
      ['J-1', 4, undefined, 5, 0],
      ['P-250', 8, 25.6, 10, 0],
      // The pickup is in no list.
      [undefined, 4, undefined, undefined, undefined],
    ]);
    expect([cost, currency]).toEqual([27.02, 'EUR']);
    // Black: 60 mm, 140 mm. Two are without a colour or a length, and orange is without a length.
    expect(wires).toEqual([
      { kind: 'wire', colour: 'BK', length: 0.8, pieces: 8, withoutLength: 0 },
      { kind: 'wire', colour: 'BU', length: 0.48, pieces: 4, withoutLength: 0 },
      { kind: 'wire', colour: 'OG', length: 0, pieces: 4, withoutLength: 4 },
      { kind: 'wire', colour: 'WH', length: 0.56, pieces: 4, withoutLength: 0 },
      { kind: 'wire', length: 0, pieces: 4, withoutLength: 4 },
    ]);
  });

  it('two kits: what both take is one line, what is short is told, and what is replaced', async () => {
    const { parts, substitutions, cost } = await json('one=6', 'two=3');
    expect(parts.map(({ code, quantity, short, kits }: never) => [code, quantity, short, kits])).toEqual([
      ['C-22', 9, undefined, ['one', 'two']],
      ['J-1', 9, 4, ['one', 'two']],
      // 6 × 2 and 3 × 1.
      ['P-250', 15, 5, ['one', 'two']],
      ['P-500', 3, undefined, ['two']],
      [undefined, 9, undefined, ['one', 'two']],
    ]);
    expect(substitutions).toEqual([{ kit: 'two', part: 'tone-cap', from: 'C-47', to: 'C-22' }]);
    // 9 × 0.355 + 15 × 3.20 + 3 × 3.30
    expect(cost).toBe(61.095);
  });

  it('without a parts list parts are told apart by kind and value, and by what else is bought in them', async () => {
    const { 'parts.yaml': _, ...files } = FILES;
    const folder = workshop({
      ...files,
      'two.yaml':
        'extends: ./one.yaml\nkit: two\ntitle: T\nparts: { tone: { taper: linear }, volume: { label: Loud }, neck: { wind: clockwise } }\n',
    });
    const { stdout } = await order(folder, 'one=1', 'two=1', '--json');
    expect(
      JSON.parse(stdout).parts.map(({ what, value, quantity }: never) => [what, value, quantity]),
    ).toEqual([
      ['capacitor', '22 nF', 2],
      ['mono output jack', undefined, 2],
      ['pot', '250 kΩ lin', 1],
      ['pot', '250 kΩ log', 3],
      ['single coil pickup', '5.7 kΩ', 1],
      ['single coil pickup', '5.7 kΩ', 1],
    ]);
  });
});

it('as text: the parts, the cost, what is short, what is replaced, and the wire', async () => {
  const { stdout, status } = await order(workshop(FILES), 'one=6', 'two=3');
  expect(status).toBe(0);
  expect(stdout).toMatch(/^Order: 6 × one, 3 × two\n/);
  expect(stdout).toMatch(/^ {2}P-250 +pot +250 kΩ log +15 +10 +5 +3\.20 +48\.00$/m);
  expect(stdout).toContain(
    'Cost of the parts that have a price: 61.095 EUR; without a price: J-1, single coil pickup',
  );
  expect(stdout).toContain('  P-250: 5 of 15, 10 in stock; replaced by P-500');
  expect(stdout).toContain('  C-22 in place of C-47: two (tone-cap)');
  expect(stdout).toMatch(/^ {2}wire +BK +black +1\.80 m +18$/m);
  expect(stdout).toMatch(/^ {2}wire +OG +orange +9 +9$/m);
});

describe('as a table', () => {
  it('has a row for each part and wire; cells that look like formulas do no harm', async () => {
    const { stdout } = await order(workshop(FILES), 'one=4', '--csv');
    const rows = csvParseRows(stdout.trimEnd());
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([15]));
    expect(rows[0]?.slice(0, 8)).toEqual([
      'Code',
      'Part',
      'Value',
      'Quantity',
      'In stock',
      'Short',
      'Price',
      'Cost',
    ]);
    expect(rows[1]).toEqual([
      'C-22',
      'capacitor',
      '22 nF',
      '4',
      '',
      '',
      '0.355',
      '1.42',
      'EUR',
      "'=1+1",
      '',
      '',
      '',
      '',
      'one',
    ]);
    expect(rows.find(([, , value]) => value === 'BK black')).toEqual([
      '',
      'wire',
      'BK black',
      '8',
      '',
      '',
      '',
      '',
      '',
      '',
      '',
      '',
      '0.8',
      '0',
      '',
    ]);
    expect(rows.flat().filter((cell) => /^[=+\-@\t\r]/.test(cell))).toEqual([]);
  });

  it('in a file begins with the mark of UTF-8 and ends lines as spreadsheets do; with decimal commas where asked', async () => {
    const folder = workshop(FILES);
    const out = join(folder, 'order.csv');
    const { stdout, status } = await order(folder, 'one=4', '--out', out, '--decimal-comma');
    expect([stdout, status]).toEqual([`written   ${out}\n`, 0]);
    const text = readFileSync(out, 'utf8');
    expect(text.startsWith('\uFEFFCode;Part;')).toBe(true);
    expect(text.match(/(?<!\r)\n/g)).toBeNull();
    const rows = dsvFormat(';').parseRows(text.trimEnd());
    expect(rows[1]?.slice(3, 9)).toEqual(['4', '', '', '0,355', '1,42', 'EUR']);
    expect((await order(folder, 'one=4', '--out', out, '--decimal-comma')).stdout).toBe(`unchanged ${out}\n`);
    expect((await order(folder, 'one=5', '--out', out, '--decimal-comma')).stdout).toBe(`written   ${out}\n`);
  });

  it('says by which item each is replaced and which it stands in for, money to the cent, and what is short', async () => {
    const folder = workshop(FILES);
    const out = join(folder, 'order.csv');
    const { stdout } = await order(folder, 'one=6', 'two=3', '--out', out, '--decimal-comma');
    expect(stdout).toBe(
      `written   ${out}\nshort     J-1: 4 of 9, 5 in stock\nshort     P-250: 5 of 15, 10 in stock; replaced by P-500\n`,
    );
    const [heads = [], ...rows] = dsvFormat(';').parseRows(
      readFileSync(out, 'utf8').replace('\uFEFF', '').trimEnd(),
    );
    const cell = (code: string, head: string) => rows.find((row) => row[0] === code)?.[heads.indexOf(head)];
    // C-47 is sold out, and C-22 taken in its place; P-250 is used, though it names a replacement.
    expect([cell('C-22', 'In place of'), cell('P-250', 'In place of')]).toEqual(['C-47', '']);
    expect([cell('C-22', 'Replaced by'), cell('P-250', 'Replaced by')]).toEqual(['', 'P-500']);
    // 15 × 3.20, 3 × 3.30 and 9 × 0.355.
    expect([cell('P-250', 'Price'), cell('P-250', 'Cost')]).toEqual(['3,20', '48,00']);
    expect([cell('P-500', 'Price'), cell('P-500', 'Cost')]).toEqual(['3,30', '9,90']);
    expect([cell('C-22', 'Price'), cell('C-22', 'Cost')]).toEqual(['0,355', '3,195']);
    expect(cell('', 'Value')).toBe('5,7 kΩ');
    const plain = csvParseRows((await order(folder, 'two=3', '--csv')).stdout.trimEnd());
    expect(plain.find(([code]) => code === 'P-500')?.slice(6, 8)).toEqual(['3.30', '9.90']);
    expect(plain.find(([, what]) => what === 'single coil pickup')?.[2]).toBe('5.7 kΩ');
  });

  it('never takes the place of another file', async () => {
    const folder = workshop({ ...FILES, 'order.csv': 'mine\n1\n' });
    const { stderr, status } = await order(folder, 'one=4', '--out', join(folder, 'order.csv'));
    expect(status).toBe(1);
    expect(stderr).toContain('is not an order');
    expect(readFileSync(join(folder, 'order.csv'), 'utf8')).toBe('mine\n1\n');
  });
});

describe('is refused', () => {
  it.each([
    [['one'], '“one”: write a kit’s id and how many'],
    [['one=0'], 'from 1 to 1000000'],
    [['one=-1'], 'such as my-hss=20'],
    [['one=1000001'], 'from 1 to 1000000'],
    [['one=2', 'one=3'], '“one” is given twice'],
    [['oen=2'], 'the catalogue has no kit “oen”: did you mean one?'],
    [['one=2', '--json', '--csv'], '--json goes neither'],
    [['one=2', '--decimal-comma'], '--decimal-comma goes with'],
    [['one=2', '--out', 'order.txt'], 'it must end in .csv'],
  ])('%j as wrong usage', async (args, words) => {
    const { status, stdout, stderr } = await order(workshop(FILES), ...args);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toContain(words);
  });

  it('by a pattern: every kit whose id fits, each once', async () => {
    const folder = workshop(FILES);
    const byName = await order(folder, 'one=3', 'two=3', '--json');
    expect((await order(folder, '*=3', '--json')).stdout).toBe(byName.stdout);
    expect((await order(folder, 't?o=2', '--json')).stdout).toBe(
      (await order(folder, 'two=2', '--json')).stdout,
    );
    const twice = await order(folder, 'o*=3', 'one=1');
    expect([twice.status, twice.stdout, twice.stderr]).toEqual([
      2,
      '',
      expect.stringContaining('“one” is given twice'),
    ]);
    const none = await order(folder, 'x*=1');
    expect([none.status, none.stderr]).toEqual([2, expect.stringContaining('has no kit “x*”')]);
  });

  it('whole, where one of its kits has an error: half an order would be short', async () => {
    const folder = workshop(FILES);
    const out = join(folder, 'order.csv');
    writeFileSync(join(folder, 'two.yaml'), FILES['two.yaml'].replace('47n', '47q'));
    const { status, stdout, stderr } = await order(folder, 'one=1', 'two=1', '--out', out);
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(/two\.yaml:4:\d+ {2}error {2}bad-quantity/);
    expect(existsSync(out)).toBe(false);
  });

  it('where the catalogue is wrong, or an item is out of stock and nothing replaces it', async () => {
    const wrong = await order(workshop({ ...FILES, 'solderleaf.yaml': 'kist: []\n' }), 'one=1');
    expect(wrong.status).toBe(1);
    expect(wrong.stderr).toContain('solderleaf.yaml:1:1  error  unknown-key');
    const gone = await order(
      workshop({ ...FILES, 'parts.yaml': LIST.replace(', in-stock: 5', ', in-stock: no') }),
      'one=1',
    );
    expect(gone.status).toBe(1);
    expect(gone.stderr).toContain('out-of-stock');
  });
});
