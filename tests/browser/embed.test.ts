/** The drawings on a web page: as images and inline they look the same, share no id and cause no message. */

import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import pixelmatch from 'pixelmatch';
import { type Browser, chromium as driver } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { kitFromValue } from '../../src/describe/read.ts';
import { inkRoles, inkStyles } from '../../src/draw/ink-roles.ts';
import { themes } from '../../src/draw/theme.ts';
import { prepare, renderInline } from '../../src/pipeline.ts';
import { withLetters } from '../../src/publish/modes.ts';
import { chromiumShell } from '../tools/chromium.ts';

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const kits = readdirSync('out').filter((name) => name.endsWith('.svg'));
let browser: Browser;
let folder: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'solderleaf-'));
  browser = await driver.launch({ executablePath: chromiumShell(), args: FLAGS });
}, 300_000);
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function open(body: string) {
  const file = join(folder, 'page.html');
  writeFileSync(
    file,
    `<!doctype html><meta charset="utf-8"><title>shop</title><style>body{margin:0}img,svg{display:block}</style>${body}`,
  );
  const page = await browser.newPage({ viewport: { width: 1400, height: 1000 } });
  const heard: string[] = [];
  page.on('console', (message) => heard.push(message.text()));
  page.on('pageerror', (error) => heard.push(error.message));
  page.on('requestfailed', (request) => heard.push(`failed: ${request.url()}`));
  page.on('request', (request) => {
    if (!request.url().startsWith('file:')) heard.push(`outside: ${request.url()}`);
  });
  await page.goto(pathToFileURL(file).href);
  return { page, heard };
}

/** Far fewer pixels than the smallest shape drawn. */
const FEW = 20;
const apart = (a: PNG, b: PNG): number =>
  pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.2 });

it('six drawings as images and inline: same pictures, no shared id, no message', {
  timeout: 120_000,
}, async () => {
  expect(kits).toHaveLength(6);
  const images = await open(
    kits.map((k) => `<img alt="" src="${pathToFileURL(resolve('out', k)).href}">`).join(''),
  );
  const inline = await open(kits.map((k) => readFileSync(`out/${k}`, 'utf8')).join(''));
  for (const [i, kit] of kits.entries()) {
    const a = PNG.sync.read(await images.page.locator('img').nth(i).screenshot());
    const b = PNG.sync.read(await inline.page.locator('body > svg').nth(i).screenshot());
    expect([a.width, a.height], kit).toEqual([b.width, b.height]);
    // They have been alike to the pixel; a few pixels are left to other versions of the browser.
    expect(apart(a, b), kit).toBeLessThanOrEqual(FEW);
  }
  const ids = await inline.page.evaluate('[...document.querySelectorAll("[id]")].map((e) => e.id)');
  expect(ids).toEqual([...new Set(ids as string[])]);
  expect([...images.heard, ...inline.heard]).toEqual([]);
});

it('would notice one wire gone, an id used twice, a message, a missing file and a request outside', {
  timeout: 120_000,
}, async () => {
  const svg = readFileSync(`out/${kits[0]}`, 'utf8');
  const fewer = svg.replace(/<g id="[^"]*-joint-1".*?<\/g>/s, '');
  const { page, heard } = await open(
    `${svg}${fewer}<script>console.log('a message')</script><img alt="" src="missing.png"><img alt="" src="http://127.0.0.1:9/a.png">`,
  );
  const [a, b] = [
    PNG.sync.read(await page.locator('body > svg').nth(0).screenshot()),
    PNG.sync.read(await page.locator('body > svg').nth(1).screenshot()),
  ];
  expect(apart(a, b)).toBeGreaterThan(FEW);
  const ids = await page.evaluate('[...document.querySelectorAll("[id]")].map((e) => e.id)');
  expect(ids).not.toEqual([...new Set(ids as string[])]);
  expect(heard).toContainEqual('a message');
  expect(heard).toContainEqual(expect.stringContaining('failed: file:'));
  expect(heard).toContainEqual('outside: http://127.0.0.1:9/a.png');
});

it('a strict policy takes a static drawing, a standalone one has its font', {
  timeout: 120_000,
}, async () => {
  const svg = readFileSync(`out/${kits[0]}`, 'utf8');
  const strict = await open(`<meta http-equiv="Content-Security-Policy" content="default-src 'none'">${svg}`);
  const paper = 'getComputedStyle(document.querySelector("svg rect")).fill';
  expect(await strict.page.evaluate(paper)).toBe('rgb(255, 255, 255)');
  expect(strict.heard).toEqual([]);
  const alone = await open(await withLetters(svg));
  const faces =
    '(async () => { await document.fonts.ready; return [...document.fonts].map((f) => f.status) })()';
  expect(await alone.page.evaluate(faces)).toEqual(['loaded', 'loaded']);
  expect(alone.heard.filter((one) => !one.startsWith('outside: data:font/woff2'))).toEqual([]);
});

