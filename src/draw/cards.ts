/** Load cards: one a state, aligned so that they compare at a glance. */

import {
  badgeWidth,
  CARD_TYPE,
  LEVEL_GAP,
  meterWords,
  POLE_PITCH,
  SWITCH_GAP,
  signalColumn,
  switchName,
  switchWidth,
  underTitle,
} from '../annotate/card-size.ts';
import type { Card, CardRow, CardSwitch } from '../annotate/cards.ts';
import { at } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { lugsOf } from '../parts/index.ts';
import { CLASS } from './classes.ts';
import type { Pen } from './pen.ts';
import { kept, ruled, type Theme } from './theme.ts';

const HEAD = 44;
const LINE = 15;
const ROW = 62;
const FOOT = 30;
const PAD = 14;
/** Of a switch drawn small: where it begins, how high it is, and where the lines of its name stand below it. */
const SWITCH_TOP = 8;
const SWITCH_HEIGHT = 26;
const NAME_TOP = 47;
const NAME_LINE = 17;
/** From a pole's throws to its common. */
const RAIL = 11;
export const CARD_GAP = 14;

/** As high as its rows need; one that nothing sounds on has a row left free. */
export const cardHeight = (card: Card): number =>
  headHeight(card) + ROW * Math.max(1, card.rows.length) + FOOT;

/** Of the title and the lines under it. */
const headHeight = (card: Card): number =>
  Math.max(
    HEAD + LINE * Math.max(0, underTitle(card).length - 1),
    ...card.switches.map((small) => NAME_TOP + NAME_LINE * switchName(small).length - 7),
  );

interface CardBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function drawCard(
  pen: Pen,
  card: Card,
  box: CardBox,
  tints: ReadonlyMap<string, string>,
  theme: Theme,
  shown = false,
): void {
  const { x, y, width, height } = box;
  const frame = shown ? { stroke: theme.ink, 'stroke-width': theme.monochrome ? 4 : 2.5 } : ruled(theme);
  pen.rect(box, { class: CLASS.card, rx: 12, fill: theme.plate, ...frame });
  const badge = badgeWidth(card.badge);
  const under = underTitle(card);
  // Without a switch there is nothing to number.
  const left = badge === 0 ? x + PAD : x + 20 + badge;
  if (badge > 0) {
    pen.rect({ x: x + 12, y: y + 11, width: badge, height: 26 }, { rx: 13, fill: theme.ink });
    pen.text(card.badge, at(x + 12 + badge / 2, y + 24), {
      size: CARD_TYPE.title,
      weight: 'bold',
      fill: theme.paper,
    });
  }
  pen.text(card.title, at(left, y + (under.length === 0 ? 24 : 17)), {
    size: CARD_TYPE.title,
    weight: 'bold',
    fill: theme.ink,
    anchor: 'start',
  });
  under.forEach((line, i) => {
    pen.text(line, at(left, y + 34 + LINE * i), {
      size: CARD_TYPE.small,
      fill: theme.quiet,
      anchor: 'start',
    });
  });
  card.switches.forEach((small, i) => {
    const behind = card.switches.slice(i + 1).reduce((sum, one) => sum + SWITCH_GAP + switchWidth(one), 0);
    drawSwitch(pen, small, x + width - PAD - behind - switchWidth(small) / 2, y, theme);
  });
  card.rows.forEach((row, i) => {
    drawRow(
      pen,
      row,
      card.language,
      { x: x + PAD, y: y + headHeight(card) + i * ROW, width: width - 2 * PAD, height: ROW },
      tints,
      theme,
    );
  });
  const foot = y + height - FOOT / 2;
  pen.line([at(x + PAD, y + height - FOOT), at(x + width - PAD, y + height - FOOT)], ruled(theme));
  pen.text(meterWords(card), at(x + PAD, foot), {
    size: CARD_TYPE.small,
    fill: theme.quiet,
    anchor: 'start',
  });
  pen.text(card.meter, at(x + width - PAD, foot), {
    size: CARD_TYPE.row,
    weight: 'bold',
    fill: theme.ink,
    anchor: 'end',
  });
}

