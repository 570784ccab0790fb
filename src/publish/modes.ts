/** The letters that a standalone drawing, or a leaflet as a page of the web, brings along. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** A drawing with its letters as an embedded font. */
export const withLetters = async (svg: string): Promise<string> => withStyle(svg, await fontStyle(svg));

/** The style goes behind title and description, which must come first. */
const withStyle = (svg: string, style: string): string =>
  svg.replace('</desc>', `</desc><style>${style}</style>`);

const WEIGHTS = [
  [400, '400Regular/Inter_400Regular.ttf'],
  [700, '700Bold/Inter_700Bold.ttf'],
] as const;

/** The shipped Inter, cut down to the letters of this drawing. */
async function fontStyle(svg: string): Promise<string> {
  const words = [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text = '']) => text).join('');
  const letters = words
    .replace(/&amp;/g, '&')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"');
  return fontFaces(letters);
}

/** The rules of the shipped Inter, cut down to some letters, as a stylesheet. */
export async function fontFaces(letters: string): Promise<string> {
  const { default: subset } = await import('subset-font');
  const require = createRequire(import.meta.url);
  const faces = await Promise.all(
    WEIGHTS.map(async ([weight, file]) => {
      const font = readFileSync(require.resolve(`@expo-google-fonts/inter/${file}`));
      const cut = await subset(font, letters, { targetFormat: 'woff2' });
      return `@font-face{font-family:Inter;font-weight:${weight};src:url(data:font/woff2;base64,${cut.toString('base64')}) format("woff2")}`;
    }),
  );
  return faces.join('');
}
