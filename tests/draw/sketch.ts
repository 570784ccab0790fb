/** A few strokes of a pen by themselves, read back by the tests' own reader. */
import { registerWindow, SVG, type Svg } from '@svgdotjs/svg.js';
import { createSVGWindow } from 'svgdom';
import { canvasIn } from '../../src/draw/canvas.ts';
import { Pen } from '../../src/draw/pen.ts';
import type { Frame } from '../../src/place/frame.ts';
import { type Drawing, read } from '../truth/reader.ts';

export function sketch(drawing: (pen: Pen) => void, frame?: Frame): Drawing & { readonly svg: string } {
  const window = createSVGWindow();
  registerWindow(window, window.document);
  const root = SVG(window.document.documentElement) as Svg;
  drawing(new Pen(canvasIn(root), frame));
  const svg = root.node.outerHTML;
  return { ...read(svg), svg };
}
