/** Leaflets as outputs of a catalogue: made once, made again for a new address, refused with a place. */
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { textOfPdf } from '../tools/pdf-tools.ts';
import { buildByCli, buildHere, clearWorkshops, newWorkshop, outOf, putKit, smallKit } from './workshop.ts';

afterAll(clearWorkshops);

const HEAD = 'outputs: [leaflet, booklet]\nworkshop: { name: Wren & Daughters }\n';

it('a leaflet, its page and its booklet are made, and again only when who they are from changes', async () => {
  const folder = newWorkshop({ robin: smallKit('robin') }, HEAD);
  expect(await buildHere(folder)).toMatchObject({ failed: 0, made: 1 });
  const before = outOf(folder);
  const files = ['robin-booklet.pdf', 'robin-leaflet.html', 'robin-leaflet.pdf'];
  expect(Object.keys(before)).toEqual([...files, 'solderleaf-manifest.json']);
  expect(textOfPdf(readFileSync(join(folder, 'out', 'robin-leaflet.pdf')))).toContain('Wren & Daughters');
  expect(await buildHere(folder)).toMatchObject({ failed: 0, fresh: 1 });
  expect(outOf(folder)).toEqual(before);
  writeFileSync(
    join(folder, 'solderleaf.yaml'),
    `kits: [kits/*.yaml]\n${HEAD.replace('Daughters', 'Granddaughters')}`,
  );
  expect(await buildHere(folder)).toMatchObject({ failed: 0, made: 1 });
  const after = outOf(folder);
  for (const file of files) expect(after[file]).not.toBe(before[file]);
});

it('the command makes them in worker threads', async () => {
  const kits = { robin: smallKit('robin'), siskin: smallKit('siskin'), wren: smallKit('wren') };
  const folder = newWorkshop(kits, HEAD);
  expect((await buildByCli(folder, ['--workers', '2'])).code).toBe(0);
  const one = outOf(folder);
  const other = newWorkshop(kits, HEAD);
  expect(await buildHere(other)).toMatchObject({ failed: 0, made: 3 });
  const { 'solderleaf-manifest.json': _, ...made } = one;
  expect(Object.keys(made)).toHaveLength(9);
  // The same bytes as without threads, one after another.
  expect(outOf(other)).toMatchObject(made);
});

it('a letter that the font lacks is refused at its place, and other kits are made', async () => {
  const folder = newWorkshop({ robin: smallKit('robin') }, HEAD);
  putKit(folder, 'siskin', `${smallKit('siskin')}about: 音が良い\n`);
  const told = await buildHere(folder);
  expect(told).toMatchObject({ failed: 1, made: 1 });
  expect(told.errorLines.join('\n')).toMatch(/kits\/siskin\.yaml:13:8 {2}error {2}missing-glyph/);
});

it('a file of somebody else’s is let be', async () => {
  const folder = newWorkshop({ robin: smallKit('robin') }, HEAD);
  await buildHere(folder);
  const file = join(folder, 'out', 'robin-leaflet.pdf');
  writeFileSync(file, '%PDF-1.7\nmy own\n');
  writeFileSync(join(folder, 'out', 'solderleaf-manifest.json'), '{}');
  appendFileSync(join(folder, 'kits', 'robin.yaml'), 'about: One pickup and nothing else.\n');
  const told = await buildHere(folder);
  expect(told.errorLines.join('\n')).toMatch(/not written .*robin-leaflet\.pdf/);
  expect(readFileSync(file, 'utf8')).toBe('%PDF-1.7\nmy own\n');
});
