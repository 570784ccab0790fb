/** The whole way of a parts change: 470 kΩ is sold out, 510 kΩ takes its place, and every output of the kits affected says so. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addChanges } from '../../src/commands/changes.ts';
import { addCheck } from '../../src/commands/check.ts';
import { addOrder } from '../../src/commands/order.ts';
import { addWhich } from '../../src/commands/which.ts';
import { run } from '../commands/run.ts';
import { bandsOf, meantBy } from '../truth/bands.ts';
import { type Drawing, read } from '../truth/reader.ts';
import { buildByCli, clearWorkshops, newWorkshop, outOf, smallKit } from './workshop.ts';

afterAll(clearWorkshops);

const list = (inStock: string): string => `currency: EUR
stock:
  - { code: R-220K, kind: resistor, value: 220k, tolerance: 5%, price: 0.04, in-stock: 340 }
  - { code: R-470K, kind: resistor, value: 470k, tolerance: 5%, price: 0.04, in-stock: ${inStock}, replaced-by: R-510K }
  - { code: R-510K, kind: resistor, value: 510k, tolerance: 1%, price: 0.05, in-stock: 200 }
`;
const AFFECTED = ['robin', 'wren-hs'];
const folder = newWorkshop({
  'wren-hs': readFileSync('samples/wren-hs.yaml', 'utf8'),
  robin: smallKit('robin'),
  siskin: smallKit('siskin', '220k'),
});
const parts = join(folder, 'parts.yaml');
writeFileSync(parts, list('410'));

interface Told {
  readonly kits: readonly {
    readonly kit: string;
    readonly became: string;
    readonly substitutions: readonly string[];
    readonly figures: readonly {
      readonly position: string;
      readonly what: string;
      readonly values: readonly [number, number];
    }[];
  }[];
}
interface Loads {
  readonly positions: readonly {
    readonly pickups: Readonly<Record<string, { readonly dcLoad: number; readonly signalLoad: number }>>;
  }[];
}

const file = (name: string): string => readFileSync(join(folder, 'out', name), 'utf8');
const drawing = (id: string): Drawing => read(file(`${id}.svg`));
const markOf = (id: string): string => /data-revision="([^"]*)"/.exec(file(`${id}.svg`))?.[1] ?? '';
const loads = (id: string): Loads => JSON.parse(file(`${id}-loads.json`)) as Loads;
const build = () => buildByCli(folder, ['--workers', '1']);

const before: { out: Readonly<Record<string, string>>; marks: Readonly<Record<string, string>> } = {
  out: {},
  marks: {},
};
let told: Told = { kits: [] };

beforeAll(async () => {
  expect(await build()).toMatchObject({ code: 0, error: '' });
  before.out = outOf(folder);
  before.marks = Object.fromEntries(AFFECTED.map((id) => [id, markOf(id)]));
  writeFileSync(parts, list('no'));
  const said = await run(addChanges, 'changes', folder, '--json', '--check');
  expect(said.status).toBe(1);
  told = JSON.parse(said.stdout) as Told;
});

/** Two resistors in parallel. */
const parallel = (a: number, b: number): number => 1 / (1 / a + 1 / b);

describe('before the build', () => {
  it('the kits affected are listed, and no other', () => {
    expect(told.kits.map(({ kit, became }) => [kit, became])).toEqual([
      ['robin', 'changed'],
      ['siskin', 'same'],
      ['wren-hs', 'changed'],
    ]);
    for (const { kit, substitutions } of told.kits)
      expect(substitutions, kit).toEqual(
        kit === 'siskin' ? [] : [expect.stringContaining('470 kΩ (R-470K) is replaced by 510 kΩ (R-510K)')],
      );
  });

  it('with the loads and the readings that they will have', () => {
    const moved = (id: string, what: RegExp) =>
      told.kits.find(({ kit }) => kit === id)?.figures.filter((one) => what.test(one.what)) ?? [];
    // The pad alone, and the pad beside a volume control of 500 kΩ.
    expect(moved('robin', /DC load/).map(({ values }) => values.map((value) => Math.round(value)))).toEqual([
      [470e3, 510e3],
    ]);
    const wren = moved('wren-hs', /Bridge, DC load/);
    expect(wren).toHaveLength(2);
    for (const { values } of wren) {
      expect(values[0]).toBeCloseTo(parallel(500e3, 470e3), -1);
      expect(values[1]).toBeCloseTo(parallel(500e3, 510e3), -1);
    }
    // A meter across the jack, volume on 10, finished: the volume control's track, the pad and the winding of 6.4 kΩ. Before the pickups are
    // soldered the pad is not there for the meter: its lug waits for the pickup's lead.
    const read = moved('wren-hs', /^reading: .*volume on 10/).filter(
      ({ position, what }) => position === 'selector 1' && /jack|tip/i.test(what),
    );
    expect(read.map(({ what }) => what)).toEqual(['reading: tip to sleeve, volume on 10, finished']);
    expect(read[0]?.values[0]).toBeCloseTo(parallel(parallel(500e3, 470e3), 6400), -1);
    expect(read[0]?.values[1]).toBeCloseTo(parallel(parallel(500e3, 510e3), 6400), -1);
    expect(moved('wren-hs', /resonance|height of the peak/).length).toBeGreaterThan(0);
  });

  it('nothing is made by asking', () => expect(outOf(folder)).toEqual(before.out));

  it('check tells each substitution, with its place', async () => {
    const { stdout, stderr, status } = await run(addCheck, 'check', folder);
    const all = `${stdout}${stderr}`;
    expect(status).toBe(0);
    expect(all.match(/470 kΩ \(R-470K\)/g)).toHaveLength(2);
    expect(all).toMatch(/wren-hs\.yaml:\d+:\d+/);
  });
});

