/** Figures on pages under the strict policy, in Chromium, with everything that a browser has against them kept. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium as driver, type Locator, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { Kit } from '../../src/describe/kit.ts';
import type { Prepared } from '../../src/draw/compose.ts';
import { inkStyles } from '../../src/draw/ink-roles.ts';
import { loadKit } from '../../src/files/load.ts';
import type { Language } from '../../src/messages/language.ts';
import { prepare, renderInline } from '../../src/pipeline.ts';
import { figureHtml } from '../../src/shop/figure.ts';
import { figureStyles } from '../../src/shop/figure-styles.ts';
import { kitDataOf } from '../../src/shop/kit-data.ts';
import { chromiumShell } from '../tools/chromium.ts';
import { placedOnce } from '../tools/placements.ts';
import { FORGET, reused } from '../tools/reused.ts';
import { type ShopServer, serveShop } from '../tools/shop-server.ts';
import { firstPaint } from './asks.ts';

export const SCRIPT = readFileSync('dist/solderleaf-figure.js');

export const sampleFiles: readonly string[] = readdirSync('samples')
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => join('samples', name));

export async function kitIn(file: string, language?: Language): Promise<Kit> {
  const { kit } = await loadKit(file);
  if (!kit) throw new Error(`${file} is not a kit`);
  return language === undefined ? kit : { ...kit, language };
}

/** Where parts stand is no matter: without a search, unless another test has placed the kit already. */
export const placed = (kit: Kit): Promise<Prepared> =>
  prepare(kit, undefined, { effort: { steps: 0, seed: 1 }, ...placedOnce });

export const figureOf = (prepared: Prepared, styles = 'theme.css'): string =>
  figureHtml({
    data: kitDataOf(prepared),
    drawing: renderInline(prepared, { only: ['drawing'] }),
    narrow: renderInline(prepared, { only: ['drawing'], width: 360 }),
    key: renderInline(prepared, { only: ['key'], width: 360 }),
    styles,
  });

export const LINK = '<link rel="stylesheet" href="theme.css">';
export const SCRIPT_TAG = '<script defer src="solderleaf-figure.js"></script>';

interface Visit {
  readonly width?: number;
  readonly scripts?: boolean;
  /** More files of the site by name. */
  readonly files?: Readonly<Record<string, string>>;
  /** Complaints that are meant. */
  readonly meant?: RegExp;
  /** A file of the site that comes only when the page has painted without it. */
  readonly late?: RegExp;
}

/** A page that is visited again and again; what is heard goes to the visit of the moment. */
interface Tab {
  readonly page: Page;
  heard: string[];
}

export interface Site {
  /** Opens a page with that in its head and its body; what is said against it is an error. */
  visit(
    head: string,
    body: string,
    act: (page: Page, figure: Locator) => Promise<void>,
    visit?: Visit,
  ): Promise<void>;
}

export function site(): Site {
  let browser: Browser;
  let server: ShopServer;
  const pages = new Map<string, string>();
  const tabs = reused<Tab>();
  const folder = mkdtempSync(join(tmpdir(), 'solderleaf-'));
  beforeAll(async () => {
    writeFileSync(join(folder, 'theme.css'), inkStyles() + figureStyles);
    writeFileSync(join(folder, 'solderleaf-figure.js'), SCRIPT);
    browser = await driver.launch({
      executablePath: chromiumShell(),
      args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
    });
    server = await serveShop(folder, pages);
  });
  afterAll(async () => {
    await browser?.close();
    server?.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const newTab = async (javaScriptEnabled: boolean): Promise<Tab> => {
    const page = await (await browser.newContext({ javaScriptEnabled })).newPage();
    const tab: Tab = { page, heard: [] };
    page.on('console', (message) => tab.heard.push(message.text()));
    page.on('pageerror', (error) => tab.heard.push(error.message));
    return tab;
  };
  async function goTo(page: Page, late: RegExp | undefined): Promise<void> {
    const address = `${server.address}/page.html`;
    if (!late) return void (await page.goto(address));
    const letGo = server.hold(late);
    try {
      await page.goto(address, { waitUntil: 'commit' });
      expect(await firstPaint(page)).toBeLessThan(10_000);
    } finally {
      letGo();
    }
    await page.waitForLoadState();
  }
  return {
    async visit(head, body, act, { width = 1280, scripts = true, files = {}, meant, late } = {}) {
      pages.clear();
      for (const [name, text] of Object.entries(files)) pages.set(`/${name}`, text);
      pages.set(
        '/page.html',
        `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Shop</title>${head}</head><body>${body}</body></html>`,
      );
      server.complaints.length = 0;
      const key = String(scripts);
      const tab = await tabs.take(key, () => newTab(scripts));
      const { page } = tab;
      const heard: string[] = [];
      tab.heard = heard;
      await page.setViewportSize({ width, height: 900 });
      await goTo(page, late);
      await act(page, page.locator('.slf').first());
      const said = [...heard, ...server.complaints].filter((one) => !meant?.test(one));
      expect(said).toEqual([]);
      // Where something failed, the page is not visited again.
      await page.evaluate(FORGET);
      await page.emulateMedia({ media: null });
      await page.goto('about:blank');
      tabs.putBack(key, tab);
    },
  };
}

/** Waits until the first so many figures answer. */
export async function ready(page: Page, count = 1): Promise<void> {
  await page
    .locator('.slf[data-ready]')
    .nth(count - 1)
    .waitFor({ timeout: 10_000 });
}
