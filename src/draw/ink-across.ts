/** How much of its width a drawing really fills: a column leaves out what is only margin. */
import type { Placement } from '../place/placement.ts';
import { bodiesOf, chipsOf, runOf } from './chips.ts';

/** From where to where across a drawing there is something: parts, wires, and chips that stand out no further than `beside`. */
export function inkAcross(
  placement: Placement,
  highlighted: ReadonlySet<string>,
  beside: number,
): { readonly left: number; readonly right: number } {
  const rects = [
    ...bodiesOf(placement.parts, highlighted),
    ...placement.wires.flatMap((wire) => runOf(wire).rects),
    ...chipsOf(placement, highlighted, beside).map(({ rect }) => rect),
  ];
  return {
    left: Math.min(...rects.map(({ x }) => x)),
    right: Math.max(...rects.map(({ x, width }) => x + width)),
  };
}
