/** Kits against the workshop's parts list, from the disk: what is found, what replaces what, and what every output says of it. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { choosePads, solveLoads } from '../../src/analyse/index.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { stockWording } from '../../src/common/stock-wording.ts';
import { defineKit } from '../../src/describe/define.ts';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import { readKit } from '../../src/describe/read.ts';
import { readPartsList } from '../../src/describe/read-stock.ts';
import { loadKit } from '../../src/files/load.ts';
import { writePads } from '../../src/files/pad-write.ts';
import { partsListFor } from '../../src/files/parts-list.ts';
import { buildCircuit } from '../../src/solve/build.ts';

const root = mkdtempSync(join(tmpdir(), 'solderleaf-parts-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));
function put(name: string, text: string): string {
  const file = join(root, name);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
  return file;
}

/** One single coil with a pad; so few parts that every figure can be worked out by hand. */
const kitText = (parts: string) => `kit: robin
title: S, volume
parts:
  neck: { kind: single-coil, resistance: 5.7k }
  volume: { kind: pot, value: 500k, taper: log }
${parts}
  output: { kind: jack }
joints:
  - bend: volume.1 > volume.case
  - neck.ground > volume.case
  - output.sleeve > volume.case
  - leg: pad.1 > volume.3
  - leg: pad.2 > volume.case
  - neck.hot > volume.3
  - volume.2 > output.tip
`;
const PAD = (fields: string) => `  pad: { kind: resistor, label: Single coil pad, ${fields} }`;
const LIST = `stock:
  - { code: R-470K, kind: resistor, value: 470k, in-stock: no, replaced-by: R-510K, price: 0.04 }
  - { code: R-510K, kind: resistor, value: 510k, in-stock: 12, price: 0.05 }
  - { code: R-330K, kind: resistor, value: 330k, in-stock: no }
  - { code: R-220K, kind: resistor, value: 220k, tolerance: 1%, price: 0.04 }
  - { code: P-500, kind: pot, value: 500k, taper: log }
  - { code: P-500-LIN, kind: pot, value: 500k, taper: linear, in-stock: no }
`;

const shown = new Set<string>();
/** What is said of a kit, notes of other rooms left out. */
async function saidOf(file: string) {
  const { kit, diagnostics, source } = await loadKit(file);
  const notes = kit ? notesOf(buildCircuit(kit), solveLoads(buildCircuit(kit))) : [];
  const all = [...diagnostics, ...toDiagnostics(notes, source)].filter(
    ({ code }) => code !== 'values-assumed' && code !== 'load-off-reference',
  );
  for (const { code } of all) shown.add(code);
  return {
    kit,
    said: all.map(({ place, code }) => `${relative(root, place.file)}:${place.line}:${place.column} ${code}`),
    words: all.map(({ message, remedy }) => `${message} ${remedy}`).join('\n'),
  };
}

