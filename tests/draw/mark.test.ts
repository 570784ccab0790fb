/** The revision mark: what it hangs on, and where it stands. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readKit } from '../../src/checked.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { type Aspect, type Prepared, sheetsOf } from '../../src/draw/compose.ts';
import { isMark, markOfTexts, parseRevision, revisionWords, tidyMark } from '../../src/draw/mark.ts';
import { findArrangement, findPage } from '../../src/files/layouts.ts';
import { inspect } from '../../src/inspect/index.ts';
import { prepare, render, renderInline } from '../../src/pipeline.ts';

const TEXT = readFileSync('samples/wren-hs.yaml', 'utf8');

const kitOf = (text: string): Kit => {
  const { kit, diagnostics } = readKit(text, 'kit.yaml');
  if (!kit) throw new Error(JSON.stringify(diagnostics));
  return kit;
};

const placed = (kit: Kit): Promise<Prepared> => {
  const arrangement = findArrangement(kit.arrangement);
  if (typeof arrangement === 'string') throw new Error(arrangement);
  return prepare(kit, arrangement, { effort: { steps: 0, seed: 1 } });
};

/** What the file says and what is printed, read without the program's own reader. */
const readFrom = (svg: string) => ({
  written: / data-revision="([^"]*)"/.exec(/<svg[^>]*>/.exec(svg)?.[0] ?? '')?.[1],
  printed: [...svg.matchAll(/<text[^>]*>(Rev [^<]*)<\/text>/g)].map(([, words]) => words),
});

const markIn = async (text: string): Promise<string> =>
  readFrom(render(await placed(kitOf(text))).svg).written ?? 'none';

let wren: Prepared;
let own = '';
beforeAll(async () => {
  wren = await placed(kitOf(TEXT));
  own = readFrom(render(wren).svg).written ?? 'none';
}, 120_000);

const page = (name: string) => {
  const found = findPage(name);
  if (!found) throw new Error(name);
  return found;
};

/** Drawings of every sort. */
const aspects = (): readonly Aspect[] => [
  {},
  { view: 'component-side' },
  { theme: 'dark' },
  { theme: 'print' },
  { lines: 'signal' },
  { state: 1 },
  { step: 2 },
  { step: 6 },
  { only: ['drawing'] },
  { only: ['key'] },
  { only: ['cards'] },
  { only: ['drawing', 'key'] },
  { step: 3, only: ['checklist'] },
  { width: 320 },
  { width: 900 },
  { width: 320, only: ['key'] },
  { page: page('a4') },
  { page: page('a5') },
  { page: page('a4'), step: 3 },
  { page: page('letter'), only: ['drawing'] },
  { page: { width: 200, height: 150, margin: 3 } },
];

describe('what it is', () => {
  it('eight characters of SHA-256, by another implementation of that', () => {
    for (const texts of [[''], ['a'], ['a', 'b'], ['ab'], ['Ω – 470 k']]) {
      const hex = createHash('sha256').update(JSON.stringify(texts)).digest('hex').slice(0, 16);
      const letters = '23456789ACDEFHJKMNPQRTVWXY';
      let [rest, said] = [BigInt(`0x${hex}`), ''];
      for (let i = 0; i < 8; i++) {
        said += letters[Number(rest % 26n)];
        rest /= 26n;
      }
      expect(markOfTexts(texts)).toBe(`${said.slice(0, 4)}-${said.slice(4)}`);
    }
  });

  it('has no characters that look alike, and is read from what somebody typed', () => {
    const marks = Array.from({ length: 500 }, (_, i) => markOfTexts([String(i)]));
    expect(new Set(marks).size).toBe(500);
    for (const mark of marks) {
      expect(mark).toMatch(/^[^01OILSZBGU]{4}-[^01OILSZBGU]{4}$/);
      expect(isMark(mark)).toBe(true);
      expect(tidyMark(mark)).toBe(mark);
      expect(tidyMark(` rev ${mark.toLowerCase().replace('-', ' ')} `)).toBe(mark);
    }
    expect(tidyMark('o8sz-gbu1')).toBe('Q852-68V7');
    for (const wrong of ['', '7K3Q9DXM', '7K3Q-9DX', '7k3q-9dxm', '7K3O-9DXM'])
      expect(isMark(wrong)).toBe(false);
  });

  it('words with a date are read back, others are not', () => {
    for (const one of [{ mark: own }, { mark: own, date: '2026-11-30' }])
      expect(parseRevision(revisionWords(one))).toEqual(one);
    for (const words of ['', own, `Rev ${own} `, `Rev ${own}, today`, 'Rev 0000-0000'])
      expect(parseRevision(words)).toBeUndefined();
  });
});

