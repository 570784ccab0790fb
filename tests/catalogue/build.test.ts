/** What a build makes, and what it lets be. */
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readFigures } from '../../src/catalogue/changes/store.ts';
import {
  buildByCli,
  buildHere,
  clearWorkshops,
  copyOf,
  newWorkshop,
  outOf,
  putKit,
  smallKit,
} from './workshop.ts';

afterAll(clearWorkshops);

const kits = { robin: smallKit('robin'), siskin: smallKit('siskin', '220k') };
const cacheOf = (folder: string, shelf: string): readonly string[] =>
  readdirSync(join(folder, '.solderleaf', 'cache', shelf));

/** What a build with neither cache nor outputs makes of the same kits. */
async function cleanBuild(folder: string) {
  const copy = copyOf(folder);
  await buildHere(copy);
  return outOf(copy);
}

it('of two files of one id neither is built, what was made of it stays, and the other kits are made', async () => {
  const folder = newWorkshop({ robin: smallKit('robin'), siskin: smallKit('siskin') });
  await buildHere(folder);
  const before = outOf(folder);
  putKit(folder, 'copy', smallKit('robin', '220k'));
  putKit(folder, 'siskin', smallKit('siskin', '330k'));
  for (const options of [{ prune: true }, { prune: true }, { check: true }]) {
    const told = await buildHere(folder, options);
    expect(told).toMatchObject({ failed: 1, leftOver: 0, stale: 0 });
    const said = told.errorLines.join('\n');
    expect(said).toMatch(/kits\/copy\.yaml:1:6 .*id-taken/);
    expect(said).toMatch(/kits\/robin\.yaml:1:6 .*id-taken/);
    expect(said.match(/^stale {5}.*robin\.svg: left as it was/gm)).toHaveLength(1);
    const out = outOf(folder);
    for (const name of ['robin.svg', 'robin-loads.json']) expect(out[name]).toBe(before[name]);
    expect(out['siskin.svg']).not.toBe(before['siskin.svg']);
  }
  expect(readFigures(folder, 'robin')?.kit).toBe('robin');
  rmSync(join(folder, 'kits', 'copy.yaml'));
  expect(await buildHere(folder)).toMatchObject({ failed: 0, fresh: 2 });
});

describe('warnings', () => {
  const odd = smallKit('robin').replace('label: Pad', 'label: Neck');

  it('of kits that are up to date are told of in the last line, and no longer when they are gone', async () => {
    const folder = newWorkshop({ robin: odd, siskin: smallKit('siskin') });
    expect((await buildHere(folder)).warned).toEqual(['robin']);
    const again = await buildHere(folder);
    expect([again.fresh, again.errorLines, again.warned]).toEqual([2, [], ['robin']]);
    await buildByCli(folder);
    expect((await buildByCli(folder)).out).toBe(
      `2 kits: 2 up to date; warnings for robin: run solderleaf check ${folder}\n`,
    );
    putKit(folder, 'robin', smallKit('robin'));
    expect((await buildHere(folder)).warned).toEqual([]);
    expect((await buildHere(folder)).warned).toEqual([]);
  });

  it('that come from the parts list alone count as well, though nothing is made anew', async () => {
    const folder = newWorkshop({ robin: smallKit('robin') });
    const list = (ohms: string) =>
      writeFileSync(
        join(folder, 'parts.yaml'),
        `stock:\n  - { code: R-1, kind: resistor, value: ${ohms} }\n`,
      );
    list('220k');
    expect((await buildHere(folder)).warned).toEqual(['robin']);
    // Nothing of its kind is in the list, so that nothing is missing there.
    writeFileSync(join(folder, 'parts.yaml'), 'stock: []\n');
    const other = await buildHere(folder);
    expect([other.fresh, other.warned]).toEqual([1, []]);
    list('330k');
    await buildHere(folder);
    expect((await buildHere(folder)).warned).toEqual(['robin']);
  });

  it('of many kits name a few', async () => {
    const ids = ['a', 'b', 'c', 'd', 'e', 'f', 'g'];
    const folder = newWorkshop(
      Object.fromEntries(ids.map((id) => [id, odd.replace('robin', id)])),
      'outputs: [loads]\n',
    );
    const { out } = await buildByCli(folder);
    expect(out).toContain(`; warnings for a, b, c, d, e and 2 more: run solderleaf check ${folder}\n`);
  });

  it('a record of before they were counted is read', async () => {
    const folder = newWorkshop({ robin: odd });
    await buildHere(folder);
    const file = join(folder, 'out', 'solderleaf-manifest.json');
    const text = readFileSync(file, 'utf8');
    const old = text.replace(/,\s*"warnings": \d+/g, '');
    expect(old).not.toBe(text);
    writeFileSync(file, old);
    expect(await buildHere(folder)).toMatchObject({ fresh: 1, warned: [] });
  });
});