/** Name and the two loads, then a bar of the signal load with the reference as a tick, then what that means. */
function drawRow(
  pen: Pen,
  row: CardRow,
  language: Language,
  box: CardBox,
  tints: ReadonlyMap<string, string>,
  theme: Theme,
): void {
  const { x, y, width } = box;
  const right = x + width;
  const dc = right - signalColumn(language);
  const say = sayIn(language);
  pen.text(row.label, at(x, y + 12), {
    size: CARD_TYPE.row,
    weight: 'bold',
    fill: theme.ink,
    anchor: 'start',
  });
  if (row.level !== undefined)
    pen.text(row.level, at(x + textWidth(row.label, CARD_TYPE.row, 'bold') + LEVEL_GAP, y + 12), {
      size: CARD_TYPE.small,
      fill: theme.quiet,
      anchor: 'start',
    });
  pen.text(row.dcLoad, at(dc, y + 12), {
    size: CARD_TYPE.row,
    weight: 'bold',
    fill: theme.ink,
    anchor: 'end',
  });
  pen.text(row.signalLoad, at(right, y + 12), {
    size: CARD_TYPE.row,
    weight: 'bold',
    fill: theme.ink,
    anchor: 'end',
  });
  pen.text(say('load.dc'), at(dc, y + 27), { size: CARD_TYPE.small, fill: theme.quiet, anchor: 'end' });
  pen.text(say('load.signal'), at(right, y + 27), {
    size: CARD_TYPE.small,
    fill: theme.quiet,
    anchor: 'end',
  });
  pen.text(row.verdict, at(x, y + 27), { size: CARD_TYPE.small, fill: theme.quiet, anchor: 'start' });
  // The bar's middle is the reference; its full length twice that.
  const bar = { x, y: y + 38, width, height: 7 };
  pen.rect(bar, {
    rx: 3.5,
    ...(theme.monochrome ? { fill: theme.paper, ...ruled(theme) } : { fill: theme.inside }),
  });
  const share = Math.min(1, Math.max(0, row.ratio / 2));
  pen.rect(
    { ...bar, width: Math.max(7, width * share) },
    { rx: 3.5, fill: theme.tints[tints.get(row.pickup) ?? ''] ?? theme.ink },
  );
  // A tail of what stands above must not touch it.
  const tick = /[gjpqy]/.test(say('load.dc')) ? 36 : 34;
  pen.line([at(x + width / 2, y + tick), at(x + width / 2, y + 49)], {
    stroke: theme.ink,
    'stroke-width': 2,
  });
}

/** The switch small, about a middle: a dot a lug, pole by pole, closed contacts bridged; its name below. */
function drawSwitch(pen: Pen, small: CardSwitch, middle: number, top: number, theme: Theme): void {
  const lugs = lugsOf(small.part);
  const poles = [...new Set(lugs.flatMap((lug) => lug.pole ?? []))];
  const x = middle - (POLE_PITCH * (poles.length - 1) + RAIL) / 2;
  const y = top + SWITCH_TOP;
  switchName(small).forEach((line, i) => {
    pen.text(line, at(middle, top + NAME_TOP + NAME_LINE * i), { size: CARD_TYPE.small, fill: theme.quiet });
  });
  poles.forEach((pole, p) => {
    const own = lugs.filter((lug) => lug.pole === pole);
    const throws = own.filter((lug) => lug.role === 'throw');
    const left = x + p * POLE_PITCH;
    const rail = left + RAIL;
    const step = SWITCH_HEIGHT / Math.max(1, throws.length - 1);
    pen.line([at(rail, y), at(rail, y + SWITCH_HEIGHT)], {
      stroke: theme.outline,
      'stroke-width': 2.5,
      'stroke-linecap': 'round',
    });
    throws.forEach((lug, i) => {
      const dot = at(left, y + i * step);
      const closed = small.closed.some((group) => group.includes(lug.name));
      if (closed)
        pen.line([dot, at(rail, dot.y)], { stroke: theme.ink, 'stroke-width': 4, 'stroke-linecap': 'round' });
      // Of many throws the dots are smaller, so that they stay apart.
      pen.circle(dot, Math.min(2.8, 0.4 * step), {
        fill: closed ? theme.ink : theme.paper,
        stroke: theme.outline,
        'stroke-width': kept(theme, 1.2),
      });
    });
  });
}
