/** Colour codes of wires (IEC 60757), each on its own wire, on a straight stretch that has room for it. */
import { around, type Point, type Rect } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import { rectToSheet } from '../place/frame.ts';
import type { PlacedWire, Placement } from '../place/placement.ts';
import type { Pen } from './pen.ts';
import type { Theme } from './theme.ts';

const SIZE = 10;
const HEIGHT = 13;

/** A place on a wire for its code. */
export interface Chip {
  readonly code: string;
  readonly rect: Rect;
}

/** Chips for every wire with a colour that has a free stretch long enough; the parts list names the colour of the rest. */
export function chipsOf({ wires, parts }: Placement): readonly Chip[] {
  const chips: Chip[] = [];
  const taken = parts.flatMap(({ frame, outline }) =>
    [outline.body, ...outline.lugs.map((lug) => lug.tag)].map((rect) => rectToSheet(frame, rect)),
  );
  for (const wire of wires) {
    const code = wire.joint.colour;
    if (code === undefined) continue;
    const width = textWidth(code, SIZE, 'bold') + 8;
    const spot = freeSpot(wire, wires, width, [...taken, ...chips.map((chip) => chip.rect)]);
    if (spot) chips.push({ code, rect: around(spot.x, spot.y, width, HEIGHT) });
  }
  return chips;
}

/** The first free place, trying the longest stretch first, from its middle outwards. */
function freeSpot(
  wire: PlacedWire,
  wires: readonly PlacedWire[],
  width: number,
  taken: readonly Rect[],
): Point | undefined {
  const stretches = wire.points
    .slice(1)
    .map((b, i) => ({ a: wire.points[i] ?? b, b }))
    .sort((s, t) => span(t) - span(s));
  for (const { a, b } of stretches) {
    const level = a.y === b.y;
    const half = (level ? width : HEIGHT) / 2 + 14;
    const length = span({ a, b });
    for (let off = 0; off <= length / 2 - half; off += 4)
      for (const side of off === 0 ? [0] : [-1, 1]) {
        const share = 0.5 + (side * off) / length;
        const p = { x: Math.round(a.x + (b.x - a.x) * share), y: Math.round(a.y + (b.y - a.y) * share) };
        const rect = around(p.x, p.y, width + 4, HEIGHT + 4);
        if (
          wires.every((other) => other === wire || !touches(other, rect)) &&
          taken.every((other) => !overlap(other, rect))
        )
          return p;
      }
  }
  return undefined;
}

const span = ({ a, b }: { a: Point; b: Point }): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);

const overlap = (r: Rect, s: Rect): boolean =>
  r.x < s.x + s.width && s.x < r.x + r.width && r.y < s.y + s.height && s.y < r.y + r.height;

const touches = (wire: PlacedWire, rect: Rect): boolean =>
  wire.points.slice(1).some((b, i) => {
    const a = wire.points[i] ?? b;
    return overlap(rect, {
      x: Math.min(a.x, b.x) - 3,
      y: Math.min(a.y, b.y) - 3,
      width: Math.abs(a.x - b.x) + 6,
      height: Math.abs(a.y - b.y) + 6,
    });
  });

export function drawChips(pen: Pen, placement: Placement, theme: Theme): void {
  for (const { code, rect } of chipsOf(placement)) {
    pen.rect(rect, {
      class: 'sl-chip',
      rx: 4,
      fill: theme.paper,
      stroke: theme.outline,
      'stroke-width': 0.8,
    });
    pen.text(
      code,
      { x: rect.x + rect.width / 2, y: rect.y + rect.height / 2 },
      { size: SIZE, weight: 'bold', fill: theme.ink },
    );
  }
}