describe('a kit’s values against the list', () => {
  put('a/parts.yaml', LIST);
  const robin = (parts: string) => saidOf(put('a/kits/robin.yaml', kitText(parts)));

  it('are those of the item that a code names', async () => {
    const { kit, said } = await robin(PAD('code: R-220K, sleeving: 1'));
    expect(said).toEqual([]);
    expect(kit?.parts.find(({ name }) => name === 'pad')).toMatchObject({
      code: 'R-220K',
      label: 'Single coil pad',
      value: { value: 220e3, from: 'given' },
      tolerance: { value: 0.01 },
      sleeved: ['1'],
    });
    // Matched by its value and taper.
    expect(kit?.parts.find(({ name }) => name === 'volume')).toMatchObject({ code: 'P-500' });
    expect(kit?.substitutions).toBeUndefined();
  });
  it.each(['value: 470k', 'value: 470k, tolerance: 5%', 'code: R-470K', 'code: R-470K, value: 0.47M'])(
    'give way to a replacement: %s',
    async (fields) => {
      const { kit, said, words } = await robin(PAD(fields));
      expect(said).toEqual([expect.stringMatching(/^a\/kits\/robin\.yaml:6:5\d substituted$/)]);
      expect(words).toContain('Single coil pad: 470 kΩ (R-470K) is replaced by 510 kΩ (R-510K)');
      if (!kit) throw new Error('no kit');
      // By hand: 500 k in parallel with 510 k; with the 470 k that is sold out it would be 242.3 k.
      const [load] = solveLoads(buildCircuit(kit)).flatMap(({ pickups }) => pickups);
      expect(load?.dcLoad).toBeCloseTo((500e3 * 510e3) / 1010e3, 3);
    },
  );
  it('are an error where nothing replaces what is not in stock', async () => {
    const { kit, said, words } = await robin(PAD('value: 330k'));
    expect(said).toEqual(['a/kits/robin.yaml:6:57 out-of-stock']);
    expect(words).toContain('330 kΩ (R-330K) is not in stock');
    expect(words).toContain('parts.yaml:4');
    // By ratio 510 k is off by 1.55, 220 k by 1.5.
    expect(words).toContain('Nearest in stock: 220 kΩ (R-220K), 510 kΩ (R-510K). Use one of these');
    put('none/parts.yaml', 'stock:\n  - { code: R-1, kind: resistor, value: 330k, in-stock: no }\n');
    const none = await saidOf(put('none/robin.yaml', kitText(PAD('value: 330k'))));
    expect(none.words).toContain('Nothing of its kind is in stock.');
    expect(kit).toBeUndefined();
    expect((await robin(PAD('code: R-330K'))).said).toEqual(['a/kits/robin.yaml:6:56 out-of-stock']);
  });
  it('are an error where the replacement is not in stock either', async () => {
    put('q/parts.yaml', LIST.replace('in-stock: 12', 'in-stock: 0'));
    const { said, words } = await saidOf(put('q/robin.yaml', kitText(PAD('value: 470k'))));
    expect(said).toEqual(['q/robin.yaml:6:57 out-of-stock']);
    expect(words).toContain('470 kΩ (R-470K) is not in stock, and neither is “R-510K”, which replaces it');
  });
  it('are a warning where the list has not got them', async () => {
    const { kit, said, words } = await robin(PAD('value: 390k'));
    expect(said).toEqual(['a/kits/robin.yaml:6:57 not-listed']);
    expect(words).toContain('Nearest in stock: 510 kΩ (R-510K), 220 kΩ (R-220K).');
    expect(kit).toBeDefined();
    // Another tolerance is another part.
    expect((await robin(PAD('value: 220k, tolerance: 5%'))).said).toEqual([
      'a/kits/robin.yaml:6:57 not-listed',
    ]);
  });
  it('are problems in their places where they contradict the code', async () => {
    const { said, words } = await robin(
      `${PAD('code: R-220K, value: 270k, tolerance: 5%')}
  other: { kind: capacitor, code: R-220K }
  third: { kind: resistor, code: R-22K }
  fourth: { kind: pot, code: P-500, taper: linear }`,
    );
    expect(said).toEqual([
      'a/kits/robin.yaml:6:71 code-contradicts',
      'a/kits/robin.yaml:6:88 code-contradicts',
      'a/kits/robin.yaml:7:35 code-of-other-kind',
      'a/kits/robin.yaml:8:34 unknown-code',
      'a/kits/robin.yaml:9:3 not-connected',
      'a/kits/robin.yaml:9:44 code-contradicts',
    ]);
    expect(words).toContain('value 270k contradicts “R-220K”, whose value is 220k');
    expect(words).toContain('Did you mean R-220K?');
  });
  it.each([
    'code: 470',
    'code: null, value: 220k',
    'code: {}',
    'code: ""',
    'code: R-220K, value: x',
    'code: [R-220K]',
  ])('are refused in their place where they cannot be read: %s', async (fields) => {
    const { kit, said } = await robin(PAD(fields));
    expect(kit).toBeUndefined();
    expect(said.length).toBeGreaterThan(0);
    for (const one of said)
      expect(one).toMatch(/^a\/kits\/robin\.yaml:6:\d+ (?:wrong-type|bad-value|bad-quantity|missing-key)$/);
  });
  it('of left-handed kits are matched by what a no-load pot does there', () => {
    const list = readPartsList(
      'stock: [{ code: NL, kind: pot, value: 500k, no-load: anticlockwise }]',
      'parts.yaml',
    );
    const text = kitText(PAD('value: 470k')).replace('taper: log', 'no-load: true');
    const codeOf = (hand: string) =>
      readKit(`hand: ${hand}\n${text}`, 'a.yaml', undefined, list).draft?.parts.find(
        ({ name }) => name === 'volume',
      )?.code;
    expect([codeOf('right'), codeOf('left')]).toEqual([undefined, 'NL']);
  });
  it('need a list where a code is named', async () => {
    const { said } = await saidOf(put('b/robin.yaml', kitText(PAD('code: R-220K'))));
    expect(said).toEqual(['b/robin.yaml:6:56 no-parts-list']);
  });
  it('are not looked for where a list has nothing of their kind', async () => {
    put('c/parts.yaml', 'stock: [{ code: C-1, kind: capacitor, value: 22n }]');
    const { said } = await saidOf(put('c/robin.yaml', kitText(PAD('value: 390k'))));
    expect(said).toEqual([]);
  });
});

