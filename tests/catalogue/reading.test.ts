/** `solderleaf.yaml`: which kits it means, what is made of them, and each mistake at its place. */

import { readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatCatalogueJsonSchema } from '../../src/catalogue/json-schema.ts';
import { loadJob } from '../../src/catalogue/load-job.ts';
import { readCatalogue } from '../../src/catalogue/read-catalogue.ts';
import { addCheck } from '../../src/commands/check.ts';
import { run } from '../commands/run.ts';
import { kitText, listed, loaded, told, workshop } from './folder.ts';

const KITS = {
  'a.yaml': kitText('a'),
  'sub/b.yaml': kitText('b'),
  'sub/deep/c.yaml': kitText('c'),
  'sub/deep/notes.txt': 'no kit',
  'sub/other.yaml': 'colour: red\n',
};
const catalogue = (text: string) => listed({ ...KITS, 'solderleaf.yaml': text });

describe('which kits', () => {
  it.each([
    ['kits: [a.yaml]', ['a']],
    ['kits: [sub]', ['b']],
    ['kits: [sub/]', ['b']],
    ['kits: [.]', ['a']],
    ['kits: ["*.yaml"]', ['a']],
    ['kits: ["**/*.yaml"]', ['a', 'b', 'c']],
    ['kits: ["sub/**"]', ['b', 'c']],
    ['kits: ["su?/*.yaml", a.yaml]', ['b', 'a']],
    // Twice the same file is one kit.
    ['kits: [a.yaml, "*.yaml", ./a.yaml]', ['a']],
    ['kits: []', []],
  ])('%s', async (text, ids) => {
    expect(await catalogue(text)).toMatchObject({ ids, said: [] });
  });

  it('a link to a folder is one where it is named, and is not followed by a pattern: it may lead round in a circle', async () => {
    const folder = workshop({ ...KITS, 'solderleaf.yaml': 'kits: [again]\n' });
    symlinkSync(join(folder, 'sub'), join(folder, 'again'));
    symlinkSync(folder, join(folder, 'sub', 'round'));
    const ids = async () => (await readCatalogue(folder)).catalogue?.jobs.map(({ id }) => id);
    expect(await ids()).toEqual(['b']);
    writeFileSync(join(folder, 'solderleaf.yaml'), 'kits: ["**/*.yaml"]\n');
    expect(await ids()).toEqual(['a', 'b', 'c']);
  });

  it('none of those in the folder of outputs, hidden ones, or the catalogue and its list', async () => {
    const { ids } = await listed({
      ...KITS,
      'out/d.yaml': kitText('d'),
      '.hidden/e.yaml': kitText('e'),
      'parts.yaml': 'stock: []\n',
      'solderleaf.yaml': 'kits: ["**/*.yaml"]\n',
    });
    expect(ids).toEqual(['a', 'b', 'c']);
  });

  it('an id is that of the kit, however it is written; without one the file’s name, as often as need be', async () => {
    const { ids } = await listed({
      'x.json': '{ "kit": "from-json", "parts": {}, "joints": [] }',
      'quoted.yaml': '"kit" : "in-quotes"\nparts: {}\n',
      'No Id.yaml': 'parts: {}\n',
      'sub/no-id.yaml': 'kit: [',
      'solderleaf.yaml': 'kits: [x.json, quoted.yaml, No Id.yaml, sub/no-id.yaml, gone.yaml]\n',
    });
    expect(ids).toEqual(['from-json', 'in-quotes', 'no-id', 'no-id-2', 'gone']);
  });

  it('what is wrong with one kit is told where it is loaded, and the others are there', async () => {
    const all = await loaded({ ...KITS, 'solderleaf.yaml': 'kits: [gone.yaml, a.yaml]\n' });
    expect(all.get('gone')).toEqual({
      kit: undefined,
      said: [expect.stringMatching(/^gone\.yaml:1:1 file-unreadable: .*file not found/)],
    });
    expect(all.get('a')?.kit?.title).toBe('S, volume and tone');
  });
});

describe('what is made of them', () => {
  it('is what the catalogue says, and in its place what an entry says, a later one over an earlier one', async () => {
    const { catalogue: read, folder } = await catalogue(`
page: A5
outputs: [drawing, loads]
currency: EUR
out: made
kits:
  - a.yaml
  - { files: sub, page: letter, arrangement: plate-row }
  - { files: "**/b.yaml", outputs: [png] }
`);
    expect(read).toMatchObject({
      out: `${folder}/made`,
      currency: 'EUR',
      folder,
      file: `${folder}/solderleaf.yaml`,
    });
    expect(read?.jobs).toEqual([
      { id: 'a', file: `${folder}/a.yaml`, outputs: ['drawing', 'loads'], page: 'a5' },
      { id: 'b', file: `${folder}/sub/b.yaml`, outputs: ['png'], page: 'letter', arrangement: 'plate-row' },
    ]);
  });

  it('is a drawing where nobody says, in out', async () => {
    const { catalogue: read, folder } = await catalogue('kits: [a.yaml]');
    expect(read?.out).toBe(`${folder}/out`);
    expect(read?.jobs).toEqual([{ id: 'a', file: `${folder}/a.yaml`, outputs: ['drawing'] }]);
  });

  it('an arrangement of one’s own is found from the workshop’s folder', async () => {
    const own = readFileSync('layouts/plate-row.yaml', 'utf8');
    const {
      catalogue: read,
      folder,
      said,
    } = await listed({
      ...KITS,
      'own.yaml': own,
      'solderleaf.yaml': 'kits: [{ files: a.yaml, arrangement: own.yaml }]\n',
    });
    expect(said).toEqual([]);
    expect(read?.jobs[0]?.arrangement).toBe(`${folder}/own.yaml`);
  });
});

