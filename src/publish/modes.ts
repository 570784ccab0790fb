/**
 * Three ways to hand out a drawing. **static**: presentation attributes alone, which every renderer and the strictest
 * page take. **inline**: besides, a class for each ink, by which the stylesheet of the page it stands in may set it. **standalone**:
 * the attributes and the letters it needs as an embedded font, so that it looks the same where Inter is not installed.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

export const modes = ['static', 'inline', 'standalone'] as const;
export type Mode = (typeof modes)[number];

/** A drawing in one of the modes that add to what is drawn; for `inline` it is drawn otherwise. */
export const inMode = async (svg: string, mode: Exclude<Mode, 'inline'>): Promise<string> =>
  mode === 'static' ? svg : withStyle(svg, await fontStyle(svg));

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
