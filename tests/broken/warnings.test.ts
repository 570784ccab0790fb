/**
 * Every sample of samples/broken/warnings/ can be read, and gives exactly the problems its line in expected.json names: likely
 * mistakes, and what is worth a second look. The table was checked by hand against the files.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { solveLoads } from '../../src/analyse/index.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { noteWording } from '../../src/common/note-wording.ts';
import type { Problem } from '../../src/common/problem.ts';
import { formatDiagnostic, toDiagnostics } from '../../src/describe/diagnostics.ts';
import { inheritedNotes } from '../../src/describe/inherited.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { bareLegNotes } from '../../src/draw/bare-legs.ts';
import { findArrangement } from '../../src/files/layouts.ts';
import { loadKit } from '../../src/files/load.ts';
import { prepare } from '../../src/prepare.ts';
import { buildCircuit } from '../../src/solve/build.ts';

const folder = new URL('../../samples/broken/warnings/', import.meta.url);
const table = 'expected.json';
const expected: Readonly<Record<string, readonly string[]>> = JSON.parse(
  readFileSync(new URL(table, folder), 'utf8'),
);
const files = readdirSync(folder).filter((file) => file !== table);

test('the table and the folder name the same files', () =>
  expect(Object.keys(expected).sort()).toEqual([...files].sort()));

/** What hangs on where a drawing puts the parts is looked for without a search, so that it hangs on nothing else. */
const NO_SEARCH = { effort: { steps: 0, seed: 1 } };
const isDrawn = (file: string): boolean => file.startsWith('bare-');

async function drawnNotes(kit: Kit): Promise<readonly Problem[]> {
  const arrangement = findArrangement(kit.arrangement);
  if (typeof arrangement === 'string') throw new Error(arrangement);
  const { circuit, placement } = await prepare(kit, arrangement, NO_SEARCH);
  return bareLegNotes(circuit, placement);
}

test.each(files)('%s', async (file) => {
  const { kit, diagnostics, source, layers } = await loadKit(new URL(file, folder).pathname);
  const circuit = kit && buildCircuit(kit);
  const notes =
    kit && circuit
      ? [
          ...inheritedNotes(layers, kit),
          ...notesOf(circuit, solveLoads(circuit)),
          ...(isDrawn(file) ? await drawnNotes(kit) : []),
        ]
      : [];
  const all = [...diagnostics, ...toDiagnostics(notes, source)];
  expect(all.map(({ severity, code, place }) => `${place.line}:${place.column} ${severity} ${code}`)).toEqual(
    expected[file],
  );
  for (const one of all) {
    const printed = formatDiagnostic(one);
    expect(one.remedy.trim()).not.toBe('');
    expect(printed).not.toMatch(/zod|undefined|\[object|null|NaN|Invalid input|\bat .+:\d+:\d+/);
  }
});

test('the samples show every warning and note there is', () => {
  const shown = new Set(Object.values(expected).flatMap((lines) => lines.map((line) => line.split(' ')[2])));
  // The first is an error, which has its sample among those; the second takes more than a thousand settings: see `tests/analyse/blends.test.ts`.
  const elsewhere = ['coil-lead-not-connected', 'blend-at-centre-only'];
  expect(Object.keys(noteWording).filter((code) => !shown.has(code) && !elsewhere.includes(code))).toEqual(
    [],
  );
});
