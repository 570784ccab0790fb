/** The whole sheet: title, view line and key above, the drawing, the load cards below. */
import type { Container } from '@svgdotjs/svg.js';
import type { Card } from '../annotate/cards.ts';
import { cardWidth } from '../annotate/cards.ts';
import type { Line } from '../annotate/lines.ts';
import { at } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import type { Placement } from '../place/placement.ts';
import { CARD_GAP, cardHeight, drawCard } from './cards.ts';
import { drawChips } from './chips.ts';
import { faces } from './faces/index.ts';
import { drawKey, keyOf, keyRows } from './key.ts';
import { num, Pen } from './pen.ts';
import { FONT, LIGHT, type Theme } from './theme.ts';
import { drawWires } from './wires.ts';

/** All that is drawn, worked out beforehand. */
export interface Sheet {
  /** Prefix of every id: the kit's own. */
  readonly id: string;
  readonly title: string;
  /** Says the side it is seen from. */
  readonly view: string;
  /** For those who cannot see the picture. */
  readonly description: string;
  readonly placement: Placement;
  readonly lines: readonly Line[];
  readonly cards: readonly Card[];
  /** Tint by pickup name. */
  readonly tints: ReadonlyMap<string, string>;
  /** Label by tint, for the key. */
  readonly pickups: ReadonlyMap<string, string>;
  readonly heroes: ReadonlySet<string>;
  /** Contacts drawn closed, by switch. */
  readonly closed: ReadonlyMap<string, readonly (readonly string[])[]>;
}

const EDGE = 24;
const HEAD = 66;

/** Draws the sheet into an empty root and sizes it. */
export function drawSheet(root: Container, sheet: Sheet, theme: Theme = LIGHT): void {
  const { id, placement, cards, lines } = sheet;
  const cardW = Math.ceil(cardWidth(cards));
  const least = Math.max(
    textWidth(sheet.title, 22, 'bold'),
    textWidth(sheet.view, 12),
    cardW * Math.min(cards.length, 3) + CARD_GAP * 2,
  );
  const inner = Math.max(placement.width, least);
  const perRow = Math.max(1, Math.min(cards.length, Math.floor((inner + CARD_GAP) / (cardW + CARD_GAP))));
  const rows = Math.ceil(cards.length / perRow);
  const even = Math.ceil(cards.length / rows);
  const cardH = cardHeight(cards);
  const key = keyRows(keyOf(lines, sheet.pickups), inner);
  const keyH = key.length * 22 + 8;
  const drawingTop = EDGE + HEAD + keyH;
  const cardTop = drawingTop + placement.height + 8;
  const width = Math.ceil(inner + 2 * EDGE);
  const height = Math.ceil(cardTop + rows * (cardH + CARD_GAP) - CARD_GAP + EDGE);

  root.attr({
    viewBox: `0 0 ${width} ${height}`,
    width,
    height,
    role: 'img',
    'aria-labelledby': `${id}-title ${id}-desc`,
    'font-family': FONT,
  });
  root
    .element('title')
    .attr({ id: `${id}-title` })
    .words(sheet.title);
  root
    .element('desc')
    .attr({ id: `${id}-desc` })
    .words(sheet.description);
  const pen = new Pen(root);
  pen.rect({ x: 0, y: 0, width, height }, { class: 'sl-paper', fill: theme.paper });

  const head = pen.group({ id: `${id}-head` });
  head.text(sheet.title, at(EDGE, EDGE + 12), { size: 22, weight: 'bold', fill: theme.ink, anchor: 'start' });
  head.text(sheet.view, at(EDGE, EDGE + 40), { size: 12, fill: theme.quiet, anchor: 'start' });
  drawKey(pen.group({ id: `${id}-key`, fill: 'none' }), key, EDGE, EDGE + HEAD, theme);

  const left = EDGE + Math.max(0, Math.round((inner - placement.width) / 2));
  const drawing = pen.group({ id: `${id}-drawing`, transform: `translate(${num(left)} ${num(drawingTop)})` });
  const look = { theme, closed: sheet.closed, heroes: sheet.heroes };
  for (const placed of placement.parts) {
    const group = new Pen(drawing.into.group().attr({ id: `${id}-part-${placed.part.name}` }), placed.frame);
    faces[placed.part.kind](group, placed, look);
  }
  drawWires(drawing.group({ id: `${id}-wires` }), id, placement.wires, lines, theme);
  drawChips(drawing.group({ id: `${id}-colours` }), placement, theme);

  cards.forEach((card, i) => {
    const [column, row] = [i % even, Math.floor(i / even)];
    const box = {
      x: EDGE + column * (cardW + CARD_GAP),
      y: cardTop + row * (cardH + CARD_GAP),
      width: cardW,
      height: cardH,
    };
    drawCard(pen.group({ id: `${id}-state-${i + 1}` }), card, box, sheet.tints, theme);
  });
}
