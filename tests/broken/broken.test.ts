/**
 * Every sample of samples/broken/ gives exactly the problems its line in expected.json names, with code, line and
 * column, in the order of the file. The table was checked by hand against the files.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { catalogueWording } from '../../src/common/catalogue-wording.ts';
import { stockWording } from '../../src/common/stock-wording.ts';
import { wording } from '../../src/common/wording.ts';
import { formatDiagnostic } from '../../src/describe/diagnostics.ts';
import { load, reportsOf } from './load.ts';

const folder = new URL('../../samples/broken/', import.meta.url);
const table = 'expected.json';
const expected: Readonly<Record<string, readonly string[]>> = JSON.parse(
  readFileSync(new URL(table, folder), 'utf8'),
);
/** Warnings and notes have a folder and a test of their own. */
const files = readdirSync(folder).filter((file) => file !== table && file !== 'warnings');

test('the table and the folder name the same files', () => {
  expect(Object.keys(expected).sort()).toEqual([...files].sort());
  expect(files.length).toBeGreaterThanOrEqual(25);
});

test.each(files)('%s', async (file) => {
  const reports = reportsOf(await load(new URL(file, folder).pathname));
  // Only a place in a base names its file.
  const fileOf = (place: { readonly file: string }): string => (place.file === file ? '' : `${place.file}:`);
  expect(reports.map(({ code, place }) => `${fileOf(place)}${place.line}:${place.column} ${code}`)).toEqual(
    expected[file],
  );
  for (const report of reports) {
    expect(report.severity).toBe('error');
    expect(report.message.trim()).not.toBe('');
    expect(report.remedy.trim()).not.toBe('');
    const printed = formatDiagnostic(report);
    // No word of a library, no leak of the language underneath, no stack trace.
    expect(printed).not.toMatch(/zod|undefined|\[object|null|NaN|Invalid input|\bat .+:\d+:\d+/i);
    expect(printed.split('\n')[0]).toBe(
      `${report.place.file}:${report.place.line}:${report.place.column}  error  ${report.code}`,
    );
  }
});

test('a broken kit never comes out as a kit unless only its circuit is at error', async () => {
  for (const file of files) {
    const { kit, problems } = await load(new URL(file, folder).pathname);
    expect(kit === undefined, file).toBe(problems.length > 0);
  }
});

test('the samples show nearly every error of a description there is', () => {
  const shown = new Set(Object.values(expected).flatMap((lines) => lines.map((line) => line.split(' ')[1])));
  // These come from the disk, from rooms further on, or from files too large to keep as samples.
  const elsewhere = [
    'file-unreadable',
    'too-long',
    'unknown-arrangement',
    'unknown-page',
    'missing-glyph',
    'unsupported-kind',
    'load-off-reference',
    'two-tone-controls',
    'capacitor-across',
    'not-in-stock',
    'inductance-assumed',
    'capacitor-across-always',
    'never-selected',
    'hidden-by-pot',
    'out-of-phase',
    'first-not-bridge',
    'same-label',
    'no-route',
    'file-too-large',
    'output-taken',
    'drawing-misleads',
    'drawing-untidy',
    'control-no-effect',
    'shunt-control',
    'component-no-effect',
    'switch-no-effect',
    'case-not-grounded',
    'case-on-signal',
    'unusual-value',
    'bare-legs-cross',
    'kit-id-taken',
    'bad-arrangement',
    'not-silent',
    'not-out-of-phase',
    'not-preferred',
    'coil-never-selected',
    'control-backwards',
    'no-load-other-end',
    'blend-at-centre-only',
    'role-contradicts',
    'role-unknown',
    'coils-out-of-phase',
    'pot-in-series',
    'position-name',
    'values-assumed',
    'bare-jumpers-cross',
    'bare-leg-at-switch',
    'bent-too-early',
    'title-inherited',
    // Kits against parts lists have lists of their own: see `tests/files/parts-list.test.ts`.
    ...Object.keys(stockWording),
    // Catalogues are read in `tests/catalogue`.
    ...Object.keys(catalogueWording),
  ];
  expect(Object.keys(wording).filter((code) => !shown.has(code) && !elsewhere.includes(code))).toEqual([]);
});
