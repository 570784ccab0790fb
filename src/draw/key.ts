/** The key: a sample of each look that occurs on the sheet, and which colour is which pickup's. */
import type { Line } from '../annotate/lines.ts';
import { colourName } from '../annotate/words.ts';
import { around, at } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import { CHIP_HEIGHT, chipWidth, drawChip } from './chips.ts';
import { tagLook } from './part.ts';
import type { Pen } from './pen.ts';
import type { Theme } from './theme.ts';
import { strokeAttributes, strokes } from './wires.ts';

export type KeyEntry =
  | { readonly line: Line; readonly words: string }
  | { readonly line?: never; readonly code: string; readonly words: string }
  | { readonly line?: never; readonly code?: never; readonly words: string };

const SAMPLE = 30;
const SIZE = 12;

const WORDS: Readonly<Record<Line['look'], string>> = {
  signal: 'signal',
  ground: 'ground',
  leg: 'bare component leg',
  sleeved: 'sleeved leg',
  jumper: 'bare jumper',
  bend: 'lug bent back and soldered to the case',
  braid: 'bare shield braid: keep clear of signal lugs',
};

/** One entry for each look that occurs, signal wires by what they carry; then one for each colour code. */
export function keyOf(
  lines: readonly Line[],
  pickups: ReadonlyMap<string, string>,
  codes: readonly string[],
  empty: boolean,
  theme: Theme,
): readonly KeyEntry[] {
  const tints = new Map([
    ...pickups,
    ['switch-output', 'switch output'],
    ['output', 'to the output jack'],
    ['tone', 'tone control'],
    ['other', 'other signal wire'],
  ]);
  const signals = [...tints].flatMap(([tint, words]): KeyEntry[] =>
    lines.some((line) => line.look === 'signal' && line.tint === tint)
      ? [{ line: { look: 'signal', tint }, words }]
      : [],
  );
  const others = (['ground', 'leg', 'sleeved', 'jumper', 'bend', 'braid'] as const).flatMap(
    (look): KeyEntry[] =>
      lines.some((line) => line.look === look)
        ? [{ line: { look, tint: 'ground' }, words: WORDS[look] }]
        : [],
  );
  const letters = [...new Set(codes)].map((code): KeyEntry => ({ code, words: colourName(code) }));
  // Where all signal wires look alike, the letters on them tell them apart and the key says so once.
  const inks = new Set(signals.map(({ line }) => theme.tints[line?.tint ?? '']));
  const [first] = signals;
  const told = first?.line && inks.size === 1 ? [{ line: first.line, words: WORDS.signal }] : signals;
  return [...told, ...others, ...(empty ? [{ words: 'unused lug' }] : []), ...letters];
}

/** A code of two colours needs more room than a line does. */
const sampleWidth = (entry: KeyEntry): number =>
  entry.line || entry.code === undefined ? SAMPLE : Math.max(SAMPLE, chipWidth(entry.code));

/** Width of an entry with its gap. */
const keyWidth = (entry: KeyEntry): number => sampleWidth(entry) + 8 + textWidth(entry.words, SIZE) + 22;

/** Rows of entries that fit a width. */
export function keyRows(entries: readonly KeyEntry[], width: number): readonly (readonly KeyEntry[])[] {
  const rows: KeyEntry[][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const entry of entries) {
    if (used + keyWidth(entry) > width) {
      rows.push([]);
      used = 0;
    }
    rows[rows.length - 1]?.push(entry);
    used += keyWidth(entry);
  }
  return rows;
}

export function drawKey(
  pen: Pen,
  rows: readonly (readonly KeyEntry[])[],
  x: number,
  y: number,
  theme: Theme,
): void {
  rows.forEach((row, r) => {
    let left = x;
    const middle = y + r * 22;
    for (const entry of row) {
      const sample = sampleWidth(entry);
      if (entry.line)
        for (const one of strokes(entry.line, theme))
          pen.line([at(left, middle), at(left + sample, middle)], strokeAttributes(one));
      else if (entry.code !== undefined)
        drawChip(
          pen,
          entry.code,
          around(left + sample / 2, middle, chipWidth(entry.code), CHIP_HEIGHT),
          theme,
        );
      else pen.rect(around(left + sample / 2, middle, 24, 16), tagLook(theme, false));
      pen.text(entry.words, at(left + sample + 8, middle), { size: SIZE, fill: theme.ink, anchor: 'start' });
      left += keyWidth(entry);
    }
  });
}
