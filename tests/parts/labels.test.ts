/**
 * Labels of every length, on every kind of part, in every way it may stand: in one size of type, whole, and on the part. What is on
 * the part is asked of the rules that read a drawing, which know nothing of how it was made.
 */
import { describe, expect, it } from 'vitest';
import { drawPart, type Look } from '../../src/draw/part.ts';
import { Pen } from '../../src/draw/pen.ts';
import { type ThemeName, themes } from '../../src/draw/theme.ts';
import { readDrawing } from '../../src/inspect/drawing.ts';
import { formatFinding } from '../../src/inspect/finding.ts';
import { textFindings } from '../../src/inspect/rules/texts.ts';
import { type Language, languages } from '../../src/messages/language.ts';
import {
  contactsOf,
  is,
  type Kind,
  kinds,
  type Orientation,
  orientationsOf,
  outlineOf,
  type Part,
} from '../../src/parts/index.ts';
import { type Outline, outlineTurned } from '../../src/parts/outline.ts';
import { makeKit } from '../analyse/kits.ts';
import { sketch } from '../draw/sketch.ts';

const FIELDS: Partial<Record<Kind, object>> = {
  pot: { value: '500k', taper: 'reverse-log' },
  'push-pull': { value: '250k' },
  'dual-pot': { value: '250k', taper: 'linear' },
  'stacked-pot': { a: { value: '500k' }, b: { value: '250k', taper: 'reverse-log', 'no-load': true } },
  blend: { value: '250k' },
  'mini-toggle': { action: 'on-on' },
  rotary: { throws: 5 },
  resistor: { value: '470k' },
  capacitor: { value: '22n' },
  switch: {
    lugs: { left: ['A1', 'common', 'A2'], right: ['on'] },
    positions: [[['A1', 'common']], [['A1', 'A2']], [['common', 'on']], [], [['A1', 'on']]],
  },
};
/** A switch with names as long as its positions may have, on both edges. */
const SPOKEN: Partial<Record<Kind, object>> = {
  switch: {
    lugs: { left: ['A1', 'common', 'A2'], right: ['B1', 'B0', 'B2', 'frame'] },
    positions: [
      [
        ['A1', 'common'],
        ['B1', 'B0'],
      ],
      [
        ['A2', 'common'],
        ['B2', 'B0'],
      ],
      [['A1', 'A2', 'common', 'B1', 'B2']],
    ],
    called: ['all the way up', 'all the way dow', 'in the mid posi'],
    frame: 'frame',
  },
};
/** Width of a part of an outline as it is turned. */
const acrossOf = ({ width, height }: Outline, turn: number): number => (turn % 2 === 1 ? height : width);

const partOf = (kind: Kind, label: string, written = FIELDS[kind]): Part => {
  const [part] = makeKit({ parts: { x: { kind, label, ...written } }, joints: [] }).parts;
  if (!part) throw new Error('no part');
  return part;
};

/** 3 to 30 characters: words, hyphens, one word, wide letters, tails, accents, numbers. */
const LABELS = [
  'Vol',
  'Tone',
  'Ägypg',
  'Middle',
  'Volume 1',
  'Push-pull',
  'Neck-pickup',
  'Bridge volume',
  'Treble-bleed cap',
  'gypsy jpqy (gypsy)',
  'Volume of the bridge',
  'Selector of all pickups',
  'String-ground of the bridge',
  'Master volume of both pickups.',
  'Extraordinarylabelwithoutspace',
  'M'.repeat(30),
  'i i i i i i i i i i i i i i i',
  'W-W-W-W-W-W-W-W-W-W-W-W-W-W-WW',
];

function lookOf(part: Part, position: number, theme: ThemeName, language: Language): Look {
  const joins = contactsOf(part)[position]?.joins;
  return {
    theme: themes[theme],
    language,
    closed: new Map(joins ? [[part.name, joins]] : []),
    joined: new Set(),
    meeting: new Set(),
    highlighted: new Set(),
    tints: new Map(),
  };
}

/** The part alone on a sheet, as it stands. */
const sheetOf = (part: Part, way: Orientation, position = 0, theme: ThemeName = 'light', caption?: string) =>
  sheetIn(outlineOf(part, caption), part, way, position, theme);

function sheetIn(
  unturned: Outline,
  part: Part,
  way: Orientation,
  position: number,
  theme: ThemeName = 'light',
  language: Language = 'en',
) {
  const outline = outlineTurned(unturned, way.turn);
  const frame = { x: 40, y: 40, width: outline.width, height: outline.height, ...way };
  const { svg } = sketch((pen) => {
    const drawing = pen.into.group({ id: 'k-drawing' });
    const group = drawing.group({ id: `k-part-${part.name}` });
    drawPart(new Pen(group, frame), { part, outline, frame }, lookOf(part, position, theme, language));
  }, frame);
  const drawing = readDrawing(
    svg.replace(
      /<svg[^>]*>/,
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 900 900" text-anchor="middle">',
    ),
  );
  if ('rule' in drawing) throw new Error(drawing.message);
  return drawing;
}

