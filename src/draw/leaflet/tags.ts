/**
 * Words of a figure that is printed small: names of parts and lugs in a size that can be read on the paper, in tags that
 * grow with them. Where a tag has grown, a wire ends at its new edge.
 */
import { lugId } from '../../circuit/circuit.ts';
import { around, centreOf, type Point, type Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { textWidth } from '../../common/text.ts';
import { is } from '../../parts/index.ts';
import { type LabelSlot, nameLines, TYPE } from '../../parts/outline.ts';
import { labelsToSheet, rectToSheet } from '../../place/frame.ts';
import type { PlacedPart } from '../../place/placement.ts';

/** A lug's tag on the sheet, and the size of its name; without one where there is no room for it. */
export interface Tag {
  readonly id: string;
  readonly lug: string;
  readonly rect: Rect;
  readonly size?: number;
}

/** Around a name in its tag. */
const ROUND = { across: 0.95, along: 0.35 } as const;

const grown = (rect: Rect, lug: string, size: number): Rect => {
  const { x, y } = centreOf(rect);
  return around(
    x,
    y,
    Math.max(rect.width, textWidth(lug, size, 'bold') + ROUND.across * size),
    Math.max(rect.height, size * (1 + ROUND.along)),
  );
};

/** Tags of a part's lugs in which names are of a size; surfaces and the legs of components have none. */
export const tagsOf = ({ part, frame, outline }: PlacedPart, size: number, named: boolean): readonly Tag[] =>
  is(part, 'component')
    ? []
    : outline.lugs.flatMap(({ lug, tag, surface }) => {
        if (surface) return [];
        const rect = rectToSheet(frame, tag);
        const own = { id: lugId(part.name, lug), lug };
        return [named ? { ...own, rect: grown(rect, lug, size), size } : { ...own, rect }];
      });

/** How much wider than the words it replaces a name may be: faces leave some air about them. */
const WIDER = 1.15;

/** A part's name in lines of a size, about the middle of where its words stand. */
export function namesOf({ part, frame, outline }: PlacedPart, size: number): readonly LabelSlot[] {
  const slots = labelsToSheet(frame, outline);
  const names = slots.filter((slot) => slot.size === TYPE.name && slot.weight === 'bold');
  const [first] = names;
  if (!first) return [];
  const grow = size / TYPE.name;
  if (grow <= 1) return names;
  // A component's name stands over its body, and must not grow down into it; another's has the room of the other words too.
  const over = is(part, 'component');
  const about = over ? names : slots;
  const heights = about.map(({ centre }) => centre.y);
  const room = Math.max(...about.map((slot) => textWidth(slot.text, slot.size, slot.weight)), 88);
  const lines = over ? names.map(({ text }) => text) : nameLines(part.label, (WIDER * room) / grow);
  const [top, bottom] = [Math.min(...heights), Math.max(...heights)];
  const last = over
    ? bottom - (size - TYPE.name) / 2
    : (top + bottom) / 2 + ((lines.length - 1) * size * 1.2) / 2;
  return lines.map((text, i) => ({
    text,
    size,
    weight: 'bold',
    centre: { x: first.centre.x, y: last - (lines.length - 1 - i) * size * 1.2 },
  }));
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
  const [a, b] = [nth(points, first - 1), nth(points, first)];
  const edge: Point =
    a.x === b.x
      ? { x: a.x, y: b.y > a.y ? rect.y + rect.height : rect.y }
      : { x: b.x > a.x ? rect.x + rect.width : rect.x, y: a.y };
  return [edge, ...points.slice(first)];
}
