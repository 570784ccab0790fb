/**
 * The product page and the index of the shop folder as browsers show them, small. They were looked at; a share of the pixels may differ,
 * as browsers and fonts of other versions set words a little otherwise. What the drawings in them look like is the other pictures' matter.
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { blankImages, upgraded } from '../shop/asks.ts';
import { shopFolder } from '../shop/folder.ts';
import { type Engine, type Look, startChromium, startFirefox } from '../shop/view.ts';
import { pageAsPng } from '../tools/pdf-tools.ts';
import { type ShopServer, serveShop } from '../tools/shop-server.ts';
import { expectPng } from './picture.ts';

const SHARE = 0.03;
const SCALE = 0.4;
/** CSS pixels. The window has a height of its own: that of the page depends on the machine's fonts. */
const HEIGHT = { 360: 3200, 1600: 3600 } as const;

let engines: Readonly<Record<'chromium' | 'firefox', Engine>>;
let server: ShopServer;
beforeAll(async () => {
  const [chromium, firefox, folder] = await Promise.all([startChromium(), startFirefox(), shopFolder()]);
  engines = { chromium, firefox };
  server = await serveShop(folder);
}, 300_000);
afterAll(async () => {
  await Promise.all(Object.values(engines ?? {}).map((one) => one.close()));
  server?.close();
});

it.each([
  ['chromium', 'product', 'light', 1600],
  ['chromium', 'product', 'dark', 1600],
  ['chromium', 'product', 'forced', 1600],
  ['chromium', 'product', 'light', 360],
  ['chromium', 'index', 'light', 1600],
  ['firefox', 'product', 'light', 1600],
  ['firefox', 'product', 'dark', 360],
] as const)('%s: %s, %s, %i px wide', async (engine, page, scheme, width) => {
  const look: Look = { width, scheme, height: HEIGHT[width], scale: width > 1000 ? SCALE : 1 };
  const view = await engines[engine].open(look);
  await view.go(`${server.address}/${page}.html`);
  await upgraded(view);
  expect(await blankImages(view)).toEqual([]);
  expectPng(`shop/${page}-${scheme}-${width}-${engine}`, await view.picture(), SHARE);
  await view.close();
});

it('printed by Chromium: the first page of the product page', async () => {
  const view = await engines.chromium.open({ width: 1600 });
  await view.go(`${server.address}/product.html`);
  await upgraded(view);
  const pdf = await view.pdf();
  expect(pdf.length).toBeGreaterThan(0);
  expectPng('shop/product-print-chromium', pageAsPng(pdf, 1, 50), SHARE);
  await view.close();
});
