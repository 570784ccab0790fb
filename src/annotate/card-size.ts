/** How much room the load cards need: measured from their text, before anything is placed. */

import { linesIn } from '../common/flow.ts';
import { textWidth } from '../common/text.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { lugsOf } from '../parts/index.ts';
import type { Card, CardRow, CardSwitch } from './cards.ts';

/** Sizes of a card's type, drawing units. */
export const CARD_TYPE = { title: 14, row: 13, small: 12 } as const;

/** How its pickups are joined, in lines that make no card wide. */
export const joinedLines = ({ joined }: Pick<Card, 'joined'>): readonly string[] =>
  joined === undefined ? [] : linesIn(joined, CARD_TYPE.small, MOST_JOINED);
/** What stands under a card's title: of several states which they are, and how its pickups are joined. */
export const underTitle = (card: Pick<Card, 'joined' | 'where'>): readonly string[] => [
  ...(card.where === undefined ? [] : linesIn(card.where, CARD_TYPE.small, MOST_JOINED)),
  ...joinedLines(card),
];
const MOST_JOINED = 240;

/** Width a card needs for its longest line. */
export const cardWidth = (cards: readonly Card[]): number =>
  Math.max(
    236,
    ...cards.flatMap((card) => [
      headWidth(textWidth(card.title, CARD_TYPE.title, 'bold'), card),
      ...underTitle(card).map((line) => headWidth(textWidth(line, CARD_TYPE.small), card)),
      MARGINS +
        textWidth(meterWords(card), CARD_TYPE.small) +
        12 +
        textWidth(card.meter, CARD_TYPE.row, 'bold'),
      ...card.rows.map((row) => rowWidth(row, card.language)),
    ]),
  );

const headWidth = (text: number, { badge, switches }: Card): number =>
  text + badgeWidth(badge) + 14 + 20 + switches.reduce((sum, one) => sum + switchWidth(one) + SWITCH_GAP, 0);

/** From one pole of a small switch to the next, and the room beside a small switch. */
export const POLE_PITCH = 20;
export const SWITCH_GAP = 12;
/** A switch's name under it, in lines no wider than this unless a word is. */
const MOST_NAME = 64;
export const switchName = ({ part }: CardSwitch): readonly string[] =>
  linesIn(part.label, CARD_TYPE.small, MOST_NAME);
/** Width of a switch drawn small: as of two poles, or of as many more as it has, or of its name. */
export const switchWidth = (small: CardSwitch): number =>
  Math.max(
    POLE_PITCH * Math.max(2, new Set(lugsOf(small.part).flatMap((lug) => lug.pole ?? [])).size) - 6,
    ...switchName(small).map((line) => Math.ceil(textWidth(line, CARD_TYPE.small))),
  );

/** Width of a badge: round for one figure, longer for the positions of several switches. */
export const badgeWidth = (badge: string): number =>
  badge === '' ? 0 : Math.max(26, Math.ceil(textWidth(badge, CARD_TYPE.title, 'bold')) + 14);

/** What stands before a card's reading. */
export const meterWords = ({ measured, language }: Pick<Card, 'measured' | 'language'>): string =>
  measured ?? sayIn(language)('meter.jack');
const MARGINS = 28;
/** Between a pickup's name and its level. */
export const LEVEL_GAP = 8;
/** Least room between two columns of loads. */
const COLUMN_GAP = 10;
/** The column that the signal load stands in, at least as wide as this. */
const SIGNAL_COLUMN = 74;
export const signalColumn = (language: Language): number =>
  Math.max(SIGNAL_COLUMN, Math.ceil(textWidth(sayIn(language)('load.signal'), CARD_TYPE.small)) + COLUMN_GAP);

/** Width of a row's two lines: name and DC load; verdict and what that load is. */
const rowWidth = (row: CardRow, language: Language): number =>
  Math.max(
    textWidth(row.label, CARD_TYPE.row, 'bold') +
      (row.level === undefined ? 0 : LEVEL_GAP + textWidth(row.level, CARD_TYPE.small)) +
      12 +
      textWidth(row.dcLoad, CARD_TYPE.row, 'bold'),
    textWidth(row.verdict, CARD_TYPE.small) + 12 + textWidth(sayIn(language)('load.dc'), CARD_TYPE.small),
  ) +
  signalColumn(language) +
  MARGINS;