describe('kits made from kits', () => {
  put('d/parts.yaml', LIST);
  put('d/base.yaml', kitText(PAD('value: 330k, tolerance: 5%')));
  put('d/coded.yaml', kitText(PAD('code: R-330K')));
  const extended = (base: string, pad: string) =>
    saidOf(put('d/top.yaml', `extends: ./${base}.yaml\nkit: top\ntitle: Top\nparts: { pad: { ${pad} } }\n`));
  const padOf = (kit: Awaited<ReturnType<typeof saidOf>>['kit']) =>
    kit?.parts.find(({ name }) => name === 'pad');

  it('have a code in place of the base’s values, and a value in place of its code', async () => {
    const coded = await extended('base', 'code: R-220K');
    expect(coded.said).toEqual([]);
    expect(padOf(coded.kit)).toMatchObject({
      code: 'R-220K',
      tolerance: { value: 0.01 },
      label: 'Single coil pad',
    });
    const valued = await extended('coded', 'value: 220k');
    expect(valued.said).toEqual([]);
    expect(padOf(valued.kit)).toMatchObject({ code: 'R-220K', value: { value: 220e3 } });
  });
  it('are told of the base’s value where that is what is not in stock', async () => {
    const { said, words } = await extended('base', 'sleeving: 1');
    expect(said).toEqual(['d/base.yaml:6:57 out-of-stock']);
    expect(words).toContain('is a base of');
  });
  it('may be TypeScript', async () => {
    const text = `export default { extends: './coded.yaml', kit: 'ts', title: 'TS', parts: { pad: { code: 'R-470K' } } };`;
    const { kit, said } = await saidOf(put('d/kit.ts', text));
    expect(said).toEqual([expect.stringMatching(/^d\/kit\.ts:1:1 substituted$/)]);
    expect(padOf(kit)).toMatchObject({ code: 'R-510K' });
  });
});

describe('the list of a kit', () => {
  const fileOf = (kit: string) => {
    const list = partsListFor(join(root, kit));
    return list && relative(root, list.file);
  };
  it('is the nearest one above it, or the one that the catalogue names', () => {
    put('e/parts.csv', 'code;kind;value\nR-1;resistor;1k\n');
    put('e/f/g/kit.yaml', '');
    expect(fileOf('e/f/g/kit.yaml')).toBe('e/parts.csv');
    put('e/f/solderleaf.yaml', 'parts: lists/stock.yaml\ncurrency: CHF\n');
    put('e/f/lists/stock.yaml', LIST);
    expect(fileOf('e/f/g/kit.yaml')).toBe('e/f/lists/stock.yaml');
    expect(partsListFor(join(root, 'e/f/g/kit.yaml'))?.currency).toBe('CHF');
    // A catalogue without a list ends the way up.
    put('e/f/g/solderleaf.yaml', 'kits: []\n');
    expect(fileOf('e/f/g/kit.yaml')).toBeUndefined();
    put('e/f/g/parts.yaml', LIST);
    expect(fileOf('e/f/g/kit.yaml')).toBe('e/f/g/parts.yaml');
  });
  it('is not a kit of that name', () => {
    put('e/h/parts.yaml', kitText(PAD('value: 470k')));
    expect(fileOf('e/h/parts.yaml')).toBe('e/parts.csv');
  });
  it('stops every kit where it cannot be read, and says where', async () => {
    put('h/parts.yaml', LIST.replace('value: 510k', 'value: 510q'));
    expect((await saidOf(put('h/robin.yaml', kitText(PAD('value: 470k'))))).said).toEqual([
      'h/parts.yaml:3:44 bad-quantity',
    ]);
    put('h/parts.csv', '');
    expect((await saidOf(join(root, 'h/robin.yaml'))).said).toEqual(['h/parts.yaml:1:1 two-lists']);
    put('h/solderleaf.yaml', 'parts: gone.csv\n');
    expect((await saidOf(join(root, 'h/robin.yaml'))).said).toEqual(['h/gone.csv:1:1 file-unreadable']);
  });
  it('may be in an encoding of spreadsheets', () => {
    const text = 'code;kind;value;supplier\r\nR-1;resistor;1k;Müller\r\n';
    const [windows, unicode] = [join(root, 'e/w.csv'), join(root, 'e/u.csv')];
    writeFileSync(windows, Buffer.from(text, 'latin1'));
    writeFileSync(unicode, Buffer.from(`\uFEFF${text}`, 'utf16le'));
    for (const name of ['w.csv', 'u.csv']) {
      put('e/enc/solderleaf.yaml', `parts: ../${name}\n`);
      expect(partsListFor(join(root, 'e/enc/kit.yaml'))).toMatchObject({
        diagnostics: [],
        items: [{ supplier: 'Müller' }],
      });
    }
  });
});

