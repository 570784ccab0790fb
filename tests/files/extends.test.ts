/** Kits that extend others, from the disk: paths, circuits that ship, scripts, and what is written back. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { choosePads, type PadOptions } from '../../src/analyse/index.ts';
import { readBaseFile } from '../../src/files/bases.ts';
import { circuitNames } from '../../src/files/circuits.ts';
import { loadKit } from '../../src/files/load.ts';
import { writePads } from '../../src/files/pad-write.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { mixedSetText } from '../describe/fixtures/mixed-set.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-extends-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
function put(name: string, text: string): string {
  const file = join(folder, name);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
  return file;
}
const textOf = (file: string): string => readFileSync(file, 'utf8');
async function loaded(file: string) {
  const { kit, diagnostics } = await loadKit(file);
  return {
    kit,
    said: diagnostics.map(({ place, code }) => `${relative(folder, place.file)}:${place.line} ${code}`),
    words: diagnostics.map(({ message, remedy }) => `${message} / ${remedy}`).join('\n'),
  };
}

describe('where a base is looked for', () => {
  put('set/base.yaml', mixedSetText);

  it('is from the folder of the file that names it, level by level', async () => {
    put('set/sub/middle.json', '{ "extends": "../base.yaml", "kit": "middle", "title": "Middle" }');
    const { kit, said } = await loaded(put('top.yaml', 'extends: ./set/sub/middle.json\nkit: top\n'));
    expect(said).toEqual([]);
    expect(kit).toMatchObject({ id: 'top', title: 'Middle' });
  });

  it('by its whole path too', async () => {
    const base = resolve(folder, 'set/base.yaml');
    const { kit } = await loaded(put('whole.yaml', `extends: ${JSON.stringify(base)}\nkit: whole\n`));
    expect(kit?.id).toBe('whole');
  });

  it.each([
    ['./set/bsae.yaml', /file not found \/ Did you mean \.\/set\/base\.yaml\?/],
    ['set/base', /Did you mean set\/base\.yaml\?/],
    ['./set', /a base is a \.yaml or \.json file/],
    ['./nowhere/at/all.yaml', /file not found \/ Write a path/],
    ['./folder.yaml', /it is a folder/],
    ['./binary.yaml', /it is not text in UTF-8/],
    ['circuit/none-of-these-names', /no circuit of this name ships \/ Circuits that ship: /],
  ])('%s is told with what to do', async (name, words) => {
    mkdirSync(join(folder, 'folder.yaml'), { recursive: true });
    put('binary.yaml', 'a\0b');
    const { said, words: spoken } = await loaded(put('wrong.yaml', `kit: wrong\nextends: ${name}\n`));
    expect(said).toEqual(['wrong.yaml:2 base-unreadable']);
    expect(spoken).toMatch(words);
  });

  it('a loop is found whatever the files are called', async () => {
    put('loop/a.yaml', 'extends: ./b.yaml\nkit: a\n');
    put('loop/b.yaml', 'extends: ../loop/a.yaml\nkit: b\n');
    expect((await loaded(join(folder, 'loop/a.yaml'))).said).toEqual(['loop/b.yaml:1 extends-itself']);
    symlinkSync('.', join(folder, 'loop/again'));
    put('loop/c.yaml', 'extends: ./again/c.yaml\nkit: c\n');
    const { said } = await loaded(join(folder, 'loop/c.yaml'));
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/extends-itself|base-unreadable/);
  });
});

describe('circuits that ship', () => {
  const [first = ''] = circuitNames();

  it('are extended by name from any folder, and each reads as a kit', async () => {
    expect(circuitNames().length).toBeGreaterThan(10);
    for (const name of circuitNames()) {
      const { kit, said } = await loaded(put('of.yaml', `extends: circuit/${name}\nkit: of-a-circuit\n`));
      expect(said, name).toEqual([]);
      expect(kit?.id).toBe('of-a-circuit');
    }
  });

  it('one misspelt is suggested, and one without its prefix', () => {
    const misspelt = `${first.slice(0, -1)}#`;
    expect(readBaseFile(`circuit/${misspelt}`, 'kit.yaml')).toMatchObject({ nearest: `circuit/${first}` });
    expect(readBaseFile(first, 'kit.yaml')).toMatchObject({ nearest: `circuit/${first}` });
    // No path leads out of the folder they are in.
    expect(readBaseFile('circuit/../wren-hs', 'kit.yaml')).toHaveProperty('reason');
  });
});

describe('scripts', () => {
  it('with the compiler’s types extend a text', async () => {
    const { kit, diagnostics } = await loadKit('tests/describe/fixtures/heron-changes.ts');
    expect(diagnostics).toEqual([]);
    expect(kit).toMatchObject({ id: 'heron-changes', title: 'SS, three-way lever, volume and tone' });
    expect(kit?.parts.map(({ name }) => name)).not.toContain('strings');
    expect(kit?.parts[0]).toMatchObject({ kind: 'humbucker' });
    expect(kit?.joints.at(-2)).toMatchObject({ colour: 'BU', from: { part: 'volume' } });
  });

  const kit = (fields: string): string => `export default { ${fields} };\n`;

  it('extend texts and scripts', async () => {
    put('ts/base.yaml', mixedSetText);
    put('ts/middle.ts', kit("extends: './base.yaml', kit: 'middle', title: 'Middle'"));
    const top = put(
      'ts/top.ts',
      kit("extends: './middle.ts', kit: 'top', parts: { volume: { value: '250k' } }"),
    );
    const { kit: read, said } = await loaded(top);
    expect(said).toEqual([]);
    expect(read).toMatchObject({ id: 'top', title: 'Middle' });
    expect(read?.parts.find(({ name }) => name === 'volume')).toMatchObject({ value: { value: 250e3 } });
  });

  it('are not run for a text, whoever extends it', async () => {
    const mark = join(folder, 'ran');
    put(
      'ts/code.ts',
      `import { writeFileSync } from 'node:fs'; writeFileSync(${JSON.stringify(mark)}, '');\n${kit("kit: 'code'")}`,
    );
    const text = put('ts/text.yaml', 'extends: ./code.ts\nkit: text\n');
    expect((await loaded(text)).said).toEqual(['ts/text.yaml:1 base-unreadable']);
    const top = put('ts/over.ts', kit("extends: './text.yaml', kit: 'over'"));
    expect((await loaded(top)).said).toEqual(['ts/text.yaml:1 base-unreadable']);
    expect(() => readFileSync(mark)).toThrow();
  });

  it('that fail or extend themselves are told at the one that extends them', async () => {
    put('ts/throws.ts', "throw new Error('no luck');\n");
    const { said, words } = await loaded(put('ts/of.ts', kit("extends: './throws.ts', kit: 'of'")));
    expect(said).toEqual(['ts/of.ts:1 base-unreadable']);
    expect(words).toContain('no luck');
    const own = put('ts/own.ts', kit("extends: './own.ts', kit: 'own'"));
    expect((await loaded(own)).said).toEqual(['ts/own.ts:1 extends-itself']);
  });
});

describe('pad --write', () => {
  async function write(file: string, options: PadOptions = {}) {
    const { kit } = await loadKit(file);
    if (!kit) throw new Error(`${file} is not a kit`);
    return writePads(file, choosePads(buildCircuit(kit), options));
  }
  const base = put('pads/base.yaml', mixedSetText);

  it.each([
    ['none.yaml', 'extends: ./base.yaml\nkit: none\n'],
    [
      'own.yaml',
      'extends: ./base.yaml\nkit: own # mine\nparts:\n  volume: { label: Loud }\njoints:\n  - volume.2 > output.tip\n',
    ],
    ['crlf.yaml', 'extends: ./base.yaml\r\nkit: crlf\r\nparts:\r\n  volume: { label: Loud }\r\n'],
    ['flow.yaml', '{ extends: ./base.yaml, kit: flow }\n'],
    ['lines.json', '{\n  "extends": "./base.yaml",\n  "kit": "lines"\n}\n'],
  ])('writes into the kit, never into its base: %s', async (name, text) => {
    const file = put(`pads/${name}`, text);
    const { outcome, lines } = await write(file);
    expect([outcome, lines[0]]).toEqual(['written', `written   ${file}`]);
    expect(textOf(base)).toBe(mixedSetText);
    const { kit, said } = await loaded(file);
    expect(said).toEqual([]);
    expect(kit?.parts.at(-1)).toMatchObject({ kind: 'resistor', value: { value: 470e3 } });
    if (name.startsWith('own')) expect(textOf(file)).toContain('kit: own # mine\n');
    if (name.startsWith('crlf')) expect(textOf(file).replaceAll('\r\n', '')).not.toContain('\n');
    expect((await write(file)).outcome).toBe('unchanged');
  });

  it.each([
    ['over.yaml', '', /pad-bridge: \{ value: 240k \}|bridge-pad: \{ value: 240k \}/],
    ['beside.yaml', 'parts:\n  PAD: { label: Mine }\n', /PAD: \{ label: Mine, value: 240k \}/],
    ['again.yaml', 'parts:\n  PAD: { value: 470k }\n', /PAD: \{ value: 240k \}/],
  ])('a new value of a pad that the base has is a change in the kit: %s', async (name, changes, written) => {
    const padded = put('pads/padded.yaml', mixedSetText);
    await write(padded);
    const before = textOf(padded);
    const pad = (await loaded(padded)).kit?.parts.at(-1)?.name ?? '';
    const text = `extends: ./padded.yaml\nkit: padded\n${changes.replaceAll('PAD', pad)}`;
    const file = put(`pads/${name}`, text);
    expect((await write(file, { match: 'signal', series: 'E24' })).outcome).toBe('written');
    expect(textOf(padded)).toBe(before);
    expect(textOf(file)).toMatch(new RegExp(written.source.replaceAll('PAD', pad)));
    expect((await loaded(file)).kit?.parts.at(-1)).toMatchObject({ name: pad, value: { value: 240e3 } });
  });
});

describe('the commands', () => {
  const run = (...args: string[]) =>
    spawnSync(process.execPath, [resolve('dist/cli.js'), ...args], { cwd: folder, encoding: 'utf8' });
  put('shop/base.yaml', mixedSetText);
  put('shop/mine.yaml', 'extends: ./base.yaml\nkit: mine\nparts:\n  volume: { value: 250k }\n');

  it('check names the base’s file and line, from wherever it is run', () => {
    put('shop/wrong.yaml', 'extends: ./base.yaml\nkit: wrong\nremove: { parts: [volume] }\n');
    const { status, stdout } = run('check', 'shop/wrong.yaml');
    expect(status).toBe(1);
    expect(stdout).toMatch(/^shop\/base\.yaml:\d+:\d+ {2}error/m);
    expect(stdout).toContain('This file is a base of shop/wrong.yaml');
  });

  it('check --explain tells where a part’s values were written, then checks', () => {
    const { status, stdout } = run('check', 'shop/mine.yaml', '--explain', 'volume');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^volume in shop\/mine\.yaml, which extends shop\/base\.yaml\n/);
    expect(stdout).toMatch(/^value +250k +shop\/mine\.yaml:4 +500k \(shop\/base\.yaml:\d+\)$/m);
    expect(stdout).toContain('shop/mine.yaml: no errors');
  });

  it('check --explain refuses a part that is not there, and more than one kit', () => {
    const unknown = run('check', 'shop/mine.yaml', '--explain', 'volum');
    expect(unknown.status).toBe(1);
    expect(unknown.stderr).toContain(
      '--explain  error  unknown-part\n    unknown part “volum”\n\n    Did you mean volume?',
    );
    for (const kits of [['shop'], ['shop/mine.yaml', 'shop/base.yaml'], []]) {
      const { status, stderr } = run('check', ...kits, '--explain', 'volume');
      expect([status, stderr]).toEqual([2, expect.stringContaining('error: ')]);
    }
  });

  it('draw, loads and pad work on a kit that extends another', () => {
    expect(run('draw', 'shop/mine.yaml', '--out', 'drawn', '--effort', '0').status).toBe(0);
    const checked = run('check', 'shop/mine.yaml', '--drawing', 'drawn/mine.svg');
    expect(checked.stdout).toContain(
      'drawn/mine.svg: no findings, joints and values compared with shop/mine.yaml',
    );
    expect(JSON.parse(run('loads', 'shop/mine.yaml', '--json').stdout)).toMatchObject({ kit: 'mine' });
    expect(run('pad', 'shop/mine.yaml').status).toBe(0);
  });
});