describe('up to date', () => {
  it('makes everything once, and then nothing', async () => {
    const folder = newWorkshop(kits);
    const first = await buildHere(folder);
    expect(first).toMatchObject({ kits: 2, made: 2, found: 0, fresh: 0, failed: 0, errorLines: [] });
    const out = outOf(folder);
    expect(Object.keys(out)).toEqual([
      'robin-loads.json',
      'robin.svg',
      'siskin-loads.json',
      'siskin.svg',
      'solderleaf-manifest.json',
    ]);
    expect(await buildHere(folder)).toMatchObject({ made: 0, found: 0, fresh: 2, tasks: [], lines: [] });
    expect(outOf(folder)).toEqual(out);
    // The record says of each file what it is.
    const { outputs } = JSON.parse(readFileSync(join(folder, 'out', 'solderleaf-manifest.json'), 'utf8'));
    expect(outputs['robin.svg']).toMatchObject({
      kit: 'robin',
      source: 'kits/robin.yaml',
      sha256: out['robin.svg'],
    });
  });
  it('a comment has the kit read, and nothing made; without a cache nothing is made either', async () => {
    const folder = newWorkshop(kits);
    await buildHere(folder);
    const out = outOf(folder);
    appendFileSync(join(folder, 'kits', 'robin.yaml'), '# for the left shelf\n');
    const commented = await buildHere(folder);
    expect([commented.tasks.length, commented.fresh, commented.made]).toEqual([1, 2, 0]);
    expect((await buildHere(folder)).tasks).toEqual([]);
    rmSync(join(folder, '.solderleaf'), { recursive: true });
    expect(await buildHere(folder)).toMatchObject({ fresh: 2, made: 0, found: 0 });
    expect(outOf(folder)).toEqual(out);
  });
  it('another value has that kit drawn again where it was placed, as a clean build draws it', async () => {
    const folder = copyOf(newWorkshop(kits));
    await buildHere(folder);
    const before = outOf(folder);
    const placed = cacheOf(folder, 'placed');
    putKit(folder, 'robin', smallKit('robin', '510k'));
    expect(await buildHere(folder)).toMatchObject({ made: 1, fresh: 1 });
    expect(cacheOf(folder, 'placed')).toEqual(placed);
    const after = outOf(folder);
    expect(after['robin.svg']).not.toBe(before['robin.svg']);
    expect(after['siskin.svg']).toBe(before['siskin.svg']);
    expect(after).toEqual(await cleanBuild(folder));
    // Back again, all of it is in the cache.
    putKit(folder, 'robin', smallKit('robin'));
    expect(await buildHere(folder)).toMatchObject({ made: 0, found: 1 });
    expect(outOf(folder)).toEqual(before);
  });
  it('of the parts list only what a kit has of it: a price has nothing drawn again, but is known', async () => {
    const folder = newWorkshop(kits);
    const list = (price: number, other: string): string =>
      `stock:\n  - { code: R-1, kind: resistor, value: 470k, price: ${price} }\n  - { code: R-2, kind: resistor, value: ${other} }\n`;
    writeFileSync(join(folder, 'parts.yaml'), list(0.04, '1M'));
    await buildHere(folder);
    const [before, amount] = [outOf(folder), () => readFigures(folder, 'robin')?.price?.amount];
    expect(amount()).toBe(0.04);
    const mark = readFigures(folder, 'robin')?.mark;
    expect(mark).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}$/);
    writeFileSync(join(folder, 'parts.yaml'), list(0.05, '2.2M'));
    expect(await buildHere(folder, { check: true })).toMatchObject({ stale: 0 });
    expect(await buildHere(folder)).toMatchObject({ made: 0, found: 0, fresh: 2 });
    expect(outOf(folder)).toEqual(before);
    expect(readFigures(folder, 'robin')).toMatchObject({ mark, price: { amount: 0.05 } });
  });
  it('a base, an arrangement and the outputs asked for count as well', async () => {
    const seats = (at: number): string =>
      `arrangement: shelf\nabout: A row.\nseats:\n  - { seat: jack, at: [${at}, 0] }\n`;
    const folder = newWorkshop({ robin: smallKit('robin') });
    writeFileSync(join(folder, 'shelf.yaml'), seats(0));
    putKit(folder, 'finch', 'extends: robin.yaml\nkit: finch\ntitle: Finch\n');
    await buildHere(folder);
    putKit(folder, 'robin', smallKit('robin', '510k'));
    expect(await buildHere(folder)).toMatchObject({ made: 2 });
    writeFileSync(join(folder, 'solderleaf.yaml'), 'kits: [kits/*.yaml]\narrangement: shelf.yaml\n');
    expect(await buildHere(folder)).toMatchObject({ made: 2, leftOver: 2 });
    writeFileSync(join(folder, 'shelf.yaml'), seats(40));
    expect(await buildHere(folder)).toMatchObject({ made: 2 });
    expect(await buildHere(folder)).toMatchObject({ fresh: 2, tasks: [], leftOver: 2 });
    expect(await buildHere(folder, { prune: true })).toMatchObject({ fresh: 2, leftOver: 0 });
    const copy = copyOf(folder);
    writeFileSync(join(copy, 'shelf.yaml'), seats(40));
    await buildHere(copy);
    expect(outOf(folder)).toEqual(outOf(copy));
  });
  it('an output that was changed or deleted is put back', async () => {
    const folder = newWorkshop(kits);
    await buildHere(folder);
    const out = outOf(folder);
    appendFileSync(join(folder, 'out', 'robin.svg'), '<!-- mine -->');
    rmSync(join(folder, 'out', 'siskin-loads.json'));
    expect(await buildHere(folder)).toMatchObject({ found: 2, made: 0 });
    expect(outOf(folder)).toEqual(out);
  });
  it('a check tells what is out of date, and writes nothing', async () => {
    const folder = copyOf(newWorkshop(kits));
    expect(await buildHere(folder, { check: true })).toMatchObject({ stale: 2, fresh: 0 });
    expect(existsSync(join(folder, 'out')) || existsSync(join(folder, '.solderleaf'))).toBe(false);
    await buildHere(folder);
    expect(await buildHere(folder, { check: true })).toMatchObject({ stale: 0, fresh: 2 });
    putKit(folder, 'robin', smallKit('robin', '510k'));
    const out = outOf(folder);
    const found = await buildHere(folder, { check: true });
    expect([found.stale, found.lines]).toEqual([1, ['stale     robin (kits/robin.yaml)']]);
    expect(outOf(folder)).toEqual(out);
  });
});

