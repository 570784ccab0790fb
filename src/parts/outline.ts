/**
 * The contract of an outline: what placing and routing need to know of a part, and nothing of how it looks inside.
 * All of it in drawing units from the part's top left corner, upright and unmirrored; lugs and ports lie on the grid.
 */
import { at, PITCH, type Point, type Rect } from '../common/geometry.ts';
import { must } from '../common/must.ts';
import { leastBetween } from '../common/reach.ts';
import { textWidth } from '../common/text.ts';

/** One way a wire may arrive at a lug. */
export interface Port {
  /** Grid node, just outside, that the wire passes through. */
  readonly node: Point;
  /** Unit vector from the node into the lug. */
  readonly inward: Point;
  /** Where the wire ends: the solder spot. */
  readonly spot: Point;
  /** A corner on the way from the node to the spot, where they are not in line. */
  readonly via?: Point;
  /** What choosing this way costs beyond the wire; none when left out. */
  readonly price?: number;
}

export interface LugOutline {
  readonly lug: string;
  /** What the customer sees to solder to. */
  readonly tag: Rect;
  readonly ports: readonly Port[];
  /** A surface to solder to anywhere, as a case is: it has no name of its own on the drawing, and wires may pass near. */
  readonly surface?: true;
  /** Where the lug lies when it is bent over onto another of the same part; it needs no way across the sheet. */
  readonly strap?: Strap;
}

export interface Strap {
  readonly to: string;
  readonly from: Point;
  readonly end: Point;
}

/** A line of text that belongs to the part, by its centre. */
export interface LabelSlot {
  readonly text: string;
  readonly centre: Point;
  readonly size: number;
  readonly weight: 'regular' | 'bold';
  /** Lines of one number keep their order about a middle of their own when the part is turned; 0 where left out. */
  readonly block?: number;
}

/** On a switch’s face: the positions that whatever stands there belongs to. */
interface PositionMark {
  readonly text: string;
  readonly centre: Point;
  readonly positions: readonly number[];
}

export interface Outline {
  /** That this is the form for a narrow column. */
  readonly narrow?: true;
  /** Extent, drawing units, multiples of the pitch. */
  readonly width: number;
  readonly height: number;
  readonly lugs: readonly LugOutline[];
  /** What no wire may run under. */
  readonly body: Rect;
  /** Rectangles whose grid nodes wires may not use, bounds included. */
  readonly blocked: readonly Rect[];
  readonly labels: readonly LabelSlot[];
  /** The labels of a part that lies on its side, about the same middle; as when it stands where left out. */
  readonly asideLabels?: readonly LabelSlot[];
  /** The outline of a part turned by a quarter, before it is turned, where upright words need other room then. */
  readonly aside?: Outline;
  /** Where a switch's positions are, whichever way the part is turned. */
  readonly marks?: readonly PositionMark[];
}

/** The outline of a part that is turned by so many quarters. */
export const outlineTurned = (outline: Outline, turn: number): Outline =>
  turn % 2 === 1 ? (outline.aside ?? outline) : outline;

/** Middle of a lug's tag. */
export function tagCentre(outline: Outline, lug: string): Point {
  const tag = must(outline.lugs.find((one) => one.lug === lug)?.tag, `an outline of lug ${lug}`);
  return at(tag.x + tag.width / 2, tag.y + tag.height / 2);
}

/** Grid units to drawing units. */
export const g = (units: number): number => units * PITCH;

const DIRECTIONS = {
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
  up: { x: 0, y: -1 },
  down: { x: 0, y: 1 },
} as const;
type Side = keyof typeof DIRECTIONS;

/** Ports on the given sides of a tag centred at (x, y) in grid units; the wire ends at the tag's edge, so that the solder covers no letter. */
export function tagPorts(tag: Rect, x: number, y: number, sides: readonly Side[]): readonly Port[] {
  return sides.map((side, price) => {
    const out = DIRECTIONS[side];
    const spot = {
      left: { x: tag.x, y: g(y) },
      right: { x: tag.x + tag.width, y: g(y) },
      up: { x: g(x), y: tag.y },
      down: { x: g(x), y: tag.y + tag.height },
    }[side];
    return {
      node: { x: g(x + out.x), y: g(y + out.y) },
      inward: { x: -out.x + 0, y: -out.y + 0 },
      price,
      spot,
    };
  });
}

