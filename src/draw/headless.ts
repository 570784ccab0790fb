/** svg.js on svgdom: a drawing as text, without a browser. */
import { registerWindow, SVG, type Svg } from '@svgdotjs/svg.js';
import { createSVGWindow } from 'svgdom';
import { drawSheet, type Sheet } from './sheet.ts';
import type { Theme } from './theme.ts';

/** The sheet as an SVG file's text, ending in a newline. svg.js knows one window at a time, so this is synchronous. */
export function sheetToSvg(sheet: Sheet, theme?: Theme): string {
  const window = createSVGWindow();
  registerWindow(window, window.document);
  const root = SVG(window.document.documentElement) as Svg;
  // svg.js declares this namespace on every root; nothing here uses it.
  root.node.removeAttribute('xmlns:xlink');
  drawSheet(root, sheet, theme);
  // Its own `svg()` copies the whole tree first.
  return `${root.node.outerHTML}\n`;
}
