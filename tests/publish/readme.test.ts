/** The README against the program: its first kit is what it says of it, and no key of a description goes unexplained. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { z } from 'zod';
import { solveLoads } from '../../src/analyse/index.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { catalogueSchema, familySchema, kitEntrySchema } from '../../src/catalogue/schema.ts';
import { readKit } from '../../src/describe/read.ts';
import { extensionSchema, headFields, jointExtras, partShapes } from '../../src/describe/schema.ts';
import { listFields } from '../../src/describe/stock-schema.ts';
import { isPickup } from '../../src/parts/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { findErrors } from '../../src/solve/errors.ts';
import { kitText, listed } from '../catalogue/folder.ts';

const readme = readFileSync('README.md', 'utf8');
const firstKit = /```yaml\n([\s\S]*?)```/.exec(readme)?.[1] ?? '';

it('the first kit has no error, nothing to note but what it assumes, and no pickup by default', () => {
  const { kit, problems } = readKit(firstKit, 'my-kit.yaml');
  expect(problems).toEqual([]);
  if (!kit) throw new Error('the README has no first kit');
  expect(findErrors(kit)).toEqual([]);
  const circuit = buildCircuit(kit);
  const notes = notesOf(circuit, solveLoads(circuit));
  expect(notes.map(({ code }) => code)).toEqual(['values-assumed']);
  expect(kit.parts.filter(isPickup).map((part) => part.resistance.from)).toEqual(['given', 'given']);
});

/** The names of a schema's keys, those within its maps included. */
function keysOf(schema: z.core.$ZodType): readonly string[] {
  if (schema instanceof z.ZodOptional) return keysOf(schema.unwrap());
  if (!(schema instanceof z.ZodObject)) return [];
  return Object.entries<z.core.$ZodType>(schema.shape).flatMap(([key, inner]) => [key, ...keysOf(inner)]);
}

it('every key that a description may have stands in it', () => {
  const fields = z.object({ ...headFields, ...jointExtras, ...extensionSchema.shape });
  const keys = new Set([fields, z.object(listFields), ...Object.values(partShapes)].flatMap(keysOf));
  expect(keys.size).toBeGreaterThan(20);
  expect([...keys].filter((key) => !readme.includes(`\`${key}\``) && !firstKit.includes(`${key}:`))).toEqual(
    [],
  );
});

it('so does every key that a catalogue may have', () => {
  const keys = new Set([catalogueSchema, kitEntrySchema, familySchema].flatMap(keysOf));
  expect(keys.size).toBeGreaterThan(10);
  expect([...keys].filter((key) => !readme.includes(`\`${key}\``))).toEqual([]);
});

it('its catalogue is one, of the kits that the text says', async () => {
  const text = /```yaml\n(# solderleaf\.yaml\n[\s\S]*?)```/.exec(readme)?.[1] ?? '';
  const { said, ids } = await listed({
    'solderleaf.yaml': text,
    'kits/hss.yaml': kitText('hss'),
    'kits/hh-one.yaml': kitText('hh-one'),
  });
  expect(said).toEqual([]);
  expect(ids).toEqual(['hh-one', 'hss', 'hss-bright-47n', 'hss-warm-22n', 'hss-warm-47n']);
});
