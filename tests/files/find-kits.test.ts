/** Which files a path means: each once, hidden ones not, whatever the case of their endings. */
import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { kitFiles } from '../../src/files/find-kits.ts';

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
