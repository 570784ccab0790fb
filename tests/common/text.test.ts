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
  'Neck sees 242 kΩ',
  '−35 %, darker',
  'component’s own leg, bare',
];

it.each(['regular', 'bold'] as const)('%s text is as wide as the font says', (weight) => {
  const font = fontkit.openSync(
    fileURLToPath(import.meta.resolve(`@expo-google-fonts/inter/${FILES[weight]}`)),
  ) as fontkit.Font;
  for (const text of TEXTS) {
    const wanted = (font.layout(text).advanceWidth / font.unitsPerEm) * 14;
    // The table holds pairs; the font also kerns across a space (", 8"), which is worth less than one per cent.
    expect(Math.abs(textWidth(text, 14, weight) / wanted - 1), text).toBeLessThan(0.01);
  }
});
