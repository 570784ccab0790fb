/** What has changed since a catalogue was built: the figures, what is heard of them, and the page that shows it. */
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DOMParser } from '@xmldom/xmldom';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { solveLoads, solveResponse } from '../../src/analyse/index.ts';
import { compareKit } from '../../src/catalogue/changes/compare.ts';
import { figuresOf, type KitFigures, type Shape } from '../../src/catalogue/changes/figures.ts';
import { changesPage } from '../../src/catalogue/changes/page.ts';
import { figuresFile, readFigures, saveFigures } from '../../src/catalogue/changes/store.ts';
import { addChanges } from '../../src/commands/changes.ts';
import { addDraw } from '../../src/commands/draw.ts';
import { addWhich } from '../../src/commands/which.ts';
import { loadKit } from '../../src/files/load.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { run } from '../commands/run.ts';
import { buildHere, clearWorkshops, newWorkshop, putKit, smallKit } from './workshop.ts';

const WREN = readFileSync('samples/wren-hs.yaml', 'utf8');
const changes = (...args: readonly string[]) => run(addChanges, 'changes', ...args);

let root = '';
/** A workshop of some kits. */
function workshop(name: string, kits: Readonly<Record<string, string>>) {
  const folder = join(root, name);
  mkdirSync(join(folder, 'kits'), { recursive: true });
  writeFileSync(join(folder, 'solderleaf.yaml'), 'kits: [kits]\n');
  const put = (id: string, text: string): void => writeFileSync(join(folder, 'kits', `${id}.yaml`), text);
  for (const [id, text] of Object.entries(kits)) put(id, text);
  return { folder, put };
}
const small = (id: string, title = 'A kit'): string =>
  `extends: circuit/s-volume\nkit: ${id}\ntitle: ${JSON.stringify(title)}\n`;

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'changes-'));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

const solved = async (file: string) => {
  const { kit } = await loadKit(file);
  if (!kit) throw new Error(file);
  const circuit = buildCircuit(kit);
  return { loads: solveLoads(circuit), response: solveResponse(circuit, { points: 1 }).states };
};

interface Told {
  readonly kits: readonly {
    readonly kit: string;
    readonly became: string;
    readonly heard: boolean;
    readonly drawing: boolean;
    readonly problems: readonly { readonly code: string }[];
    readonly figures: readonly {
      readonly position: string;
      readonly what: string;
      readonly values: readonly [number, number];
      readonly heard?: boolean;
    }[];
  }[];
}
const told = (text: string): Told => JSON.parse(text) as Told;

