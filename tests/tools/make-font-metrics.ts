/**
 * Writes `src/common/font-metrics.ts` from the shipped Inter files, so that text can be measured with no font
 * engine loaded, in Node and in a browser alike. Run `npm run font-metrics` when the font package changes; a test
 * compares the table with the font.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';

const WEIGHTS = { regular: '400Regular/Inter_400Regular.ttf', bold: '700Bold/Inter_700Bold.ttf' } as const;
const RANGES = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x370, 0x3ff],
  [0x400, 0x45f],
  [0x2010, 0x2026],
  [0x2190, 0x2193],
] as const;
const EXTRA = '∥≈≤≥−√∞Ω';
const KERNED = [...Array.from({ length: 95 }, (_, i) => String.fromCharCode(0x20 + i)), ...'Ωµ·–—°±×−’‘“”'];

const blocks = Object.entries(WEIGHTS).map(([weight, file]) => {
  const font = fontkit.openSync(
    fileURLToPath(import.meta.resolve(`@expo-google-fonts/inter/${file}`)),
  ) as fontkit.Font;
  const points = [
    ...RANGES.flatMap(([a, b]) => Array.from({ length: b - a + 1 }, (_, i) => a + i)),
    ...[...EXTRA].map((c) => c.codePointAt(0) ?? 0),
  ].filter((p) => font.hasGlyphForCodePoint(p));
  const width = (text: string): number => font.layout(text, undefined, 'latn').advanceWidth;
  const alone = new Map(KERNED.map((c) => [c, width(c)]));
  const kerns = KERNED.flatMap((a) =>
    KERNED.flatMap((b) => {
      const by = width(a + b) - (alone.get(a) ?? 0) - (alone.get(b) ?? 0);
      return by === 0 ? [] : [`${a}${b}${by}`];
    }),
  );
  const advances = [...new Set(points)].map(
    (p) => `${p.toString(36)}:${font.glyphForCodePoint(p).advanceWidth.toString(36)}`,
  );
  return `  ${weight}: {\n    unitsPerEm: ${font.unitsPerEm},\n    ascent: ${font.ascent},\n    descent: ${font.descent},\n    capHeight: ${font.capHeight},\n    advances: ${JSON.stringify(advances.join(' '))},\n    kerns: ${JSON.stringify(kerns.join('\n'))},\n  },`;
});
writeFileSync(
  new URL('../../src/common/font-metrics.ts', import.meta.url),
  `/** Made by \`npm run font-metrics\` from the shipped Inter; not edited by hand. */\nexport const fontMetrics = {\n${blocks.join('\n')}\n} as const;\n`,
);