/** Sizes of type, drawing units; see the style guide. */
export const TYPE = { title: 22, name: 14, value: 12, lug: 12 } as const;

/** A word wider than this is divided, so that no plate becomes wider than that. */
const LONGEST_WORD = g(9);

/** What a label may be broken into: words, each with the blank before it, and what a hyphen ends. */
function wordsOf(label: string): readonly string[] {
  const words = label.trim().match(/ *(?:[^ -]+-*|-+)/g) ?? [];
  return words.flatMap((word) => {
    const count = Math.ceil(textWidth(word.trim(), TYPE.name, 'bold') / LONGEST_WORD);
    const letters = [...word];
    const each = Math.ceil(letters.length / Math.max(1, count));
    return Array.from({ length: Math.max(1, count) }, (_, i) =>
      letters.slice(i * each, (i + 1) * each).join(''),
    ).filter((piece) => piece !== '');
  });
}

const nameWidth = (text: string): number => textWidth(text, TYPE.name, 'bold');
const valueWidth = (text: string): number => textWidth(text, TYPE.value);

/** Whole words to a line as long as they keep to a width; a word that is wider has a line of its own. */
function filled(words: readonly string[], width: number, widthOf = nameWidth): readonly string[] {
  const lines: string[] = [];
  for (const word of words) {
    const last = lines.at(-1);
    const longer = `${last}${word}`;
    if (last !== undefined && widthOf(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(word.trim());
  }
  return lines;
}

/**
 * A name in lines, always in the size of names: broken at blanks and behind hyphens where it would be wider than a part has room for.
 * The part then grows for its longest word.
 */
export const nameLines = (label: string, width: number): readonly string[] => filled(wordsOf(label), width);

/** What stands below a name in lines, broken at blanks where it is wider than a part has room for, and at no other space; a figure keeps its unit. */
export const belowLines = (text: string, width: number): readonly string[] =>
  filled(text.match(/ ?[^ ]+(?: (?:[kM]?Ω|[µnp]?F)(?!\p{L})[^ ]*)?/gu) ?? [], width, valueWidth);

/** Every way to fill lines with a name's words, the fewest lines first. */
export function nameWays(label: string): readonly (readonly string[])[] {
  const words = wordsOf(label);
  if (words.length === 0) return [[]];
  const widths = words.flatMap((_, i) => words.slice(i).map((_, k) => words.slice(i, i + k + 1).join('')));
  const ways = [...new Set(widths.map((text) => nameWidth(text.trim())))]
    .map((width) => filled(words, width))
    .sort((a, b) => a.length - b.length);
  return ways.filter((way, i) => ways.findIndex((one) => one.join('\n') === way.join('\n')) === i);
}

/** Lines of a name, one below the other, further apart where accents come below tails. */
export function nameLabels(lines: readonly string[], centre: (line: number) => Point): readonly LabelSlot[] {
  const missing = lines.map((text, i) => {
    const before = lines[i - 1];
    if (before === undefined) return 0;
    const [a, b] = [centre(i - 1), centre(i)];
    return Math.max(0, leastBetween(before, text, TYPE.name) - Math.abs(a.y - b.y) - Math.abs(a.x - b.x));
  });
  const all = missing.reduce((sum, one) => sum + one, 0);
  let down = -all / 2;
  return lines.map((text, i) => {
    down += missing[i] ?? 0;
    const { x, y } = centre(i);
    return { text, centre: { x, y: y + down }, size: TYPE.name, weight: 'bold' };
  });
}

/** A part's name in lines and, below it, what it is. */
export const titleLabels = (
  lines: readonly string[],
  what: string | readonly string[],
  centre: (line: number) => Point,
): readonly LabelSlot[] => [
  ...nameLabels(lines, centre),
  ...[what].flat().map(
    (text, i): LabelSlot => ({
      text,
      centre: centre(lines.length + i),
      size: TYPE.value,
      weight: 'regular',
    }),
  ),
];

/** Width of the widest of a name's lines and of what stands below them. */
export const widestLine = (lines: readonly string[], ...below: readonly string[]): number =>
  Math.max(0, ...lines.map(nameWidth), ...below.map(valueWidth));
