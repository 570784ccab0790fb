/**
 * On paper all capitals are high enough to read, chips and captions too: measured from the written file by the check's own reader,
 * which knows nothing of how a sheet was composed.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { remembered } from '../../src/common/remembered.ts';
import { CAP_HEIGHT } from '../../src/common/text.ts';
import { readKit } from '../../src/describe/read.ts';
import { type Prepared, sheetsOf } from '../../src/draw/compose.ts';
import type { Page } from '../../src/draw/head.ts';
import { GOOD_CAPITALS } from '../../src/draw/sheets.ts';
import { findArrangement, findPage } from '../../src/files/layouts.ts';
import { inspect, smallestType } from '../../src/inspect/index.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { placedOnce } from '../tools/placements.ts';

const kitsIn = (folder: string): readonly string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => `${folder}/${name}`);

async function placed(file: string, steps?: number): Promise<Prepared> {
  const { kit } = readKit(readFileSync(file, 'utf8'), file);
  const arrangement = kit && findArrangement(kit.arrangement);
  if (!kit || !arrangement || typeof arrangement === 'string') throw new Error(`${file} does not read`);
  return prepare(kit, arrangement, steps === undefined ? placedOnce : { effort: { steps, seed: 1 } });
}

const pageOf = (name: string): Page => {
  const page = findPage(name);
  if (!page) throw new Error(`no page ${name}`);
  return page;
};

/** The sheets of a kit on pages by their names, each drawn once. */
const drawnOn = remembered((_: Prepared) => new Map<string, ReturnType<typeof drawOn>>());
const drawOn = (prepared: Prepared, page: Page) =>
  sheetsOf(prepared, { page }).map((aspect) => {
    const { svg, name } = render(prepared, aspect);
    return { svg, name, aspect, capitals: (smallestType(svg) ?? 0) * CAP_HEIGHT };
  });

/** Every sheet of a kit on a page, with the height of its smallest capitals, millimetres. */
function sheetsOn(prepared: Prepared, page: string): ReturnType<typeof drawOn> {
  const drawn = drawnOn(prepared);
  const sheets = drawn.get(page) ?? drawOn(prepared, pageOf(page));
  drawn.set(page, sheets);
  return sheets;
}

const least = (prepared: Prepared, page: string): number =>
  Math.min(...sheetsOn(prepared, page).map(({ capitals }) => capitals));

/**
 * What a kit reaches on a page, millimetres, where its drawing is too large for good type: with the drawing alone on the page no more
 * could be had, but for what title and key take.
 */
const alone = (prepared: Prepared, page: Page): number => {
  const { svg } = render(prepared, { page, only: ['drawing'] });
  return (smallestType(svg) ?? 0) * CAP_HEIGHT;
};

/** Title and key take some of the height where a drawing fills the page by itself: so much of its type is left. */
const LEFT = 0.9;

/** What is good on a page, or where the drawing alone would not reach it, nearly what that would. */
const hopedFor = (prepared: Prepared, page: string, good: number): number =>
  Math.min(good, LEFT * alone(prepared, pageOf(page)));

describe('samples', () => {
  it.each(kitsIn('samples'))(
    '%s',
    async (file) => {
      const prepared = await placed(file);
      for (const page of ['a4', 'a4-landscape', 'letter', 'letter-landscape'])
        expect(least(prepared, page), page).toBeGreaterThanOrEqual(GOOD_CAPITALS);
      for (const name of ['a5', 'a5-landscape']) {
        expect(least(prepared, name), name).toBeGreaterThanOrEqual(hopedFor(prepared, name, 1.6));
        expect(least(prepared, name), name).toBeGreaterThan(1.35);
      }
      for (const name of ['a4', 'a5'])
        for (const { svg, aspect } of sheetsOn(prepared, name)) {
          const found = inspect(svg, prepared.circuit.kit).filter(({ rule }) => rule !== 'small-type');
          expect(found, `${name} ${aspect.sheet ?? 1}`).toEqual([]);
        }
    },
    120_000,
  );
});

describe('kits of the bench on A4', () => {
  it.each(kitsIn('tests/bench/kits'))(
    '%s',
    async (file) => {
      const prepared = await placed(file, 0);
      const sheets = sheetsOn(prepared, 'a4');
      const reached = Math.min(...sheets.map(({ capitals }) => capitals));
      expect(reached).toBeGreaterThanOrEqual(hopedFor(prepared, 'a4', GOOD_CAPITALS));
      // Cards by themselves have good type always.
      for (const { capitals } of sheets.slice(1)) expect(capitals).toBeGreaterThanOrEqual(GOOD_CAPITALS);
      for (const { svg } of sheets)
        expect(inspect(svg, prepared.circuit.kit).filter(({ weight }) => weight === 'misleading')).toEqual(
          [],
        );
    },
    120_000,
  );
});

describe('a page that may be turned', () => {
  it('lies as it prints larger, and one that may not lies as it is', async () => {
    const prepared = await placed('samples/heron-ss.yaml', 0);
    const sizeOf = (page: Page): string =>
      / width="\S+" height="\S+"/.exec(render(prepared, { page }).svg)?.[0] ?? '';
    const { turns, ...fixed } = pageOf('a4');
    expect(turns).toBe(true);
    expect(sizeOf({ ...fixed, turns: true })).toBe(' width="297mm" height="210mm"');
    expect(sizeOf(fixed)).toBe(' width="210mm" height="297mm"');
    // What is read back is fixed, and its second sheet is the same however it was asked for.
    const [, second] = sheetsOf(prepared, { page: pageOf('a5') });
    if (!second) throw new Error('one sheet');
    expect(second.page?.turns).toBeUndefined();
    expect(render(prepared, { page: pageOf('a5'), sheet: 2 })).toEqual(render(prepared, second));
  });
});
