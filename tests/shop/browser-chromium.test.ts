/** The shop folder in Chromium, and what only Chromium can be asked: how far things move, and what is seen without scripts. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { chromiumShell } from '../tools/chromium.ts';
import { squeezed } from '../tools/pdf-tools.ts';
import { layoutShifts, upgraded } from './asks.ts';
import { kitData, shopFolder, tenKits } from './folder.ts';
import { leastType } from './least-type.ts';
import { hostileSuite, opened, pagesOf, started, suite } from './suite.ts';
import { startChromium } from './view.ts';

suite(started(startChromium));
const shell = started(() => startChromium(chromiumShell()));
hostileSuite(shell);
const shop = opened(shell, shopFolder, pagesOf);

it.each([
  ['/product.html', 360],
  ['/product.html', 1600],
  ['/ten-figure.html', 360],
  ['/ten-figure.html', 1600],
  ['/ten-image.html', 360],
  ['/index.html', 1600],
] as const)(
  '%s, %i px wide: nothing moves, not when the script and the images come late either',
  async (path, width) => {
    await shop.visit(
      path,
      { width },
      async (view) => {
        await upgraded(view);
        expect(await layoutShifts(view)).toEqual([]);
      },
      /\.(js|svg)$/,
    );
  },
);

it.each([
  [360, 'kestrel-hss-360-drawing.svg'],
  [1600, 'kestrel-hss.svg'],
] as const)(
  'the image on the product page, %i px wide: %s, in its own shape, readable on the phone',
  async (width, file) => {
    await shop.visit('/product.html', { width, height: 740 }, async (view) => {
      const { address, alt, wide, high } = await view.evaluate<{
        address: string;
        alt: string;
        wide: number;
        high: number;
      }>(
        `(() => { const one = document.querySelector('picture img'); const { width, height } = one.getBoundingClientRect();
        return { address: one.currentSrc, alt: one.alt, wide: width, high: height }; })()`,
      );
      expect(address).toMatch(new RegExp(`/${file}$`));
      expect(alt).toMatch(/^Wiring diagram: HSS/);
      const svg = readFileSync(join(shop.folder, 'kestrel-hss', file), 'utf8');
      const [, across, down] = / width="([\d.]+)" height="([\d.]+)"/.exec(svg) ?? [];
      expect(high / wide).toBeCloseTo(Number(down) / Number(across), 2);
      // Common practice for text on a phone, no source.
      if (width === 360) expect((leastType(svg) * wide) / Number(across)).toBeGreaterThanOrEqual(10.995);
    });
  },
);

/** Where things of the figure are in the window, and what is read in the card and the line that are seen. */
const SEEN = `(() => {
  const root = document.querySelector('solderleaf-figure-1').shadowRoot;
  const seen = (selector) => [...root.querySelectorAll(selector)].find((one) => one.checkVisibility({ visibilityProperty: true }));
  const box = (selector) => { const { top, bottom } = seen(selector)?.getBoundingClientRect() ?? {}; return [top, bottom]; };
  return { switches: box('.slf-options'), card: box('.slf-card'), drawing: box('.slf-view'), hint: box('.slf-name'), line: box('.slf-now > p'),
    words: { card: seen('.slf-card')?.textContent ?? '', line: seen('.slf-now > p')?.textContent ?? '', hint: seen('.slf-name').textContent } };
})()`;
interface Seen {
  readonly words: { readonly card: string; readonly line: string; readonly hint: string };
  readonly switches: readonly [number, number];
  readonly card: readonly [number, number];
  readonly drawing: readonly [number, number];
  readonly hint: readonly [number, number];
  readonly line: readonly [number, number];
}

it('on a phone: whoever flips the switch sees its loads with it and the drawing, and so it stays along the drawing', async () => {
  const { states } = kitData(shop.folder, 'kestrel-hss');
  const height = 740;
  await shop.visit('/product.html', { width: 360, height, touch: true }, async (view) => {
    await upgraded(view);
    const flip = async (number: number): Promise<Seen> => {
      await view.evaluate(
        `document.querySelector('solderleaf-figure-1').shadowRoot.querySelector('input[value="${number}"]').click()`,
      );
      return view.evaluate<Seen>(SEEN);
    };
    const within = ([top, bottom]: readonly [number, number]): void => {
      expect(top).toBeGreaterThanOrEqual(0);
      expect(bottom).toBeLessThanOrEqual(height);
    };
    await view.evaluate(
      `document.querySelector('solderleaf-figure-1').scrollIntoView({ behavior: 'instant' })`,
    );
    for (const { number, sounds, pickups } of [...states].reverse()) {
      const seen = await flip(number);
      within(seen.switches);
      within(seen.card);
      expect(seen.words.card).toContain(sounds);
      for (const { signalLoadWords } of pickups) expect(seen.words.card).toContain(signalLoadWords);
      expect(seen.hint[0] - seen.drawing[0]).toBeGreaterThan(100);
      expect(seen.words.hint).toMatch(/^Tap /);
    }
    await view.evaluate(`scrollBy({ top: 900, behavior: 'instant' })`);
    await expect.poll(async () => (await view.evaluate<Seen>(SEEN)).words.line).not.toBe('');
    for (const { number, pickups } of states) {
      const seen = await flip(number);
      within(seen.switches);
      within(seen.line);
      expect(seen.line[0]).toBeGreaterThanOrEqual(seen.switches[1]);
      expect(seen.line[1]).toBeLessThan(seen.hint[0]);
      expect(seen.words.line).toBe(
        pickups
          .map(({ label, dcLoadWords, signalLoadWords }) => `${label} ${dcLoadWords} / ${signalLoadWords}`)
          .join(''),
      );
    }
  });
});

it('on a phone with keys: no wire or lug that is reached lies below the switch that stays, or below its own words', async () => {
  await shop.visit('/product.html', { width: 360, height: 740 }, async (view) => {
    await upgraded(view);
    const root = `document.querySelector('solderleaf-figure-1').shadowRoot`;
    await view.evaluate(`${root}.querySelector('.slf-narrow').focus()`);
    await view.press('Tab');
    const hidden: string[] = [];
    for (let i = 0; i < 40; i++) {
      await view.press('ArrowRight');
      const one = await view.evaluate<string>(`(() => { const box = (one) => one.getBoundingClientRect();
        const reached = ${root}.activeElement;
        const { top, bottom } = box(reached);
        const [above, below] = [box(${root}.querySelector('.slf-held')).bottom, box(${root}.querySelector('.slf-name')).top];
        return bottom > above && top < below ? '' : reached.getAttribute('aria-label'); })()`);
      if (one !== '') hidden.push(one);
    }
    expect(hidden).toEqual([]);
  });
});

it('with a pointer the hint is about it and the keys', async () => {
  await shop.visit('/product.html', { width: 1600 }, async (view) => {
    await upgraded(view);
    expect((await view.evaluate<Seen>(SEEN)).words.hint).toMatch(/^Point .*keyboard/);
  });
});

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
