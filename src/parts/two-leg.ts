/** What resistor and capacitor share: two legs of their own, sleeving over either when asked for, and the outline. */

import { z } from 'zod';
import { around } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import { textWidth } from '../common/text.ts';
import type { LugSpec } from './kind.ts';
import { g, type LabelSlot, nameLines, type Outline, TYPE, tagPorts } from './outline.ts';

export const twoLegs = [
  { name: '1', role: 'leg' },
  { name: '2', role: 'leg' },
] as const satisfies readonly LugSpec[];

/** The legs that get sleeving: `1`, `2` or both. */
export const sleevingField = z
  .union([z.literal(1), z.literal(2), z.literal('both')])
  .optional()
  .describe('Which leg gets sleeving: 1, 2 or both');

/** Sleeved legs by lug name. */
export const sleeves = (written: 1 | 2 | 'both' | undefined): readonly string[] =>
  written === undefined ? [] : written === 'both' ? ['1', '2'] : [String(written)];

/** Row of the legs below a name of one line. */
const ROW = 2;
/** Room that the name has before it is broken. */
const LINE = g(8);

/** How much of a leg the line that goes on from it takes over, drawing units. */
const LEG = 10;

/** What a kind of component gives its outline. */
interface Body {
  /** Drawing units. */
  readonly width: number;
  readonly height: number;
  /** Height of the name above the body. */
  readonly name: number;
}

/** A component lying down: name above, value below, and below that what it does, where it does something. */
export function twoLegOutline(label: string, value: string, size: Body, caption?: string): Outline {
  const names = nameLines(label, LINE);
  const more = names.length - 1;
  const lines: readonly Omit<LabelSlot, 'centre'>[] = [
    ...names.map((text) => ({ text, size: TYPE.name, weight: 'bold' }) as const),
    { text: value, size: TYPE.value, weight: 'regular' },
    ...(caption === undefined ? [] : [{ text: caption, size: TYPE.value, weight: 'bold' } as const]),
  ];
  const text = Math.max(...lines.map((line) => textWidth(line.text, line.size, line.weight)));
  // A caption stands in a box, which needs some air at its sides.
  const columns = Math.max(6, Math.ceil((text + (caption === undefined ? 36 : 52)) / g(1)));
  const rows = (caption === undefined ? 4 : 5) + more;
  const row = ROW + more;
  const middle = g(columns / 2);
  const heights = [...names.map((_, i) => size.name + g(i)), g(3.45 + more), g(4.45 + more)];
  return {
    width: g(columns),
    height: g(rows),
    body: around(middle, g(row), size.width, size.height),
    blocked: [{ x: g(1), y: 0, width: g(columns - 2), height: g(rows) }],
    lugs: twoLegs.map(({ name: lug }, i) => {
      const x = i * columns;
      const tag = around(g(x) + (i === 0 ? LEG : -LEG), g(row), 10, 10);
      // A leg's line begins on the leg itself, so that it bends as one piece of wire bends.
      const via = { x: g(x), y: g(row) };
      const spot = { x: g(x) + (i === 0 ? LEG : -LEG), y: g(row) };
      const ports = tagPorts(tag, x, row, [i === 0 ? 'left' : 'right', 'up', 'down']);
      return { lug, tag, ports: ports.map((port) => ({ ...port, spot, via })) };
    }),
    labels: lines.map((line, i) => ({ ...line, centre: { x: middle, y: nth(heights, i) } })),
  };
}