describe('a cache that was spoilt', () => {
  it.each(['cut short', 'changed'])('%s, is as if it were not there', async (how) => {
    const folder = newWorkshop(kits);
    await buildHere(folder);
    const out = outOf(folder);
    const cache = join(folder, '.solderleaf', 'cache');
    for (const shelf of ['read', 'made', 'placed', 'files'])
      for (const name of cacheOf(folder, shelf)) {
        const file = join(cache, shelf, name);
        const bytes = readFileSync(file);
        const last = bytes.length - 3;
        if (how === 'changed') bytes[last] = (bytes[last] ?? 0) ^ 1;
        writeFileSync(file, how === 'changed' ? bytes : bytes.subarray(0, last));
      }
    rmSync(join(folder, 'out'), { recursive: true });
    expect(await buildHere(folder)).toMatchObject({ made: 2, found: 0, failed: 0 });
    expect(outOf(folder)).toEqual(out);
    expect(await buildHere(folder)).toMatchObject({ fresh: 2 });
  });
  it('that cannot be written is told once, and everything is made all the same', async () => {
    const folder = newWorkshop(kits);
    const file = join(folder, 'a-file');
    writeFileSync(file, '');
    const { errorLines, made } = await buildHere(folder, { cache: join(file, 'cache') });
    expect(made).toBe(2);
    expect(errorLines).toEqual([expect.stringMatching(/^warning: the cache .* cannot be written to: /)]);
  });
});

