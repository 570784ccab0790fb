/** What is to be done in a step: a box to tick and a line a joint. */
import { at } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import type { Pen } from './pen.ts';
import { kept, type Theme } from './theme.ts';

export const WORK_LINE = 24;
const SIZE = 13;
const BOX = 12;

export const workWidth = (line: string): number => BOX + 10 + textWidth(line, SIZE);

export function drawWork(pen: Pen, lines: readonly string[], x: number, y: number, theme: Theme): void {
  lines.forEach((line, i) => {
    const middle = y + i * WORK_LINE + WORK_LINE / 2;
    pen.rect(
      { x, y: middle - BOX / 2, width: BOX, height: BOX },
      { rx: 2, fill: 'none', stroke: theme.ink, 'stroke-width': kept(theme, 1.2) },
    );
    pen.text(line, at(x + BOX + 10, middle), { size: SIZE, fill: theme.ink, anchor: 'start' });
  });
}
