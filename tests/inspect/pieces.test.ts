/** Pieces, columns and second sheets are read back like any drawing: no false finding, and whatever is changed in one is found. */
import { beforeAll, describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/annotate/steps.ts';
import { views } from '../../src/describe/kit.ts';
import { type Aspect, type Prepared, sheetsOf } from '../../src/draw/compose.ts';
import { missingPiece, type Piece, pieces, titleOf } from '../../src/draw/pieces.ts';
import { findPage } from '../../src/files/layouts.ts';
import { inspect, inspectAmong } from '../../src/inspect/index.ts';
import { drawResponse, prepare, render, renderInline } from '../../src/pipeline.ts';
import { sample } from '../truth/draw.ts';

let prepared: Prepared;
beforeAll(async () => {
  prepared = await prepare(sample('kestrel-hss'), undefined, { effort: { steps: 0, seed: 1 } });
});

/** All that can be named of four pieces. */
const sets = (all: readonly Piece[]): readonly (readonly Piece[])[] =>
  Array.from({ length: 2 ** all.length }, (_, set) =>
    all.filter((_, i) => Math.floor(set / 2 ** i) % 2 === 1),
  );

const rulesOf = (svg: string): readonly string[] =>
  inspect(svg, prepared.circuit.kit)
    .map(({ rule }) => rule)
    .filter((rule) => rule !== 'small-type');
const svgOf = (aspect: Aspect): string => render(prepared, aspect).svg;
const changed = (aspect: Aspect, from: string | RegExp, to: string): readonly string[] => {
  const svg = svgOf(aspect);
  const other = svg.replace(from, to);
  expect(other).not.toBe(svg);
  return rulesOf(other);
};

describe('nothing is found in', () => {
  it.each([undefined, 300, 1400])('any set of pieces, in a column of %s', (width) => {
    for (const only of sets(pieces))
      for (const step of [undefined, 3]) {
        if (missingPiece(only, step !== undefined) !== undefined) continue;
        const aspect = {
          only,
          ...(step === undefined ? {} : { step }),
          ...(width === undefined ? {} : { width }),
        };
        expect(rulesOf(svgOf(aspect)), JSON.stringify(aspect)).toEqual([]);
        expect(rulesOf(renderInline(prepared, aspect)), JSON.stringify(aspect)).toEqual([]);
      }
  });

  it('either side, any position, any theme, on pages', () => {
    const a5 = findPage('a5');
    if (!a5) throw new Error('no page');
    const aspects: Aspect[] = [
      ...views.map((view) => ({ view, width: 360 })),
      ...prepared.circuit.states.map((_, state) => ({ state, only: ['drawing', 'cards'] as const })),
      ...stepsOf(prepared.circuit).map(({ number }) => ({ step: number, page: a5 })),
      { theme: 'print', lines: 'signal', only: ['key'], width: 280 },
      { theme: 'dark', only: ['drawing', 'key'], page: a5 },
      { theme: 'print', page: a5, view: 'component-side' },
    ];
    for (const aspect of aspects)
      for (const sheet of sheetsOf(prepared, aspect))
        expect(rulesOf(svgOf(sheet)), render(prepared, sheet).name).toEqual([]);
  });
});

describe('what is changed is found in', () => {
  const [drawing, key, cards]: readonly Aspect[] = (['drawing', 'key', 'cards'] as const).map((one) => ({
    only: [one],
  }));
  it('a drawing: a wire taken away, a lug renamed', () => {
    expect(changed(drawing ?? {}, /<g id="[^"]*-joint-3"[^>]*>.*?<\/g>/, '')).toContain('joint-missing');
    expect(changed(drawing ?? {}, '>A1<', '>A9<')).toContain('part');
    expect(changed({ ...drawing, width: 360 }, '>A1<', '>A9<')).toContain('part');
  });
  it('a key: words, a sample, a sentence, what only a screen reader says', () => {
    expect(changed(key ?? {}, '>turquoise<', '>violet<')).toContain('differs-from-kit');
    expect(changed(key ?? {}, /<path [^>]*>(<\/path>)?/, '')).toContain('differs-from-kit');
    expect(changed(key ?? {}, 'right-handed build.</text>', 'left-handed build.</text>')).toContain(
      'differs-from-kit',
    );
    expect(changed(key ?? {}, '</desc>', ' More.</desc>')).toContain('differs-from-kit');
  });
  it('cards: a figure, a card, what they say', () => {
    expect(changed(cards ?? {}, '>242 kΩ<', '>250 kΩ<')).toContain('differs-from-kit');
    expect(changed(cards ?? {}, /<g id="[^"]*-position-5".*?<\/g>/, '')).toContain('differs-from-kit');
    expect(changed(cards ?? {}, 'Multimeter:', 'Ohmmeter:')).toContain('differs-from-kit');
  });
  it('a checklist: a line', () => {
    expect(changed({ only: ['checklist'], step: 3 }, '22 nF', '47 nF')).toContain('differs-from-kit');
  });
  it('a column: its size, the units of a piece, a piece moved apart', () => {
    const aspect: Aspect = { width: 360 };
    expect(changed(aspect, ' width="360"', ' width="420"')).toContain('differs-from-kit');
    expect(changed(aspect, /scale\([\d.]+\)/, 'scale(2)')).not.toEqual([]);
    expect(changed(aspect, /scale\([\d.]+\)/, 'scale(-2)')).toContain('not-read');
    expect(
      changed({ width: 360, only: ['drawing'] }, /(-drawing" transform="translate\([^)]*\))/, '$1 scale(2)'),
    ).not.toEqual([]);
  });
  it('a second sheet: a figure', () => {
    const page = findPage('a5');
    const second = sheetsOf(prepared, page ? { page } : {})[1] ?? {};
    expect(svgOf(second)).toContain('-sheet-2-title');
    expect(changed(second, '>242 kΩ<', '>250 kΩ<')).toContain('differs-from-kit');
  });
  it('a first sheet: cards taken away from one that has room for them', () => {
    const page = { width: 420, height: 297, margin: 8 };
    expect(sheetsOf(prepared, { page })).toHaveLength(1);
    expect(changed({ page }, /<g id="[^"]*-position-1".*<\/g>(?=<\/svg>)/, '')).toContain('differs-from-kit');
  });
});

it('a piece that is called another is found, as is one that there is not, and no plot is taken for a piece', () => {
  const named = (only: Piece, as: string): readonly string[] =>
    rulesOf(svgOf({ only: [only] }).replaceAll(`kestrel-hss-${only}`, `kestrel-hss-${as}`));
  expect(named('key', 'cards')).not.toEqual([]);
  expect(named('cards', 'drawing')).toContain('part');
  expect(named('cards', 'checklist')).toContain('unknown-aspect');
  const plot = drawResponse(prepared.circuit.kit);
  expect(inspectAmong(plot, [prepared.circuit.kit]).findings.map(({ rule }) => rule)).toEqual(['unreadable']);
});

it('each has a title and a description of its own', () => {
  const kit = prepared.circuit.kit;
  for (const only of [['drawing'], ['key'], ['cards'], ['drawing', 'cards']] as const) {
    const svg = svgOf({ only });
    expect(svg).toContain(`>${titleOf(kit.title, only, 'en')}</title>`);
    expect(svg).not.toContain(`>${kit.title}</text>`);
    const [, said = ''] = /<desc[^>]*>([^<]*)</.exec(svg) ?? [];
    expect(said.includes('Joints: '), only.join()).toBe(only[0] === 'drawing');
    expect(said.includes('DC load '), only.join()).toBe(only.includes('cards' as never));
  }
  expect(titleOf('SS', ['cards', 'drawing'], 'en')).toBe('SS: wiring, loads in each switch position');
});
