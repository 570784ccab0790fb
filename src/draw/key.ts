/** The key: a sample of each look that occurs on the sheet, and which colour is which pickup's. */

import type { Line } from '../annotate/lines.ts';
import { linesIn } from '../common/flow.ts';
import { around, at } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import type { MessageKey } from '../messages/en.ts';
import { figuresIn } from '../messages/figures.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { colourName } from '../messages/words.ts';
import { TRACK_WIDTH } from '../parts/pot-size.ts';
import { conductor, run } from '../parts/shape.ts';
import { CHIP_HEIGHT, chipWidth, drawChip } from './chips.ts';
import { paintShape } from './paint.ts';
import { tagLook } from './part.ts';
import type { Pen } from './pen.ts';
import type { Theme } from './theme.ts';
import { drawSolder, insulationOf, strokeAttributes, strokes } from './wires.ts';

/** A sample of a line, of a colour's code, of both, of a resistor, or of a tag that nothing is joined to; and what it means. */
export interface KeyEntry {
  readonly line?: Line;
  readonly code?: string;
  /** IEC 60757 codes, first to last. */
  readonly bands?: readonly string[];
  /** A dot of solder. */
  readonly solder?: true;
  /** A pot's track of which one half has no resistance. */
  readonly halfTrack?: true;
  readonly words: string;
  /** Further lines of what it means, where there is no room for it in one. */
  readonly more?: readonly string[];
}

const SAMPLE = 30;
/** A resistor's sample, so that its bands stand apart. */
const RESISTOR = 46;
const SIZE = 12;

const WORDS = {
  signal: 'key.signal',
  ground: 'key.ground',
  leg: 'key.leg',
  sleeved: 'key.sleeved',
  jumper: 'key.jumper',
  bend: 'key.bend',
  braid: 'key.braid',
} as const satisfies Readonly<Record<Line['look'], MessageKey>>;

/**
 * One entry for each look that occurs, wires by the colour of their insulation, or where none is shown signal wires by what they
 * carry; then one for each colour code that no line shows.
 *
 * @param halfTracks whether some pot has tracks of which one half has no resistance
 */
export function keyOf(
  lines: readonly Line[],
  pickups: ReadonlyMap<string, string>,
  codes: readonly string[],
  empty: boolean,
  onCases: boolean,
  resistors: readonly { readonly value: string; readonly bands: readonly string[] }[],
  theme: Theme,
  language: Language,
  halfTracks = false,
): readonly KeyEntry[] {
  const say = sayIn(language);
  const tints = new Map([
    ...pickups,
    ['switch-output', say('key.switch-output')],
    ['output', say('key.output')],
    ['tone', say('key.tone')],
    ['other', say('key.other')],
  ]);
  const inColour = (line: Line): boolean => insulationOf(line, theme).length > 0;
  const plain = lines.filter((line) => !inColour(line));
  const coloured = (look: 'signal' | 'ground', words: (code: string) => string): readonly KeyEntry[] =>
    [
      ...new Set(lines.flatMap((line) => (line.look === look && inColour(line) ? (line.colour ?? []) : []))),
    ].map((colour) => ({
      line: { look, tint: 'ground', colour },
      code: colour,
      words: words(colour),
    }));
  const signals = [...tints].flatMap(([tint, words]): KeyEntry[] =>
    plain.some((line) => line.look === 'signal' && line.tint === tint)
      ? [{ line: { look: 'signal', tint }, words }]
      : [],
  );
  const others = (['ground', 'leg', 'sleeved', 'jumper', 'bend', 'braid'] as const).flatMap(
    (look): KeyEntry[] =>
      plain.some((line) => line.look === look)
        ? [{ line: { look, tint: 'ground' }, words: say(WORDS[look]) }]
        : [],
  );
  const wires = [
    ...coloured('signal', (code) =>
      code.length > 2
        ? say('key.striped', { colour: colourName(language, code) })
        : colourName(language, code),
    ),
    ...coloured('ground', (code) => `${say(WORDS.ground)}, ${colourName(language, code)}`),
  ];
  const shown = new Set(wires.map(({ code }) => code));
  const letters = [...new Set(codes)]
    .filter((code) => !shown.has(code))
    .map((code): KeyEntry => ({ code, words: colourName(language, code) }));
  // Where all signal wires look alike, the letters on them tell them apart and the key says so once.
  const inks = new Set(signals.map(({ line }) => theme.tints[line?.tint ?? '']));
  const [first] = signals;
  const told = first?.line && inks.size === 1 ? [{ line: first.line, words: say(WORDS.signal) }] : signals;
  // Bands are hard to tell apart on paper, and without colour not at all.
  const banded = resistors.map(
    ({ value, bands }): KeyEntry => ({
      bands,
      words: say('named.list', {
        name: figuresIn(language).of(value),
        words: bands.map((code) => colourName(language, code)).join(', '),
      }),
    }),
  );
  const unlike = banded.filter(({ words }, i) => banded.findIndex((one) => one.words === words) === i);
  // Lines that end on a pot's round body puzzle whoever has never soldered to one.
  const dots: readonly KeyEntry[] =
    lines.length > 0 ? [{ solder: true, words: say(onCases ? 'key.solder-case' : 'key.solder') }] : [];
  return [
    ...wires,
    ...told,
    ...others,
    ...dots,
    ...(empty ? [{ words: say('key.unused') }] : []),
    ...(halfTracks ? [{ halfTrack: true as const, words: halfTrackWords(theme, language) }] : []),
    ...letters,
    ...unlike,
  ];
}

