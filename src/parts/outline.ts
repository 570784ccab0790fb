/**
 * The contract of an outline: what placing and routing need to know of a part, and nothing of how it looks inside.
 * All of it in drawing units from the part's top left corner, upright and unmirrored; lugs and ports lie on the grid.
 */
import { at, PITCH, type Point, type Rect } from '../common/geometry.ts';
import { must } from '../common/must.ts';
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
}

export interface Outline {
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

/** A part's name and, below it, what it is: centred, one below the other. A long name is set smaller, in as many lines as it needs. */
export function nameLabels(
  label: string,
  what: string,
  width: number,
  centre: (line: number) => Point,
): readonly LabelSlot[] {
  const short = textWidth(label, TYPE.name, 'bold') <= width;
  const name = label === '' ? [] : short ? [label] : wrapped(label, width, TYPE.value, 'bold');
  const size = short ? TYPE.name : TYPE.value;
  return [
    ...name.map((text, i) => ({ text, centre: centre(i), size, weight: 'bold' as const })),
    { text: what, centre: centre(name.length), size: TYPE.value, weight: 'regular' },
  ];
}

/** A text in lines no wider than `width`, broken between words, and a word that is too long by itself anywhere. */
export function wrapped(
  text: string,
  width: number,
  size: number,
  weight: LabelSlot['weight'],
): readonly string[] {
  const fits = (line: string): boolean => textWidth(line, size, weight) <= width;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    lines.push(line);
    line = '';
    for (const letter of word) {
      if (!fits(line + letter)) {
        lines.push(line);
        line = '';
      }
      line += letter;
    }
  }
  return [...lines, line].filter((one) => one !== '');
}
