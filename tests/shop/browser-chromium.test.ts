/** The shop folder in Chromium, and what only Chromium can be asked: how far things move, and what is seen without scripts. */
import { expect, it } from 'vitest';
import { squeezed } from '../tools/pdf-tools.ts';
import { layoutShifts, upgraded } from './asks.ts';
import { kitData, tenKits } from './folder.ts';
import { hostileSuite, suite } from './suite.ts';
import { startChromium } from './view.ts';

const shop = suite(startChromium);
hostileSuite(startChromium);

it.each([
  ['/product.html', 360],
  ['/product.html', 1600],
  ['/ten-figure.html', 360],
  ['/ten-figure.html', 1600],
  ['/ten-image.html', 360],
  ['/index.html', 1600],
] as const)(
  '%s, %i px wide: nothing moves, not when the script comes a second late either',
  async (path, width) => {
    shop.server.delay = (file) => (file.endsWith('.js') ? 1000 : 0);
    try {
      await shop.visit(path, { width }, async (view) => {
        await upgraded(view);
        expect(await layoutShifts(view)).toEqual([]);
      });
    } finally {
      shop.server.delay = () => 0;
    }
  },
);

it('without scripts the figures show everything: each state and what sounds, each joint, the cautions', async () => {
  await shop.visit('/ten-figure.html', { width: 1600, scripts: false }, async (view) => {
    const seen = squeezed(await view.evaluate<string>('document.body.innerText'));
    for (const id of tenKits) {
      const { states, joints } = kitData(shop.folder, id);
      for (const { words, sounds } of states) for (const one of [words, sounds]) expect(seen).toContain(one);
      for (const { from, to } of joints) expect(seen).toContain(`${from.words} ${to.words}`);
    }
    expect(seen).toContain('cautions');
    expect(seen).not.toContain('Signal path');
  });
});
