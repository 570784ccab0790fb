/** The HTML to paste into a shop’s page, one fragment for each way: the picture, the drawing in the page, the figure with its switch. */
import type { Element } from 'hast';
import { h } from 'hastscript';
import { must } from '../common/must.ts';
import { drawn, htmlText, signature } from './html.ts';
import { altOf, imageObject } from './image-object.ts';
import type { KitData } from './kit-data.ts';

/** Where a page finds what all kits share. */
export interface Shared {
  /** Address of the folder, ending in a slash; empty for pages that lie in it. */
  readonly base: string;
  /** Beginnings of the files’ hashes, so that a new version is fetched though the old one is kept. */
  readonly theme: string;
  readonly script: string;
  /** The script’s, as a page names it: `sha384-…`. */
  readonly integrity: string;
}

/** Names of the files that all kits share. */
export const THEME = 'theme.css';
export const SCRIPT = 'solderleaf-figure.js';

const themeLink = ({ base, theme }: Shared): Element =>
  h('link', { rel: 'stylesheet', href: `${base}${THEME}?v=${theme}` });

const scriptTag = ({ base, script, integrity }: Shared): Element =>
  h('script', {
    src: `${base}${SCRIPT}?v=${script}`,
    integrity,
    // Without it a browser would not check a script of another host.
    ...(base === '' ? {} : { crossOrigin: 'anonymous' }),
    defer: true,
  });

const pictureOf = ({ pictures }: KitData, file: string): KitData['pictures'][number] =>
  must(
    pictures.find((one) => one.file === file),
    file,
  );

const whole = (data: KitData): KitData['pictures'][number] => pictureOf(data, `${data.id}.svg`);

/** Windows that get the drawing for a phone, as it would be too small to read otherwise. */
const PHONE = '(max-width: 639.98px)';

/** The whole drawing as a picture that leads to itself in full; on a phone the wiring alone, in a column. Each has its size, so that nothing moves. */
export function imageFragment(data: KitData, { base }: Shared): string {
  const { id, language } = data;
  const { file, width, height } = whole(data);
  const narrow = pictureOf(data, `${id}-360-drawing.svg`);
  const at = (name: string): string => `${base}${id}/${name}`;
  return htmlText(
    signature(`${id} image`),
    h('a', { href: at(file), lang: language }, [
      h('picture', {}, [
        h('source', {
          media: PHONE,
          srcSet: at(narrow.file),
          width: narrow.width,
          height: narrow.height,
        }),
        h('img', { src: at(file), width, height, alt: altOf(data), decoding: 'async' }),
      ]),
    ]),
    imageObject(data, whole(data), base),
  );
}

/**
 * The drawing as part of the page, in the page’s inks.
 *
 * @param svg the inline drawing
 */
export const inlineFragment = (data: KitData, svg: string, shared: Shared): string =>
  htmlText(
    signature(`${data.id} inline`),
    themeLink(shared),
    h('div', { className: ['solderleaf-auto'], lang: data.language }, [drawn(svg)]),
    imageObject(data, whole(data), shared.base),
  );

/**
 * The figure with its switch, tables and loads, and the script that makes it answer.
 *
 * @param figure as `figureHtml` makes it
 */
export const figureFragment = (data: KitData, figure: string, shared: Shared): string =>
  htmlText(
    signature(`${data.id} figure`),
    themeLink(shared),
    drawn(figure),
    scriptTag(shared),
    imageObject(data, whole(data), shared.base),
  );
