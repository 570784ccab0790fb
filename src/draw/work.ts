/** What is to be done in a step: a box to tick and a line a joint. */

import { linesIn } from '../common/flow.ts';
import { at } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import type { Pen } from './pen.ts';
import { kept, type Theme } from './theme.ts';

const WORK_LINE = 24;
const SIZE = 13;
const BOX = 12;

const FURTHER = 17;

export const workWidth = (line: string): number => BOX + 10 + textWidth(line, SIZE);

/** What is to be done, joint by joint, in the lines that a width asks for. */
export const workIn = (work: readonly string[], width: number): readonly (readonly string[])[] =>
  work.map((line) => linesIn(line, SIZE, width - BOX - 10));

export const workHeight = (work: readonly (readonly string[])[]): number =>
  work.reduce((sum, { length }) => sum + WORK_LINE + FURTHER * (length - 1), 0);

export function drawWork(
  pen: Pen,
  work: readonly (readonly string[])[],
  x: number,
  y: number,
  theme: Theme,
): void {
  let middle = y + WORK_LINE / 2;
  for (const lines of work) {
    pen.rect(
      { x, y: middle - BOX / 2, width: BOX, height: BOX },
      { rx: 2, fill: 'none', stroke: theme.ink, 'stroke-width': kept(theme, 1.2) },
    );
    lines.forEach((line, i) => {
      const left = at(x + BOX + 10, middle + i * FURTHER);
      pen.text(line, left, { size: SIZE, fill: theme.ink, anchor: 'start' });
    });
    middle += WORK_LINE + FURTHER * (lines.length - 1);
  }
}