describe('every output', () => {
  const run = (...args: readonly string[]) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, ['dist/cli.js', ...args], {
      encoding: 'utf8',
    });
    return { status, stdout, all: stdout + stderr };
  };
  put('o/parts.yaml', LIST);
  const kit = put('o/robin.yaml', kitText(PAD('value: 470k')));
  const SAID = 'Single coil pad: 470 kΩ (R-470K) is replaced by 510 kΩ (R-510K)';

  it('says what is replaced', () => {
    for (const command of ['check', 'loads', 'pad', 'response'])
      expect(run(command, kit).stdout, command).toContain(SAID);
    const replaced = {
      part: 'pad',
      from: { code: 'R-470K', value: '470 kΩ' },
      to: { code: 'R-510K', value: '510 kΩ' },
    };
    for (const command of ['loads', 'pad'])
      expect(JSON.parse(run(command, kit, '--json').stdout), command).toMatchObject({
        substitutions: [replaced],
      });
  });
  it('draws the replacement, with a line in the sheet’s notes, and reads it back', () => {
    const out = join(root, 'o/out');
    expect(run('draw', kit, '--out', out, '--effort', '0').all).toContain('written');
    const svg = readFileSync(join(out, 'robin.svg'), 'utf8');
    const texts = [...svg.matchAll(/<(?:text|tspan)[^>]*>([^<]+)</g)].map(([, text]) => text);
    expect(texts).toContain(`${SAID}.`);
    expect(texts).toContain('510 kΩ');
    expect(texts).not.toContain('470 kΩ');
    expect(run('check', kit, '--drawing', join(out, 'robin.svg')).stdout).toContain('no findings');
  });
  it('plots the replacement’s response under the same line', () => {
    const file = join(root, 'o/response.svg');
    expect(run('response', kit, '--out', file).all).toContain('written');
    expect(readFileSync(file, 'utf8')).toContain(`>${SAID}.<`);
  });
  it('explains a value by the list’s line', () => {
    const { stdout } = run('check', kit, '--explain', 'pad');
    expect(stdout).toMatch(/code +R-510K +\S*o\/parts\.yaml:3/);
    expect(stdout).toMatch(/value +510k +\S*o\/parts\.yaml:3 +470k \(\S*robin\.yaml:6\)/);
  });
  it('checks a list by itself', () => {
    const { status, stdout } = run('check', join(root, 'o/parts.yaml'));
    expect([status, stdout]).toEqual([0, expect.stringContaining('6 items, 3 in stock')]);
    expect(run('check', put('o/bad.csv', 'code,kind\nX,thing\n')).status).toBe(1);
    // In a folder of kits nobody takes it for one of them.
    expect(run('check', join(root, 'o')).stdout).not.toContain('not a kit');
  });
});

