/** Writes the sheet's own lines: titles in ink, what is small more quietly. */
import { at } from '../common/geometry.ts';
import type { SheetLine } from './blocks.ts';
import type { Pen } from './pen.ts';
import type { Theme } from './theme.ts';

export function writeLines(pen: Pen, lines: readonly SheetLine[], theme: Theme): void {
  for (const { words, x, y, size, weight } of lines)
    pen.text(words, at(x, y), {
      size,
      weight,
      fill: weight === 'bold' ? theme.ink : theme.quiet,
      anchor: 'start',
    });
}
