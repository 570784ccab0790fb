/**
 * One small interface over two browsers. Chromium is driven by playwright-core, Debian's Firefox by puppeteer-core over WebDriver
 * BiDi: playwright-core starts Debian's Firefox as well, but opens no page in it, as it asks for a command that this Firefox does not know.
 */
import { type Page as ChromiumPage, chromium as playwright } from 'playwright-core';
import puppeteer, { type Page as FirefoxPage, type Browser as Fox, type KeyInput } from 'puppeteer-core';
import { chromium } from '../tools/chromium.ts';
import { firefox } from '../tools/firefox.ts';
import { FORGET, reused } from '../tools/reused.ts';

export interface Look {
  readonly width: number;
  readonly height?: number;
  /** `forced` is forced colours, as a system with high contrast has. */
  readonly scheme?: 'light' | 'dark' | 'forced';
  /** False for a visitor without scripts; only Chromium can be such a visitor. */
  readonly scripts?: boolean;
  /** A phone, with a finger in place of a pointer; only Chromium can be one. */
  readonly touch?: boolean;
  /** Device pixels to a CSS pixel. */
  readonly scale?: number;
}

export interface View {
  /** Console messages, errors, dialogs, and requests that left the server's address. */
  readonly heard: string[];
  /** @param until `commit` to go on as soon as the page has begun to arrive */
  go(address: string, until?: 'load' | 'commit'): Promise<void>;
  evaluate<Result>(script: string): Promise<Result>;
  press(key: KeyInput): Promise<void>;
  /** The window as PNG. */
  picture(): Promise<Uint8Array>;
  pdf(): Promise<Uint8Array>;
  /** Changes the visitor’s scheme on the page as it is; what cannot do so opens the page anew. */
  rescheme?(scheme: NonNullable<Look['scheme']>): Promise<void>;
  /** Leaves the page, with nothing of it left for the next visit. */
  close(): Promise<void>;
}

export interface Engine {
  readonly name: 'Chromium' | 'Firefox';
  open(look: Look): Promise<View>;
  close(): Promise<void>;
}

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--hide-scrollbars',
];

const isOutside = (address: string): boolean => !/^(?:http:\/\/127\.0\.0\.1:|about:|data:)/.test(address);

/** A page that is visited again and again; what is heard goes to the visit of the moment. */
interface Tab<Page> {
  readonly page: Page;
  heard: string[];
}

const CHROMIUM_MEDIA = {
  light: { forcedColors: 'none', colorScheme: 'light' },
  dark: { forcedColors: 'none', colorScheme: 'dark' },
  forced: { forcedColors: 'active', colorScheme: 'light' },
} as const;

