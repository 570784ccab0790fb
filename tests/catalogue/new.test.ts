/** `new`: a workshop that is sound as it is made, kits whose comments become changes, and nothing written over. */
import { existsSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadJob } from '../../src/catalogue/load-job.ts';
import { readCatalogue } from '../../src/catalogue/read-catalogue.ts';
import { addNew } from '../../src/commands/new.ts';
import { circuitNames } from '../../src/files/circuits.ts';
import { loadKit } from '../../src/files/load.ts';
import { run } from '../commands/run.ts';
import { kitText, told, workshop } from './folder.ts';

const make = (...args: readonly string[]) => run(addNew, 'new', ...args);
const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(folder, name)).isFile())
    .sort();
const MADE = [
  'kits/hh.yaml',
  'kits/hs.yaml',
  'kits/hss.yaml',
  'parts.yaml',
  'schemas/catalogue.schema.json',
  'schemas/kit.schema.json',
  'schemas/parts.schema.json',
  'solderleaf.yaml',
];

describe('a workshop', () => {
  it('is sound as it is made: every kit, every member of the family, and every part is in the list', async () => {
    const folder = join(workshop({}), 'mine');
    const { status, stdout, stderr } = await make(folder);
    expect([status, stderr]).toEqual([0, '']);
    expect(filesIn(folder)).toEqual(MADE);
    expect(stdout).toContain(`solderleaf build ${folder}`);
    const { catalogue, diagnostics } = await readCatalogue(folder);
    expect(told(diagnostics, folder)).toEqual([]);
    expect(catalogue?.jobs.map(({ id }) => id)).toEqual([
      'hh',
      'hs',
      'hss',
      // 2 × 3, less one.
      'hss-bright-33n',
      'hss-bright-47n',
      'hss-warm-22n',
      'hss-warm-33n',
      'hss-warm-47n',
    ]);
    for (const job of catalogue?.jobs ?? []) {
      const { kit, diagnostics: found } = await loadJob(job);
      expect(told(found, folder).filter((one) => !/values-assumed/.test(one))).toEqual([]);
      const bare = kit?.parts.filter(
        ({ kind, code }) => code === undefined && !/coil|humbucker|ground/.test(kind),
      );
      expect(bare).toEqual([]);
    }
  });
  it('says who leaflets are from, once the # is removed', async () => {
    const folder = join(workshop({}), 'mine');
    await make(folder);
    const file = join(folder, 'solderleaf.yaml');
    const text = readFileSync(file, 'utf8');
    writeFileSync(file, text.replace(/^#(workshop:| {2}(?:name|address|colour|closing):| {4}\S)/gm, '$1'));
    const { catalogue, diagnostics } = await readCatalogue(folder);
    expect(told(diagnostics, folder)).toEqual([]);
    expect(catalogue?.jobs[0]?.workshop).toEqual({
      name: 'Your workshop',
      address: '1 Your Street\nYour Town',
      colour: '#0b5e80',
      closing: 'Thank you for building it yourself.',
    });
  });

  it('keeps what is there already; once more is refused, so that nothing that was deleted comes back', async () => {
    const folder = workshop({ 'parts.yaml': 'stock: [] # mine\n', 'note.txt': 'mine' });
    const first = await make(folder);
    expect(first.stdout).toContain(`kept      ${join(folder, 'parts.yaml')}`);
    const texts = () => filesIn(folder).map((name) => readFileSync(join(folder, name), 'utf8'));
    const before = texts();
    expect(filesIn(folder)).toEqual([...MADE, 'note.txt'].sort());
    expect(readFileSync(join(folder, 'parts.yaml'), 'utf8')).toBe('stock: [] # mine\n');
    rmSync(join(folder, 'kits/hh.yaml'));
    const left = filesIn(folder);
    const second = await make(folder);
    expect([second.status, second.stdout]).toEqual([1, '']);
    expect(second.stderr).toBe(
      `${folder} is a workshop already; add one kit with solderleaf new ${folder}/kits/NAME.yaml --from circuit/NAME\n`,
    );
    expect(filesIn(folder)).toEqual(left);
    writeFileSync(join(folder, 'kits/hh.yaml'), before[MADE.indexOf('kits/hh.yaml')] ?? '');
    expect(texts()).toEqual(before);
  });

  it.each(['parts.csv', 'parts.yml'])('has no second parts list beside %s', async (name) => {
    const folder = workshop({ [name]: name.endsWith('.csv') ? 'code,kind\n' : 'stock: []\n' });
    const { status, stdout } = await make(folder);
    expect(status).toBe(0);
    expect(stdout).toContain(`kept      ${join(folder, name)}: it is there already`);
    expect(filesIn(folder)).toEqual(MADE.map((one) => (one === 'parts.yaml' ? name : one)).sort());
    const { diagnostics } = await readCatalogue(folder);
    expect(diagnostics).toEqual([]);
  });

  it('is not written through a link that is there', async () => {
    const folder = workshop({ 'elsewhere/x.yaml': 'x' });
    symlinkSync(join(folder, 'elsewhere/none.yaml'), join(folder, 'parts.yaml'));
    expect((await make(folder)).status).toBe(0);
    expect(existsSync(join(folder, 'elsewhere/none.yaml'))).toBe(false);
  });

  it('says where it cannot be written', async () => {
    const folder = workshop({ file: 'a file' });
    const { status, stderr } = await make(join(folder, 'file'));
    expect(status).toBe(1);
    expect(stderr).toContain('there is a file where the folder should be');
  });
});

describe('a kit', () => {
  it.each(circuitNames())(
    'from circuit/%s is the circuit, and so it is with its parts as they are shown',
    async (name) => {
      const folder = workshop({});
      const file = join(folder, 'mine.yaml');
      expect((await make(file, '--from', `circuit/${name}`)).status).toBe(0);
      const text = readFileSync(file, 'utf8');
      const [base, own] = [await loadKit(`samples/circuits/${name}.yaml`), await loadKit(file)];
      expect(told(own.diagnostics, folder)).toEqual([]);
      expect(own.kit).toEqual({ ...base.kit, id: 'mine' });
      // The sign alone is taken away, as its comment says.
      writeFileSync(file, text.replace(/^#(parts:| {2}[a-z0-9-]+: \{)/gm, '$1'));
      const shown = await loadKit(file);
      expect(told(shown.diagnostics, folder)).toEqual([]);
      expect(shown.kit).toEqual(own.kit);
      const joint = text.replace(/^#(joints:| {2}- \{ wire)/gm, '$1');
      expect(joint).not.toBe(text);
      writeFileSync(file, joint);
      const longer = await loadKit(file);
      expect(told(longer.diagnostics, folder)).toEqual([]);
      expect(longer.kit?.joints.filter(({ length }) => length === 0.2)).not.toEqual(
        own.kit?.joints.filter(({ length }) => length === 0.2),
      );
    },
  );

  it('from a file extends that by its path from the new one, and has an id of its file’s name', async () => {
    const folder = workshop({ 'base.yaml': kitText('base') });
    const file = join(folder, 'sub', 'My Kit.yaml');
    expect((await make(file, '--from', join(folder, 'base.yaml'))).status).toBe(0);
    expect(readFileSync(file, 'utf8')).toMatch(/^extends: \.\.\/base\.yaml\nkit: my-kit\n/m);
    expect((await loadKit(file)).kit?.id).toBe('my-kit');
  });

  it('is never written over another', async () => {
    const folder = workshop({ 'a.yaml': 'mine' });
    const { status, stderr } = await make(join(folder, 'a.yaml'), '--from', 'circuit/s-volume');
    expect(status).toBe(1);
    expect(stderr).toContain('it is there already');
    expect(readFileSync(join(folder, 'a.yaml'), 'utf8')).toBe('mine');
  });

  it('is not made of one with errors, which are told', async () => {
    const folder = workshop({ 'base.yaml': kitText('base').replace('22n', '22q') });
    const { status, stderr } = await make(join(folder, 'a.yaml'), '--from', join(folder, 'base.yaml'));
    expect(status).toBe(1);
    expect(stderr).toContain('base.yaml:7:39  error  bad-quantity');
    expect(existsSync(join(folder, 'a.yaml'))).toBe(false);
  });

  it.each([
    [['a.yaml'], 'say with --from'],
    [['a.json', '--from', 'circuit/s-volume'], 'ends in .yaml'],
    [['dir', '--from', 'circuit/s-volume'], 'ends in .yaml'],
    [['a.yaml', '--from', 'circuit/s-volumes'], 'did you mean circuit/s-volume?'],
    [['a.yaml', '--from', 'kit.ts'], 'TypeScript'],
  ])('%j is wrong usage', async (args, words) => {
    const [first = '', ...more] = args;
    const { status, stderr } = await make(join(workshop({}), first), ...more);
    expect(status).toBe(2);
    expect(stderr).toContain(words);
  });
});
