import { around } from '../../common/geometry.ts';
import { textWidth } from '../../common/text.ts';
import { printQuantity } from '../../common/units.ts';
import type { PartOf } from '../../parts/index.ts';
import { g, type LabelSlot, type Outline, TYPE, tagPorts } from './outline.ts';

/** Row of the legs. */
const ROW = 2;

/** How much of a leg the line that goes on from it takes over, drawing units. */
const LEG = 10;

/** Size of the body, drawing units, by kind. */
export const TWO_LEG_BODY = {
  resistor: { width: 58, height: 20 },
  capacitor: { width: 44, height: 28 },
} as const;

/** Resistor or capacitor lying down: name above, value below, and below that what it does, where it does something. */
export function twoLegOutline(part: PartOf<'resistor' | 'capacitor'>, caption?: string): Outline {
  const unit = part.kind === 'resistor' ? 'ohm' : 'farad';
  const lines: readonly Omit<LabelSlot, 'centre'>[] = [
    { text: part.label, size: TYPE.value, weight: 'bold' },
    { text: printQuantity(part.value.value, unit), size: TYPE.value, weight: 'regular' },
    ...(caption === undefined ? [] : [{ text: caption, size: TYPE.value, weight: 'bold' } as const]),
  ];
  const text = Math.max(...lines.map((line) => textWidth(line.text, line.size, line.weight)));
  const columns = Math.max(6, Math.ceil((text + 36) / g(1)));
  const rows = caption === undefined ? 4 : 5;
  const size = TWO_LEG_BODY[part.kind];
  const middle = g(columns / 2);
  // A capacitor's body is taller: a letter with a tail above it must keep clear.
  const heights = [part.kind === 'capacitor' ? g(0.6) : g(0.7), g(3.45), g(4.45)];
  return {
    width: g(columns),
    height: g(rows),
    body: around(middle, g(ROW), size.width, size.height),
    blocked: [{ x: g(1), y: 0, width: g(columns - 2), height: g(rows) }],
    lugs: (['1', '2'] as const).map((lug, i) => {
      const x = i * columns;
      const tag = around(g(x) + (i === 0 ? LEG : -LEG), g(ROW), 10, 10);
      // A leg's line begins on the leg itself, so that it bends as one piece of wire bends.
      const via = { x: g(x), y: g(ROW) };
      const spot = { x: g(x) + (i === 0 ? LEG : -LEG), y: g(ROW) };
      const ports = tagPorts(tag, x, ROW, [i === 0 ? 'left' : 'right', 'up', 'down']);
      return { lug, tag, ports: ports.map((port) => ({ ...port, spot, via })) };
    }),
    labels: lines.map((line, i) => ({ ...line, centre: { x: middle, y: heights[i] ?? 0 } })),
  };
}
