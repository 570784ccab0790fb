/** In a page's own document a drawing is the element that the file's text would be. */
import { registerWindow } from '@svgdotjs/svg.js';
import { createSVGWindow } from 'svgdom';
import { expect, it } from 'vitest';
import { sheetOf } from '../../src/draw/compose.ts';
import { plotToSvg, sheetToSvg } from '../../src/draw/headless.ts';
import { plotToElement, sheetToElement } from '../../src/draw/page.ts';
import { themes } from '../../src/draw/theme.ts';
import { composeResponse, prepare } from '../../src/pipeline.ts';
import { sample } from '../truth/draw.ts';

/** What is written in an element, and the names it has beside those that svg.js gives every root. */
const inside = (svg: string): string => svg.trim().replace(/^<svg[^>]*>/, '');
const rootOf = (svg: string): string => (/^<svg[^>]*>/.exec(svg)?.[0] ?? '').split(' ').sort().join(' ');

it('sheet and plot', async () => {
  const kit = sample('heron-ss');
  const sheet = sheetOf(await prepare(kit, undefined, { effort: { steps: 0, seed: 1 } }));
  const plot = composeResponse(kit);
  for (const theme of [undefined, themes.dark]) {
    const texts = [sheetToSvg(sheet, theme), plotToSvg(plot, theme)];
    const window = createSVGWindow();
    registerWindow(window, window.document);
    const elements = [sheetToElement(sheet, theme), plotToElement(plot, theme)].map(
      (element) => element.outerHTML,
    );
    elements.forEach((element, i) => {
      expect(inside(element)).toBe(inside(texts[i] ?? ''));
      expect(element).not.toMatch(/xmlns:(xlink|svgjs)/);
      expect(rootOf(element)).toContain('viewBox=');
    });
  }
});