describe('after the build', () => {
  beforeAll(async () => {
    const { code, out } = await build();
    expect([code, out]).toEqual([0, expect.stringContaining('2 made')]);
    expect(out.split('\n').filter((line) => line.startsWith('replaced'))).toEqual(
      ['robin: Pad', 'wren-hs: Bridge pad'].map(
        (part) => `replaced  ${part}: 470 kΩ (R-470K) is replaced by 510 kΩ (R-510K)`,
      ),
    );
  });

  it('a kit that is not affected keeps its bytes; the others have other drawings', () => {
    const out = outOf(folder);
    const changed = Object.keys(out).filter((name) => out[name] !== before.out[name]);
    expect(changed).toEqual([
      'robin-loads.json',
      'robin.svg',
      'solderleaf-manifest.json',
      'wren-hs-loads.json',
      'wren-hs.svg',
    ]);
  });

  it.each(AFFECTED)('%s: value, bands, card, notes and mark', (id) => {
    const { parts: drawn, cards, texts } = drawing(id);
    const pad = drawn.find(({ name }) => name === 'pad');
    if (!pad) throw new Error('no pad');
    expect(meantBy(bandsOf(pad))).toEqual({ ohms: 510e3, tolerance: '1%' });
    const words = [...texts, ...drawn.flatMap((one) => one.texts)].map((one) => one.words).join('\n');
    expect(words).toContain('510 kΩ');
    const shown = JSON.stringify(cards);
    const dc = parallel(id === 'robin' ? Number.POSITIVE_INFINITY : 500e3, 510e3);
    expect(shown).toContain(`${Math.round(dc / 1000)} kΩ`);
    expect(file(`${id}.svg`)).toContain('470 kΩ (R-470K) is replaced by 510 kΩ (R-510K)');
    expect(markOf(id)).toMatch(/^\w{4}-\w{4}$/);
    expect(markOf(id)).not.toBe(before.marks[id]);
  });

  it('the loads are those of the resistor that is in the bag', () => {
    expect(loads('robin').positions[0]?.pickups.neck?.dcLoad).toBeCloseTo(510e3, -1);
    for (const position of [0, 1])
      expect(loads('wren-hs').positions[position]?.pickups.bridge?.dcLoad).toBeCloseTo(
        parallel(500e3, 510e3),
        -1,
      );
  });

  it('a mark finds its kit, and so does the one before, which says what the drawings bear now', async () => {
    const now = await run(addWhich, 'which', markOf('robin'), folder);
    expect([now.status, now.stdout]).toEqual([0, expect.stringContaining('described in kits/robin.yaml')]);
    const old = await run(addWhich, 'which', before.marks.robin ?? '', folder);
    expect([old.status, old.stdout]).toEqual([
      0,
      `${before.marks.robin} is an earlier revision of robin (S, robin; described in kits/robin.yaml); its drawings now bear ${markOf('robin')}\n`,
    ]);
  });

  it('nothing is left to change, and what is ordered is what is in stock', async () => {
    expect((await run(addChanges, 'changes', folder, '--check')).status).toBe(0);
    const { stdout } = await run(addOrder, 'order', folder, 'robin=20', 'siskin=3');
    const bought = stdout.split('\n').filter((line) => /^\s*R-\w+ {2}/.test(line));
    expect(bought.map((line) => /R-\w+/.exec(line)?.[0])).toEqual(['R-220K', 'R-510K']);
    expect(stdout).toContain('R-510K in place of R-470K: robin (pad)');
  });

  it('as soon as 470 kΩ is in stock again, everything is as it was', async () => {
    writeFileSync(parts, list('410'));
    expect(await build()).toMatchObject({ code: 0, out: expect.stringContaining('2 from the cache') });
    expect(outOf(folder)).toEqual(before.out);
  });
});
