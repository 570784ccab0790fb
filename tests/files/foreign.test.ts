/** What is written replaces an earlier version of itself and nothing else. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { isForeign } from '../../src/files/foreign.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-foreign-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const there = (text: string): string => {
  const file = join(folder, 'file');
  writeFileSync(file, text);
  return file;
};
const drawing = (id: string): string => `<svg aria-labelledby="${id}-title ${id}-desc"></svg>`;

it('a table is told by its head', () => {
  expect(isForeign(there('frequency in Hz,a\n20,1\n'), 'frequency in Hz,a\n20,2\n')).toBe(false);
  expect(isForeign(there('frequency in Hz,b\n20,1\n'), 'frequency in Hz,a\n20,1\n')).toBe(true);
  expect(isForeign(there('my notes\n'), 'frequency in Hz,a\n20,1\n')).toBe(true);
});
it('a drawing by its id', () => {
  expect(isForeign(there(drawing('a')), drawing('a'))).toBe(false);
  expect(isForeign(there(drawing('b')), drawing('a'))).toBe(true);
  expect(isForeign(there('my notes\n'), drawing('a'))).toBe(true);
});
it('a picture by its signature', () => {
  expect(isForeign(there('\x89PNG\r\n'), new Uint8Array([0x89, 0x50]))).toBe(true);
});
it('a leaflet by what it says of itself, as a page and as a PDF', () => {
  const page = (id: string): string =>
    `<!doctype html>\n<meta name="generator" content="Solderleaf leaflet ${id}">`;
  expect(isForeign(there(page('a')), page('a'))).toBe(false);
  expect(isForeign(there(page('b')), page('a'))).toBe(true);
  expect(isForeign(there('<!doctype html>\n<p>mine'), page('a'))).toBe(true);
  const pdf = (words: string): Uint8Array => Buffer.from(`%PDF-1.7\n/Keywords (${words})`);
  expect(isForeign(there('%PDF-1.7\n/Keywords (Solderleaf leaflet a)'), pdf('Solderleaf leaflet a'))).toBe(
    false,
  );
  expect(isForeign(there('%PDF-1.7\n/Keywords (Solderleaf leaflet ab)'), pdf('Solderleaf leaflet a'))).toBe(
    true,
  );
  expect(isForeign(there('%PDF-1.7\n/Keywords (mine)'), pdf('Solderleaf leaflet a'))).toBe(true);
});
