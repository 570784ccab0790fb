import { around } from '../../common/geometry.ts';
import { textWidth } from '../../common/text.ts';
import type { PartOf } from '../../parts/index.ts';
import { whatIs } from '../../parts/index.ts';
import { g, type Outline, TYPE, tagPorts, wrapped } from './outline.ts';

/** Row of each lug by throw number, grid units; the common stands apart, below. */
const ROWS: Readonly<Record<number, number>> = { 1: 3, 2: 6, 3: 9, 0: 12 };
const POLES = [
  ['A', 1],
  ['B', 9],
] as const;

/** Room that a line of the name has between the plate's edges. */
const LINE = g(6) - 10;

/** Lever switch with two poles: pole A's lugs on the left, pole B's on the right. A long name makes the plate longer. */
export function leverOutline(part: PartOf<'lever-3' | 'lever-5'>): Outline {
  const short = textWidth(part.label, TYPE.name, 'bold') <= LINE;
  const name = short ? [part.label] : wrapped(part.label, LINE, TYPE.value, 'bold');
  const more = name.length - 1;
  const height = g(13 + more);
  const body = { x: g(2), y: g(0), width: g(6), height };
  const at = (line: number) => ({ x: g(5), y: g(0.85 + line) });
  return {
    width: g(10),
    height,
    body,
    blocked: [body],
    lugs: POLES.flatMap(([pole, x]) =>
      [1, 2, 3, 0].map((n) => {
        const y = (ROWS[n] ?? 0) + more;
        const tag = around(g(x) + (x < 5 ? 4 : -4), g(y), 26, 20);
        return {
          lug: `${pole}${n}`,
          tag,
          ports: tagPorts(tag, x, y, [x < 5 ? 'left' : 'right', 'up', 'down']),
        };
      }),
    ),
    labels: [
      ...name.map((text, i) => ({
        text,
        centre: at(i),
        size: short ? TYPE.name : TYPE.value,
        weight: 'bold' as const,
      })),
      {
        text: whatIs(part).replace(/ lever switch$/, ''),
        centre: at(name.length),
        size: TYPE.value,
        weight: 'regular',
      },
    ],
  };
}
