/** Which files a path means: each once, hidden ones not, whatever the case of their endings. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { isFolder, kitFiles } from '../../src/files/find-kits.ts';

const KIT = 'kit: a\nparts: {}\njoints: []\n';
const folder = mkdtempSync(join(tmpdir(), 'solderleaf-'));
const put = (name: string, text = KIT): string => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};

it('each file once, by whichever paths it is named', () => {
  const file = put('one.yaml');
  mkdirSync(join(folder, 'sub'));
  const around = `${folder}/sub/../one.yaml`;
  symlinkSync(file, join(folder, 'link.yaml'));
  expect(kitFiles([file, file, around]).files).toEqual([file]);
  expect(kitFiles([file, folder]).files).toEqual([file]);
  expect(kitFiles([folder, file]).files).toHaveLength(1);
  // What is not there is named twice all the same: each is told where it is loaded.
  expect(kitFiles(['none.yaml', 'other.yaml']).files).toEqual(['none.yaml', 'other.yaml']);
});

it('endings in capitals are kits, hidden files and editors’ locks are none', () => {
  const [capital] = [put('TWO.YAML'), put('.hidden.yaml')];
  symlinkSync(join(folder, 'nowhere'), join(folder, '.#one.yaml'));
  const { files } = kitFiles([folder]);
  expect(files).toContain(capital);
  expect(files.filter((file) => file.includes('/.'))).toEqual([]);
});

describe('what lies in a folder', () => {
  const sub = join(folder, 'mixed');
  mkdirSync(sub);
  const sort = (name: string, text: string | Uint8Array): string => {
    const file = join(sub, name);
    writeFileSync(file, text);
    const { files, passed, scripts } = kitFiles([sub]);
    rmSync(file);
    return files.includes(file)
      ? 'kit'
      : passed.includes(file)
        ? 'passed'
        : scripts.includes(file)
          ? 'script'
          : 'unseen';
  };
  it.each([
    ['a.yaml', KIT, 'kit'],
    ['a.yml', KIT, 'kit'],
    ['a.json', '{"kit": "a"}', 'kit'],
    ['a.txt', KIT, 'unseen'],
    ['a.schema.json', '{"kit": 1}', 'unseen'],
    ['a.d.ts', 'defineKit', 'unseen'],
    ['.a.yaml', KIT, 'unseen'],
    ['a.yaml', 'shopping: list\n', 'passed'],
    ['a.yaml', '- kit\n', 'passed'],
    ['a.yaml', '', 'passed'],
    ['a.json', '{"name": "package"}', 'passed'],
    // Misspelt or not readable as YAML: what is wrong with a kit must be said.
    ['a.yaml', 'prats: {}\n', 'kit'],
    ['a.yaml', 'kit: a\nparts: {\n', 'kit'],
    ['a.yaml', 'title: {\n', 'passed'],
    ['a.json', '{"kit": "a",}', 'kit'],
    ['a.json', '{"a": "kit",}', 'passed'],
    // Figures that were printed with --json have a kit's id.
    ['a.json', '{"kit": "a", "pickups": [], "positions": []}', 'passed'],
    ['a.json', '{"kit": "a", "pickups": [], "effects": []}', 'passed'],
    ['a.json', '{"kit": "a", "pickups": []}', 'kit'],
    ['a.json', '{"kit": "a", "positions": []}', 'kit'],
    ['a.json', '{"kit": "a", "pickups": [], "positions": [], "parts": {}}', 'kit'],
    ['a.json', '{"kit": "a", "pickups": [], "positions": [], "joints": []}', 'kit'],
    ['a.ts', 'export default defineKit({})', 'script'],
    ['a.ts', 'export default { kit: "a" }', 'script'],
    ['a.ts', 'export const x = 1', 'passed'],
  ])('%s holding %j is %s', (name, text, wanted) => expect(sort(name, text)).toBe(wanted));
  it('a kit in another encoding is one with an error, and so is one that is too long', () => {
    expect(sort('a.yaml', Buffer.from(KIT, 'utf16le'))).toBe('kit');
    expect(sort('a.yaml', Buffer.concat([Buffer.from(KIT), Buffer.from([0xff])]))).toBe('kit');
    expect(sort('a.yaml', Buffer.from([0xff, 0xfe, 0x41]))).toBe('passed');
    expect(sort('a.yaml', `${KIT}#${'x'.repeat(250_001)}`)).toBe('kit');
    expect(sort('a.yaml', `${KIT}#${'x'.repeat(1_000_001)}`)).toBe('kit');
    expect(sort('a.yaml', `a: b\n#${'x'.repeat(250_001)}`)).toBe('passed');
  });
  it('is taken in the order of its names; folders in it are not looked into', () => {
    const ordered = join(folder, 'ordered');
    mkdirSync(join(ordered, 'deep.yaml'), { recursive: true });
    for (const name of ['b.yaml', 'B.yaml', 'a.yaml', '10.yaml', '9.yaml'])
      writeFileSync(join(ordered, name), KIT);
    expect(kitFiles([ordered]).files.map((file) => file.slice(ordered.length + 1))).toEqual([
      '10.yaml',
      '9.yaml',
      'B.yaml',
      'a.yaml',
      'b.yaml',
    ]);
    expect(kitFiles([ordered]).closed).toEqual([]);
  });
  it('a file that is named is taken at its word', () => {
    writeFileSync(join(sub, 'named.txt'), 'anything');
    expect(kitFiles([join(sub, 'named.txt')]).files).toEqual([join(sub, 'named.txt')]);
    expect(isFolder(sub)).toBe(true);
    expect(isFolder(join(sub, 'named.txt'))).toBe(false);
    expect(isFolder(join(sub, 'none'))).toBe(false);
  });
});
