/** Widths of single letters and of pairs: those of the shipped font itself, with nothing added before the first. */
import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { CAP_HEIGHT, missingGlyphs, textWidth } from '../../src/common/text.ts';

const FILES = { regular: '400Regular/Inter_400Regular.ttf', bold: '700Bold/Inter_700Bold.ttf' } as const;
const LETTERS = 'AVTyLto.,-1740 WYrfkΩµ−’“';

describe.each(['regular', 'bold'] as const)('%s', (weight) => {
  const font = fontkit.openSync(
    fileURLToPath(import.meta.resolve(`@expo-google-fonts/inter/${FILES[weight]}`)),
  ) as fontkit.Font;
  const advance = (letter: string): number =>
    font.glyphForCodePoint(letter.codePointAt(0) ?? 0).advanceWidth / font.unitsPerEm;

  it('a letter alone is as wide as it is, and nothing is nothing', () => {
    for (const letter of LETTERS)
      expect(textWidth(letter, 1, weight), letter).toBeCloseTo(advance(letter), 9);
    expect(textWidth('', 14, weight)).toBe(0);
  });

  it('letters that lean towards one another stand closer, in this order only', () => {
    for (const pair of ['AV', 'To', 'LT']) {
      const [a = '', b = ''] = pair;
      expect(textWidth(pair, 1, weight), pair).toBeLessThan(advance(a) + advance(b) - 0.02);
      // Beside other letters they lean just as much.
      const alone = textWidth('n', 1, weight) + textWidth(pair, 1, weight);
      expect(textWidth(`n ${pair}`, 1, weight), pair).toBeCloseTo(
        alone + textWidth(' ', 1, weight) + kern(' ', a),
        9,
      );
    }
    function kern(a: string, b: string): number {
      return textWidth(a + b, 1, weight) - advance(a) - advance(b);
    }
  });

  it('a text grows with its size, and by all that is put behind it', () => {
    for (const text of ['Volume', '470 kΩ', '−35 %']) {
      expect(textWidth(text, 28, weight)).toBeCloseTo(2 * textWidth(text, 14, weight), 9);
      let before = 0;
      for (let i = 1; i <= text.length; i++) {
        const width = textWidth(text.slice(0, i), 14, weight);
        expect(width).toBeGreaterThan(before);
        before = width;
      }
    }
  });

  it('a capital is as high as the font says', () =>
    expect(CAP_HEIGHT).toBeCloseTo(font.capHeight / font.unitsPerEm, 9));
});

it('bold is wider than regular, and regular is what is meant when nothing is said', () => {
  expect(textWidth('Volume', 14, 'bold')).toBeGreaterThan(textWidth('Volume', 14, 'regular'));
  expect(textWidth('Volume', 14)).toBe(textWidth('Volume', 14, 'regular'));
});

it('letters that the font lacks are named once each, and are an em wide', () => {
  expect(missingGlyphs('Volume 470 kΩ')).toEqual([]);
  expect(missingGlyphs('日本日 A')).toEqual(['日', '本']);
  expect(textWidth('日', 14)).toBe(14);
});
