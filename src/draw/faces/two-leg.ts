/** What resistor and capacitor faces share: the legs, and the accent of a part that matters most. */

import { at } from '../../common/geometry.ts';
import type { PlacedPart } from '../../place/placement.ts';
import { highlightBox } from '../highlight.ts';
import type { Pen } from '../pen.ts';
import { LINE } from '../theme.ts';
import type { Look } from './face.ts';

/** The stretch of each leg between the body and the point where wires meet it; where several meet, the whole leg. */
export function legs(pen: Pen, { part, outline }: PlacedPart, { theme, meeting }: Look): void {
  const y = outline.body.y + outline.body.height / 2;
  const ends = outline.lugs.map(({ lug, tag, ports }) => {
    const corner = meeting.has(`${part.name}.${lug}`) ? ports[0]?.via : undefined;
    return corner?.x ?? tag.x + tag.width / 2;
  });
  pen.path([[{ to: at(ends[0] ?? 0, y) }, { to: at(ends[1] ?? 0, y) }]], {
    stroke: theme.leg,
    'stroke-width': LINE.leg,
  });
  // The leg goes on as a line of its own: nothing is soldered here, and nothing must look so.
  for (const x of ends) pen.circle(at(x, y), LINE.leg / 2, { class: 'sl-leg-end', fill: theme.leg });
}

/** A pale box behind a padding resistor: it is what the kit is about. */
export function highlight(pen: Pen, { part, outline }: PlacedPart, { theme, highlighted }: Look): void {
  if (!highlighted.has(part.name)) return;
  pen.rect(highlightBox(outline), {
    class: 'sl-highlight',
    rx: 10,
    fill: theme.accentFill,
    stroke: theme.accent,
    'stroke-width': 1,
  });
}
