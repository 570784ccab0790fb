/**
 * The page that shows drawings of many kits: plain HTML and a stylesheet beside it, without script, so that it works under a
 * content security policy that allows no more than the site's own images and styles.
 */
import type { Kit } from '../describe/kit.ts';
import type { Language } from '../messages/language.ts';
import { type Say, sayIn } from '../messages/say.ts';

/** One kit of the page, with its drawing beside it. */
export interface GalleryEntry {
  readonly kit: Kit;
  /** How a kit extends this one. */
  readonly extended: string;
  /** Name of the drawing's file, and its size in CSS pixels. */
  readonly picture: { readonly file: string; readonly width: number; readonly height: number };
}

/** By these words a file is known to be an earlier version of the page, and may be written over. */
const GENERATOR = 'Solderleaf circuits';
export const isGallery = (text: string): boolean => text.includes(GENERATOR);

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

export const galleryStyle = `/* ${GENERATOR} */
body { margin: 0 auto; max-width: 60rem; padding: 1rem; font-family: Inter, system-ui, sans-serif; line-height: 1.5; color: #1a1a1a; background: #fff; }
img { max-width: 100%; height: auto; border: 1px solid #767676; }
article { margin-block: 3rem; }
code { overflow-wrap: anywhere; }
`;

/** Width at which a drawing is shown where the stylesheet is not read. */
const SHOWN = 720;

/** The page in a language, complete; entries in the order given. What the kits say of themselves stays in the language they are written in. */
export function galleryPage(entries: readonly GalleryEntry[], language: Language): string {
  const say = sayIn(language);
  const contents = entries.map(
    ({ kit }) =>
      `      <li><a href="#${escaped(kit.id)}"${langOf(kit, language)}>${escaped(kit.title)}</a></li>\n`,
  );
  return `<!doctype html>
<html lang="${language}">
<head>
  <meta charset="utf-8">
  <meta name="viewport" content="width=device-width, initial-scale=1">
  <meta name="generator" content="${GENERATOR}">
  <title>${escaped(say('gallery.title'))}</title>
  <link rel="stylesheet" href="index.css">
</head>
<body>
<main>
  <h1>${escaped(say('gallery.title'))}</h1>
  <p>${escaped(say('gallery.say'))}</p>
  <nav aria-label="${escaped(say('gallery.contents'))}">
    <ul>
${contents.join('')}    </ul>
  </nav>
${entries.map((entry) => articleOf(entry, say, language)).join('')}</main>
</body>
</html>
`;
}

/** Of words in another language than the page: an attribute that says so, for those who hear the page. */
const langOf = (kit: Kit, language: Language): string =>
  kit.language === language ? '' : ` lang="${kit.language}"`;

function articleOf({ kit, extended, picture }: GalleryEntry, say: Say, language: Language): string {
  const { file, width, height } = picture;
  const id = escaped(kit.id);
  const title = escaped(kit.title);
  const lang = langOf(kit, language);
  const alt = escaped(say('gallery.alt', { title: kit.title }));
  const about = kit.about === undefined ? '' : `    <p${lang}>${escaped(kit.about)}</p>\n`;
  const size = `width="${SHOWN}" height="${Math.round((SHOWN * height) / width)}"`;
  return `  <article id="${id}" aria-labelledby="${id}-heading">
    <h2 id="${id}-heading"${lang}>${title}</h2>
${about}    <p>${escaped(say('gallery.extends'))} <code>extends: ${escaped(extended)}</code></p>
    <a href="${escaped(file)}"><img src="${escaped(file)}" alt="${alt}" ${size} loading="lazy"></a>
  </article>
`;
}

/** The size that a drawing gives itself, CSS pixels; absent where it gives none. */
export function sizeOfDrawing(svg: string): { readonly width: number; readonly height: number } | undefined {
  const root = /<svg\b[^>]*>/.exec(svg)?.[0] ?? '';
  const [, width, height] = /\bviewBox="\S+ \S+ (\S+) (\S+)"/.exec(root) ?? [];
  return Number(width) > 0 && Number(height) > 0
    ? { width: Number(width), height: Number(height) }
    : undefined;
}
