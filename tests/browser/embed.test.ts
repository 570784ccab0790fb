/** The drawings on a web page: as images and inline they look the same, share no id and cause no message. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import pixelmatch from 'pixelmatch';
import { type Browser, chromium as driver } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, expect, it } from 'vitest';
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
    const off = pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.2 });
    // A picture and an inline drawing may lie a fraction of a pixel apart; a missing or moved shape is far more.
    expect(off / (a.width * a.height), kit).toBeLessThan(0.0005);
  }
  const ids = await inline.page.evaluate('[...document.querySelectorAll("[id]")].map((e) => e.id)');
  expect(ids).toEqual([...new Set(ids as string[])]);
  expect([...images.heard, ...inline.heard]).toEqual([]);
});