describe('what it hangs on', () => {
  it('not on how the description is written', async () => {
    const parsed = TEXT.replaceAll('\n', '\r\n').replaceAll(/^( *)- \{/gm, '$1-   {');
    expect(await markIn(`# a comment\n${parsed}\n# another\n`)).toBe(own);
    expect(await markIn(TEXT.replace('470k', '470000'))).toBe(own);
  });

  it.each([
    ['a value', '470k', '510k'],
    ['a label', 'label: Volume', 'label: Master'],
    ['a colour', /colour: PK/, 'colour: GY'],
    ['the title', /title: .*/, 'title: Another'],
    ['the arrangement', 'arrangement: plate-row', 'arrangement: free-flow'],
    ['the hand', /^kit:/m, 'hand: left\nkit:'],
  ])('on %s', async (_, from, to) => {
    const changed = TEXT.replace(from, to);
    expect(changed).not.toBe(TEXT);
    const mark = await markIn(changed);
    expect(isMark(mark)).toBe(true);
    expect(mark).not.toBe(own);
  });

  it('on what only a step says', async () => {
    const longer = TEXT.replace('length: 180mm', 'length: 190mm');
    expect(longer).not.toBe(TEXT);
    expect(await markIn(longer)).not.toBe(own);
  });

  it('not on which of its drawings it is, nor on a date', () => {
    for (const [i, aspect] of aspects().entries()) {
      const date = i % 2 === 0 ? undefined : '2026-11-30';
      for (const sheet of sheetsOf(wren, { ...aspect, ...(date ? { date } : {}) })) {
        const words = `Rev ${own}${date ? `, ${date}` : ''}`;
        expect(readFrom(render(wren, sheet).svg)).toEqual({ written: own, printed: [words] });
      }
    }
    expect(readFrom(renderInline(wren)).written).toBe(own);
  });
});

describe('on the sheet', () => {
  it('overlaps nothing, is no smaller than other type may be, and lies on the paper', () => {
    for (const aspect of aspects())
      for (const sheet of sheetsOf(wren, { ...aspect, date: '2026-11-30' })) {
        const { svg, name } = render(wren, sheet);
        // Whatever touches it, and it on the page; type in the drawing may be small on a small page.
        const found = inspect(svg, wren.circuit.kit).filter(
          ({ rule, message }) => rule !== 'small-type' || message.includes('Rev '),
        );
        expect(found, name).toEqual([]);
      }
  });

  it('another mark than the wiring gives is found, even where file and print agree', () => {
    const { svg } = render(wren);
    expect(inspect(svg, wren.circuit.kit)).toEqual([]);
    const forged = svg.replaceAll(own, '2222-2222');
    expect(inspect(forged, wren.circuit.kit).map(({ rule }) => rule)).toContain('differs-from-kit');
    const [printed, written] = [
      svg.replace(`Rev ${own}`, 'Rev 2222-2222'),
      svg.replace(` data-revision="${own}"`, ''),
    ];
    for (const one of [printed, written]) expect(inspect(one).map(({ rule }) => rule)).toEqual(['revision']);
    const none = svg.replace(/<g id="wren-hs-revision">.*?<\/g>/, '').replace(` data-revision="${own}"`, '');
    expect(inspect(none)).toEqual([]);
    expect(inspect(none, wren.circuit.kit).length).toBeGreaterThan(0);
  });
});
