/** What every drawing begins with: its size, its title and description, the paper, and the head written on it. */

import type { Container } from '@svgdotjs/svg.js';
import { at, type Rect, round2 } from '../common/geometry.ts';
import { CLASS } from './classes.ts';
import { Pen } from './pen.ts';
import { FONT, type Theme } from './theme.ts';

/** Margin around a drawing. */
export const EDGE = 24;

interface Head {
  /** Prefix of every id. */
  readonly id: string;
  readonly title: string;
  /** For those who cannot see the picture. */
  readonly description: string;
  /** Small under the title. */
  readonly lines: readonly string[];
  readonly width: number;
  readonly height: number;
  /** The page it is fitted to; as large as it is drawn when left out. */
  readonly page?: Page;
}

/** A printed page, millimetres. */
export interface Page {
  readonly width: number;
  readonly height: number;
  readonly margin: number;
}

/** Millimetres of a page to a drawing unit, when the whole drawing is to fit between the margins. */
export const scaleOn = (page: Page, size: { readonly width: number; readonly height: number }): number =>
  Math.min((page.width - 2 * page.margin) / size.width, (page.height - 2 * page.margin) / size.height);

/** Sizes an empty root and writes the head; returns the pen for the rest. */
export function openSheet(root: Container, head: Head, theme: Theme): Pen {
  const { id, title, description, lines } = head;
  const box = boxOf(head);
  root.attr({
    viewBox: `${box.x} ${box.y} ${box.width} ${box.height}`,
    width: head.page ? `${head.page.width}mm` : head.width,
    height: head.page ? `${head.page.height}mm` : head.height,
    role: 'img',
    'aria-labelledby': `${id}-title ${id}-desc`,
    'font-family': FONT,
    'text-anchor': 'middle',
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
  pen.rect(box, { class: CLASS.paper, fill: theme.paper });
  const written = pen.group({ id: `${id}-head` });
  written.text(title, at(EDGE, EDGE + 12), { size: 22, weight: 'bold', fill: theme.ink, anchor: 'start' });
  lines.forEach((line, i) => {
    written.text(line, at(EDGE, EDGE + 40 + i * 18), { size: 12, fill: theme.quiet, anchor: 'start' });
  });
  return pen;
}

/** What the root shows: the drawing, or on a page the drawing in the middle below the top margin. */
function boxOf({ width, height, page }: Head): Rect {
  if (!page) return { x: 0, y: 0, width, height };
  const scale = scaleOn(page, { width, height });
  const [w, h] = [round2(page.width / scale), round2(page.height / scale)];
  return { x: round2((width - w) / 2), y: round2(-page.margin / scale), width: w, height: h };
}
