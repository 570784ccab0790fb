/** What each command prints, on which stream, and how it ends; run within the test, without the built program. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { addCheck } from '../../src/commands/check.ts';
import { addDraw } from '../../src/commands/draw.ts';
import { addLoads } from '../../src/commands/loads.ts';
import { addPad } from '../../src/commands/pad.ts';
import { addResponse } from '../../src/commands/response.ts';
import { addSchema } from '../../src/commands/schema.ts';
import { mixedSetText } from '../describe/fixtures/mixed-set.ts';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-commands-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const put = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};

const TEXT = `kit: robin
title: S, one volume
parts:
  neck: { kind: single-coil, resistance: 5.7k, inductance: 2.4 }
  volume: { kind: pot, value: 250k, taper: log }
  output: { kind: jack }
joints:
  - bend: volume.1 > volume.case
  - neck.ground > volume.case
  - output.sleeve > volume.case
  - neck.hot > volume.3
  - volume.2 > output.tip
`;
const good = put('robin.yaml', TEXT);
const bad = put('bad.yaml', TEXT.replace('neck.hot', 'nekc.hot').replace('kind: jack', 'kind: jcak'));
const noted = put('noted.yaml', mixedSetText);
const warned = put(
  'warned.yaml',
  TEXT.replace('  - neck.ground > volume.case\n', '  - neck.ground > output.sleeve\n')
    .replace('  - output.sleeve > volume.case\n', '')
    .replace('  - bend: volume.1 > volume.case\n', '  - volume.1 > output.sleeve\n'),
);

describe('check', () => {
  it('counts errors, warnings and notes, one and several, and ends with 1 for errors alone', async () => {
    expect(await run(addCheck, 'check', good)).toEqual({
      stdout: expect.stringMatching(
        /^[^\n]*note {2}values-assumed[\s\S]*robin\.yaml: no errors, no warnings, 1 note\n$/,
      ),
      stderr: '',
      status: 0,
    });
    const wrong = await run(addCheck, 'check', bad);
    expect(wrong.status).toBe(1);
    expect(wrong.stdout).toMatch(/bad\.yaml: 2 errors, no warnings, no notes\n$/);
    expect(wrong.stdout).toContain('Did you mean jack?');
    expect(wrong.stdout).toContain('Did you mean neck?');
    const note = await run(addCheck, 'check', noted);
    expect(note.status).toBe(0);
    expect(note.stdout).toMatch(
      /note {2}load-off-reference[\s\S]*noted\.yaml: no errors, no warnings, 2 notes\n$/,
    );
    const warning = await run(addCheck, 'check', warned);
    expect(warning.status).toBe(0);
    expect(warning.stdout).toMatch(
      /warning {2}case-not-grounded[\s\S]*warned\.yaml: no errors, 1 warning, 1 note\n$/,
    );
  });
  it('takes the name of a circuit that ships, and suggests the nearest to one that does not', async () => {
    const known = await run(addCheck, 'check', 'circuit/h-1v1t');
    expect(known.status).toBe(0);
    expect(known.stdout).toMatch(/h-1v1t\.yaml: no errors/);
    const near = await run(addCheck, 'check', 'circuit/h-1v2t');
    expect(near.status).toBe(2);
    expect(await run(addCheck, 'check', 'circuit/h-1v1t', '--explain', 'volume')).toMatchObject({
      status: 0,
    });
  });
  it('is not alone in that: loads, response, pad and draw take one too, and pad writes into none', async () => {
    for (const [add, name] of [
      [addLoads, 'loads'],
      [addResponse, 'response'],
      [addPad, 'pad'],
    ] as const)
      expect(await run(add, name, 'circuit/h-1v1t')).toMatchObject({ status: 0, stderr: '' });
    const out = join(folder, 'of-a-circuit');
    const drawn = await run(addDraw, 'draw', 'circuit/s-volume', '--effort', '0', '--out', out);
    expect(drawn).toMatchObject({ status: 0, stdout: expect.stringContaining('s-volume.svg') });
    const written = await run(addPad, 'pad', 'circuit/hs-lever-3-1v1t-pad', '--write');
    expect(written).toMatchObject({ status: 2, stderr: expect.stringContaining('circuit that ships') });
  });
  it('notes a title that is the base’s, and none that is written', async () => {
    const own = put('title-own.yaml', 'extends: circuit/h-1v1t\nkit: own\ntitle: H, for a top cavity\n');
    expect((await run(addCheck, 'check', own)).stdout).not.toContain('title-inherited');
    const bare = put('title-bare.yaml', 'extends: circuit/h-1v1t\nkit: bare\n');
    expect((await run(addCheck, 'check', bare)).stdout).toMatch(
      /title-bare\.yaml:1:10 {2}note {2}title-inherited\n.*“H, volume and tone”, as that of “circuit\/h-1v1t”/,
    );
  });
  it('does not ask to correct a circuit that ships: it is changed in the kit', async () => {
    const own = put(
      'shorting.yaml',
      [
        'extends: circuit/hh-toggle-3-1v1t',
        'kit: shorting',
        'title: HH, a switch of our own',
        'parts:',
        "  toggle: { kind: switch, lugs: { left: ['1', common, '2', frame] }, positions: [[[common, '1', frame]], [[common, '2']]] }",
      ].join('\n'),
    );
    const { stdout, status } = await run(addCheck, 'check', own);
    expect(status).toBe(1);
    expect(stdout).toMatch(/hh-toggle-3-1v1t\.yaml:\d+:\d+ {2}error {2}output-shorted/);
    expect(stdout).toContain('“toggle.frame > volume.case” connects the signal to ground');
    expect(stdout).toMatch(
      /Your kit .*shorting\.yaml extends this circuit: change or remove it in your kit, not here\./,
    );
    expect(stdout).not.toContain('correct it here');
  });
  it.each([
    ['note', ''],
    ['warning', 'remove: { joints: [tone-1.case > tone-2.case] }\n'],
  ])('names the kit that a %s in a circuit that ships is of', async (severity, change) => {
    const own = put(
      `${severity}-elsewhere.yaml`,
      `extends: circuit/hss-lever-5-1v2t-pads\nkit: own\ntitle: HSS of our own\n${change}`,
    );
    const { stdout } = await run(addCheck, 'check', own);
    const elsewhere = stdout.split(/\n(?=\S)/).filter((one) => /^\S*hss-lever-5-1v2t-pads\.yaml:/.test(one));
    expect(elsewhere.filter((one) => one.includes(`  ${severity}  `))).not.toEqual([]);
    for (const one of elsewhere)
      expect(one).toMatch(
        /Your kit \S*elsewhere\.yaml extends this circuit: change or remove it in your kit, not here\./,
      );
  });
  it('finds a page and an arrangement that are not there, and passes those that are', async () => {
    const page = put('page.yaml', TEXT.replace('title', 'page: a44\ntitle'));
    expect((await run(addCheck, 'check', page)).stdout).toMatch(/unknown-page[\s\S]*1 error,/);
    const known = put('known.yaml', TEXT.replace('title', 'page: A4\narrangement: plate-row\ntitle'));
    expect((await run(addCheck, 'check', known)).stdout).toContain('no errors');
    const own = put('row.yaml', TEXT.replace('title', 'arrangement: plate-rwo\ntitle'));
    expect((await run(addCheck, 'check', own)).stdout).toMatch(
      /unknown-arrangement[\s\S]*Did you mean plate-row\?/,
    );
  });
  it('several kits each have their line; with none, and no drawing, the usage is wrong', async () => {
    const { stdout, status } = await run(addCheck, 'check', good, bad);
    expect(status).toBe(1);
    expect(stdout.match(/: (?:no|2) errors/g)).toEqual([': no errors', ': 2 errors']);
    expect(await run(addCheck, 'check')).toMatchObject({ status: 2, stdout: '' });
  });
  describe('of drawings', () => {
    const svg = readFileSync('out/heron-ss.svg', 'utf8');
    it('a good one ends with 0, compared or not; a changed one is told line by line, and ends with 1', async () => {
      const drawing = put('heron-ss.svg', svg);
      for (const args of [['--drawing', drawing], [drawing]])
        expect(await run(addCheck, 'check', ...args)).toEqual({
          stdout: `${drawing}: no findings, not compared with a kit\n`,
          stderr: '',
          status: 0,
        });
      const changed = put('changed.svg', svg.replace(/(<text x=")\d+("[^>]*>Volume<)/, '$1750$2'));
      const { stdout, status } = await run(addCheck, 'check', changed);
      expect(status).toBe(1);
      const lines = stdout.trimEnd().split('\n');
      expect(lines.at(-1)).toMatch(/: \d+ findings?, not compared with a kit$/);
      expect(lines.at(-1)).toContain(` ${lines.length - 1} finding`);
    });
    it('each is compared with the kit whose id it has, wherever in the line it is named', async () => {
      const drawing = put('heron-ss.svg', svg);
      const kit = 'samples/heron-ss.yaml';
      for (const args of [
        [kit, drawing],
        ['--drawing', drawing, kit],
        [kit, good, '--drawing', drawing],
      ]) {
        const { stdout, status } = await run(addCheck, 'check', ...args);
        expect(status, args.join(' ')).toBe(0);
        expect(stdout).toContain(`${drawing}: no findings, joints and values compared with ${kit}`);
      }
      const other = await run(addCheck, 'check', good, drawing);
      expect(other.status).toBe(1);
      expect(other.stdout).toMatch(/other-kit[\s\S]*1 finding, not compared with a kit\n$/);
    });
    it('what cannot be read as one is said and ends with 1', async () => {
      const none = join(folder, 'none.svg');
      expect(await run(addCheck, 'check', none)).toEqual({
        stdout: `${none}: file not found\n`,
        stderr: '',
        status: 1,
      });
      writeFileSync(join(folder, 'noise.svg'), new Uint8Array([0xff, 0xfe, 0]));
      expect((await run(addCheck, 'check', join(folder, 'noise.svg'))).stdout).toContain(
        'not an SVG drawing: it is not text in UTF-8',
      );
      // A kit's name behind --drawing that is no file is taken for a drawing.
      const lost = await run(addCheck, 'check', '--drawing', join(folder, 'lost.yaml'));
      expect(lost).toMatchObject({ status: 1, stdout: `${join(folder, 'lost.yaml')}: file not found\n` });
      // A folder behind it holds kits.
      const kits = join(folder, 'kits');
      mkdirSync(kits, { recursive: true });
      writeFileSync(join(kits, 'robin.yaml'), TEXT);
      expect((await run(addCheck, 'check', '--drawing', put('heron-ss.svg', svg), kits)).stdout).toContain(
        'robin.yaml: no errors',
      );
    });
  });
});

describe('files named and found', () => {
  it('says what it passes over, and fails where nothing is left', async () => {
    const mixed = join(folder, 'mixed');
    mkdirSync(mixed, { recursive: true });
    writeFileSync(join(mixed, 'notes.yaml'), 'shopping: list\n');
    writeFileSync(join(mixed, 'kit.ts'), 'export default defineKit({});\n');
    const empty = await run(addCheck, 'check', mixed);
    expect(empty.stdout).toBe(
      `not a kit ${join(mixed, 'notes.yaml')}\nnot run   ${join(mixed, 'kit.ts')}: a TypeScript kit is code; name it to have it run\n`,
    );
    expect(empty.stderr).toContain(`no kit found in ${mixed}: a kit is a .yaml, .json or .ts file`);
    expect(empty.status).toBe(1);
    writeFileSync(join(mixed, 'robin.yaml'), TEXT);
    const found = await run(addCheck, 'check', mixed);
    expect([found.status, found.stderr]).toEqual([0, '']);
    expect(found.stdout).toContain('robin.yaml: no errors');
  });
  it('one kit is wanted: not a folder, not one with errors, not one that is not there', async () => {
    for (const add of [addLoads, addPad, addResponse]) {
      expect(
        (await run(add, ...[add === addLoads ? 'loads' : add === addPad ? 'pad' : 'response', folder]))
          .status,
      ).toBe(2);
      const name = add === addLoads ? 'loads' : add === addPad ? 'pad' : 'response';
      const wrong = await run(add, name, bad);
      expect([wrong.status, wrong.stdout]).toEqual([1, '']);
      expect(wrong.stderr).toContain('Did you mean jack?');
      expect(await run(add, name, join(folder, 'none.yaml'))).toMatchObject({ status: 1, stdout: '' });
    }
  });
});

describe('loads', () => {
  it('prints its tables, or data; limits only when they are asked for', async () => {
    const { stdout, stderr, status } = await run(addLoads, 'loads', good);
    expect([stderr, status]).toEqual(['', 0]);
    expect(stdout).toMatch(/^S, one volume\n\nLoads at DC and at 1000 Hz, all controls on 10/);
    expect(stdout).toContain('Response with 300 pF of cable and 1 MΩ, all controls on 10');
    expect(stdout).toContain('Multimeter readings');
    expect(stdout).not.toMatch(/Pickups selected together|samples/);
    const data = JSON.parse((await run(addLoads, 'loads', good, '--json')).stdout) as Record<string, unknown>;
    expect(data).toMatchObject({ kit: 'robin' });
    expect(data).not.toHaveProperty('limits');
    const wide = await run(addLoads, 'loads', good, '--tolerance', '--samples', '20', '--seed', '3');
    expect(wide.stdout).toMatch(/20 samples/);
    expect((await run(addLoads, 'loads', good, '--tolerance', '--samples', '20', '--seed', '3')).stdout).toBe(
      wide.stdout,
    );
    expect(
      (await run(addLoads, 'loads', good, '--tolerance', '--samples', '20', '--seed', '4')).stdout,
    ).not.toBe(wide.stdout);
  });
  it('tells of pickups selected together where there are such', async () =>
    expect((await run(addLoads, 'loads', 'samples/heron-ss.yaml')).stdout).toContain(
      'Pickups selected together',
    ));
  it.each([
    [['--seed', '1'], '--seed needs --tolerance'],
    [['--samples', '1'], '--samples needs --tolerance'],
    [['--tolerance', '--samples', '0'], 'a whole number from 1 to'],
    [['--tolerance', '--seed', '4294967296'], 'a whole number from 0 to 4294967295'],
    [['--tolerance', '--seed', '1e3'], 'a whole number from 0'],
    [['--tolerance', '--seed', ''], 'a whole number from 0'],
  ])('%j is wrong usage', async (args, words) => {
    const { stdout, stderr, status } = await run(addLoads, 'loads', good, ...args);
    expect([stdout, status]).toEqual(['', 2]);
    expect(stderr).toContain(words);
  });
  it('the least and the most that is allowed are', async () => {
    for (const seed of ['0', '4294967295'])
      expect(
        (await run(addLoads, 'loads', good, '--tolerance', '--samples', '1', '--seed', seed)).status,
      ).toBe(0);
  });
});

describe('response', () => {
  const rows = (text: string): readonly string[] => text.trimEnd().split('\n');
  it('prints a table at the setting asked for, or one with every setting, or values', async () => {
    const plain = await run(addResponse, 'response', good);
    expect([plain.stderr, plain.status]).toEqual(['', 0]);
    const down = await run(addResponse, 'response', good, '--volume', '5');
    expect(down.stdout).not.toBe(plain.stdout);
    expect((await run(addResponse, 'response', good, '--volume', '10', '--tone', '10')).stdout).toBe(
      plain.stdout,
    );
    expect((await run(addResponse, 'response', good, '--volume', '0')).status).toBe(0);
    const steps = await run(addResponse, 'response', good, '--steps');
    expect(rows(steps.stdout).length).toBeGreaterThan(rows(plain.stdout).length);
    const csv = await run(addResponse, 'response', good, '--csv');
    expect(rows(csv.stdout)[0]).toMatch(/^frequency in Hz,/);
    expect(csv.stdout).toMatch(/[^\n]\n$/);
    expect((await run(addResponse, 'response', good, '--csv', '--volume', '5')).stdout).not.toBe(csv.stdout);
  });
  it('writes a table or a plot to a file, and says whether that changed', async () => {
    for (const name of ['robin.csv', 'ROBIN.SVG', 'robin.png']) {
      const out = join(folder, name);
      expect(await run(addResponse, 'response', good, '--out', out), name).toEqual({
        stdout: `written   ${out}\n`,
        stderr: '',
        status: 0,
      });
      expect((await run(addResponse, 'response', good, '--out', out)).stdout, name).toBe(
        `unchanged ${out}\n`,
      );
    }
    expect(readFileSync(join(folder, 'robin.csv'), 'utf8')).toMatch(/^frequency in Hz,/);
    expect(readFileSync(join(folder, 'ROBIN.SVG'), 'utf8')).toMatch(/^<svg /);
    expect(readFileSync(join(folder, 'robin.png')).subarray(1, 4).toString()).toBe('PNG');
  });
  it.each([
    ['mine.csv', 'my notes\n', 'a table'],
    ['mine.svg', '<svg></svg>', 'a plot'],
    ['mine.png', 'my notes\n', 'a plot'],
  ])('leaves %s alone when it is somebody’s', async (name, text, what) => {
    const out = put(name, text);
    const { stdout, stderr, status } = await run(addResponse, 'response', good, '--out', out);
    expect([stdout, status]).toEqual(['', 1]);
    expect(stderr).toContain(`not written ${out}: it already exists and is not ${what} of this kit`);
    expect(readFileSync(out, 'utf8')).toBe(text);
  });
  it.each([
    [['--out', 'a.bmp'], 'it must end in one of: .svg, .png, .csv'],
    [['--out', 'a.csv/b'], 'it must end in one of'],
    [['--csv', '--out', 'a.svg'], '--csv writes values, so --out must end in .csv; found “a.svg”'],
    [['--steps', '--csv'], '--steps prints a table only'],
    [['--steps', '--out', 'a.csv'], '--steps prints a table only'],
    [['--steps', '--volume', '3'], '--steps uses every setting in turn'],
    [['--steps', '--tone', '3'], '--steps uses every setting in turn'],
    [['--volume', '10.1'], 'is not a control setting; allowed: 0 to 10'],
    [['--tone=-0.1'], 'is not a control setting; allowed: 0 to 10'],
    [['--tone', ' '], 'is not a control setting; allowed: 0 to 10'],
  ])('%j is wrong usage', async (args, words) => {
    const { stdout, stderr, status } = await run(addResponse, 'response', good, ...args);
    expect([stdout, status]).toEqual(['', 2]);
    expect(stderr).toContain(words);
  });
});

describe('pad', () => {
  const mixed = put('mixed.yaml', mixedSetText);
  it('advises for the load asked for, DC first, from the values asked for', async () => {
    const plain = await run(addPad, 'pad', mixed);
    expect([plain.stderr, plain.status]).toEqual(['', 0]);
    expect((await run(addPad, 'pad', mixed, '--match', 'dc', '--series', 'E12')).stdout).toBe(plain.stdout);
    const signal = await run(addPad, 'pad', mixed, '--match', 'signal');
    expect(signal.stdout).not.toBe(plain.stdout);
    const all = await run(addPad, 'pad', mixed, '--all');
    expect(all.stdout.length).toBeGreaterThan(plain.stdout.length);
    const data = async (...args: readonly string[]) =>
      JSON.parse((await run(addPad, 'pad', mixed, '--json', ...args)).stdout) as Record<string, unknown>;
    expect(await data()).toMatchObject({ match: 'dc', choice: 'E12' });
    expect(await data('--match', 'signal', '--series', 'E96')).toMatchObject({
      match: 'signal',
      choice: 'E96',
    });
    expect(await data('--stock', '330k,470k')).toMatchObject({ choice: { stock: [330e3, 470e3] } });
    expect(await data('--stock', '330k', '--series', 'stock')).toMatchObject({ choice: { stock: [330e3] } });
    expect(await data()).not.toHaveProperty('write');
  });
  it('writes only when it is told to, says what, and is then done', async () => {
    const file = put('write.yaml', mixedSetText);
    await run(addPad, 'pad', file);
    expect(readFileSync(file, 'utf8')).toBe(mixedSetText);
    const first = await run(addPad, 'pad', file, '--write');
    expect([first.stderr, first.status]).toEqual(['', 0]);
    expect(first.stdout).toContain(`\n\nwritten   ${file}\n    in parts:`);
    const once = readFileSync(file, 'utf8');
    expect(once).not.toBe(mixedSetText);
    const second = await run(addPad, 'pad', file, '--write');
    expect(second.stdout).toContain(`unchanged ${file}: there is nothing to change`);
    const data = await run(addPad, 'pad', file, '--write', '--json');
    expect(JSON.parse(data.stdout)).toMatchObject({ write: 'unchanged' });
    expect(readFileSync(file, 'utf8')).toBe(once);
  });
  it('what it will not write is complained of, also beside data, and ends with 1', async () => {
    const two = mixedSetText
      .replace(
        '# Pads will',
        'one: { kind: resistor, value: 2M }\n  two: { kind: resistor, value: 2M }\n  # Pads will',
      )
      .replace(
        '# End of',
        `${['one.1 > selector.A1', 'one.2 > volume.case', 'two.1 > selector.A2', 'two.2 > volume.case'].map((ends) => `  - leg: ${ends}\n`).join('')}# End of`,
      );
    const file = put('two.yaml', two);
    for (const args of [[], ['--json']]) {
      const { stdout, stderr, status } = await run(addPad, 'pad', file, '--write', ...args);
      expect(status).toBe(1);
      expect(stderr).toBe(
        `not written ${file}: bridge has one and two: remove all but one pad of each pickup, then run this again\n`,
      );
      expect(stdout).not.toContain('not written');
      if (args.length > 0) expect(JSON.parse(stdout)).toMatchObject({ write: 'refused' });
    }
    expect(readFileSync(file, 'utf8')).toBe(two);
  });
  it.each([
    [['--series', 'E12', '--stock', '1k'], '--series E12 and --stock contradict each other'],
    [['--series', 'stock'], '--series stock needs values'],
    [['--stock', '1k,'], 'a value is missing between two commas'],
    [['--stock', '1k,many'], '“many” is not a resistance'],
    [['--stock', '1k,0.01'], '“0.01” is out of range for a resistor'],
    [['--stock', ''], 'the stock is empty'],
  ])('%j is wrong usage', async (args, words) => {
    const { stdout, stderr, status } = await run(addPad, 'pad', mixed, ...args);
    expect([stdout, status]).toEqual(['', 2]);
    expect(stderr).toContain(words);
  });
});

describe('draw', () => {
  const out = join(folder, 'drawn');
  const draw = (...args: readonly string[]) =>
    run(addDraw, 'draw', good, '--out', out, '--effort', '0', ...args);
  it('writes what it is asked for, and --check only compares', async () => {
    expect(await draw('--check')).toEqual({
      stdout: `missing   ${join(out, 'robin.svg')}\n`,
      stderr: '',
      status: 1,
    });
    expect(await draw()).toEqual({ stdout: `written   ${join(out, 'robin.svg')}\n`, stderr: '', status: 0 });
    expect(await draw('--check')).toEqual({
      stdout: `unchanged ${join(out, 'robin.svg')}\n`,
      stderr: '',
      status: 0,
    });
    const both = await draw('--format', 'png, svg ,png'.replaceAll(' ', ''));
    expect(both.stdout).toBe(`written   ${join(out, 'robin.png')}\nunchanged ${join(out, 'robin.svg')}\n`);
    writeFileSync(
      join(out, 'robin.svg'),
      readFileSync(join(out, 'robin.svg'), 'utf8').replace('Volume', 'Older'),
    );
    expect(await draw('--check')).toEqual({
      stdout: `differs   ${join(out, 'robin.svg')}\n`,
      stderr: '',
      status: 1,
    });
  });
  it('says of each kit what is wrong with it, and goes on with the next', async () => {
    const { stdout, stderr, status } = await run(
      addDraw,
      'draw',
      bad,
      good,
      '--out',
      out,
      '--effort',
      '0',
      '--theme',
      'dark',
    );
    expect(status).toBe(1);
    expect(stderr).toContain('Did you mean jack?');
    expect(stdout).toContain('robin-dark.svg');
  });
  it.each([
    [['--format', 'svg,bmp'], '“bmp” is not a format; allowed: svg, png'],
    [['--format', 'svg,'], 'has an extra comma'],
    [['--effort', '-1'], 'is not a number of steps'],
    [['--effort', '1.5'], 'is not a number of steps'],
    [['--dpi', '35'], 'is not a resolution in dots per inch; allowed: 36 to 1200'],
    [['--dpi', '1201'], 'is not a resolution'],
    [['--dpi', '3e2'], 'is not a resolution'],
    [['--lines', 'rainbow'], 'insulation, signal'],
    [['--effort', '100001'], 'allowed: 0 to 100000'],
    [['--view', 'top'], 'Allowed choices are solder-side, component-side'],
    [['--position', 'all', '--step', 'all'], 'cannot be used with'],
  ])('%j is wrong usage', async (args, words) => {
    const { stdout, stderr, status } = await run(addDraw, 'draw', good, '--out', out, ...args);
    expect([stdout, status]).toEqual(['', 2]);
    expect(stderr).toContain(words);
  });
  it('an option that names what is not there is to blame, not the kit', async () => {
    const { stdout, stderr, status } = await draw('--arrangement', 'plate-rwo', '--page', 'a44');
    expect([stdout, status]).toEqual(['', 1]);
    expect(stderr).toMatch(
      /^--arrangement {2}error {2}unknown-arrangement\n {4}\S.*\n\n {4}Did you mean plate-row\?/,
    );
    expect(stderr).toMatch(/\n--page {2}error {2}unknown-page/);
    expect(stderr).not.toContain('robin.yaml');
  });
});

it('schema prints a JSON Schema', async () => {
  const { stdout, status } = await run(addSchema, 'schema');
  expect(status).toBe(0);
  expect(JSON.parse(stdout)).toHaveProperty('$schema');
});
