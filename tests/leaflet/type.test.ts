/** Nothing on a leaflet is printed smaller than 7 points: neither its texts nor the words within its drawings. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Block, Picture } from '../../src/leaflet/document.ts';
import { leafletOf } from '../../src/leaflet/leaflet.ts';
import { TEMPLATE } from '../../src/leaflet/typst-template.ts';
import { preparedOf } from './make.ts';

const LEAST = 7;
/** Points of a millimetre. */
const POINTS = 72 / 25.4;

const picturesIn = (blocks: readonly Block[]): readonly Picture[] =>
  blocks.flatMap((block) => {
    const own = 'picture' in block ? [block.picture] : [];
    if (block.is === 'sheet') return block.key ? [...own, block.key] : own;
    if (block.is === 'table')
      return block.rows.flat().flatMap((cell) => (cell.is === 'picture' ? [cell.picture] : []));
    return 'blocks' in block ? [...own, ...picturesIn(block.blocks)] : own;
  });

/** The smallest type of a picture as it is printed, points; from its text alone. */
function smallest({ svg, width }: Picture): number {
  const [, units = ''] = /viewBox="[-\d.]+ [-\d.]+ ([\d.]+)/.exec(svg) ?? [];
  const sizes = [...svg.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) => Number(size));
  return Math.min(Number.POSITIVE_INFINITY, ...sizes) * (width / Number(units)) * POINTS;
}

/** A4, A5 upright and on its side, and half a Letter sheet, millimetres. */
const PAPERS = [
  { width: 210, height: 297, margin: 16 },
  { width: 148, height: 210, margin: 12 },
  { width: 210, height: 148, margin: 12 },
  { width: 139.7, height: 215.9, margin: 12 },
];

const samples = readdirSync('samples').filter((name) => name.endsWith('.yaml'));
// Each sample on two of the papers, by turns, so that all tests stay within their time.
const told = samples.map((name, i) => [name, PAPERS.filter((_, k) => (k + i) % 2 === 0)] as const);
describe.each(told)('%s', (name, papers) => {
  it.each(papers.slice(0, 1))('on paper of $width by $height millimetres', async (paper) => {
    const prepared = await preparedOf(`samples/${name}`);
    const pictures = picturesIn(leafletOf(prepared, { paper, plot: true }).blocks);
    expect(pictures.length).toBeGreaterThan(15);
    // Sizes are cut to hundredths of a millimetre.
    for (const picture of pictures)
      expect([picture.alt, smallest(picture)]).toEqual([
        picture.alt,
        expect.toSatisfy((n: number) => n > LEAST - 0.02),
      ]);
  });
  it.each(papers.slice(1))('pictures fit on paper of $width by $height millimetres', async (paper) => {
    const prepared = await preparedOf(`samples/${name}`);
    const { blocks: outer, cover } = leafletOf(prepared, { paper, plot: true });
    const blocks = outer.flatMap((block) => (block.is === 'together' ? block.blocks : [block]));
    expect(blocks.filter(({ is }) => is === 'figure' || is === 'sheet').length).toBeGreaterThan(1);
    const [across, down] = [paper.width - 2 * paper.margin, paper.height - 2 * paper.margin];
    for (const block of blocks) {
      if (block.is !== 'sheet' && block.is !== 'figure') continue;
      const turned = block.is === 'sheet' && block.turned;
      expect(block.picture.width).toBeLessThan((turned ? down : across) + 0.01);
      const key = block.is === 'sheet' ? block.key : undefined;
      expect(key?.width ?? 0).toBeLessThan((turned ? down : across) + 0.01);
      expect(block.picture.height + (key?.height ?? 0)).toBeLessThan(turned ? across : down);
    }
    // No word of it is printed, so that it may be as small as a title page has room for.
    expect(cover.svg).not.toContain('<text');
    expect(cover.width).toBeLessThan(across + 0.01);
  });
});

it('the template sets no text smaller', () => {
  const sizes = [...TEMPLATE.matchAll(/size: (?:if [\w-]+ \{ )?([\d.]+)pt/g)].map(([, size]) => Number(size));
  expect(sizes.length).toBeGreaterThan(8);
  expect(Math.min(...sizes)).toBeGreaterThanOrEqual(LEAST);
});
