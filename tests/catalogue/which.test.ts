/** From a mark on paper back to the kit and its description. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addWhich } from '../../src/commands/which.ts';
import { run } from '../commands/run.ts';

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
      near: [],
    });
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
