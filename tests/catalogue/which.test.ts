/** From a mark on paper back to the kit and its description. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keptMarks, marksFile } from '../../src/catalogue/marks.ts';
import { addWhich } from '../../src/commands/which.ts';
import { run } from '../commands/run.ts';
import { buildHere, clearWorkshops, newWorkshop, putKit, smallKit } from './workshop.ts';

let folder = '';
const put = (name: string, text: string): void => {
  mkdirSync(dirname(join(folder, name)), { recursive: true });
  writeFileSync(join(folder, name), text);
};
const drawing = (id: string, mark: string, title: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" aria-labelledby="${id}-title ${id}-desc" data-revision="${mark}"><title id="${id}-title">${title}</title></svg>\n`;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'which-'));
  const kit = (id: string) => `extends: circuit/s-volume\nkit: ${id}\ntitle: ${id}\n`;
  put('solderleaf.yaml', 'kits: [kits]\n');
  for (const id of ['hs-a', 'hs-a-long', 'ss']) put(`kits/${id}.yaml`, kit(id));
  const hash = '0'.repeat(64);
  const entry = { kit: 'ss', source: 'kits/ss.yaml', sha256: hash, key: hash, mark: 'QQ22-3344' };
  put(
    'out/solderleaf-manifest.json',
    JSON.stringify({ version: 1, outputs: { 'ss.svg': entry, 'ss.png': entry } }),
  );
  // What the record tells is not looked for in the drawing.
  put('out/ss.svg', drawing('ss', '9999-9999', 'SS'));
  put('out/hs-a.svg', drawing('hs-a', 'HHHH-7777', 'HS &amp; &lt;b&gt;'));
  put('out/hs-a-long-position-2.svg', drawing('hs-a-long-position-2', 'KKKK-7777', 'HS'));
  put('out/stranger.svg', '<svg data-revision="not a mark" aria-labelledby="x-title y"></svg>');
  put('out/broken.svg', 'data-revision="HHHH-7777"');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const which = (...args: readonly string[]) => run(addWhich, 'which', ...args);

describe('which', () => {
  it('finds the kit in the record, and all files that bear the mark', async () => {
    const { stdout, status } = await which('QQ22-3344', folder);
    expect(status).toBe(0);
    expect(stdout).toBe('QQ22-3344  ss\n    described in kits/ss.yaml\n    ss.svg\n    ss.png\n');
  });

  it.each(['hhhh-7777', 'HHHH7777', 'rev HHHH 7777', 'HHHH-77l7'.replace('l', '1')])(
    'finds it in a drawing: %s',
    async (mark) => {
      const { stdout, status } = await which(mark, folder);
      expect([status, stdout]).toEqual([
        0,
        'HHHH-7777  hs-a: HS & <b>\n    described in kits/hs-a.yaml\n    hs-a.svg\n',
      ]);
    },
  );

  it('tells a kit from another whose id begins alike', async () => {
    const { stdout } = await which('KKKK-7777', folder, '--json');
    expect(JSON.parse(stdout)).toEqual({
      found: [
        {
          mark: 'KKKK-7777',
          kit: 'hs-a-long',
          source: 'kits/hs-a-long.yaml',
          file: 'hs-a-long-position-2.svg',
          title: 'HS',
        },
      ],
      earlier: [],
      near: [],
    });
  });

  it.each([
    [['Rev', 'HHHH-7777']],
    [['rev', 'hhhh-7777,', '2026-11-30']],
    [['Rev HHHH-7777, 2026-11-30']],
    [['HHHH-7777,', '2026-11-30']],
  ])('finds it as it is printed: %j', async (words) => {
    const { stdout, status } = await which(...words, folder);
    expect([status, stdout.split('\n')[0]]).toEqual([0, 'HHHH-7777  hs-a: HS & <b>']);
  });

  it('one word too many is wrong usage', async () => {
    for (const words of [
      ['HHHH-7777', folder, 'x'],
      ['Rev', 'HHHH-7777', folder, 'x'],
    ]) {
      const { stderr, status } = await which(...words);
      expect([status, stderr]).toEqual([2, expect.stringContaining('“x” is one word too many')]);
    }
  });

  it('a folder of drawings does as well', async () => {
    const { stdout, status } = await which('KKKK-7777', join(folder, 'out'));
    expect([status, stdout]).toEqual([
      0,
      'KKKK-7777  hs-a-long-position-2: HS\n    hs-a-long-position-2.svg\n',
    ]);
  });

  it('offers what was probably meant, and exits 1', async () => {
    const near = await which('HHHM-7777', folder);
    expect([near.status, near.stdout]).toEqual([1, '']);
    expect(near.stderr).toContain('Did you mean HHHH-7777 (hs-a)?');
    const far = await which('4444-4444', folder);
    expect([far.status, far.stderr]).toEqual([
      1,
      `no drawing in ${join(folder, 'out')} has the revision mark 4444-4444\n`,
    ]);
    const none = await which('4444-4444', join(folder, 'kits'));
    expect(none.stderr).toContain('none there has any');
  });

  it('a catalogue that cannot be read is told of', async () => {
    put('other/solderleaf.yaml', 'kitz: []\n');
    const { status, stderr } = await which('4444-4444', join(folder, 'other'));
    expect(status).toBe(1);
    expect(stderr).toContain('kitz');
  });
});

describe('a mark of before', () => {
  afterAll(clearWorkshops);
  const markIn = (text: string): string => / data-revision="([^"]*)"/.exec(text)?.[1] ?? '';

  it('is known as long as the workshop is: built again, renamed, pruned', async () => {
    const workshop = newWorkshop({ robin: smallKit('robin') }, 'date: 2026-11-30\n');
    const drawingOf = (id: string): string => readFileSync(join(workshop, 'out', `${id}.svg`), 'utf8');
    await buildHere(workshop);
    const first = markIn(drawingOf('robin'));
    putKit(workshop, 'robin', smallKit('robin', '220k'));
    await buildHere(workshop);
    const second = markIn(drawingOf('robin'));
    const now = await which(second, workshop);
    expect(now.stdout).toBe(`${second}  robin: S, robin\n    described in kits/robin.yaml\n    robin.svg\n`);
    const earlier = await which(first.toLowerCase(), workshop);
    expect([earlier.status, earlier.stdout]).toEqual([
      0,
      `${first} is an earlier revision of robin (S, robin; dated 2026-11-30; described in kits/robin.yaml); its drawings now bear ${second}\n`,
    ]);
    // A sheet without a mark is no revision; a build that makes nothing changes nothing.
    const kept = readFileSync(marksFile(workshop, 'robin'), 'utf8');
    await buildHere(workshop);
    expect(readFileSync(marksFile(workshop, 'robin'), 'utf8')).toBe(kept);
    expect(JSON.parse(kept).marks.map(({ mark }: { mark: string }) => mark)).toEqual([first, second].sort());
    rmSync(join(workshop, 'kits', 'robin.yaml'));
    putKit(workshop, 'wren', smallKit('wren'));
    await buildHere(workshop);
    expect((await which(second, workshop)).stdout).toContain(
      '    no longer in the catalogue\n    robin.svg\n',
    );
    await buildHere(workshop, { prune: true });
    for (const mark of [first, second]) {
      const { status, stdout } = await which(mark, workshop);
      expect([status, stdout]).toEqual([
        0,
        `${mark} is a revision of robin (S, robin; dated 2026-11-30; described in kits/robin.yaml), which is no longer in the catalogue\n`,
      ]);
    }
    const misread = `${first.slice(0, -1)}${first.endsWith('2') ? '3' : '2'}`;
    expect((await which(misread, workshop)).stderr).toContain(`Did you mean ${first} (robin)?`);
    const { earlier: asJson } = JSON.parse((await which(first, workshop, '--json')).stdout);
    expect(asJson).toEqual([
      { kit: 'robin', mark: first, title: 'S, robin', source: 'kits/robin.yaml', date: '2026-11-30' },
    ]);
  });

  it('shares lose none of one another, and a file that cannot be read is left alone', async () => {
    const workshop = newWorkshop({
      robin: smallKit('robin'),
      siskin: smallKit('siskin'),
      wren: smallKit('wren'),
    });
    for (const index of [1, 2]) await buildHere(workshop, { shard: { index, count: 2 } });
    expect(keptMarks(workshop).map(({ kit }) => kit)).toEqual(['robin', 'siskin', 'wren']);
    writeFileSync(marksFile(workshop, 'robin'), '{ "version": 2 }');
    putKit(workshop, 'robin', smallKit('robin', '220k'));
    expect((await buildHere(workshop)).errorLines.join()).toMatch(/warning: .*robin\.json cannot be read/);
    expect(readFileSync(marksFile(workshop, 'robin'), 'utf8')).toBe('{ "version": 2 }');
    expect(keptMarks(workshop).map(({ kit }) => kit)).toEqual(['siskin', 'wren']);
  });

  it('of a member of a family names the family', async () => {
    const workshop = newWorkshop(
      {},
      `families:
  - kit: s-{pad}
    title: S, {pad}
    extends: ./base.yaml
    matrix: { pad: { low: { parts: { pad: { value: 220k } } }, high: } }
`,
    );
    writeFileSync(join(workshop, 'base.yaml'), smallKit('base'));
    await buildHere(workshop);
    const mark = markIn(readFileSync(join(workshop, 'out', 's-low.svg'), 'utf8'));
    expect((await which(mark, workshop)).stdout).toBe(
      `${mark}  s-low: S, low\n    described in solderleaf.yaml\n    of the family s-{pad}: pad low\n    s-low.svg\n`,
    );
  });
});