describe('a resistor that is replaced', () => {
  it('moves just the figures that solving both kits gives, and no others', async () => {
    const { folder, put } = workshop('resistor', { 'wren-hs': WREN, other: small('other') });
    const file = join(folder, 'kits', 'wren-hs.yaml');
    expect((await changes(folder, '--save')).status).toBe(0);
    const none = await changes(folder, '--check');
    expect([none.stdout, none.status]).toEqual(['2 kits: 2 unchanged\n', 0]);
    // A comment is no change.
    put('wren-hs', `# the same\n${WREN}`);
    expect((await changes(folder, '--check')).status).toBe(0);
    const before = await solved(file);
    put('wren-hs', WREN.replace('470k', '510k'));
    const after = await solved(file);
    const { stdout, status } = await changes(folder, '--json', '--check');
    expect(status).toBe(1);
    const { kits } = told(stdout);
    expect(kits.map(({ kit, became }) => [kit, became])).toEqual([
      ['other', 'same'],
      ['wren-hs', 'changed'],
    ]);
    const figures = kits[1]?.figures ?? [];
    const valuesOf = (what: string) => figures.filter((one) => one.what === what);
    // Two resistors in parallel: 500 kΩ of the volume pot, and the pad.
    const parallel = (a: number, b: number): number => 1 / (1 / a + 1 / b);
    const dc = valuesOf('Bridge, DC load');
    expect(dc.map(({ position }) => position)).toEqual(['selector 1', 'selector 2']);
    for (const { values } of dc) {
      expect(values[0]).toBeCloseTo(parallel(500e3, 470e3), -1);
      expect(values[1]).toBeCloseTo(parallel(500e3, 510e3), -1);
    }
    // The neck alone, in position 3, does not see it.
    expect(
      figures.filter(({ position, what }) => position === 'selector 3' && /load|resonance/.test(what)),
    ).toEqual([]);
    for (const [key, words] of [
      ['dcLoad', 'DC load'],
      ['signalLoad', 'signal load'],
    ] as const)
      for (const [i, state] of after.loads.entries())
        for (const [k, pickup] of state.pickups.entries()) {
          const old = before.loads[i]?.pickups[k]?.[key] ?? 0;
          const label = pickup.pickup === 'neck' ? 'Neck' : 'Bridge';
          const found = valuesOf(`${label}, ${words}`).filter(({ position }) =>
            position.endsWith(`${i + 1}`),
          );
          const moved = Math.abs(old / pickup[key] - 1) > 1e-3;
          expect(found.length, `${label} ${words} in ${i + 1}`).toBe(moved ? 1 : 0);
          if (moved) expect(found[0]?.values[1]).toBeCloseTo(pickup[key], -1);
        }
    const peak = (one: typeof before): number =>
      one.response[0]?.pickups.find(({ pickup }) => pickup === 'bridge')?.shape.resonance?.height ??
      Number.NaN;
    const [height] = valuesOf('Bridge, height of the peak');
    expect(height?.values[0]).toBeCloseTo(peak(before), 6);
    expect(height?.values[1]).toBeCloseTo(peak(after), 6);
    expect(height?.heard).toBe(Math.abs(peak(before) - peak(after)) >= 1);
  });
});

