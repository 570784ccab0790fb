/** Colour codes of wires (IEC 60757), each on its own wire, or beside it where there is no room. */
import { around, type Point, type Rect } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import { rectToSheet, toSheet } from '../place/frame.ts';
import type { PlacedWire, Placement } from '../place/placement.ts';
import type { Pen } from './pen.ts';
import { LINE, type Theme } from './theme.ts';
import type { Emphasis } from './wires.ts';

const SIZE = 12;
export const CHIP_HEIGHT = 16;

/** A place on a wire for its code. */
export interface Chip {
  /** Index of its wire. */
  readonly wire: number;
  readonly code: string;
  readonly rect: Rect;
  /** From the wire to a chip that stands beside it. */
  readonly leader?: readonly [Point, Point];
}

/** How wide a chip is. */
export const chipWidth = (code: string): number => Math.ceil(textWidth(code, SIZE, 'bold')) + 8;

/** How much of its wire a chip leaves to be seen on either side, and how far it keeps from everything else. */
interface Room {
  readonly ends: number;
  readonly clear: number;
}
/** Tried in this order. */
const ROOMS: readonly Room[] = [
  { ends: 14, clear: 4 },
  { ends: 5, clear: 2 },
];
/** How far a chip may stand out at the sides of the drawing, where the sheet's margin is free. */
const SIDE = 16;
/** How far beside its wire a chip stands that finds no room on it. */
const ASIDE = [14, 20, 28, 36] as const;

/** A chip for every wire with a colour: on a free stretch of it where there is one, else beside it with a leader. */
export function chipsOf({ wires, parts, width: across, height: down }: Placement): readonly Chip[] {
  const chips: Chip[] = [];
  // Beyond the drawing's own margin there is the key, the cards or the edge of the page.
  const far = 1e6;
  const walls: readonly Rect[] = [
    { x: -far, y: -far, width: 2 * far, height: far },
    { x: -far, y: down, width: 2 * far, height: far },
    { x: -far, y: -far, width: far - SIDE, height: 2 * far },
    { x: across + SIDE, y: -far, width: far, height: 2 * far },
  ];
  const bodies = parts.flatMap(({ frame, outline }) => [
    ...[outline.body, ...outline.lugs.map((lug) => lug.tag)].map((rect) => rectToSheet(frame, rect)),
    ...outline.labels.map(({ text, centre, size, weight }) => {
      const p = toSheet(frame, centre);
      return around(p.x, p.y, textWidth(text, size, weight), size);
    }),
  ]);
  for (const [index, wire] of wires.entries()) {
    const code = wire.joint.colour;
    if (code === undefined) continue;
    const taken = [...walls, ...bodies, ...chips.map((chip) => chip.rect)];
    const width = chipWidth(code);
    const found =
      ROOMS.map((room) => freeSpot(wire, wires, width, taken, room)).find((spot) => spot !== undefined) ??
      asideSpot(wire, wires, width, taken);
    if (found) chips.push({ wire: index, code, ...found });
  }
  return chips;
}

type Place = Pick<Chip, 'rect' | 'leader'>;

/** Stretches of a wire, the longest first. */
const stretchesOf = (wire: PlacedWire) =>
  wire.points
    .slice(1)
    .map((b, i) => ({ a: wire.points[i] ?? b, b }))
    .sort((s, t) => span(t) - span(s));

/** The first free place, trying the longest stretch first, from its middle outwards. */
function freeSpot(
  wire: PlacedWire,
  wires: readonly PlacedWire[],
  width: number,
  taken: readonly Rect[],
  { ends, clear }: Room,
): Place | undefined {
  for (const { a, b } of stretchesOf(wire)) {
    const level = a.y === b.y;
    const half = (level ? width : CHIP_HEIGHT) / 2 + ends;
    const length = span({ a, b });
    for (let off = 0; off <= length / 2 - half; off += 4)
      for (const side of off === 0 ? [0] : [-1, 1]) {
        const share = 0.5 + (side * off) / length;
        const p = { x: Math.round(a.x + (b.x - a.x) * share), y: Math.round(a.y + (b.y - a.y) * share) };
        const wide = around(p.x, p.y, width + clear, CHIP_HEIGHT + clear);
        if (
          wires.every((other) => other === wire || !touches(other, wide)) &&
          taken.every((other) => !overlap(other, wide))
        )
          return { rect: around(p.x, p.y, width, CHIP_HEIGHT) };
      }
  }
  return undefined;
}

/** A free place beside the wire, joined to it by a leader from the middle of a stretch. */
function asideSpot(
  wire: PlacedWire,
  wires: readonly PlacedWire[],
  width: number,
  taken: readonly Rect[],
): Place | undefined {
  for (const { a, b } of stretchesOf(wire)) {
    const level = a.y === b.y;
    const p = { x: Math.round((a.x + b.x) / 2), y: Math.round((a.y + b.y) / 2) };
    for (const by of ASIDE)
      for (const side of [-1, 1]) {
        const q = level ? { x: p.x, y: p.y + side * by } : { x: p.x + side * (by + width / 2 - 6), y: p.y };
        const wide = around(q.x, q.y, width + 4, CHIP_HEIGHT + 4);
        const leader = {
          x: Math.min(p.x, q.x),
          y: Math.min(p.y, q.y),
          width: Math.abs(p.x - q.x),
          height: Math.abs(p.y - q.y),
        };
        if (
          wires.every((other) => !touches(other, wide) && (other === wire || !touches(other, leader))) &&
          taken.every((other) => !overlap(other, wide) && !overlap(other, leader))
        )
          return { rect: around(q.x, q.y, width, CHIP_HEIGHT), leader: [p, q] };
      }
  }
  return undefined;
}

const span = ({ a, b }: { a: Point; b: Point }): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);

const overlap = (r: Rect, s: Rect): boolean =>
  r.x < s.x + s.width && s.x < r.x + r.width && r.y < s.y + s.height && s.y < r.y + r.height;

/** Half of the widest line a wire is drawn with. */
const WIDEST = LINE.sleeve / 2;

const touches = (wire: PlacedWire, rect: Rect): boolean =>
  wire.points.slice(1).some((b, i) => {
    const a = wire.points[i] ?? b;
    return overlap(rect, {
      x: Math.min(a.x, b.x) - WIDEST,
      y: Math.min(a.y, b.y) - WIDEST,
      width: Math.abs(a.x - b.x) + 2 * WIDEST,
      height: Math.abs(a.y - b.y) + 2 * WIDEST,
    });
  });

/** Draws the chips of all wires that are there; each keeps its place whatever else is drawn. */
export function drawChips(
  pen: Pen,
  placement: Placement,
  theme: Theme,
  emphasis: readonly Emphasis[] = [],
): void {
  for (const { code, rect, leader, wire } of chipsOf(placement)) {
    if (emphasis[wire] === 'absent') continue;
    if (leader) pen.line(leader, { stroke: theme.outline, 'stroke-width': 0.8 });
    drawChip(pen, code, rect, theme);
  }
}

export function drawChip(pen: Pen, code: string, rect: Rect, theme: Theme): void {
  pen.rect(rect, { class: 'sl-chip', rx: 4, fill: theme.paper, stroke: theme.outline, 'stroke-width': 0.8 });
  pen.text(
    code,
    { x: rect.x + rect.width / 2, y: rect.y + rect.height / 2 },
    { size: SIZE, weight: 'bold', fill: theme.ink },
  );
}
