/** What every drawing begins with: its size, its title and description, the paper. */

import type { Rect } from '../common/geometry.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import type { Canvas } from './canvas.ts';
import { CLASS } from './classes.ts';
import { Pen } from './pen.ts';
import { FONT, type Theme } from './theme.ts';

/** Margin around a drawing. */
export const EDGE = 24;

interface Head {
  readonly language: Language;
  /** Prefix of every id. */
  readonly id: string;
  readonly title: string;
  /** For those who cannot see the picture. */
  readonly description: string;
  /** What the root shows. */
  readonly box: Rect;
  /** Its size: pixels, or with a unit. */
  readonly width: number | string;
  readonly height: number | string;
}

/** A printed page, millimetres. */
export interface Page {
  readonly width: number;
  readonly height: number;
  readonly margin: number;
  /** Either way round, whichever prints larger. */
  readonly turns?: boolean | undefined;
}

/** Sizes an empty root and lays its paper; returns the pen for the rest. */
export function openSheet(root: Canvas, head: Head, theme: Theme): Pen {
  const { id, language, title, description, box, width, height } = head;
  root.set({
    viewBox: `${box.x} ${box.y} ${box.width} ${box.height}`,
    width,
    height,
    // Where nothing is said, it is English, as ever.
    ...(language === DEFAULT_LANGUAGE ? {} : { lang: language, 'xml:lang': language }),
    role: 'img',
    'aria-labelledby': `${id}-title ${id}-desc`,
    'font-family': FONT,
    'text-anchor': 'middle',
  });
  root.element('title', { id: `${id}-title` }, title);
  root.element('desc', { id: `${id}-desc` }, description);
  const pen = new Pen(root);
  pen.rect(box, { class: CLASS.paper, fill: theme.paper });
  return pen;
}