describe('an inline drawing on a page with a strict policy and the stylesheet that ships', () => {
  /** Resistors with all ten digits in their bands, one padding a wire of each kind. */
  const { kit } = kitFromValue(
    {
      kit: 'digits',
      title: 'Ten digits',
      parts: {
        neck: { kind: 'single-coil' },
        out: { kind: 'jack' },
        ...Object.fromEntries(
          ['200k', '340k', '560k', '780k', '910k'].map((value, i) => [`r${i}`, { kind: 'resistor', value }]),
        ),
      },
      joints: [
        { wire: 'neck.hot > out.tip', colour: 'WH' },
        { wire: 'neck.ground > out.sleeve', colour: 'BK' },
        // One behind another: no lug has room for five.
        { leg: 'r0.1 > neck.hot' },
        ...[0, 1, 2, 3].map((i) => ({ leg: `r${i}.2 > r${i + 1}.1` })),
        { leg: 'r4.2 > neck.ground' },
      ],
    },
    'digits.ts',
  );
  if (!kit) throw new Error('not a kit');
  const css = inkStyles();
  let inline: string;
  beforeAll(async () => {
    inline = renderInline(await prepare(kit, undefined, { effort: { steps: 0, seed: 1 } }));
  });

  async function served(body: string) {
    const html = `<!doctype html><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'"><title>shop</title><link rel="stylesheet" href="theme.css">${body}`;
    const server = createServer((request, answer) => {
      const isCss = request.url === '/theme.css';
      answer.writeHead(200, { 'content-type': isCss ? 'text/css' : 'text/html' });
      answer.end(isCss ? css : html);
    });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    const { port } = server.address() as AddressInfo;
    const page = await browser.newPage();
    const heard: string[] = [];
    page.on('console', (message) => heard.push(message.text()));
    page.on('pageerror', (error) => heard.push(error.message));
    await page.goto(`http://127.0.0.1:${port}/`);
    return { page, heard, close: () => server.close() };
  }
  /** Of every element with an ink: what it is written with, and what the page shows it in. */
  const INKS = `[...document.querySelectorAll('svg [fill], svg [stroke]')].flatMap((e) => ['fill', 'stroke'].filter((p) => /^#/.test(e.getAttribute(p) ?? '')).map((p) => [p + ' ' + e.getAttribute(p), getComputedStyle(e)[p], [...e.classList].find((c) => c.startsWith('sl-' + p + '-')) ?? '']))`;
  const rgb = (ink: string): string =>
    `rgb(${[1, 3, 5].map((i) => Number.parseInt(ink.slice(i, i + 2), 16)).join(', ')})`;

  it.each([
    ['light', '', {}],
    ['dark', 'solderleaf-dark', {}],
    ['dark', 'solderleaf-auto', { colorScheme: 'dark' }],
    ['light', 'solderleaf-auto', { colorScheme: 'light' }],
    ['light', 'solderleaf-dark', { media: 'print' }],
    ['light', 'solderleaf-auto', { media: 'print', colorScheme: 'dark' }],
  ] as const)(
    '%s in “%s” for %o: every role in its ink, bands and insulation in their true colours, no message',
    async (name, of, media) => {
      const { page, heard, close } = await served(`<div class="${of}">${inline}</div>`);
      await page.emulateMedia(media);
      const seen = (await page.evaluate(INKS)) as readonly (readonly [string, string, string])[];
      close();
      const theme = themes[name];
      const roles = inkRoles(theme);
      for (const [written, shown, role] of seen) {
        const wanted =
          role === '' ? written.split(' ')[1] : roles.get(role.replace(/^sl-(fill|stroke)-/, ''));
        expect(shown, `${written} ${role}`).toBe(rgb(wanted ?? ''));
      }
      // Digits 0 to 9, IEC 60062, from memory.
      const digits = ['BK', 'BN', 'RD', 'OG', 'YE', 'GN', 'BU', 'VT', 'GY', 'WH'];
      for (const code of digits)
        expect(
          seen.filter(([written]) => written === `fill ${theme.bands[code]}`).length,
          code,
        ).toBeGreaterThan(0);
      expect(heard).toEqual([]);
    },
    120_000,
  );
});