it('a TypeScript kit may name a code in place of a value, by its types as well', () => {
  const kit = defineKit({
    kit: 'typed',
    title: 'Typed',
    parts: {
      pad: { kind: 'resistor', code: 'R-470K', label: 'Pad' },
      volume: { kind: 'pot', value: '500k' },
    },
    joints: ['pad.1 > volume.3'],
  });
  expect(kit.parts).toMatchObject({ pad: { code: 'R-470K' } });
  // @ts-expect-error a value or a code is needed
  defineKit({ kit: 'a', title: 'A', parts: { pad: { kind: 'resistor' } }, joints: [] });
});

describe('pads', () => {
  put('p/parts.yaml', LIST.replace('in-stock: no, replaced-by: R-510K, ', ''));
  const padded = (fields: string) => put('p/robin.yaml', kitText(PAD(fields)));
  const run = (...args: readonly string[]) =>
    spawnSync(process.execPath, ['dist/cli.js', 'pad', ...args], { encoding: 'utf8' }).stdout;

  it('come from the list, with codes and prices', () => {
    const text = run(padded('value: 220k'));
    // 330 k is listed and not in stock.
    expect(text).toContain(
      'from the stock (220 kΩ (R-220K, 0.04); 470 kΩ (R-470K, 0.04); 510 kΩ (R-510K, 0.05))',
    );
    expect(text).toContain('change pad from 220 kΩ to 510 kΩ (R-510K, 0.05)');
    expect(JSON.parse(run(padded('value: 220k'), '--json'))).toMatchObject({
      listed: [{ ohms: 220e3, code: 'R-220K', price: 0.04 }, { code: 'R-470K' }, { code: 'R-510K' }],
    });
    expect(run(padded('value: 220k'), '--series', 'E12')).toContain('from E12');
  });
  it('are written as they are named: by value or by code', async () => {
    for (const [fields, wanted] of [
      ['value: 220k', 'value: 510k'],
      ['code: R-220K', 'code: R-510K'],
    ] as const) {
      const file = padded(fields);
      const { kit } = await loadKit(file);
      if (!kit) throw new Error('no kit');
      const plan = choosePads(buildCircuit(kit), { series: { stock: [220e3, 470e3, 510e3] } });
      expect(writePads(file, plan)).toMatchObject({ outcome: 'written' });
      expect(readFileSync(file, 'utf8')).toContain(`Single coil pad, ${wanted} }`);
    }
  });
  it('do not fit by a resistor that is not in stock, however many there are', async () => {
    // Two of 1 M in parallel are 500 k: 250 k with the volume, which is the reference.
    const text = kitText(`${PAD('value: 1M')}\n  more: { kind: resistor, value: 1M }`).replace(
      '  - neck.hot',
      '  - leg: more.1 > volume.3\n  - leg: more.2 > volume.case\n  - neck.hot',
    );
    const { kit } = await loadKit(put('p2/robin.yaml', text));
    if (!kit) throw new Error('no kit');
    const kindWith = (...stock: readonly number[]) =>
      choosePads(buildCircuit(kit), { series: { stock } }).advice[0];
    expect(kindWith(1e6)).toMatchObject({ kind: 'fits' });
    expect(kindWith(1e6)).not.toHaveProperty('notInStock');
    expect(kindWith(470e3)).toMatchObject({ kind: 'pad', notInStock: 1e6, chosen: { ohms: 470e3 } });
  });
});

it('takes the values of every sample from the sample workshop’s list', async () => {
  cpSync('samples/workshop/parts.yaml', join(root, 'w/parts.yaml'), { recursive: true });
  for (const id of ['heron-ss', 'kestrel-hss', 'osprey-hsh', 'plover-sss', 'wren-hs', 'wren-sh']) {
    cpSync(`samples/${id}.yaml`, join(root, `w/${id}.yaml`));
    const { kit, said } = await saidOf(join(root, `w/${id}.yaml`));
    expect(
      said.filter((one) => /stock|listed|substituted/.test(one)),
      id,
    ).toEqual([]);
    const coded = kit?.parts.filter(({ code }) => code !== undefined).length;
    // All but the pickups, which the list has none of, and the string ground.
    expect(coded, id).toBe(kit?.parts.filter(({ kind }) => !/coil|humbucker|ground/.test(kind)).length);
  }
});

it('has shown every message of a kit against a list', () => {
  const codes = Object.keys(stockWording);
  const ofKits = codes.slice(codes.indexOf('no-parts-list'));
  expect(ofKits.filter((code) => !shown.has(code))).toEqual([]);
});