describe('each mistake has its place', () => {
  it.each([
    ['', /^solderleaf\.yaml:1:1 file-empty/],
    ['- a.yaml', /:1:1 wrong-type: expected a catalogue, found a list/],
    ['kits: [a.yaml]\nkist: []', /:2:1 unknown-key: .*“kist” .*Did you mean kits/],
    ['outputs: [drawing, loud]', /:1:20 bad-choice: “loud”/],
    ['outputs: []', /:1:10 bad-value: .*empty/],
    ['outputs: drawing', /:1:10 wrong-type: expected a list/],
    ['page: a44', /:1:7 unknown-page: .*“a44” .*Did you mean a4/],
    ['arrangement: plate', /:1:14 unknown-arrangement: “?.*plate/],
    ['arrangement: none.yaml', /:1:14 bad-arrangement: /],
    ['currency: euro', /:1:11 /],
    ['date: 30.11.2026', /:1:7 bad-value: “30\.11\.2026”: not a date \/ .*such as 2026-11-30\.$/],
    ['date: 2026-02-30', /:1:7 bad-value: .*not a date/],
    ['kits: [{ files: a.yaml, date: 1/2/2026 }]', /:1:31 bad-value: .*such as 2026-11-30\.$/],
    ['parts: none.csv', /:1:8 file-unreadable: .*file not found/],
    ['out: .', /:1:6 out-is-workshop/],
    ['out: sub/..', /:1:6 out-is-workshop/],
    ['out: ..', /:1:6 out-is-workshop/],
    ['kits: a.yaml', /:1:7 wrong-type: expected a list/],
    ['kits: [a.yaml, 3]', /:1:16 wrong-type: expected a file, a folder or a pattern, found a number/],
    ['kits: [{ file: a.yaml }]', /:1:10 unknown-key: .*“file” .*Did you mean files/],
    ['kits: [{ page: a4 }]', /:1:8 missing-key: item 1 of “kits” has no “files”/],
    ['kits: [{ files: a.yaml, page: a44 }]', /:1:31 unknown-page/],
    ['kits: [{ files: a.yaml, outputs: [pgn] }]', /:1:35 bad-choice: “pgn” .*Did you mean png/],
    ['kits: [../a.yaml]', /:1:8 outside-workshop: “\.\.\/a\.yaml”/],
    ['kits: [{ files: /etc/*.yaml }]', /:1:17 outside-workshop/],
    ['families: {}', /:1:11 wrong-type: expected a list/],
    ['kits: [', /:1:8 bad-syntax|:1:7 bad-syntax/],
  ])('%s', async (text, message) => {
    const { said, catalogue: read } = await catalogue(text);
    expect(said).toEqual([expect.stringMatching(message)]);
    expect(read).toBeUndefined();
  });

  it('all at once', async () => {
    const { said } = await catalogue('page: a44\nkits: [3, ../x]\nfoo: 1\nfamilies: [{}]');
    expect(said.map((one) => one.split(' ')[1])).toEqual([
      'unknown-page:',
      'wrong-type:',
      'outside-workshop:',
      'unknown-key:',
      'missing-key:',
      'missing-key:',
      'missing-key:',
    ]);
  });

  it('files of one id: each is named at its own, and the other kits are there', async () => {
    const files = {
      'a.yaml': kitText('same'),
      'b.yaml': `# another\n${kitText('same')}`,
      'c.yaml': kitText('other'),
      'd.json': '{ "kit": "same" }',
      'solderleaf.yaml': 'kits: ["*"]\n',
    };
    expect(await listed(files)).toMatchObject({ said: [], ids: ['same', 'other'] });
    const all = await loaded(files);
    expect(all.get('other')?.kit).toBeDefined();
    expect(all.get('same')?.kit).toBeUndefined();
    expect(all.get('same')?.said).toEqual([
      expect.stringMatching(/^a\.yaml:1:6 id-taken: the id “same” is also that of b\.yaml and d\.json \//),
      expect.stringMatching(/^b\.yaml:2:6 id-taken: the id “same” is also that of a\.yaml and d\.json \//),
      expect.stringMatching(/^d\.json:1:10 id-taken: the id “same” is also that of a\.yaml and b\.yaml \//),
    ]);
  });

  it('what finds nothing and what is not run is told, and stops nothing', async () => {
    const { said, ids } = await listed({
      ...KITS,
      'code.ts': 'export default defineKit({});\n',
      'solderleaf.yaml': 'kits: [a.yaml, "no*.yaml", "*.ts"]\n',
    });
    expect(ids).toEqual(['a']);
    expect(said).toEqual([
      expect.stringMatching(/:1:16 no-kit-found: .*“no\*\.yaml”/),
      expect.stringMatching(/:1:28 scripts-not-run: .*code\.ts/),
    ]);
  });

  it('a folder without a catalogue, a file that is none', async () => {
    const folder = workshop(KITS);
    const one = await readCatalogue(folder);
    expect(told(one.diagnostics, folder)).toEqual([
      expect.stringMatching(/^solderleaf\.yaml:1:1 no-catalogue: .*solderleaf new/),
    ]);
    const other = await readCatalogue(`${folder}/none.yaml`);
    expect(told(other.diagnostics, folder)).toEqual([
      expect.stringMatching(/^none\.yaml:1:1 file-unreadable/),
    ]);
  });
});

it('the made-up workshop of the samples: every kit is sound, and its list is read', async () => {
  const { catalogue: read, diagnostics } = await readCatalogue('samples/workshop');
  expect(diagnostics).toEqual([]);
  expect(read?.parts).toBe('samples/workshop/parts.yaml');
  expect(read?.jobs.map(({ id }) => id)).toEqual([
    'hs-dark',
    'hh-plain',
    'hh-split',
    // 2 × 2 × 2, less one.
    'hss-bright-250k-47n',
    'hss-bright-500k-22n',
    'hss-bright-500k-47n',
    'hss-warm-250k-22n',
    'hss-warm-250k-47n',
    'hss-warm-500k-22n',
    'hss-warm-500k-47n',
  ]);
  const workshop = { name: 'Bramble & Finch Workshop' };
  expect(read?.jobs[0]).toMatchObject({ page: 'a4', outputs: ['drawing', 'loads', 'leaflet'], workshop });
  expect(read?.jobs[2]).toMatchObject({
    page: 'a5',
    outputs: ['drawing', 'png', 'loads', 'leaflet'],
    workshop,
  });
  for (const job of read?.jobs ?? []) {
    const { kit, diagnostics: found } = await loadJob(job);
    expect(found.filter(({ severity }) => severity !== 'note')).toEqual([]);
    expect(kit?.id).toBe(job.id);
    expect(kit?.parts.find(({ name }) => name === 'tone-cap')?.code).toMatch(/^C-(22|47)N$/);
  }
});

it('samples/catalogue.schema.json is what the program prints', () => {
  expect(readFileSync('samples/catalogue.schema.json', 'utf8')).toBe(formatCatalogueJsonSchema());
});

describe('check', () => {
  const files = {
    'a.yaml': kitText('a'),
    'b.yaml': kitText('b').replace('22n', '22q'),
    'solderleaf.yaml': `kits: [a.yaml, b.yaml]
families: [{ kit: "m-{x}", extends: ./a.yaml, matrix: { x: { one: , two: { parts: { tone: { value: 2q } } } } } }]
`,
  };

  it('of a workshop’s folder, or its catalogue, checks every kit and every member of a family', async () => {
    const folder = workshop(files);
    for (const path of [folder, join(folder, 'solderleaf.yaml')]) {
      const { stdout, status } = await run(addCheck, 'check', path);
      expect(status).toBe(1);
      const lines = stdout.replaceAll(`${folder}/`, '').split('\n');
      expect(lines.filter((line) => /error/.test(line))).toEqual([
        'a.yaml: no errors, no warnings, 1 note',
        'b.yaml:7:39  error  bad-quantity',
        'b.yaml: 1 error, no warnings, no notes',
        // Its title is the base's.
        'solderleaf.yaml, m-one: no errors, no warnings, 2 notes',
        expect.stringMatching(/^solderleaf\.yaml:2:\d+ {2}error {2}bad-quantity$/),
        'solderleaf.yaml, m-two: 1 error, no warnings, no notes',
        'solderleaf.yaml: 4 kits: 2 errors, no warnings, 3 notes',
      ]);
    }
  });

  it('of a catalogue that is wrong says what, and checks no kit of it', async () => {
    const folder = workshop({ ...files, 'solderleaf.yaml': 'kist: []\n' });
    const { stdout, status } = await run(addCheck, 'check', folder);
    expect(status).toBe(1);
    expect(stdout).toMatch(/solderleaf\.yaml:1:1 {2}error {2}unknown-key/);
    expect(stdout).not.toContain('a.yaml');
  });
});
