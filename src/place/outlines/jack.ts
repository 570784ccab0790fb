import { textWidth } from '../../common/text.ts';
import type { PartOf } from '../../parts/index.ts';
import { g, type Outline, TYPE, tagPorts } from './outline.ts';

/** Room for the jack's symbol under its name. */
export const JACK_SYMBOL = { height: 34 } as const;

/** Mono jack, its two lugs on the left. */
export function jackOutline(part: PartOf<'jack'>): Outline {
  const text = Math.max(textWidth(part.label, TYPE.name, 'bold'), textWidth('mono jack', TYPE.value));
  const columns = Math.max(7, Math.ceil((text + 28) / g(1)));
  const body = { x: g(2), y: 0, width: g(columns), height: g(6) };
  const middle = body.x + body.width / 2;
  return {
    width: g(columns + 2),
    height: g(6),
    body,
    blocked: [body],
    lugs: (['tip', 'sleeve'] as const).map((lug, i) => {
      const y = 1 + 3 * i;
      const tag = { x: g(0) - 8, y: g(y) - 10, width: 56, height: 20 };
      return { lug, tag, ports: tagPorts(tag, 0, y, ['left', 'up', 'down']) };
    }),
    labels: [
      { text: part.label, centre: { x: middle + 10, y: g(1) }, size: TYPE.name, weight: 'bold' },
      { text: 'mono jack', centre: { x: middle + 10, y: g(2) }, size: TYPE.value, weight: 'regular' },
    ],
  };
}
