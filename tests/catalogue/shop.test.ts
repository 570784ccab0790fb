/** Shop pages in a catalogue: each kit's folder is its own, and what all share is made once, when any of them is new. */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { buildHere, clearWorkshops, newWorkshop, outOf, putKit, smallKit } from './workshop.ts';

afterAll(clearWorkshops);

/** The shop's folder; the record of the build besides tells of warnings, which a list may add. */
const shopOf = (folder: string) =>
  Object.fromEntries(Object.entries(outOf(folder)).filter(([name]) => name.startsWith('shop')));

const indexOf = (folder: string): string => readFileSync(join(folder, 'out', 'shop', 'index.html'), 'utf8');

it('are made once and then not again, lose a kit that is gone, and are put back where they were changed', async () => {
  const folder = newWorkshop(
    { robin: smallKit('robin'), siskin: smallKit('siskin', '220k') },
    'outputs: [shop]\n',
  );
  expect(await buildHere(folder)).toMatchObject({ made: 2, failed: 0 });
  const first = shopOf(folder);
  const again = await buildHere(folder);
  expect([again.fresh, again.lines]).toEqual([2, []]);
  expect(await buildHere(folder, { check: true })).toMatchObject({ stale: 0, leftOver: 0, shopStale: false });

  // A price is on no page.
  writeFileSync(
    join(folder, 'parts.yaml'),
    'currency: EUR\nstock: [{ code: R, kind: resistor, value: 470k, price: 1 }]\n',
  );
  await buildHere(folder);
  writeFileSync(
    join(folder, 'parts.yaml'),
    'currency: EUR\nstock: [{ code: R, kind: resistor, value: 470k, price: 2 }]\n',
  );
  expect((await buildHere(folder)).lines.filter((line) => line.startsWith('written'))).toEqual([]);
  rmSync(join(folder, 'parts.yaml'));
  await buildHere(folder);
  expect(shopOf(folder)).toEqual(first);

  writeFileSync(join(folder, 'out', 'shop', 'manifest.json'), '{}');
  expect(await buildHere(folder, { check: true })).toMatchObject({ stale: 0, shopStale: true });
  rmSync(join(folder, 'out', 'shop', 'index.html'));
  rmSync(join(folder, 'out', 'shop', 'manifest.json'));
  await buildHere(folder);
  expect(shopOf(folder)).toEqual(first);

  rmSync(join(folder, 'kits', 'siskin.yaml'));
  expect(await buildHere(folder, { check: true })).toMatchObject({ shopStale: true });
  await buildHere(folder, { prune: true });
  expect(indexOf(folder)).not.toContain('siskin');
  putKit(folder, 'siskin', smallKit('siskin', '220k'));
  await buildHere(folder);
  expect(shopOf(folder)).toEqual(first);

  writeFileSync(join(folder, 'solderleaf.yaml'), 'kits: [kits/*.yaml]\noutputs: [loads]\n');
  const gone = await buildHere(folder, { prune: true });
  expect(gone.lines.join('\n')).toMatch(/deleted .*index\.html: no kit has shop among its outputs/);
  expect(shopOf(folder)).toEqual({});
});

it('shares leave what all kits share to the build of the whole, which comes to the same bytes', async () => {
  const kits = {
    robin: smallKit('robin'),
    siskin: smallKit('siskin', '220k'),
    wren: smallKit('wren', '330k'),
  };
  const [whole, shared] = [newWorkshop(kits, 'outputs: [shop]\n'), newWorkshop(kits, 'outputs: [shop]\n')];
  await buildHere(whole);
  for (const index of [2, 1]) await buildHere(shared, { shard: { index, count: 2 } });
  expect(existsSync(join(shared, 'out', 'shop', 'index.html'))).toBe(false);
  const joined = await buildHere(shared);
  expect(joined).toMatchObject({ made: 0, fresh: 3, failed: 0 });
  expect(outOf(shared)).toEqual(outOf(whole));
});

it('a kit with errors keeps its pages, and stays in the index', async () => {
  const folder = newWorkshop(
    { robin: smallKit('robin'), siskin: smallKit('siskin', '220k') },
    'outputs: [shop]\n',
  );
  await buildHere(folder);
  putKit(folder, 'robin', smallKit('robin').replace('pad.1 >', 'pad.9 >'));
  putKit(folder, 'siskin', smallKit('siskin', '330k'));
  expect(await buildHere(folder)).toMatchObject({ failed: 1, made: 1 });
  expect(indexOf(folder)).toContain('robin');
});
