/** Words of a figure that is printed small: names of parts in a size that can be read on the paper; and wires that end at the edges of tags that have grown. */
import { around, type Point, type Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { textWidth } from '../../common/text.ts';
import { componentOf, is } from '../../parts/index.ts';
import { type LabelSlot, nameLines, TYPE } from '../../parts/outline.ts';
import { labelsToSheet } from '../../place/frame.ts';
import type { PlacedPart } from '../../place/placement.ts';

/** How much wider than the words it replaces a name may be: faces leave some air about them. */
const WIDER = 1.2;
/** Least room for a name, drawing units: a pot's track leaves as much inside. */
const ROOM = 88;
/** How much taller than the words it replaces a name with what stands below it may be. */
const TALLER = 1.5;
/** From one line to the next, by the size of type. */
const LEADING = 1.2;

/** Sizes of a name and of what stands below it, where the least is given. */
const sizesOf = (size: number): { readonly large: number; readonly small: number } => ({
  large: Math.max(TYPE.name, size),
  small: size,
});

const named = (slots: readonly LabelSlot[]): readonly LabelSlot[] =>
  slots.filter((slot) => slot.size === TYPE.name && slot.weight === 'bold');
const valued = (slots: readonly LabelSlot[]): readonly LabelSlot[] =>
  slots.filter((slot) => slot.size === TYPE.value && slot.weight === 'regular');

/** A component's value with the code that is printed on it, below its body and grown away from that; what the annotation says of it is left out. */
export function valuesOf({ part, frame, outline }: PlacedPart, size: number): readonly LabelSlot[] {
  const print = componentOf(part)?.print;
  return valued(labelsToSheet(frame, outline)).map((what, i) => ({
    ...what,
    text: print === undefined || i > 0 ? what.text : `${what.text} (${print})`,
    size: Math.max(TYPE.value, size),
    centre: { x: what.centre.x, y: what.centre.y + Math.max(0, size - TYPE.value) / 2 },
  }));
}

/** A part's name in other lines than it has in the wiring, about the same middle; over a component its last line stays where it is. */
export function linesOf(
  { part, frame, outline }: PlacedPart,
  lines: readonly string[],
  size: number,
): readonly LabelSlot[] {
  const names = named(labelsToSheet(frame, outline));
  const { large } = sizesOf(size);
  const [xs, ys] = [names.map(({ centre }) => centre.x), names.map(({ centre }) => centre.y)];
  const x = nth(xs, 0);
  const last = is(part, 'component')
    ? Math.max(...ys) - (large - TYPE.name) / 2
    : (Math.min(...ys) + Math.max(...ys) + (lines.length - 1) * large * LEADING) / 2;
  return lines.map((text, i) => ({
    text,
    size: large,
    weight: 'bold',
    centre: { x, y: last - (lines.length - 1 - i) * large * LEADING },
  }));
}

/**
 * A part's name, and if it is asked for what it is, in lines of a size or more, about the middle of where its words stand. What the annotation says of it is left
 * out.
 */
export function namesOf(placed: PlacedPart, size: number, values: boolean): readonly LabelSlot[] {
  const { part, frame, outline } = placed;
  const slots = labelsToSheet(frame, outline);
  const names = named(slots);
  const whats = values ? valued(slots) : [];
  const [first] = names;
  if (!first || size <= TYPE.value) return [...names, ...whats];
  const { large, small } = sizesOf(size);
  // A component's name stands over its body and must not grow into it; another's has the room of all its words.
  if (is(part, 'component'))
    return linesOf(
      placed,
      names.map(({ text }) => text),
      size,
    );
  const beside = whats.filter(({ centre }) => centre.x !== first.centre.x);
  const below = whats.filter((what) => !beside.includes(what));
  const room = WIDER * Math.max(...slots.map((slot) => textWidth(slot.text, slot.size, slot.weight)), ROOM);
  const lined = nameLines(part.label, (room * TYPE.name) / large).map(
    (text) => ({ text, size: large, weight: 'bold' }) as const,
  );
  const told = below.map(({ text }) => ({ text, size: small, weight: 'regular' }) as const);
  const heightOf = (lines: readonly { readonly size: number }[]): number =>
    lines.reduce((sum, { size: one }) => sum + one * LEADING, 0);
  // What has no room any more is left out: the parts list tells it.
  const fits =
    heightOf([...lined, ...told]) <= TALLER * heightOf([...names, ...below]) &&
    told.every(({ text }) => textWidth(text, small) <= room);
  const lines = fits ? [...lined, ...told] : lined;
  const heights = slots.filter((slot) => !beside.includes(slot)).map(({ centre }) => centre.y);
  let y = (Math.min(...heights) + Math.max(...heights)) / 2 - heightOf(lines) / 2;
  return [
    ...lines.map((line) => {
      const centre = { x: first.centre.x, y: y + (line.size * LEADING) / 2 };
      y += line.size * LEADING;
      return { ...line, centre };
    }),
    ...beside.map((slot) => ({ ...slot, size: small })),
  ];
}

/** The room that a line of text takes. */
export const roomOf = ({ text, centre, size, weight }: LabelSlot): Rect =>
  around(centre.x, centre.y, textWidth(text, size, weight), size);

/** A wire's points without what lies in the tags at its ends. */
export function outside(
  points: readonly Point[],
  from: Rect | undefined,
  to: Rect | undefined,
): readonly Point[] {
  return [...cut([...cut(points, from)].reverse(), to)].reverse();
}

const holds = ({ x, y, width, height }: Rect, p: Point): boolean =>
  p.x >= x - 0.01 && p.x <= x + width + 0.01 && p.y >= y - 0.01 && p.y <= y + height + 0.01;

function cut(points: readonly Point[], rect: Rect | undefined): readonly Point[] {
  if (!rect) return points;
  const first = points.findIndex((p) => !holds(rect, p));
  if (first <= 0) return points;
  const whole = cutAt(points, first, rect);
  const [tip, corner] = whole;
  const turns =
    first > 1 || (tip && corner && Math.abs(tip.x - corner.x) + Math.abs(tip.y - corner.y) < TURN);
  return (turns ? movedOut(points, rect) : undefined) ?? whole;
}

/** How far before a tag a line turns that turned where the tag has grown. */
const TURN = 7;

/** A line whose first corner lies in the grown tag, with the corner moved out, so that it still ends at the middle of the edge that it came to. */
function movedOut(points: readonly Point[], { x, y, width, height }: Rect): readonly Point[] | undefined {
  const [tip, corner, next, after] = points;
  if (!tip || !corner || !next || !after) return undefined;
  const [dx, dy] = [Math.sign(corner.x - tip.x), Math.sign(corner.y - tip.y)];
  const edge = {
    x: dx === 0 ? tip.x : dx > 0 ? x + width : x,
    y: dy === 0 ? tip.y : dy > 0 ? y + height : y,
  };
  const out = ({ x: px, y: py }: Point): Point => ({
    x: dx === 0 ? px : edge.x + dx * TURN,
    y: dy === 0 ? py : edge.y + dy * TURN,
  });
  const [turned, then] = [out(corner), out(next)];
  // The stretch after the next one must not turn back.
  const before = (after.x - next.x) * dx + (after.y - next.y) * dy;
  const now = (after.x - then.x) * dx + (after.y - then.y) * dy;
  if (before * now <= 0) return undefined;
  return [edge, turned, then, ...points.slice(3)];
}

function cutAt(points: readonly Point[], first: number, rect: Rect): readonly Point[] {
  const [a, b] = [nth(points, first - 1), nth(points, first)];
  const edge: Point =
    a.x === b.x
      ? { x: a.x, y: b.y > a.y ? rect.y + rect.height : rect.y }
      : { x: b.x > a.x ? rect.x + rect.width : rect.x, y: a.y };
  return [edge, ...points.slice(first)];
}