const halfTrackWords = ({ monochrome }: Theme, language: Language): string =>
  sayIn(language)('key.half-track', { half: monochrome ? 'hatched' : 'other' });

/** A track with its two halves one behind the other. */
function drawHalfTrack(pen: Pen, left: number, middle: number, theme: Theme): void {
  const [from, half, to] = [at(left, middle), at(left + SAMPLE / 2, middle), at(left + SAMPLE, middle)];
  paintShape(pen, { shape: 'path', role: 'track', runs: [run(from, half)], width: TRACK_WIDTH }, theme);
  paintShape(pen, conductor(2, run(half, to)), theme);
}

/** A resistor as the key shows it, as wide as any sample. */
function drawResistor(pen: Pen, bands: readonly string[], left: number, middle: number, theme: Theme): void {
  const rect = around(left + RESISTOR / 2, middle, RESISTOR, 14);
  paintShape(pen, { shape: 'rect', role: 'resistor-sample', rect, radius: 5 }, theme);
  bands.forEach((code, i) => {
    const x = left + (i === bands.length - 1 ? RESISTOR - 6 : 7 + 6.5 * i);
    paintShape(pen, { shape: 'rect', role: 'band', rect: around(x, middle, 3.5, 12.5), code }, theme);
  });
}

/** How much of its line is seen on either side of a code. */
const BESIDE_CODE = 11;

/** A code of two colours needs more room than a line does. */
const sampleWidth = ({ line, code, bands }: KeyEntry): number =>
  code === undefined
    ? bands
      ? RESISTOR
      : SAMPLE
    : Math.max(SAMPLE, chipWidth(code) + (line ? 2 * BESIDE_CODE : 0));

/** Between an entry's sample and its words, and after them. */
const [BEFORE_WORDS, AFTER_WORDS] = [8, 22] as const;
const ROW = 22;
const FURTHER = 16;

/** Entries with their words in the lines that a width asks for. */
export const keyIn = (entries: readonly KeyEntry[], width: number): readonly KeyEntry[] =>
  entries.map((entry) => {
    const [words = '', ...more] = linesIn(entry.words, SIZE, width - sampleWidth(entry) - BEFORE_WORDS);
    return more.length === 0 ? entry : { ...entry, words, more };
  });

const rowHeight = (row: readonly KeyEntry[]): number =>
  ROW + FURTHER * Math.max(0, ...row.map(({ more = [] }) => more.length));

export const keyHeight = (rows: readonly (readonly KeyEntry[])[]): number =>
  rows.reduce((sum, row) => sum + rowHeight(row), 0);

/** How wide the widest entry is. */
export const widestKey = (entries: readonly KeyEntry[]): number =>
  Math.ceil(Math.max(0, ...entries.map((entry) => keyWidth(entry) - AFTER_WORDS)));

/** Width of an entry with its gap. */
const keyWidth = (entry: KeyEntry): number =>
  sampleWidth(entry) +
  BEFORE_WORDS +
  Math.max(...[entry.words, ...(entry.more ?? [])].map((words) => textWidth(words, SIZE))) +
  AFTER_WORDS;

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
  let middle = y;
  for (const row of rows) {
    let left = x;
    for (const entry of row) {
      const sample = sampleWidth(entry);
      if (entry.line)
        for (const one of strokes(entry.line, theme))
          pen.line([at(left, middle), at(left + sample, middle)], strokeAttributes(one));
      if (entry.code !== undefined)
        drawChip(
          pen,
          entry.code,
          around(left + sample / 2, middle, chipWidth(entry.code), CHIP_HEIGHT),
          theme,
        );
      else if (entry.solder) drawSolder(pen, at(left + sample / 2, middle), theme);
      else if (entry.halfTrack) drawHalfTrack(pen, left, middle, theme);
      else if (entry.bands) drawResistor(pen, entry.bands, left, middle, theme);
      else if (!entry.line) pen.rect(around(left + sample / 2, middle, 24, 16), tagLook(theme, false));
      [entry.words, ...(entry.more ?? [])].forEach((words, i) => {
        const from = at(left + sample + BEFORE_WORDS, middle + i * FURTHER);
        pen.text(words, from, { size: SIZE, fill: theme.ink, anchor: 'start' });
      });
      left += keyWidth(entry);
    }
    middle += rowHeight(row);
  }
}
