/** Width of a text in Inter, the font the drawings are set in, without loading a font engine. */
import { fontMetrics } from './font-metrics.ts';

export type Weight = keyof typeof fontMetrics;

interface Table {
  readonly unitsPerEm: number;
  readonly advances: ReadonlyMap<string, number>;
  readonly kerns: ReadonlyMap<string, number>;
}

function tableOf(weight: Weight): Table {
  const metrics = fontMetrics[weight];
  return {
    unitsPerEm: metrics.unitsPerEm,
    advances: new Map(
      metrics.advances.split(' ').map((entry) => {
        const [point = '', advance = ''] = entry.split(':');
        return [String.fromCodePoint(Number.parseInt(point, 36)), Number.parseInt(advance, 36)] as const;
      }),
    ),
    kerns: new Map(
      metrics.kerns.split('\n').map((entry) => [entry.slice(0, 2), Number(entry.slice(2))] as const),
    ),
  };
}

const tables: Readonly<Record<Weight, Table>> = { regular: tableOf('regular'), bold: tableOf('bold') };

/** Width in the unit of `size`, at font size `size`; a character the table lacks counts as one em. */
export const textWidth = (text: string, size: number, weight: Weight = 'regular'): number =>
  (unitsOf(text, weight) / tables[weight].unitsPerEm) * size;

/** Fitting a sheet to a page measures the same few texts thousands of times. */
const MOST_KNOWN = 10_000;
const known: Readonly<Record<Weight, Map<string, number>>> = { regular: new Map(), bold: new Map() };

function unitsOf(text: string, weight: Weight): number {
  const measured = known[weight];
  const found = measured.get(text);
  if (found !== undefined) return found;
  const { unitsPerEm, advances, kerns } = tables[weight];
  let units = 0;
  let before = '';
  for (const character of text) {
    units += (advances.get(character) ?? unitsPerEm) + (kerns.get(before + character) ?? 0);
    before = character;
  }
  if (measured.size >= MOST_KNOWN) measured.clear();
  measured.set(text, units);
  return units;
}

/** The characters the drawing's font lacks, each once: another font would be put in their place. */
export const missingGlyphs = (text: string): readonly string[] => [
  ...new Set([...text].filter((character) => !tables.regular.advances.has(character))),
];

/** Height of a capital letter at font size 1. */
export const CAP_HEIGHT = fontMetrics.regular.capHeight / fontMetrics.regular.unitsPerEm;
