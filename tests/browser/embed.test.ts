/** The drawings on a web page: as images and inline they look the same, share no id and cause no message. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import pixelmatch from 'pixelmatch';
import { type Browser, chromium as driver } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { inMode } from '../../src/publish/modes.ts';
import { chromium } from '../tools/chromium.ts';

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
  browser = await driver.launch({ executablePath: chromium(), args: FLAGS });
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

it('modes: a page sets the inks of an inline drawing, a strict policy takes a static one, a standalone one has its font', {
  timeout: 120_000,
}, async () => {
  const svg = readFileSync(`out/${kits[0]}`, 'utf8');
  const paper = 'getComputedStyle(document.querySelector("svg rect")).fill';
  const dressed = await open(
    `<div style="--solderleaf-paper:rgb(18,52,86)">${await inMode(svg, 'inline')}</div>`,
  );
  expect(await dressed.page.evaluate(paper)).toBe('rgb(18, 52, 86)');
  const plain = await open(await inMode(svg, 'inline'));
  expect(await plain.page.evaluate(paper)).toBe('rgb(255, 255, 255)');
  const strict = await open(
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'">${await inMode(svg, 'static')}`,
  );
  expect(await strict.page.evaluate(paper)).toBe('rgb(255, 255, 255)');
  expect([...dressed.heard, ...plain.heard, ...strict.heard]).toEqual([]);
  const alone = await open(await inMode(svg, 'standalone'));
  const faces =
    '(async () => { await document.fonts.ready; return [...document.fonts].map((f) => f.status) })()';
  expect(await alone.page.evaluate(faces)).toEqual(['loaded', 'loaded']);
  expect(alone.heard.filter((one) => !one.startsWith('outside: data:font/woff2'))).toEqual([]);
});
