/**
 * Three ways to hand out a drawing. **static**: presentation attributes alone, which every renderer and the strictest
 * page take. **inline**: besides, a block of styles through which the page it stands in may set the inks. **standalone**:
 * besides, the letters it needs as an embedded font, so that it looks the same where Inter is not installed.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Theme, type ThemeName, themes } from '../draw/theme.ts';

export const modes = ['static', 'inline', 'standalone'] as const;
export type Mode = (typeof modes)[number];

/** A drawing in one of the modes. */
export async function inMode(svg: string, mode: Mode, theme: ThemeName = 'light'): Promise<string> {
  switch (mode) {
    case 'static':
      return svg;
    case 'inline':
      return withStyle(svg, inkStyle(idOf(svg), themes[theme]));
    case 'standalone':
      return withStyle(svg, await fontStyle(svg));
  }
}

/** The style goes behind title and description, which must come first. */
const withStyle = (svg: string, style: string): string =>
  svg.replace('</desc>', `</desc><style>${style}</style>`);

const idOf = (svg: string): string => /aria-labelledby="(\S+)-title/.exec(svg)?.[1] ?? '';

/** Inks that a page may set, as custom properties: `--solderleaf-ink` and so on. */
const INKS = [
  ...(['paper', 'ink', 'quiet', 'plate', 'inside', 'outline', 'lug', 'accent'] as const),
  ...(['accentFill', 'capacitor', 'sleeving', 'solder', 'jumper'] as const),
];

/** `accentFill` as a custom property is `--solderleaf-accent-fill`. */
const propertyOf = (name: string): string =>
  `--solderleaf-${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

/**
 * Rules that let a page's custom properties replace the inks. They stand inside `@supports`, since a renderer that does
 * not know custom properties would drop the colour altogether; they meet elements by the very colour they have.
 */
function inkStyle(id: string, theme: Theme): string {
  const seen = new Set<string>();
  const rules = INKS.flatMap((name) => {
    const colour = theme[name];
    if (seen.has(colour)) return [];
    seen.add(colour);
    const value = `var(${propertyOf(name)},${colour})`;
    return (['fill', 'stroke'] as const).map(
      (property) => `[aria-labelledby^="${id}-"] [${property}="${colour}"]{${property}:${value}}`,
    );
  });
  return `@supports (color:var(--a)){${rules.join('')}}`;
}

const WEIGHTS = [
  [400, '400Regular/Inter_400Regular.ttf'],
  [700, '700Bold/Inter_700Bold.ttf'],
] as const;

/** The shipped Inter, cut down to the letters of this drawing. */
async function fontStyle(svg: string): Promise<string> {
  const { default: subset } = await import('subset-font');
  const words = [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text = '']) => text).join('');
  const letters = words
    .replace(/&amp;/g, '&')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"');
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
