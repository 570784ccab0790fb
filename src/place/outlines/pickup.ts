import { textWidth } from '../../common/text.ts';
import { printQuantity } from '../../common/units.ts';
import type { Pickup } from '../../parts/index.ts';
import { g, type LabelSlot, type Outline, TYPE, tagPorts } from './outline.ts';

/** Room for the coils' symbol at the left of the body. */
const SYMBOL = 54;
const WORDS = { 'single-coil': 'single coil', humbucker: 'humbucker' } as const;

/** Pickup lying down, its two leads leaving on the right. */
export function pickupOutline(part: Pickup): Outline {
  const assumed = part.resistance.from === 'default' ? ' assumed' : '';
  const resistance = `${printQuantity(part.resistance.value, 'ohm')}${assumed}`;
  const texts = [part.label, `${WORDS[part.kind]}, ${resistance}`] as const;
  const text = Math.max(textWidth(texts[0], TYPE.name, 'bold'), textWidth(texts[1], TYPE.value));
  const columns = Math.max(9, Math.ceil((SYMBOL + text + 26) / g(1)));
  const body = { x: 0, y: g(0), width: g(columns), height: g(5) };
  const lugX = columns + 2;
  const label = (i: 0 | 1): LabelSlot => ({
    text: texts[i],
    centre: { x: SYMBOL + (body.width - SYMBOL - 20) / 2, y: g(2.5) + (i === 0 ? -8 : 9) },
    size: i === 0 ? TYPE.name : TYPE.value,
    weight: i === 0 ? 'bold' : 'regular',
  });
  return {
    width: g(columns + 2),
    height: g(5),
    body,
    blocked: [body],
    lugs: (['hot', 'ground'] as const).map((lug, i) => {
      const y = 1 + 3 * i;
      const tag = { x: body.width - 16, y: g(y) - 10, width: 56, height: 20 };
      return { lug, tag, ports: tagPorts(tag, lugX, y, ['right', 'up', 'down']) };
    }),
    labels: [label(0), label(1)],
  };
}
