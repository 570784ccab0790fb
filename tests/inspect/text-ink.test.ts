/** The ink a text is taken to have, against the shipped font's own outlines: never less, and not much more. */
import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { fontMetrics } from '../../src/common/font-metrics.ts';
import { reachOf } from '../../src/common/reach.ts';
import { textWidth } from '../../src/common/text.ts';
import { inkOf } from '../../src/inspect/text-ink.ts';

const FILES = { regular: '400Regular/Inter_400Regular.ttf', bold: '700Bold/Inter_700Bold.ttf' } as const;

describe.each(['regular', 'bold'] as const)('%s', (weight) => {
  const font = fontkit.openSync(
    fileURLToPath(import.meta.resolve(`@expo-google-fonts/inter/${FILES[weight]}`)),
  ) as fontkit.Font;
  const characters = fontMetrics[weight].advances
    .split(' ')
    .map((entry) => String.fromCodePoint(Number.parseInt(entry.split(':')[0] ?? '', 36)));
  const boxOf = (character: string) => font.glyphForCodePoint(character.codePointAt(0) ?? 0).bbox;

  it('every character of the table is held, up and down', () => {
    const short = characters.filter((character) => {
      const [{ minY, maxY }, { up, down }] = [boxOf(character), reachOf(character)];
      return Number.isFinite(maxY) && (maxY / font.unitsPerEm > up || -minY / font.unitsPerEm > down);
    });
    expect(short).toEqual([]);
    expect(characters.length).toBeGreaterThan(300);
  });
  it('letters and digits are not held to reach much further than they do', () => {
    for (const character of 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789') {
      const [{ minY, maxY }, { up, down }] = [boxOf(character), reachOf(character)];
      expect(up - maxY / font.unitsPerEm, character).toBeLessThan(0.1);
      expect(down + minY / font.unitsPerEm, character).toBeLessThan(0.21);
    }
  });
});

it('a mark under a letter is held to hang a quarter of the size below the line, one on it not at all', () => {
  for (const letter of 'şţąẹ') expect(reachOf(letter).down, letter).toBe(0.25);
  for (const letter of 'äéñ') expect(reachOf(letter).down, letter).toBeLessThan(0.25);
});

it('runs from the anchor, as wide as its length says, blanks without ink', () => {
  const place = { words: 'Av y', x: 100, y: 50, size: 10, weight: 'bold', anchor: 'middle' } as const;
  const ink = inkOf({ ...place, length: 40 });
  expect(ink).toHaveLength(3);
  expect(ink[0]?.x).toBeCloseTo(80);
  const [last] = ink.slice(-1);
  expect((last?.x ?? 0) + (last?.width ?? 0)).toBeCloseTo(120);
  const end = inkOf({ ...place, anchor: 'end' });
  expect(end[0]?.x).toBeCloseTo(100 - textWidth('Av y', 10, 'bold'));
});

it('no character is held to reach further than a size above the line and a quarter below it', () => {
  const all = fontMetrics.regular.advances
    .split(' ')
    .map((entry) => String.fromCodePoint(Number.parseInt(entry.split(':')[0] ?? '', 36)));
  for (const character of [...all, 'ấ', 'Ǻ', 'ş']) {
    const { up, down } = reachOf(character);
    expect(up, character).toBeLessThanOrEqual(1);
    expect(down, character).toBeLessThanOrEqual(0.25);
    expect(Math.min(up, down), character).toBeGreaterThan(0);
  }
});

it('what stands on the line is held to reach below it by its round bottom alone, a sign hardly more', () => {
  for (const letter of 'acemnorsuvwxzbdfhikltABCDEGOSU0123456789.:!?²³äéÄ')
    expect(reachOf(letter).down, letter).toBeLessThanOrEqual(0.02);
  for (const sign of '-+=<>~×÷±→–—') expect(reachOf(sign).down, sign).toBeLessThanOrEqual(0.05);
  for (const letter of 'gpqyjQ,;()') expect(reachOf(letter).down, letter).toBeGreaterThan(0.15);
});

it('a mark over a small letter stands lower than one over a capital or a tall letter, two marks as high', () => {
  for (const low of 'äéñöüç') expect(reachOf(low).up, low).toBeLessThan(0.9);
  for (const high of ['Ä', 'É', 'ĺ', 'ấ', 'ǘ']) expect(reachOf(high).up, high).toBe(1);
});

it('each letter has the room of its advance, kerned as it stands among the others, and stretched with the whole', () => {
  const place = { words: 'AVA', x: 10, y: 50, size: 20, weight: 'regular', anchor: 'start' } as const;
  const [a, v, last] = inkOf(place);
  const width = (words: string): number => textWidth(words, 20, 'regular');
  expect(a).toMatchObject({ x: 10, width: width('A') });
  expect(v?.x).toBeCloseTo(10 + width('A'));
  expect(v?.width).toBeCloseTo(width('AV') - width('A'));
  expect((last?.x ?? 0) + (last?.width ?? 0)).toBeCloseTo(10 + width('AVA'));
  const twice = inkOf({ ...place, length: 2 * width('AVA') });
  twice.forEach((box, i) => {
    expect(box.width).toBeCloseTo(2 * ([a, v, last][i]?.width ?? 0));
    expect(box.x - 10).toBeCloseTo(2 * (([a, v, last][i]?.x ?? 0) - 10));
  });
  const { up, down } = reachOf('A');
  expect(a?.y).toBeCloseTo(50 - 20 * up);
  expect(a?.height).toBeCloseTo(20 * (up + down));
});