describe('what is told of a kit', () => {
  it('new and removed kits, rules that it breaks now, and errors', async () => {
    const { folder, put } = workshop('rules', { a: small('a'), b: small('b') });
    await changes(folder, '--save');
    rmSync(join(folder, 'kits', 'b.yaml'));
    put('c', small('c'));
    // A second resistor from hot to ground that nothing is connected to is no wiring at all: an error.
    put('a', `${small('a')}parts: { extra: { kind: resistor, value: 1k } }\n`);
    const { stdout, status } = await changes(folder, '--json');
    expect(status).toBe(1);
    const { kits } = told(stdout);
    expect(kits.map(({ kit, became }) => [kit, became])).toEqual([
      ['a', 'failed'],
      ['c', 'new'],
      ['b', 'removed'],
    ]);
    expect(kits[0]?.problems.length).toBeGreaterThan(0);
    // It has no figures now, and none that changed.
    expect(kits[0]).toMatchObject({ figures: [], heard: false, solved: [], substitutions: [] });
    const said = await changes(folder);
    expect(said.stdout).not.toMatch(/a player|heard|sounding|none|price/);
    expect(said.stdout).toMatch(
      /^a: has errors, and cannot be drawn .*\n {2}A kit\n( {2}new error: .*\n)+\n/m,
    );
    expect(said.stdout).toContain('3 kits: 1 with errors, 1 new, 1 no longer in the catalogue');
    // What cannot be drawn is not kept, so that it is still compared with what customers have.
    const kept = readFigures(folder, 'a');
    await changes(folder, '--save');
    expect(readFigures(folder, 'a')).toEqual(kept);
    expect(readFigures(folder, 'c')?.kit).toBe('c');
  });

  it('a kit that is gone is told of until it is forgotten: by a build that prunes, or with --save', async () => {
    for (const forget of [
      (folder: string) => changes(folder, '--save'),
      (folder: string) => buildHere(folder, { prune: true }),
    ]) {
      const folder = newWorkshop({ a: smallKit('a'), b: smallKit('b') });
      await buildHere(folder);
      const figures = readFigures(folder, 'b');
      rmSync(join(folder, 'kits', 'b.yaml'));
      writeFileSync(figuresFile(folder, 'mine'), '{ "kit": "mine" }');
      // A share knows nothing of the others; one with errors may be the one that is missing.
      await buildHere(folder, { prune: true, shard: { index: 1, count: 2 } });
      await buildHere(folder, { prune: true, shard: { index: 2, count: 2 } });
      putKit(folder, 'c', 'kit: B\n');
      await forget(folder);
      expect(readFigures(folder, 'b')).toEqual(figures);
      expect((await changes(folder)).stdout).toContain('b: no longer in the catalogue');
      rmSync(join(folder, 'kits', 'c.yaml'));
      await forget(folder);
      expect(readFigures(folder, 'b')).toBeUndefined();
      expect(readFigures(folder, 'a')?.kit).toBe('a');
      // What this program did not store is left.
      expect(readFileSync(figuresFile(folder, 'mine'), 'utf8')).toBe('{ "kit": "mine" }');
      expect((await changes(folder)).stdout).not.toMatch(/^b:/m);
    }
  });

  it('a label changes the drawing, and nothing that is heard', async () => {
    const { folder, put } = workshop('label', { a: small('a') });
    await changes(folder, '--save');
    put('a', small('a', 'Another title'));
    const [one] = told((await changes(folder, '--json')).stdout).kits;
    expect(one).toMatchObject({ became: 'changed', drawing: true, heard: false, figures: [] });
    expect((await changes(folder)).stdout).toContain('  the drawing changes\n');
  });

  it('a record that was tampered with or is of another version counts for none', () => {
    const figures: KitFigures = { ...plain(), kit: 'k' };
    const folder = join(root, 'stored');
    expect(saveFigures(folder, figures)).toBe(true);
    expect(readFigures(folder, 'k')).toEqual(figures);
    for (const text of ['', '{', '[]', JSON.stringify({ ...figures, version: 2 }), '{"version":1}']) {
      writeFileSync(figuresFile(folder, 'k'), text);
      expect(readFigures(folder, 'k')).toBeUndefined();
    }
    expect(readFigures(folder, 'x')).toBeUndefined();
  });
});

const shape = (more: Partial<Shape> = {}): Shape => ({
  plateau: -1,
  resonance: 4000,
  height: 4,
  cutoff: 8000,
  ...more,
});

/** A kit of one pickup in one position. */
function plain(one: Shape = shape(), more: Partial<KitFigures> = {}): KitFigures {
  const load = { dcLoad: 250e3, signalLoad: 125e3, totalLoad: 110e3 };
  const state = {
    position: 'always',
    sounding: ['Neck'],
    pickups: [{ pickup: 'neck', label: 'Neck', ...load, shape: one }],
    together: [{ output: '', shape: one }],
    readings: [],
  };
  return {
    version: 1,
    kit: 'k',
    title: 'K',
    shown: '1',
    mark: null,
    states: [state],
    price: null,
    substitutions: [],
    problems: [],
    ...more,
  };
}

