import { around } from '../../common/geometry.ts';
import { textWidth } from '../../common/text.ts';
import type { PartOf } from '../../parts/index.ts';
import { g, type Outline, TYPE, tagPorts } from './outline.ts';

/** A point outside the harness that is grounded. */
export function groundPointOutline(part: PartOf<'ground-point'>): Outline {
  const columns = Math.max(5, Math.ceil((textWidth(part.label, TYPE.name, 'bold') + 46) / g(1)));
  const body = { x: g(1), y: 0, width: g(columns), height: g(2) };
  const tag = around(g(0) + 2, g(1), 20, 20);
  return {
    width: g(columns + 1),
    height: g(2),
    body,
    blocked: [body],
    lugs: [{ lug: '1', tag, ports: tagPorts(tag, 0, 1, ['left', 'up', 'down']) }],
    labels: [
      {
        text: part.label,
        centre: { x: body.x + 18 + (body.width - 18) / 2, y: g(1) },
        size: TYPE.name,
        weight: 'bold',
      },
    ],
  };
}
