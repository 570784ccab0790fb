/** svg.js on a page's own document: a drawing as an element, in a browser. */
import { SVG } from '@svgdotjs/svg.js';
import type { Plot } from '../annotate/plot.ts';
import { type Canvas, canvasIn } from './canvas.ts';
import { drawPlot } from './plot/plot.ts';
import { drawSheet, type Sheet } from './sheet.ts';
import type { Theme } from './theme.ts';

/** The sheet as an element that the page may put where it likes. */
export const sheetToElement = (sheet: Sheet, theme?: Theme): SVGSVGElement =>
  elementOf((root) => drawSheet(root, sheet, theme));

/** The response plot, likewise. */
export const plotToElement = (plot: Plot, theme?: Theme): SVGSVGElement =>
  elementOf((root) => drawPlot(root, plot, theme));

function elementOf(drawing: (root: Canvas) => void): SVGSVGElement {
  const root = SVG();
  // svg.js declares these on every root it makes; nothing here uses them.
  for (const name of ['xmlns:xlink', 'xmlns:svgjs']) root.node.removeAttribute(name);
  drawing(canvasIn(root));
  return root.node;
}