describe('whether a player hears it', () => {
  // The thresholds are from memory: see HEARD in compare.ts.
  it.each<[string, Partial<Shape>, readonly (boolean | undefined)[]]>([
    ['0.9 dB of level', { plateau: -1.9 }, [false]],
    ['1 dB of level', { plateau: -2 }, [true]],
    ['a peak 1 dB lower', { height: 3 }, [true]],
    ['a peak 0.9 dB lower', { height: 3.1 }, [false]],
    ['a resonance 4.9 % higher', { resonance: 4196 }, [false]],
    ['a resonance 5 % higher', { resonance: 4200 }, [true]],
    ['treble that ends 6 % lower', { cutoff: 7520 }, [true]],
    ['a high peak that is gone', { resonance: null, height: null }, [true, true]],
    ['what reads the same', { resonance: 4000.1 }, []],
  ])('%s', (_, more, heard) => {
    const { figures } = compareKit(plain(), plain(shape(more)));
    expect(figures.map((one) => one.heard)).toEqual(heard);
  });

  it('other places of parts are told by the mark, where both are known', () => {
    const marked = (mark: string | null) => plain(shape(), { mark });
    expect(compareKit(marked('2222-2222'), marked('3333-3333'))).toMatchObject({
      became: 'changed',
      drawing: true,
    });
    expect(compareKit(marked('2222-2222'), marked(null)).became).toBe('same');
    expect(compareKit(marked(null), marked('3333-3333')).became).toBe('same');
  });

  it('a peak of less than that may come and go', () => {
    const low = plain(shape({ height: 0.6 }));
    const gone = plain(shape({ resonance: null, height: null }));
    expect(compareKit(low, gone).heard).toBe(false);
  });
});

describe('after a build', () => {
  afterAll(clearWorkshops);

  it('nothing has changed until something does, and the mark is that of the drawing', async () => {
    const folder = newWorkshop({ robin: smallKit('robin'), siskin: smallKit('siskin') });
    await buildHere(folder);
    expect((await changes(folder, '--check')).status).toBe(0);
    const drawn = readFileSync(join(folder, 'out', 'robin.svg'), 'utf8');
    const mark = / data-revision="([^"]*)"/.exec(drawn)?.[1];
    expect(readFigures(folder, 'robin')?.mark).toBe(mark);
    const found = await run(addWhich, 'which', mark ?? '', folder);
    expect(found.stdout).toContain('described in kits/robin.yaml');
    putKit(folder, 'robin', smallKit('robin', '220k'));
    const { stdout, status } = await changes(folder, '--check');
    expect(status).toBe(1);
    expect(stdout).toMatch(
      /^robin: changed[\s\S]*Neck, DC load +470 kΩ +220 kΩ[\s\S]*\n2 kits: 1 changed, 1 unchanged/,
    );
    // Taken from the cache, what a kit was is known all the same.
    await buildHere(folder);
    putKit(folder, 'robin', smallKit('robin'));
    expect((await changes(folder, '--check')).status).toBe(1);
    expect(await buildHere(folder)).toMatchObject({ found: 1, made: 0 });
    expect((await changes(folder, '--check')).status).toBe(0);
    expect(readFigures(folder, 'robin')?.mark).toBe(mark);
  });
});

describe('prices, substitutions and problems', () => {
  const price = (amount: number, without: string[] = []) => ({ amount, currency: 'EUR', without });

  it('a price in words, and what has none', () => {
    const change = compareKit(
      plain(shape(), { price: price(12.3) }),
      plain(shape(), { price: price(12.6, ['jack']) }),
    );
    expect(change.price).toEqual(['12.30 EUR', '12.60 EUR']);
    expect(change.unpriced).toBe(1);
    expect(change.became).toBe('changed');
  });

  it('only what is new or gone is told, whatever figures stand in it', () => {
    const problem = (message: string) => ({ severity: 'warning', code: 'load', message });
    const before = plain(shape(), { problems: [problem('Neck is 31 % off'), problem('Tone does nothing')] });
    const after = plain(shape(), {
      problems: [problem('Neck is 36.5 % off'), problem('Bridge is 3 % off')],
      substitutions: ['pad: R-470K is replaced by R-510K'],
    });
    const { problems, solved: gone, substitutions } = compareKit(before, after);
    expect(problems.map(({ message }) => message)).toEqual(['Bridge is 3 % off']);
    expect(gone.map(({ message }) => message)).toEqual(['Tone does nothing']);
    expect(substitutions).toEqual(['pad: R-470K is replaced by R-510K']);
  });

  it('a kit read with a parts list has the sum of its prices', async () => {
    const loaded = await loadKit('samples/wren-hs.yaml');
    const { kit } = loaded;
    if (!kit) throw new Error('no kit');
    const coded = kit.parts.map((part, i) => (i < 3 ? { ...part, code: `C${i}` } : part));
    const list = {
      currency: 'EUR',
      items: [0.1, 0.2].map((amount, i) => ({ code: `C${i}`, price: amount })),
    };
    const listed = { ...loaded, kit: { ...kit, parts: coded, list } } as unknown as typeof loaded;
    expect(figuresOf(listed).price).toEqual({
      amount: 0.3,
      currency: 'EUR',
      without: kit.parts.slice(2).map(({ name }) => name),
    });
    expect(figuresOf(loaded).price).toBeNull();
  });
});

