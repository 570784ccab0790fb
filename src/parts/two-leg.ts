/** What resistor and capacitor share: two legs of their own, sleeving over either when asked for, and the outline. */

import { z } from 'zod';
import { around } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import { leastBetween } from '../common/reach.ts';
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
  /** Width of one that stands upright, where what is printed on it needs more. */
  readonly across?: number;
  /** Height of the name above the body. */
  readonly name: number;
}

/**
 * Name, value, and what it does, where it does something. It may stand upright, and does where an arrangement seats it so; the kinds
 * leave out `turns`, so that no search turns it: over 26 kits, free to stand upright, crossings fell from 5.0 to 4.7, but bends rose
 * from 1.51 a wire to 1.55, detours from 1.16 to 1.20, and the time by a tenth.
 */
export function twoLegOutline(label: string, value: string, size: Body, caption?: string): Outline {
  const names = nameLines(label, LINE);
  const lines: readonly Line[] = [
    ...names.map((text) => ({ text, size: TYPE.name, weight: 'bold' }) as const),
    { text: value, size: TYPE.value, weight: 'regular' },
    ...(caption === undefined ? [] : [{ text: caption, size: TYPE.value, weight: 'bold' } as const]),
  ];
  const widest = Math.max(...lines.map((line) => textWidth(line.text, line.size, line.weight)));
  // A caption stands in a box, which needs some air at its sides.
  const text = widest + (caption === undefined ? 36 : 52);
  return { ...lying(lines, names.length, size, text), aside: upright(lines, size, text) };
}

type Line = Omit<LabelSlot, 'centre'>;

/** Lying down: name above, in so many lines, the others below. */
function lying(lines: readonly Line[], names: number, size: Body, text: number): Outline {
  const columns = Math.max(6, Math.ceil(text / g(1)));
  const more = names - 1;
  const rows = lines.length - more < 3 ? 4 + more : 5 + more;
  const row = ROW + more;
  const middle = g(columns / 2);
  const below = (line: number): number => g(3.45 + more + (line - names));
  // The name's last line stands over the body, the others above it.
  const above: number[] = [size.name + g(more)];
  for (let line = more; line > 0; line--) {
    const least = leastBetween(nth(lines, line - 1).text, nth(lines, line).text, TYPE.name);
    above.unshift((above[0] ?? 0) - Math.max(g(1), least));
  }
  const height = (line: number): number => above[line] ?? below(line);
  return {
    width: g(columns),
    height: g(rows),
    body: around(middle, g(row), size.width, size.height),
    blocked: [{ x: g(1), y: 0, width: g(columns - 2), height: g(rows) }],
    lugs: legs(columns, row),
    labels: lines.map((line, i) => ({ ...line, centre: { x: middle, y: height(i) } })),
  };
}

/** Columns from leg to leg of a component that stands upright; its words stand beside it and do not count. */
const UPRIGHT = 6;
/** From one line beside it to the next. */
const LINE_HEIGHT = 16;

/** Standing upright, before it is turned: all lines beside the body, one below the other once it is turned. */
function upright(lines: readonly Line[], size: Body, text: number): Outline {
  // Wider than when it lies: what is printed on a body stands across it.
  const across = size.across ?? size.height;
  const row = Math.ceil((text + across / 2) / g(1));
  const rows = row + 2;
  const middle = g(UPRIGHT / 2);
  const first = text / 2 - ((lines.length - 1) / 2) * LINE_HEIGHT;
  return {
    width: g(UPRIGHT),
    height: g(rows),
    body: around(middle, g(row), size.width, across),
    blocked: [{ x: g(1), y: 0, width: g(UPRIGHT - 2), height: g(rows) }],
    lugs: legs(UPRIGHT, row),
    labels: lines.map((line, i) => ({ ...line, centre: { x: middle, y: first + i * LINE_HEIGHT } })),
  };
}

function legs(columns: number, row: number): Outline['lugs'] {
  return twoLegs.map(({ name: lug }, i) => {
    const x = i * columns;
    const tag = around(g(x) + (i === 0 ? LEG : -LEG), g(row), 10, 10);
    // A leg's line begins on the leg itself, so that it bends as one piece of wire bends.
    const via = { x: g(x), y: g(row) };
    const spot = { x: g(x) + (i === 0 ? LEG : -LEG), y: g(row) };
    const ports = tagPorts(tag, x, row, [i === 0 ? 'left' : 'right', 'up', 'down']);
    return { lug, tag, ports: ports.map((port) => ({ ...port, spot, via })) };
  });
}