describe('one bad kit', () => {
  it('stops no other, and keeps its old outputs, which are said to be stale', async () => {
    const folder = newWorkshop(kits);
    await buildHere(folder);
    const old = outOf(folder);
    putKit(folder, 'robin', smallKit('robin').replace('kind: jack', 'kind: jak'));
    putKit(folder, 'siskin', smallKit('siskin', '510k'));
    const built = await buildHere(folder);
    expect(built).toMatchObject({ made: 1, failed: 1 });
    expect(built.errorLines.join('\n')).toMatch(
      /kits\/robin\.yaml:\d+:\d+ {2}error[\s\S]*stale .*robin\.svg/,
    );
    expect(outOf(folder)['robin.svg']).toBe(old['robin.svg']);
    expect(outOf(folder)['siskin.svg']).not.toBe(old['siskin.svg']);
    putKit(folder, 'robin', smallKit('robin'));
    expect(await buildHere(folder)).toMatchObject({ fresh: 2 });
  });
  it('of many that have one mistake between them: it is told once, and the others name that kit', async () => {
    const folder = newWorkshop(
      { robin: smallKit('robin') },
      `outputs: [loads]
families:
  - kit: s-{pad}-{cable}
    title: S, {pad}, {cable}
    extends: ./kits/robin.yaml
    matrix:
      pad: { a: { parts: { pad: { value: 1q } } }, b: { parts: { pad: { value: 1q } } }, c: { parts: { pad: { value: 1k } } } }
      cable: { short: { output-load: { cable: 300p } }, long: { output-load: { cable: 900p } } }
`,
    );
    const { failed, made, errorLines } = await buildHere(folder);
    expect([failed, made]).toEqual([4, 3]);
    const told = errorLines.join('\n');
    // Values a and b each stand in a place of their own.
    expect(told.match(/bad-quantity/g)).toHaveLength(2);
    expect(told.match(/^s-[ab]-\w+: the same as told of s-[ab]-\w+$/gm)).toHaveLength(2);
  });
  it('that ends in an exception is told, and the others are made', async () => {
    const folder = newWorkshop(kits);
    // Nothing can be written where a folder is in the way.
    mkdirSync(join(folder, 'out', 'robin.svg'), { recursive: true });
    const built = await buildHere(folder);
    expect(built).toMatchObject({ made: 1, failed: 1 });
    expect(built.errorLines.join()).toMatch(/robin\.svg: there is a folder where the file should be/);
    rmSync(join(folder, 'out', 'robin.svg'), { recursive: true });
    expect(await buildHere(folder)).toMatchObject({ found: 1, fresh: 1, failed: 0 });
    expect(outOf(folder)).toEqual(await cleanBuild(folder));
  });
});