describe('the page', () => {
  const HOSTILE = '</title><script>alert(1)</script><img src=x onerror="alert(2)">&amp; " \' -->';

  it('shows titles as they are written, runs nothing, and holds all that it needs', async () => {
    const { folder, put } = workshop('page', { a: small('a', HOSTILE), b: small('b') });
    await changes(folder, '--save');
    await run(addDraw, 'draw', join(folder, 'kits'), '--effort', '0', '--out', join(folder, 'out'));
    put('a', `${small('a', HOSTILE)}parts: { volume: { value: 300k } }\n`);
    const html = join(folder, 'changes.html');
    const { stdout, status } = await changes(folder, '--html', html);
    expect([status, stdout]).toEqual([0, expect.stringContaining(`written   ${html}`)]);
    const text = readFileSync(html, 'utf8');
    const errors: string[] = [];
    const page = new DOMParser({ onError: (_, message) => void errors.push(message) }).parseFromString(
      text,
      'text/html',
    );
    const all = (tag: string) => [...page.getElementsByTagName(tag)];
    expect(errors).toEqual([]);
    expect(all('script')).toHaveLength(0);
    expect(
      all('*')
        .flatMap((one) => [...one.attributes])
        .filter(({ name }) => /^on|^style$/i.test(name)),
    ).toEqual([]);
    expect(all('h2').map((one) => one.textContent)).toEqual([`${HOSTILE} (a, changed)`]);
    // The policy names the only style by its hash, which is worked out here from what stands in the page.
    const style = /<style>([\s\S]*?)<\/style>/.exec(text)?.[1] ?? '';
    const policy =
      all('meta')
        .find((one) => one.getAttribute('http-equiv'))
        ?.getAttribute('content') ?? '';
    expect(policy).toContain(`style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'`);
    expect(policy).toMatch(/^default-src 'none'; img-src data:;/);
    const sources = all('img').map((one) => one.getAttribute('src') ?? '');
    const svgs = sources.map((src) =>
      Buffer.from(src.replace('data:image/svg+xml;base64,', ''), 'base64').toString('utf8'),
    );
    expect(svgs[0]).toBe(readFileSync(join(folder, 'out', 'a.svg'), 'utf8'));
    expect(svgs[0]).not.toContain('300 kΩ');
    expect(svgs[1]).toContain('300 kΩ');
    expect(svgs).toHaveLength(2);
    const marks = svgs.map((svg) => / data-revision="([^"]*)"/.exec(svg)?.[1]);
    expect(stdout).toContain(`the drawing changes; revision mark ${marks[0]}, now ${marks[1]}`);
  }, 120_000);

  it('never writes over what is not its own', async () => {
    const { folder } = workshop('foreign', { a: small('a') });
    const html = join(folder, 'mine.html');
    writeFileSync(html, '<p>mine</p>');
    const { status, stderr } = await changes(folder, '--html', html);
    expect([status, stderr]).toEqual([1, expect.stringContaining('is not a page of changes')]);
    expect(readFileSync(html, 'utf8')).toBe('<p>mine</p>');
  });

  it('without a change says so', () => {
    const page = changesPage([{ changes: compareKit(plain(), plain()) }]);
    expect(page).toContain('1 kit: 1 unchanged.');
    expect(page).not.toContain('<article');
  });
});
