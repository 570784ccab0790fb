import { around } from '../../common/geometry.ts';
import type { PartOf } from '../../parts/index.ts';
import { whatIs } from '../../parts/index.ts';
import { g, type Outline, TYPE, tagPorts } from './outline.ts';

/** Row of each lug by throw number, grid units; the common stands apart, below. */
const ROWS: Readonly<Record<number, number>> = { 1: 3, 2: 6, 3: 9, 0: 12 };
const POLES = [
  ['A', 1],
  ['B', 9],
] as const;

/** Lever switch with two poles: pole A's lugs on the left, pole B's on the right. */
export function leverOutline(part: PartOf<'lever-3' | 'lever-5'>): Outline {
  const body = { x: g(2), y: g(0), width: g(6), height: g(13) };
  return {
    width: g(10),
    height: g(13),
    body,
    blocked: [body],
    lugs: POLES.flatMap(([pole, x]) =>
      [1, 2, 3, 0].map((n) => {
        const y = ROWS[n] ?? 0;
        const tag = around(g(x) + (x < 5 ? 4 : -4), g(y), 26, 20);
        return {
          lug: `${pole}${n}`,
          tag,
          ports: tagPorts(tag, x, y, [x < 5 ? 'left' : 'right', 'up', 'down']),
        };
      }),
    ),
    labels: [
      { text: part.label, centre: { x: g(5), y: g(0.85) }, size: TYPE.name, weight: 'bold' },
      {
        text: whatIs(part).replace(/ lever switch$/, ''),
        centre: { x: g(5), y: g(1.85) },
        size: TYPE.value,
        weight: 'regular',
      },
    ],
  };
}
