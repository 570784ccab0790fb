/** What every drawing begins with: its size, its title and description, the paper, and the head written on it. */
import type { Container } from '@svgdotjs/svg.js';
import { at } from '../common/geometry.ts';
import { Pen } from './pen.ts';
import { FONT, type Theme } from './theme.ts';

/** Margin around a drawing. */
export const EDGE = 24;

export interface Head {
  /** Prefix of every id. */
  readonly id: string;
  readonly title: string;
  /** For those who cannot see the picture. */
  readonly description: string;
  /** Small under the title. */
  readonly lines: readonly string[];
  readonly width: number;
  readonly height: number;
}

/** Sizes an empty root and writes the head; returns the pen for the rest. */
export function openSheet(root: Container, head: Head, theme: Theme): Pen {
  const { id, title, description, lines, width, height } = head;
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
    .words(title);
  root
    .element('desc')
    .attr({ id: `${id}-desc` })
    .words(description);
  const pen = new Pen(root);
  pen.rect({ x: 0, y: 0, width, height }, { fill: theme.paper });
  const written = pen.group({ id: `${id}-head` });
  written.text(title, at(EDGE, EDGE + 12), { size: 22, weight: 'bold', fill: theme.ink, anchor: 'start' });
  lines.forEach((line, i) => {
    written.text(line, at(EDGE, EDGE + 40 + i * 18), { size: 12, fill: theme.quiet, anchor: 'start' });
  });
  return pen;
}