/** @param path the program: Debian’s Chromium, or the same without windows */
export async function startChromium(path = chromium()): Promise<Engine> {
  const browser = await playwright.launch({ executablePath: path, args: FLAGS });
  const tabs = reused<Tab<ChromiumPage>>();
  const newTab = async (touch: boolean, scripts: boolean, scale: number): Promise<Tab<ChromiumPage>> => {
    const context = await browser.newContext({
      ...(touch ? { hasTouch: true, isMobile: true } : {}),
      deviceScaleFactor: scale,
      javaScriptEnabled: scripts,
    });
    const page = await context.newPage();
    const tab: Tab<ChromiumPage> = { page, heard: [] };
    page.on('console', (message) => tab.heard.push(`${message.type()}: ${message.text()}`));
    page.on('pageerror', (error) => tab.heard.push(`error: ${error.message}`));
    page.on('dialog', (dialog) => {
      tab.heard.push(`dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    page.on('request', (request) => {
      if (isOutside(request.url())) tab.heard.push(`outside: ${request.url()}`);
    });
    return tab;
  };
  const open = async (look: Look) => {
    const { width, height = 900, scheme = 'light', touch = false, scripts = true, scale = 1 } = look;
    const key = JSON.stringify([touch, scripts, scale]);
    const tab = await tabs.take(key, () => newTab(touch, scripts, scale));
    const { page } = tab;
    const heard: string[] = [];
    tab.heard = heard;
    await page.setViewportSize({ width, height });
    await page.emulateMedia(CHROMIUM_MEDIA[scheme]);
    return {
      heard,
      go: async (address: string, until: 'load' | 'commit' = 'load') =>
        void (await page.goto(address, { waitUntil: until })),
      evaluate: <Result>(script: string) => page.evaluate(script) as Promise<Result>,
      press: (key: string) => page.keyboard.press(key),
      picture: () => page.screenshot({ animations: 'disabled' }),
      pdf: () => page.pdf({ format: 'A4' }),
      rescheme: (to: NonNullable<Look['scheme']>) => page.emulateMedia(CHROMIUM_MEDIA[to]),
      close: async () => {
        await page.evaluate(FORGET);
        await page.goto('about:blank');
        tabs.putBack(key, tab);
      },
    };
  };
  return { name: 'Chromium', open, close: () => browser.close() };
}

/** What this Firefox lets no client set for a page is set for a whole browser: one for each scheme, started when it is first asked for. */
const PREFERENCES = {
  light: { 'ui.systemUsesDarkTheme': 0 },
  dark: { 'ui.systemUsesDarkTheme': 1 },
  forced: { 'browser.display.document_color_use': 2 },
} as const;

export async function startFirefox(): Promise<Engine> {
  const started = new Map<string, Promise<Fox>>();
  const browserFor = (scheme: keyof typeof PREFERENCES): Promise<Fox> => {
    const there =
      started.get(scheme) ??
      puppeteer.launch({
        browser: 'firefox',
        executablePath: firefox(),
        headless: true,
        extraPrefsFirefox: PREFERENCES[scheme],
      });
    started.set(scheme, there);
    return there;
  };
  const tabs = reused<Tab<FirefoxPage>>();
  const newTab = async (scheme: keyof typeof PREFERENCES): Promise<Tab<FirefoxPage>> => {
    const page = await (await browserFor(scheme)).newPage();
    const tab: Tab<FirefoxPage> = { page, heard: [] };
    page.on('console', (message) => tab.heard.push(`${message.type()}: ${message.text()}`));
    page.on('pageerror', (error) =>
      tab.heard.push(`error: ${error instanceof Error ? error.message : error}`),
    );
    page.on('dialog', (dialog) => {
      tab.heard.push(`dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    page.on('request', (request) => {
      if (isOutside(request.url())) tab.heard.push(`outside: ${request.url()}`);
    });
    return tab;
  };
  const open = async ({ width, height = 900, scheme = 'light', scripts = true, touch, scale = 1 }: Look) => {
    if (!scripts || touch) throw new Error('Firefox is not driven without scripts or as a phone here');
    const tab = await tabs.take(scheme, () => newTab(scheme));
    const { page } = tab;
    const heard: string[] = [];
    tab.heard = heard;
    await page.setViewport({ width, height, deviceScaleFactor: scale });
    const go = async (address: string, until: 'load' | 'commit' = 'load'): Promise<void> => {
      if (until === 'load') return void (await page.goto(address));
      void page.goto(address).catch(() => undefined);
      // The driver tells the address only of a page that has loaded; a script that is run as the page changes is lost.
      const there = (): Promise<unknown> => page.evaluate('location.href').catch(() => 'about:blank');
      while ((await there()) === 'about:blank') await new Promise((done) => setTimeout(done, 20));
    };
    return {
      heard,
      go,
      evaluate: <Result>(script: string) => page.evaluate(script) as Promise<Result>,
      press: (key: KeyInput) => page.keyboard.press(key),
      picture: () => page.screenshot(),
      pdf: () => page.pdf({ format: 'A4' }),
      close: async () => {
        await page.evaluate(FORGET);
        await page.goto('about:blank');
        tabs.putBack(scheme, tab);
      },
    };
  };
  await browserFor('light');
  return {
    name: 'Firefox',
    open,
    close: async () =>
      void (await Promise.all([...started.values()].map(async (one) => (await one).close()))),
  };
}
