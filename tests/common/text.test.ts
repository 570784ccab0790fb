/** Measured text against the shipped font itself, laid out by a font engine. */
import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';
import { expect, it } from 'vitest';
import { textWidth } from '../../src/common/text.ts';

const FILES = { regular: '400Regular/Inter_400Regular.ttf', bold: '700Bold/Inter_700Bold.ttf' } as const;
const TEXTS = [
  'Volume',
  'Tone 1',
  'AV To Ty LT',
  'humbucker, 8.4 kΩ',
  '470 kΩ',
  '7.68 kΩ',
  'SS, three-way lever, volume and tone',
  'Neck alone: DC load 242 kΩ',
  '−35 %, duller',
  'bare component leg',
];

it.each(['regular', 'bold'] as const)('%s text is as wide as the font says', (weight) => {
  const font = fontkit.openSync(
    fileURLToPath(import.meta.resolve(`@expo-google-fonts/inter/${FILES[weight]}`)),
  ) as fontkit.Font;
  for (const text of TEXTS) {
    const wanted = (font.layout(text, undefined, 'latn').advanceWidth / font.unitsPerEm) * 14;
    const off = Math.abs(textWidth(text, 14, weight) - wanted);
    expect(off, text).toBeLessThan(Math.max(0.3, 0.005 * wanted));
  }
});
