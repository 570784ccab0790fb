/** Reads a plot back from its SVG: boxes of texts, points of curves, and the axes as their printed figures give them. */
import { textWidth } from '../../src/common/text.ts';

export type Spot = readonly [number, number];

export interface Written {
  readonly words: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const attribute = (tag: string, name: string): string =>
  new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1] ?? '';
const value = (tag: string, name: string): number => Number(attribute(tag, name));

/** The text of the group with this id, its nested groups included. */
export function group(svg: string, id: string): string {
  const start = svg.indexOf(`<g id="${id}"`);
  if (start < 0) return '';
  let depth = 0;
  const tags = /<g[\s>]|<\/g>/g;
  tags.lastIndex = start;
  for (let tag = tags.exec(svg); tag; tag = tags.exec(svg)) {
    depth += tag[0] === '</g>' ? -1 : 1;
    if (depth === 0) return svg.slice(start, tag.index);
  }
  return '';
}

const unescaped = (text: string): string =>
  text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');

/** Every text with the box it takes, from the top of its capitals to the foot of its descenders. */
export function textsOf(svg: string): readonly Written[] {
  return [...svg.matchAll(/<text([^>]*)>([^<]*)<\/text>/g)].map(([, tag = '', inner = '']) => {
    const words = unescaped(inner);
    const size = value(tag, 'font-size');
    const width = textWidth(words, size, attribute(tag, 'font-weight') === '700' ? 'bold' : 'regular');
    const anchor = attribute(tag, 'text-anchor');
    // The root centres what says nothing else.
    const left = value(tag, 'x') - (anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2);
    // Inter's capitals are 0.73 em high, its descenders 0.2 em deep; read off the font's own table.
    const [top, bottom] = [value(tag, 'y') - 0.73 * size, value(tag, 'y') + 0.2 * size];
    return { words, left, right: left + width, top, bottom };
  });
}

/** Pairs of texts that lie on one another. */
export const overlaps = (texts: readonly Written[]): readonly string[] =>
  texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `“${a.words}” on “${b.words}”`),
  );

/** Points of the first path in a piece of SVG. */
export const pointsOf = (piece: string): readonly Spot[] =>
  [...(/<path d="([^"]*)"/.exec(piece)?.[1] ?? '').matchAll(/[ML](-?[\d.]+)[, ](-?[\d.]+)/g)].map(
    ([, x, y]): Spot => [Number(x), Number(y)],
  );

export const circlesOf = (piece: string): readonly Spot[] =>
  [...piece.matchAll(/<circle([^>]*)>/g)].map(([, tag = '']): Spot => [value(tag, 'cx'), value(tag, 'cy')]);

export interface ReadAxes {
  /** Hertz at a distance from the left. */
  readonly hertz: (x: number) => number;
  readonly place: (hertz: number) => number;
  /** Decibels at a height. */
  readonly decibels: (y: number) => number;
}

/** The axes from the printed figures alone: the outermost two of each, all others taken as read. */
export function axesOf(svg: string, id: string): ReadAxes {
  const figures = (name: string): readonly { readonly at: Written; readonly figure: number }[] =>
    textsOf(group(svg, `${id}-${name}`)).map((at) => ({
      at,
      figure: Number(at.words.replace('−', '-').replace('k', 'e3')),
    }));
  const [across, up] = [figures('hertz'), figures('decibels')];
  const [first, last] = [across[0], across.at(-1)];
  const [low, high] = [up[0], up.at(-1)];
  if (!first || !last || !low || !high) throw new Error(`${id}: no figures on an axis`);
  const middle = ({ left, right }: Written): number => (left + right) / 2;
  // A text's y is its baseline, and capitals are centred on their tick: the same offset for all.
  const centre = ({ top, bottom }: Written): number => top + ((bottom - top) * 0.365) / 0.93;
  const perLog = (middle(last.at) - middle(first.at)) / Math.log(last.figure / first.figure);
  const perDecibel = (centre(high.at) - centre(low.at)) / (high.figure - low.figure);
  return {
    hertz: (x) => first.figure * Math.exp((x - middle(first.at)) / perLog),
    place: (hertz) => middle(first.at) + perLog * Math.log(hertz / first.figure),
    decibels: (y) => low.figure + (y - centre(low.at)) / perDecibel,
  };
}

/** Height of a curve between its points. */
export function heightAt(points: readonly Spot[], x: number): number {
  const i = points.findIndex(([px]) => px >= x);
  const [a, b] = [points[i - 1], points[i]];
  if (!a || !b) return Number.NaN;
  return a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
}

/** Texts that a curve runs through. */
export const struckBy = (texts: readonly Written[], points: readonly Spot[]): readonly string[] =>
  texts
    .filter(({ left, right, top, bottom }) =>
      points.some((b, i) => {
        const a = points[i - 1] ?? b;
        return [0, 0.25, 0.5, 0.75, 1].some((share) => {
          const [x, y] = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
          return x > left && x < right && y > top && y < bottom;
        });
      }),
    )
    .map(({ words }) => words);