describe('files of others', () => {
  it('are never overwritten', async () => {
    const folder = newWorkshop(kits, 'outputs: [drawing, png, loads]\n');
    mkdirSync(join(folder, 'out'));
    const mine = { 'robin.svg': '<svg>mine</svg>', 'robin.png': '\x89PNG', 'siskin-loads.json': '{"a":1}' };
    for (const [name, text] of Object.entries(mine)) writeFileSync(join(folder, 'out', name), text, 'latin1');
    const { failed, errorLines } = await buildHere(folder);
    expect(failed).toBe(2);
    expect(errorLines.map((line) => /(\S+): it already exists/.exec(line)?.[1])).toEqual(
      ['robin.svg', 'robin.png', 'siskin-loads.json'].map((name) => join(folder, 'out', name)),
    );
    for (const [name, text] of Object.entries(mine))
      expect(readFileSync(join(folder, 'out', name), 'latin1')).toBe(text);
    expect(await buildHere(folder)).toMatchObject({ failed: 2 });
    for (const name of Object.keys(mine)) rmSync(join(folder, 'out', name));
    expect(await buildHere(folder)).toMatchObject({ failed: 0, found: 2 });
  });
  it('outputs of a kit that is gone are told, and deleted when asked, but not one that was changed', async () => {
    const folder = newWorkshop(kits);
    await buildHere(folder);
    rmSync(join(folder, 'kits', 'robin.yaml'));
    writeFileSync(join(folder, 'out', 'notes.txt'), 'mine');
    const told = await buildHere(folder);
    expect(told).toMatchObject({ kits: 1, leftOver: 2 });
    expect(told.lines[0]).toMatch(
      /^left over .*robin-loads\.json: its kit robin is no longer in the catalogue/,
    );
    appendFileSync(join(folder, 'out', 'robin-loads.json'), ' ');
    const pruned = await buildHere(folder, { prune: true });
    expect(pruned.lines.map((line) => line.split(' ')[0])).toEqual(['kept', 'deleted', 'deleted']);
    expect(Object.keys(outOf(folder))).toEqual([
      'notes.txt',
      'robin-loads.json',
      'siskin-loads.json',
      'siskin.svg',
      'solderleaf-manifest.json',
    ]);
  });
  it('a record cannot name files outside of the folder', async () => {
    const folder = newWorkshop(kits);
    await buildHere(folder);
    const secret = join(folder, 'secret.txt');
    writeFileSync(secret, 'mine');
    const file = join(folder, 'out', 'solderleaf-manifest.json');
    const record = JSON.parse(readFileSync(file, 'utf8'));
    const { default: crypto } = await import('node:crypto');
    const sha256 = crypto.createHash('sha256').update('mine').digest('hex');
    record.outputs['../secret.txt'] = { ...record.outputs['robin.svg'], kit: 'gone', sha256 };
    writeFileSync(file, JSON.stringify(record));
    await buildHere(folder, { prune: true });
    expect(existsSync(secret)).toBe(true);
  });
});

describe('two kits with an output of one name', () => {
  const outputsOf = (order: readonly string[]): string =>
    `kits:\n${order.map((entry) => `  - ${entry}\n`).join('')}`;
  const [response, drawing] = [
    '{ files: kits/wren.yaml, outputs: [response] }',
    '{ files: kits/wren-response.yaml, outputs: [drawing, loads] }',
  ];
  it.each([
    ['the response of one', [response, drawing], 'wren'],
    ['the drawing of the other', [drawing, response], 'wren-response'],
  ])('%s has it where it is the first, whichever is done first', async (_, order, first) => {
    const folder = newWorkshop({ wren: smallKit('wren'), 'wren-response': smallKit('wren-response') });
    writeFileSync(join(folder, 'solderleaf.yaml'), outputsOf(order));
    for (const late of ['wren', 'wren-response']) {
      rmSync(join(folder, 'out'), { recursive: true, force: true });
      for (const fresh of [false, true]) {
        const built = await buildHere(folder, {}, late);
        expect(built.failed, `${late} late, ${fresh ? 'again' : 'first'}`).toBe(1);
        expect(built.errorLines).toEqual([
          expect.stringMatching(
            new RegExp(`wren-response\\.svg of \\S+: ${first} has an output of this name`),
          ),
        ]);
        const { outputs } = JSON.parse(readFileSync(join(folder, 'out', 'solderleaf-manifest.json'), 'utf8'));
        expect(outputs['wren-response.svg'].kit).toBe(first);
        expect(outOf(folder)['wren-response.svg']).toBe(outputs['wren-response.svg'].sha256);
      }
    }
  });
});
