/** Drawings of a few shapes, for what a whole one has too much of. */
import { type Drawing, readDrawing } from '../../src/inspect/drawing.ts';

export const sheet = (markup: string, root = 'viewBox="0 0 400 300"', id = 'k'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${root}><g id="${id}-drawing">${markup}</g></svg>`;

export function read(markup: string, root?: string): Drawing {
  const drawing = readDrawing(sheet(markup, root));
  if ('rule' in drawing) throw new Error(drawing.message);
  return drawing;
}

export const part = (name: string, markup: string): string => `<g id="k-part-${name}">${markup}</g>`;
/** A lug with its name in it. */
export const tag = (x: number, y: number, name: string): string =>
  `<rect x="${x}" y="${y}" width="20" height="12" fill="#ffffff" class="sl-tag"></rect><text x="${x + 10}" y="${y + 9}" font-size="8" text-anchor="middle">${name}</text>`;
export const box = (is: string, x: number, y: number, width: number, height: number, more = ''): string =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="#ffffff" class="${is}" ${more}></rect>`;
export const disc = (is: string, cx: number, cy: number, r: number): string =>
  `<circle cx="${cx}" cy="${cy}" r="${r}" fill="#ffffff" class="${is}"></circle>`;
/** The two ends of a component and its body between them. */
export const component = (name: string, x: number, y: number): string =>
  part(
    name,
    disc('sl-leg-end', x, y, 4) + box('sl-body', x + 20, y - 6, 40, 12) + disc('sl-leg-end', x + 80, y, 4),
  );
export const wire = (number: number, d: string, width = 4): string =>
  `<g id="k-joint-${number}"><path d="${d}" fill="none" stroke="#000000" stroke-width="${width}"></path></g>`;
export const words = (x: number, y: number, text: string, more = ''): string =>
  `<text x="${x}" y="${y}" font-size="10" ${more}>${text}</text>`;
