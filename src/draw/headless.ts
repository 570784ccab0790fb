/** svg.js on svgdom: a drawing as text, without a browser. */
import { registerWindow, SVG, type Svg } from '@svgdotjs/svg.js';
import { createSVGWindow } from 'svgdom';
import type { Plot } from '../annotate/plot.ts';
import { type Canvas, canvasIn } from './canvas.ts';
import { roledCanvas, roledTheme } from './ink-roles.ts';
import { drawPlot } from './plot/plot.ts';
import { drawSheet, type Sheet } from './sheet.ts';
import { type Theme, themes } from './theme.ts';

/** The sheet as an SVG file's text, ending in a newline. */
export const sheetToSvg = (sheet: Sheet, theme?: Theme): string =>
  textOf((root) => drawSheet(root, sheet, theme));

/** The sheet with a class for each ink that a page's stylesheet may set. */
export const drawInlineSheet = (root: Canvas, sheet: Sheet, theme: Theme = themes.light): void =>
  drawSheet(roledCanvas(root), sheet, roledTheme(theme));

/** The same as an SVG file's text. */
export const sheetToInlineSvg = (sheet: Sheet, theme?: Theme): string =>
  textOf((root) => drawInlineSheet(root, sheet, theme));

/** The response plot, likewise. */
export const plotToSvg = (plot: Plot, theme?: Theme): string => textOf((root) => drawPlot(root, plot, theme));

/** What is drawn, as a file's text; svg.js knows one window at a time, so this is synchronous. */
export function textOf(drawing: (root: Canvas) => void): string {
  const window = createSVGWindow();
  registerWindow(window, window.document);
  const root = SVG(window.document.documentElement) as Svg;
  // svg.js declares this namespace on every root; nothing here uses it.
  root.node.removeAttribute('xmlns:xlink');
  drawing(canvasIn(root));
  // Its own `svg()` copies the whole tree first.
  return `${root.node.outerHTML}\n`;
}
