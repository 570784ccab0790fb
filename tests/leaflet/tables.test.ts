/** No word of a leaflet's tables lies on another, however narrow the paper is: read by poppler's tools, in every language. That words must not overlap: common practice, no source. */
import { expect, it } from 'vitest';
import type { Block } from '../../src/leaflet/document.ts';
import { leafletOf } from '../../src/leaflet/leaflet.ts';
import { languages } from '../../src/messages/language.ts';
import { leafletToPdf } from '../../src/publish/pdf.ts';
import { runOn } from '../tools/pdf-tools.ts';
import { preparedOf } from './make.ts';

const tablesIn = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) =>
    block.is === 'table' ? [block] : 'blocks' in block ? tablesIn(block.blocks) : [],
  );

interface Word {
  readonly page: number;
  readonly words: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function wordsOf(pdf: Uint8Array): readonly Word[] {
  let page = 0;
  return runOn(pdf, 'pdftotext', '-bbox', '{}', '-')
    .split('\n')
    .flatMap((row): readonly Word[] => {
      if (/<page /.test(row)) page += 1;
      const found = /xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)</.exec(row);
      if (!found) return [];
      const [left = 0, top = 0, right = 0, bottom = 0] = found.slice(1, 5).map(Number);
      return [{ page, words: found[5] ?? '', left, right, top, bottom }];
    });
}

/** Points by which boxes of words may touch. */
const TOUCH = 0.3;

const onEachOther = (words: readonly Word[]): readonly string[] =>
  words.flatMap((a, i) =>
    words
      .slice(i + 1)
      .filter(
        (b) =>
          a.page === b.page &&
          Math.min(a.right, b.right) - Math.max(a.left, b.left) > TOUCH &&
          Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > TOUCH,
      )
      .map((b) => `${a.words} on ${b.words}`),
  );

/** A5 and half of Letter, upright; half of A5, as a booklet has it, upright and on its side (ISO 216, ANSI Y14.1), millimetres. */
const PAPERS = {
  wide: [
    { width: 148, height: 210, margin: 12 },
    { width: 139.7, height: 215.9, margin: 12 },
  ],
  narrow: [
    { width: 105, height: 148, margin: 9 },
    { width: 108, height: 139.7, margin: 9 },
  ],
} as const;

const told = languages.flatMap((language) =>
  (['wide', 'narrow'] as const).map((width) => [width, language, PAPERS[width]] as const),
);
it.each(told)('%s paper, in %s', async (_, language, papers) => {
  const prepared = await preparedOf('samples/osprey-hsh.yaml', language);
  const leaflet = leafletOf(prepared, { paper: papers[0] });
  const blocks = tablesIn(leaflet.blocks);
  // Of a long running title a second line is hidden, but read by the tools.
  const plain = { lines: [], running: '' };
  expect(blocks.length).toBeGreaterThan(8);
  for (const paper of papers) {
    const words = wordsOf(await leafletToPdf({ ...leaflet, ...plain, paper, blocks }));
    expect(words.length).toBeGreaterThan(300);
    expect(onEachOther(words)).toEqual([]);
    // Nor does any leave the page's inside.
    const [left, right] = [paper.margin, paper.width - paper.margin].map((mm) => (mm / 25.4) * 72);
    for (const word of words)
      expect([word.words, word.left, word.right]).toEqual([
        word.words,
        expect.toSatisfy((x: number) => x > (left ?? 0) - 0.5),
        expect.toSatisfy((x: number) => x < (right ?? 0) + 0.5),
      ]);
  }
});
