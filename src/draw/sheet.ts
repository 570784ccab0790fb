/** The whole sheet: title, view line and key above, the drawing, the load cards below. */

import type { Container } from '@svgdotjs/svg.js';
import type { Card } from '../annotate/cards.ts';
import type { Line } from '../annotate/lines.ts';
import { lugId } from '../circuit/circuit.ts';
import { at, round2 } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import { componentOf } from '../parts/index.ts';
import type { Placement } from '../place/placement.ts';
import { endsOf } from '../place/wiring.ts';
import { drawCard } from './cards.ts';
import { drawChips } from './chips.ts';
import { EDGE, openSheet, type Page } from './head.ts';
import { drawKey, keyOf } from './key.ts';
import { captionOf, layOutSheet } from './layout.ts';
import { drawPart } from './part.ts';
import { Pen } from './pen.ts';
import { type Theme, themes } from './theme.ts';
import { drawMarks, drawWires, type Emphasis } from './wires.ts';
import { drawWork } from './work.ts';

/** All that is drawn, worked out beforehand. */
export interface Sheet {
  /** Prefix of every id: the kit's own. */
  readonly id: string;
  readonly title: string;
  /** Say the side it is seen from, and what is drawn. */
  readonly headLines: readonly string[];
  /** For those who cannot see the picture. */
  readonly description: string;
  readonly placement: Placement;
  readonly lines: readonly Line[];
  readonly cards: readonly Card[];
  /** What the cards say, below them. */
  readonly legend: readonly string[];
  /** Tint by pickup name. */
  readonly tints: ReadonlyMap<string, string>;
  /** Label by tint, for the key. */
  readonly pickups: ReadonlyMap<string, string>;
  readonly highlighted: ReadonlySet<string>;
  /** Contacts drawn closed, by switch. */
  readonly closed: ReadonlyMap<string, readonly (readonly string[])[]>;
  /** How each joint stands out, where not all are alike. */
  readonly emphasis?: readonly Emphasis[];
  /** The card of the state that is drawn, where the drawing is of one. */
  readonly shownState?: number;
  /** What is to be done, in place of the cards, where the drawing is of a step. */
  readonly checklist?: readonly string[];
  readonly page?: Page;
}

/** Draws the sheet into an empty root and sizes it. */
export function drawSheet(root: Container, sheet: Sheet, theme: Theme = themes.light): void {
  const { id, placement, lines, headLines, emphasis = [], checklist = [] } = sheet;
  const cards = sheet.checklist ? [] : sheet.cards;
  const there = placement.wires.filter((_, i) => emphasis[i] !== 'absent');
  const codes = there.flatMap(({ joint }) => joint.colour ?? []);
  const ends = endsOf(placement.wires.map(({ joint }) => joint));
  const joined = new Set(ends.keys());
  const empty = placement.parts.some(({ part, outline }) =>
    outline.lugs.some(({ lug, surface }) => !surface && !joined.has(lugId(part.name, lug))),
  );
  const key = keyOf(
    lines.filter((_, i) => emphasis[i] !== 'absent'),
    sheet.pickups,
    codes,
    empty,
    placement.parts.some(({ part, outline }) =>
      outline.lugs.some(({ lug, surface }) => surface && joined.has(lugId(part.name, lug))),
    ),
    placement.parts.flatMap(({ part }) => {
      const { value, bands } = componentOf(part) ?? {};
      return value !== undefined && bands ? [{ value, bands }] : [];
    }),
    theme,
  );
  const layout = layOutSheet(
    {
      title: sheet.title,
      views: headLines,
      key,
      drawing: placement,
      cards,
      legend: sheet.legend,
      work: checklist,
    },
    sheet.page,
  );
  const { width, height } = layout;
  const pen = openSheet(root, { ...sheet, lines: headLines, width, height }, theme);
  drawKey(pen.group({ id: `${id}-key`, fill: 'none' }), layout.key, EDGE, layout.keyTop, theme);

  const drawing = pen.group({
    id: `${id}-drawing`,
    transform: `translate(${round2(layout.drawingLeft)} ${round2(layout.drawingTop)})`,
  });
  if (emphasis.includes('new'))
    drawMarks(drawing.group({ id: `${id}-marks` }), placement.wires, theme, emphasis);
  const meeting = new Set([...ends].filter(([, count]) => count > 1).map(([lug]) => lug));
  const { closed, highlighted, tints } = sheet;
  const look = { theme, closed, highlighted, tints, joined, meeting };
  for (const placed of placement.parts) {
    const group = new Pen(drawing.into.group().attr({ id: `${id}-part-${placed.part.name}` }), placed.frame);
    drawPart(group, placed, look);
  }
  drawWires(drawing.group({ id: `${id}-wires` }), id, placement.wires, lines, theme, emphasis);
  drawChips(drawing.group({ id: `${id}-colours` }), placement, look, emphasis);

  if (checklist.length > 0) drawWork(pen.group({ id: `${id}-work` }), checklist, EDGE, layout.footTop, theme);
  const caption = cards.length === 0 ? [] : captionOf(sheet.legend, layout.inner);
  caption.forEach((line, i) => {
    const y = height - EDGE - 4 - 18 * (caption.length - 1 - i);
    pen.text(line, at(EDGE, y), { size: 12, fill: theme.quiet, anchor: 'start' });
  });
  cards.forEach((card, i) => {
    drawCard(
      pen.group({ id: `${id}-position-${i + 1}` }),
      card,
      nth(layout.cards, i),
      sheet.tints,
      theme,
      sheet.shownState !== undefined && card.states.includes(sheet.shownState),
    );
  });
}
