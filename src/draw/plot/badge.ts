/** A state's badge, as on the load cards: round, or a pill where several switches have a say. */
import { around, type Point, round2 } from '../../common/geometry.ts';
import { textWidth } from '../../common/text.ts';
import type { Pen } from '../pen.ts';
import type { Theme } from '../theme.ts';

export const badgeWidth = (words: string, size: number): number =>
  Math.max(size * 1.6, textWidth(words, size, 'bold') + size * 0.8);

export function drawBadge(pen: Pen, words: string, centre: Point, size: number, theme: Theme): void {
  const height = size * 1.6;
  pen.rect(around(centre.x, centre.y, badgeWidth(words, size), height), {
    rx: round2(height / 2),
    fill: theme.ink,
  });
  pen.text(words, centre, { size, weight: 'bold', fill: theme.paper });
}
