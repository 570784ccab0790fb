/**
 * Every sample of samples/broken/warnings/ can be read, and gives exactly the problems its line in expected.json names: likely
 * mistakes, and what is worth a second look. The table was checked by hand against the files.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { solveLoads } from '../../src/analyse/index.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { readKit } from '../../src/checked.ts';
import { noteWording } from '../../src/common/note-wording.ts';
import { formatDiagnostic, toDiagnostics } from '../../src/describe/diagnostics.ts';
import { buildCircuit } from '../../src/solve/build.ts';

const folder = new URL('../../samples/broken/warnings/', import.meta.url);
const table = 'expected.json';
const expected: Readonly<Record<string, readonly string[]>> = JSON.parse(
  readFileSync(new URL(table, folder), 'utf8'),
);
const files = readdirSync(folder).filter((file) => file !== table);

test('the table and the folder name the same files', () =>
  expect(Object.keys(expected).sort()).toEqual([...files].sort()));

test.each(files)('%s', (file) => {
  const { kit, diagnostics, source } = readKit(readFileSync(new URL(file, folder), 'utf8'), file);
  const circuit = kit && buildCircuit(kit);
  const all = [
    ...diagnostics,
    ...(circuit ? toDiagnostics(notesOf(circuit, solveLoads(circuit)), source) : []),
  ];
  expect(all.map(({ severity, code, place }) => `${place.line}:${place.column} ${severity} ${code}`)).toEqual(
    expected[file],
  );
  for (const one of all) {
    const printed = formatDiagnostic(one);
    expect(one.remedy.trim()).not.toBe('');
    expect(printed).not.toMatch(/zod|undefined|\[object|null|NaN|Invalid input|\bat .+:\d+:\d+/);
  }
});

test('the samples show nearly every warning and note there is', () => {
  const shown = new Set(Object.values(expected).flatMap((lines) => lines.map((line) => line.split(' ')[2])));
  // The first is tested in `tests/analyse/left-handed.test.ts`, the second in `tests/analyse/blends.test.ts`, the third hangs on a pot that has
  // no sample; the next is tested where blends are, the fourth hangs on where a drawing
  // puts the parts, the last is an error.
  const elsewhere = [
    'no-load-other-end',
    'blend-at-centre-only',
    'role-unknown',
    'hidden-by-pot',
    'bare-legs-cross',
    'coil-lead-not-connected',
  ];
  expect(Object.keys(noteWording).filter((code) => !shown.has(code) && !elsewhere.includes(code))).toEqual(
    [],
  );
});
