/** The ink a text is taken to have, against the shipped font's own outlines: never less, and not much more. */
import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { fontMetrics } from '../../src/common/font-metrics.ts';
import { textWidth } from '../../src/common/text.ts';
import { inkOf, reachOf } from '../../src/inspect/text-ink.ts';

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
