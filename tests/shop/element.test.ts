/** The element about a figure: what it shows of wires and lugs, how it is moved about by hand and by scripts, and what it leaves alone. */
import { gzipSync } from 'node:zlib';
import type { Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { figureOf, kitIn, LINK, placed, ready, SCRIPT, SCRIPT_TAG, site } from './figures.ts';

const { visit } = site();
let kestrel: string;
let wren: string;
beforeAll(async () => {
  kestrel = figureOf(await placed(await kitIn('samples/kestrel-hss.yaml')));
  wren = figureOf(await placed(await kitIn('samples/wren-hs.yaml', 'de')));
});

const nameOf = (figure: Locator): Promise<string | null> => figure.locator('.slf-name').textContent();
/** What has the focus, within shadows too. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    return active?.getAttribute('data-joint') ?? active?.getAttribute('data-lug') ?? active?.className ?? '';
  });
const viewBox = (figure: Locator): Promise<string | null> =>
  figure.locator('.slf-wide svg').getAttribute('viewBox');

it('is less than 12 KB, gzipped, and has no word of its own', () => {
  expect(gzipSync(SCRIPT, { level: 9 }).length).toBeLessThan(12 * 1024);
  // Words are more than one, with a space between: selectors have signs in them, and lists of classes none but these.
  const texts = [...SCRIPT.toString().matchAll(/`([^`]*)`|"([^"]*)"|'([^']*)'/g)].map(
    ([, a, b, c]) => a ?? b ?? c ?? '',
  );
  expect(texts.length).toBeGreaterThan(50);
  expect(texts.filter((text) => /^[A-Z][a-z]+( [a-z]+)+/.test(text))).toEqual([]);
});

describe('without a script', () => {
  it.each([360, 1280])(
    '%i px wide, everything is seen: cards, tables, cautions; nothing that would not work',
    async (width) => {
      await visit(
        LINK,
        kestrel,
        async (page, figure) => {
          const seen = (selector: string): Promise<number> =>
            figure
              .locator(selector)
              .evaluateAll((all) => all.filter((one) => one.getClientRects().length > 0).length);
          expect(await seen('.slf-card')).toBe(5);
          expect(await seen('.slf-cautions li')).toBe(8);
          expect(await seen('tbody tr')).toBe(5 + 24);
          expect(await seen('.slf-view')).toBe(1);
          expect(await seen('.slf-bar, .slf-name, input, button')).toBe(0);
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
        },
        { width, scripts: false },
      );
    },
  );
});

describe('wires and lugs', () => {
  it('pointed at, a wire names its two ends, and its row is marked; what has the focus is named again after', async () => {
    await visit(LINK, kestrel + SCRIPT_TAG, async (page, figure) => {
      await ready(page);
      const hint = await nameOf(figure);
      await figure.locator('tr[data-row="21"]').hover();
      const words = await figure.locator('tr[data-row="21"]').getAttribute('data-words');
      expect(await nameOf(figure)).toBe(words);
      expect(words).toContain('Bridge hot');
      expect(words).toContain('Selector A1');
      expect(words).toContain('red');
      expect(await figure.locator('.slf-wide [data-joint].sl-named').getAttribute('data-joint')).toBe('21');
      await figure.locator('.slf-wide [data-lug="selector.B0"]').hover();
      // Where two joints meet, both other ends are named.
      expect(await nameOf(figure)).toMatch(/^Selector B0: .*Selector A0.*Volume lug 3/);
      expect(await figure.locator('tr.slf-named').count()).toBe(2);
      await page.mouse.move(0, 0);
      expect(await nameOf(figure)).toBe(hint);
      expect(await figure.locator('.sl-named, .slf-named').count()).toBe(0);
    });
  });

  it('by keyboard they are one row: arrows walk along it, Escape leaves it', async () => {
    await visit(LINK, kestrel + SCRIPT_TAG, async (page, figure) => {
      await ready(page);
      await figure.locator('.slf-wide').focus();
      await page.keyboard.press('Tab');
      expect(await focused(page)).toBe('1');
      await page.keyboard.press('ArrowRight');
      expect(await focused(page)).toBe('2');
      expect(await nameOf(figure)).toBe(await figure.locator('tr[data-row="2"]').getAttribute('data-words'));
      await page.keyboard.press('ArrowLeft');
      await page.keyboard.press('ArrowLeft');
      expect(await focused(page)).toContain('.');
      await page.keyboard.press('Home');
      expect(await focused(page)).toBe('1');
      await page.keyboard.press('Escape');
      expect(await focused(page)).toContain('slf-view');
      expect(await figure.locator('.sl-named').count()).toBe(0);
      await page.keyboard.press('Tab');
      expect(await focused(page)).toBe('1');
      await page.keyboard.press('Tab');
      expect(await focused(page)).not.toMatch(/^\d/);
      const unnamed = await figure
        .locator('.slf-view [tabindex]')
        .evaluateAll((all) => all.filter((one) => !one.getAttribute('aria-label')).length);
      expect(unnamed).toBe(0);
    });
  });
});

describe('zooming', () => {
  it('by buttons, keys and the wheel; the drawing keeps its size, moves within its edges, and comes back', async () => {
    await visit(LINK, kestrel + SCRIPT_TAG, async (page, figure) => {
      await ready(page);
      const whole = await viewBox(figure);
      const size = await figure.locator('.slf-wide svg').boundingBox();
      await figure.locator('[data-act=in]').click();
      const nearer = await viewBox(figure);
      expect(nearer).not.toBe(whole);
      await figure.locator('.slf-wide').focus();
      await page.keyboard.press('ArrowLeft');
      const left = await viewBox(figure);
      expect(Number(left?.split(' ')[0])).toBeLessThan(Number(nearer?.split(' ')[0]));
      for (let i = 0; i < 9; i++) await page.keyboard.press('ArrowLeft');
      expect(Number((await viewBox(figure))?.split(' ')[0])).toBe(0);
      await page.keyboard.press('0');
      expect(await viewBox(figure)).toBe(whole);
      await page.keyboard.press('+');
      await page.keyboard.press('-');
      expect(await viewBox(figure)).toBe(whole);
      await figure.locator('.slf-wide').hover();
      await page.keyboard.down('Control');
      await page.mouse.wheel(0, -100);
      await page.keyboard.up('Control');
      await expect.poll(() => viewBox(figure)).not.toBe(whole);
      // By hand, and without a wire taken for pointed at.
      const before = await viewBox(figure);
      await page.mouse.down();
      await page.mouse.move(500, 500, { steps: 4 });
      await page.mouse.up();
      expect(await viewBox(figure)).not.toBe(before);
      expect(await figure.locator('.slf-wide svg').boundingBox()).toMatchObject({
        width: size?.width,
        height: size?.height,
      });
      await figure.locator('[data-act=reset]').click();
      expect(await viewBox(figure)).toBe(whole);
    });
  });

  it('by two fingers, while one scrolls the page', async () => {
    await visit(
      LINK,
      kestrel + SCRIPT_TAG,
      async (page, figure) => {
        await ready(page);
        const svg = figure.locator('.slf-narrow svg');
        await svg.scrollIntoViewIfNeeded();
        const whole = await svg.getAttribute('viewBox');
        const box = await svg.boundingBox();
        if (!box) throw new Error('no drawing');
        const session = await page.context().newCDPSession(page);
        const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
        const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...apart: readonly number[]) =>
          session.send('Input.dispatchTouchEvent', {
            type,
            touchPoints: apart.flatMap((by) => [
              { x: x - by, y, id: 0 },
              { x: x + by, y, id: 1 },
            ]),
          });
        await touch('touchStart', 20);
        for (const by of [30, 40, 50]) await touch('touchMove', by);
        await touch('touchEnd');
        await expect.poll(() => svg.getAttribute('viewBox')).not.toBe(whole);
        expect(await page.evaluate(() => visualViewport?.scale)).toBe(1);
      },
      { width: 360 },
    );
  });

  it('a wire that the keyboard reaches is brought into view', async () => {
    await visit(LINK, kestrel + SCRIPT_TAG, async (page, figure) => {
      await ready(page);
      for (let i = 0; i < 5; i++) await figure.locator('[data-act=in]').click();
      await figure.locator('.slf-wide').focus();
      await page.keyboard.press('Enter');
      await page.keyboard.press('End');
      const [item, view] = await Promise.all([
        figure.locator('.slf-wide .sl-named').last().boundingBox(),
        figure.locator('.slf-wide svg').boundingBox(),
      ]);
      if (!item || !view) throw new Error('nothing is named');
      const middle = { x: item.x + item.width / 2, y: item.y + item.height / 2 };
      expect(middle.x).toBeGreaterThanOrEqual(view.x);
      expect(middle.x).toBeLessThanOrEqual(view.x + view.width);
      expect(middle.y).toBeGreaterThanOrEqual(view.y);
      expect(middle.y).toBeLessThanOrEqual(view.y + view.height);
    });
  });
});

it('nothing of a visit is left for the next', async () => {
  const found = (page: Page): Promise<unknown> =>
    page.evaluate(() => [
      // Without a pointer the browser takes the corner of the window for pointed at, where the body does not reach.
      document.querySelectorAll('body:hover, body :hover').length,
      [scrollX, scrollY, visualViewport?.scale],
      document.activeElement?.localName,
      [localStorage.length, sessionStorage.length, window.name, document.cookie],
      matchMedia('print').matches,
    ]);
  const fresh = [0, [0, 0, 1], 'body', [0, 0, '', ''], false];
  const body = `${kestrel}${SCRIPT_TAG}`;
  for (const time of ['first', 'second'])
    await visit(LINK, body, async (page, figure) => {
      await ready(page);
      await page.evaluate(
        () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
      );
      expect(await found(page), time).toEqual(fresh);
      await page.evaluate(() => {
        localStorage.setItem('left', '1');
        sessionStorage.setItem('left', '1');
        window.name = 'left';
        // biome-ignore lint/suspicious/noDocumentCookie: the plain way of a page
        document.cookie = 'left=1';
      });
      await figure.locator('tr[data-row="21"]').hover();
      await figure.locator('input[value="2"]').check();
      await page.emulateMedia({ media: 'print' });
    });
});

describe('on its page', () => {
  it('nothing moves when the script comes late', async () => {
    await visit(
      `${LINK}<script src="watch.js"></script>`,
      `${kestrel}<p id="after">After the figure</p>${SCRIPT_TAG}`,
      async (page, figure) => {
        const at = async () => (await page.locator('#after').boundingBox())?.y;
        await ready(page);
        await figure.locator('input[value="2"]').check();
        const shift = await page.evaluate('window.shift');
        expect(shift).toBe(0);
        expect(await at()).toBe(await page.evaluate('window.first'));
      },
      {
        late: /solderleaf-figure\.js$/,
        files: {
          'watch.js': `window.shift = 0; new PerformanceObserver((list) => { for (const one of list.getEntries()) window.shift += one.value; }).observe({ type: 'layout-shift', buffered: true }); document.addEventListener('readystatechange', () => { if (document.readyState === 'interactive') window.first = document.getElementById('after').getBoundingClientRect().y; });`,
        },
      },
    );
  });

  it('rules of the page do not reach the figure, and no rule of the stylesheet reaches the page', async () => {
    await visit(
      `${LINK}<link rel="stylesheet" href="shop.css">`,
      `<p class="card">Card</p><button>Buy</button><table><tr><td>1</td></tr></table><svg width="9" height="9"><text>a</text></svg>${kestrel}${SCRIPT_TAG}`,
      async (page, figure) => {
        await ready(page);
        const look = await figure.evaluate((root) =>
          ['.slf-card', '.slf-title', 'button', 'td', 'svg'].map((selector) => {
            const one = root.querySelector(selector);
            const style = one && getComputedStyle(one);
            return [style?.display !== 'none', style?.color !== 'rgb(1, 2, 3)', style?.letterSpacing];
          }),
        );
        for (const one of look) expect(one).toEqual([true, true, 'normal']);
        const own = await page.evaluate(() =>
          ['button', 'td', 'svg', 'p'].map((tag) => {
            const style = getComputedStyle(document.querySelector(tag) ?? document.body);
            return [style.color, style.paddingTop];
          }),
        );
        for (const one of own) expect(one).toEqual(['rgb(1, 2, 3)', '7px']);
      },
      {
        files: {
          'shop.css':
            '* { color: rgb(1, 2, 3) !important; letter-spacing: 9px !important; padding: 7px; } .slf-card, .slf-title, button.slf-sign { display: none !important; }',
        },
      },
    );
  });

  it('on a phone in German: no words of a control are wider than the control', async () => {
    await visit(
      LINK,
      wren + SCRIPT_TAG,
      async (page, figure) => {
        await ready(page);
        const tight = await figure
          .locator('button, .slf-options span')
          .evaluateAll((all) =>
            all.filter((one) => one.scrollWidth > one.clientWidth + 1).map((one) => one.textContent),
          );
        expect(tight).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
      },
      { width: 360 },
    );
  });

  it('several, one in German: each answers by itself', async () => {
    await visit(LINK, kestrel + wren + kestrel + SCRIPT_TAG, async (page) => {
      await ready(page, 3);
      const figures = page.locator('.slf');
      await figures.nth(2).locator('input[value="4"]').check();
      await figures.nth(1).locator('input[value="2"]').check();
      const shown = await page
        .locator('.slf-card:not([data-off])')
        .evaluateAll((cards) => cards.map((card) => card.getAttribute('data-state')));
      expect(shown).toEqual(['1', '2', '4']);
      const german = figures.nth(1);
      const words = [await nameOf(german), await german.getByRole('status').textContent()];
      expect(words[0]).toContain('Mit der Tastatur');
      expect(words[1]).toContain('Stellung 2');
    });
  });

  it('the script before the markup, twice, and another version beside it', async () => {
    const other = kestrel.replaceAll('solderleaf-figure-1', 'solderleaf-figure-2');
    await visit(
      `<script src="solderleaf-figure.js"></script><script src="again.js"></script>${LINK}<script src="newer.js"></script>`,
      kestrel + other,
      async (page) => {
        await ready(page, 2);
        await page.locator('.slf').nth(1).locator('input[value="3"]').check();
        expect(await page.locator('.slf').nth(0).locator('input[value="1"]').isChecked()).toBe(true);
      },
      {
        files: {
          'again.js': SCRIPT.toString(),
          'newer.js': SCRIPT.toString().replaceAll('solderleaf-figure-1', 'solderleaf-figure-2'),
        },
      },
    );
  });

  it('moved, taken out and put back, copied, and written by a script after the element', async () => {
    await visit(LINK, `<div id="there"></div>${kestrel}${SCRIPT_TAG}`, async (page, figure) => {
      await ready(page);
      await figure.locator('input[value="3"]').check();
      await page.evaluate(() => {
        const there = document.getElementById('there');
        const one = document.querySelector('solderleaf-figure-1');
        if (!there || !one) return;
        there.append(one);
        one.remove();
        there.append(one);
        there.append(one.cloneNode(true));
        const late = document.createElement('solderleaf-figure-1');
        late.setAttribute('data-styles', 'theme.css');
        there.append(late);
        const copy = one.shadowRoot?.querySelector('.slf')?.cloneNode(true) as HTMLElement;
        copy.removeAttribute('data-ready');
        setTimeout(() => late.append(copy), 50);
      });
      await ready(page, 3);
      expect(await page.locator('.slf').nth(0).locator('input[value="3"]').isChecked()).toBe(true);
      for (const n of [0, 1, 2]) {
        await page.locator('.slf').nth(n).locator('input[value="5"]').check();
        expect(
          await page.locator('.slf').nth(n).locator('.slf-card:not([data-off])').getAttribute('data-state'),
        ).toBe('5');
      }
    });
  });

  it.each([
    ['a drawing without a view box', (html: string) => html.replaceAll(/ viewBox="[^"]*"/g, '')],
    ['no card', (html: string) => html.replaceAll('data-state=', 'data-stat=')],
    [
      'a state in a position that no switch has',
      (html: string) => html.replace('data-at="selector=4"', 'data-at="selector=9"'),
    ],
    ['no controls', (html: string) => html.replace('slf-bar', 'slf-baz')],
    ['no figure', (html: string) => html.replace('class="slf"', 'class="other"')],
    ['no stylesheet', (html: string) => html.replace('data-styles="theme.css"', 'data-styles="gone.css"')],
    [
      'an address that is a script',
      (html: string) => html.replace('data-styles="theme.css"', 'data-styles="javascript:document.title=1"'),
    ],
  ])('%s: the figure stays as it is', async (_, spoilt) => {
    const html = spoilt(kestrel);
    expect(html).not.toBe(kestrel);
    await visit(
      LINK,
      html + SCRIPT_TAG,
      async (page) => {
        await page.waitForTimeout(300);
        expect(await page.locator('[data-ready]').count()).toBe(0);
        expect(await page.locator('.slf-cautions').isVisible()).toBe(true);
        expect(await page.locator('[data-off], .sl-off').count()).toBe(0);
        expect(await page.title()).toBe('Shop');
      },
      { meant: /gone\.css|javascript:|404|scheme|^breach: .*style-src-elem/ },
    );
  });

  it('prints the figure alone when asked, with every card, and the page as ever after', async () => {
    await visit(
      `${LINK}<script src="print.js"></script>`,
      `<p id="other">Other</p><main>${kestrel}${wren}</main>${SCRIPT_TAG}`,
      async (page, figure) => {
        await ready(page, 2);
        await figure.locator('[data-act=print]').click();
        expect(await page.evaluate('window.printed')).toBe(1);
        await page.emulateMedia({ media: 'print' });
        expect(await page.locator('#other').isVisible()).toBe(false);
        expect(await page.locator('.slf').nth(1).isVisible()).toBe(false);
        expect(await figure.locator('.slf-bar').isVisible()).toBe(false);
        for (const card of await figure.locator('.slf-card').all()) expect(await card.isVisible()).toBe(true);
        await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
        expect(await page.locator('#other').isVisible()).toBe(true);
        expect(await page.locator('.slf').nth(1).isVisible()).toBe(true);
      },
      { files: { 'print.js': 'window.printed = 0; window.print = () => { window.printed++; };' } },
    );
  });
});