const ways = (part: Part): readonly Orientation[] =>
  [
    ...orientationsOf(part),
    // An arrangement may have a part upside down, but no component and no push-pull pot.
    ...(is(part, 'component') || is(part, 'pot') ? [] : [{ turn: 2, mirror: false } as const]),
  ].flatMap(({ turn, mirror }) => [
    { turn, mirror },
    // From the other side everything is mirrored, whether the part itself may be or not.
    { turn, mirror: !mirror },
  ]);

describe.each(Object.keys(kinds) as Kind[])('%s', (kind) => {
  // A push-pull pot's switch stands beside it, with the name as well.
  it.each(LABELS)('“%s”: whole, in the one size, and over nothing', (label) => {
    const part = partOf(kind, label);
    const { labels, asideLabels = labels } = outlineOf(part);
    for (const set of [labels, asideLabels]) {
      const names = set.filter(({ weight }) => weight === 'bold');
      expect(
        names
          .map(({ text }) => text)
          .join('')
          .replaceAll(' ', ''),
      ).toBe(label.replaceAll(' ', '').repeat(kind === 'push-pull' ? 2 : 1));
      for (const { size } of names) expect(size).toBe(14);
      for (const { size, weight } of set) if (weight === 'regular') expect(size).toBe(12);
    }
    for (const way of ways(part))
      for (const position of [0, contactsOf(part).length - 1]) {
        const found = textFindings(sheetOf(part, way, position)).map(formatFinding);
        expect(found, JSON.stringify({ ...way, position })).toEqual([]);
      }
  });

  it('whole and over nothing in the form for a narrow column too, which is no wider', () => {
    // Words of the other languages are as long with any label, and a few labels are of every length.
    const cases = languages.flatMap((language) =>
      LABELS.filter((label, i) => (language === 'en' ? i % 6 === 2 : label === 'Bridge volume')).map(
        (label) => [language, label] as const,
      ),
    );
    for (const [language, label] of cases) {
      const part = partOf(kind, label, SPOKEN[kind] ?? FIELDS[kind]);
      const narrow = outlineOf(part, undefined, language, true);
      const usual = outlineOf(part, undefined, language);
      if (!narrow.narrow) {
        expect(narrow).toEqual(usual);
        continue;
      }
      const all = orientationsOf(part, narrow);
      expect(Math.min(...all.map(({ turn }) => acrossOf(narrow, turn)))).toBeLessThanOrEqual(usual.width);
      for (const way of all)
        for (const position of [0, contactsOf(part).length - 1]) {
          const found = textFindings(sheetIn(narrow, part, way, position, 'light', language));
          expect(found.map(formatFinding), JSON.stringify({ label, language, ...way, position })).toEqual([]);
        }
    }
  });

  it('in every theme, with what it does below it', () => {
    for (const theme of Object.keys(themes) as ThemeName[]) {
      const part = partOf(kind, 'Bridge-pickup control');
      const caption = is(part, 'component') ? 'Bridge-pickup alone: DC load 242 kΩ' : undefined;
      expect(textFindings(sheetOf(part, { turn: 0, mirror: false }, 0, theme, caption))).toEqual([]);
    }
  });
});

it.each([
  ['Q, 2nd coil/top', 'log'],
  ['Q, 2nd coil', 'log'],
  ['Ägypg', 'linear'],
  ['jpqy Äö/(Q', 'log'],
])('a pot’s words fit upside down too, where tails point to the track: “%s”, %s', (label, taper) => {
  const part = partOf('pot', label, { value: '100k', taper });
  for (const way of ways(part)) expect(textFindings(sheetOf(part, way)), JSON.stringify(way)).toEqual([]);
});

it('a label that is drawn elsewhere than its part says is found', () => {
  const part = partOf('pot', 'Volume');
  const drawing = sheetOf(part, { turn: 0, mirror: false });
  const [text] = drawing.texts;
  if (!text) throw new Error('no text');
  const aside = {
    ...text,
    box: { ...text.box, x: text.box.x + 40 },
    ink: text.ink.map((ink) => ({ ...ink, x: ink.x + 40 })),
  };
  expect(textFindings({ ...drawing, texts: [aside] }).map(({ rule }) => rule)).toContain('text-on-line');
});

it('a usual name makes no pot larger, a long one every pot of that name', () => {
  const width = (label: string): number => outlineOf(partOf('pot', label, { value: '500k' })).width;
  for (const label of ['Volume', 'Tone 1', 'Master', 'Blend']) expect(width(label), label).toBe(width('T'));
  expect(width('Extraordinarily')).toBeGreaterThan(width('T'));
});
