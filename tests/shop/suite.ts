/** What must hold in either browser: the shop folder of ten kits and the product page, as visitors of every kind meet them. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { textOfPdf } from '../tools/pdf-tools.ts';
import { type ShopServer, serveShop } from '../tools/shop-server.ts';
import {
  blankImages,
  blurred,
  type Focused,
  firstPaint,
  focused,
  idsTwice,
  leave,
  leftIn,
  loaded,
  lostReferences,
  shownIn,
  tooWide,
  upgraded,
  violations,
} from './asks.ts';
import { hostileFolder, kitData, pageOf, shopFolder, tenKits, WAYS } from './folder.ts';
import { hostileKits } from './hostile.ts';
import type { Engine, Look, View } from './view.ts';

const WIDTHS = [360, 1600] as const;
const MORE_SCHEMES = ['dark', 'forced'] as const;

export interface Open {
  readonly server: ShopServer;
  /** The folder that is served. */
  readonly folder: string;
  /**
   * Opens a page of the folder, and leaves it after; what the browser or the server then has against it is an error.
   *
   * @param late files that come only when the page has painted without them
   */
  visit<Result>(
    path: string,
    look: Look,
    act: (view: View) => Promise<Result>,
    late?: RegExp,
  ): Promise<Result>;
  /** The same of a page that is meant to be complained of: what is found, and then all complaints. */
  spoilt(
    path: string,
    look: Look,
    act: (view: View) => Promise<readonly string[]>,
  ): Promise<readonly string[]>;
}

/** Starts a browser before a file's tests, and ends it after them. */
export function started(start: () => Promise<Engine>): () => Engine {
  let engine: Engine | undefined;
  beforeAll(async () => {
    engine = await start();
  });
  afterAll(() => engine?.close());
  return () => {
    if (!engine) throw new Error('a browser is there only while tests run');
    return engine;
  };
}

/** Starts a server before a file's tests. */
export function opened(
  engine: () => Engine,
  folder: () => Promise<string>,
  pages: (folder: string) => ReadonlyMap<string, string>,
  strict = true,
): Open {
  let server: ShopServer;
  let served: string;
  beforeAll(async () => {
    served = await folder();
    server = await serveShop(served, pages(served), { strict });
  }, 300_000);
  afterAll(() => server?.close());
  async function goLate(view: View, address: string, late: RegExp): Promise<void> {
    const letGo = server.hold(late);
    try {
      await view.go(address, 'commit');
      expect(await firstPaint(view)).toBeLessThan(10_000);
      expect(server.asked).toContainEqual(expect.stringMatching(late));
    } finally {
      letGo();
    }
    await loaded(view);
  }
  async function looked<Result>(
    path: string,
    look: Look,
    act: (view: View) => Promise<Result>,
    late?: RegExp,
  ) {
    server.complaints.length = 0;
    server.asked.length = 0;
    const view = await engine().open(look);
    try {
      await (late ? goLate(view, `${server.address}${path}`, late) : view.go(`${server.address}${path}`));
      const result = await act(view);
      return { result, complaints: [...view.heard, ...server.complaints] };
    } finally {
      await view.close();
    }
  }
  return {
    get server() {
      return server;
    },
    get folder() {
      return served;
    },
    visit: async (path, look, act, late) => {
      const { result, complaints } = await looked(path, look, act, late);
      expect(complaints, `${path} ${JSON.stringify(look)}`).toEqual([]);
      return result;
    },
    spoilt: async (path, look, act) => {
      const { result, complaints } = await looked(path, look, act);
      return [...result, ...complaints];
    },
  };
}

/** A page with everything that must not be. */
const SPOILT = `<!doctype html>
<html lang="en"><head><title>Spoilt</title><link rel="stylesheet" href="/theme.css"></head>
<body><main><h1 id="twice">Kits</h1><p id="twice" style="color:red">a</p><img alt="" src="missing.png">
<p class="sl-fill-pale"><font color="#dddddd">pale</font></p><script>console.log(1)</script></main></body></html>`;

/** Pages that show all ten kits in one way, and one that shows two kits in every way. */
export const pagesOf = (folder: string): ReadonlyMap<string, string> =>
  new Map([
    ...WAYS.map((way) => [`/ten-${way}.html`, pageOf(folder, tenKits, [way])] as const),
    ['/spoilt.html', SPOILT],
    ['/every-way.html', pageOf(folder, tenKits.slice(0, 2), WAYS)],
  ]);

/** The tests for both browsers. */
export function suite(engine: () => Engine): void {
  const shop = opened(engine, shopFolder, pagesOf);

  it.each(WAYS)('ten kits, each as %s: all are seen, no message, no breach, no id twice', async (way) => {
    await shop.visit(`/ten-${way}.html`, { width: 1600 }, async (view) => {
      const { all, done } = await upgraded(view);
      expect(done).toBe(all);
      expect(all).toBe(way === 'figure' ? tenKits.length : 0);
      expect(await blankImages(view)).toEqual([]);
      expect(await idsTwice(view)).toEqual([]);
      expect(await lostReferences(view)).toEqual([]);
    });
  });

  it('two kits, each in every way on one page: no id twice', async () => {
    await shop.visit('/every-way.html', { width: 1600 }, async (view) => {
      await upgraded(view);
      expect(await idsTwice(view)).toEqual([]);
      expect(await lostReferences(view)).toEqual([]);
    });
  });

  describe.each(['/product.html', '/index.html'])('%s', (path) => {
    it.each(WIDTHS)(
      '%i px wide, light, dark and in forced colours: fits its window, axe-core finds nothing',
      async (width) => {
        const check = async (view: View, scheme: string): Promise<void> => {
          expect(await blankImages(view), scheme).toEqual([]);
          expect(await tooWide(view), scheme).toBe(0);
          expect(await violations(view), scheme).toEqual([]);
        };
        const anew = await shop.visit(path, { width }, async (view) => {
          await upgraded(view);
          await check(view, 'light');
          if (!view.rescheme) return MORE_SCHEMES;
          for (const scheme of MORE_SCHEMES) {
            await view.rescheme(scheme);
            await check(view, scheme);
          }
          return [];
        });
        for (const scheme of anew)
          await shop.visit(path, { width, scheme }, async (view) => {
            await upgraded(view);
            await check(view, scheme);
          });
      },
    );
  });

  it('the product page by keyboard alone: every control once and in order, seen to have the focus', async () => {
    await shop.visit('/product.html', { width: 1600 }, async (view) => {
      await upgraded(view);
      const stops = await tabbedThrough(view);
      expect(stops.filter(({ seen }) => !seen)).toEqual([]);
      // One stop for all positions of a switch, as a radio group has.
      expect(stops.filter(({ element }) => element === 'input:radio')).toHaveLength(1);
      const at = (words: string): number => stops.findIndex((one) => one.words.includes(words));
      expect(at('Add to basket')).toBeGreaterThan(at('Skip to the kit'));
      expect(stops.findIndex(({ element }) => element === 'input:radio')).toBeGreaterThan(
        at('Add to basket'),
      );
    });
  });

  it('the switch of the figure by keyboard alone: each arrow shows what the kit’s data say of that state', async () => {
    const { states } = kitData(shop.folder, 'kestrel-hss');
    await shop.visit('/product.html', { width: 1600 }, async (view) => {
      await upgraded(view);
      while ((await focused(view))?.element !== 'input:radio') await view.press('Tab');
      for (const { words, sounds } of [...states.slice(1), ...states.slice(0, 1)]) {
        await view.press('ArrowRight');
        const shown = await shownIn(view, 'solderleaf-figure-1', '.slf-card');
        expect(shown).toHaveLength(1);
        expect(shown[0]).toContain(words);
        expect(shown[0]).toContain(sounds);
      }
    });
  });

  it('would notice script and style in the page, a file that is missing, an id used twice, text too pale', async () => {
    const complaints = await shop.spoilt('/spoilt.html', { width: 1600 }, async (view) => [
      ...(await idsTwice(view)),
      ...(await violations(view)),
      ...(await blankImages(view)),
    ]);
    const said = complaints.join('\n');
    for (const one of [
      /inline script/,
      /inline style/,
      /not found: \/missing.png/,
      /^twice$/m,
      /color-contrast/,
      /missing\.png$/m,
      /^breach/m,
    ])
      expect(said).toMatch(one);
  });

  it('paints before the script has come, and is upgraded then', async () => {
    await shop.visit(
      '/product.html',
      { width: 360 },
      async (view) => expect((await upgraded(view)).done).toBe(1),
      /\.js$/,
    );
  });

  it('nothing of a visit is left for the next, which fetches every file again', async () => {
    const look: Look = { width: 360 };
    // All images, also those that wait to come into view: which of them do is a matter of time.
    const found = async (view: View) => {
      await upgraded(view);
      expect(await blankImages(view)).toEqual([]);
      return { left: await leftIn(view), asked: [...new Set(shop.server.asked)].sort() };
    };
    const first = await shop.visit('/product.html', look, async (view) => {
      const fresh = await found(view);
      await leave(view);
      await view.rescheme?.('dark');
      expect(await leftIn(view)).not.toEqual(fresh.left);
      return fresh;
    });
    expect(first.asked.length).toBeGreaterThan(3);
    await shop.visit('/product.html', look, async (view) => expect(await found(view)).toEqual(first));
  });

  it('the product page printed: the kit with every position, and nothing to click', async () => {
    await shop.visit('/product.html', { width: 1600 }, async (view) => {
      await upgraded(view);
      const text = textOfPdf(await view.pdf());
      expect(text).toContain('Flip the switch');
      for (const position of [1, 2, 3, 4, 5]) expect(text).toMatch(new RegExp(`position ${position}\\b`));
      expect(text).not.toContain('Add to basket');
    });
  });
}

/** Pages with the hostile kits in each way. */
const hostilePages = (folder: string): ReadonlyMap<string, string> =>
  new Map(WAYS.map((way) => [`/hostile-${way}.html`, pageOf(folder, [...hostileKits.keys()], [way])]));

/** Hostile kits run nothing, whichever way they stand on a page. */
export function hostileSuite(engine: () => Engine): void {
  describe.each([true, false])('hostile kits, under the strict policy: %s', (strict) => {
    const shop = opened(engine, hostileFolder, hostilePages, strict);
    it.each([...WAYS.map((way) => `/hostile-${way}.html`), '/index.html'])(
      '%s: nothing is executed, asked for or complained of',
      async (path) => {
        await shop.visit(path, { width: 1600 }, async (view) => {
          const { all, done } = await upgraded(view);
          expect(done).toBe(all);
          expect(await blankImages(view)).toEqual([]);
          expect(await view.evaluate('globalThis.pwned === undefined')).toBe(true);
        });
      },
    );
  });
}

/** Where the Tab key leads, from the head of the page until it leaves it. */
async function tabbedThrough(view: View): Promise<readonly Focused[]> {
  const stops: Focused[] = [];
  for (let n = 0; n < 200; n++) {
    await view.press('Tab');
    const at = await focused(view);
    if (!at) break;
    stops.push(at.seen ? at : { ...at, seen: await looksOtherwise(view) });
  }
  return stops;
}

/** Whether the window shows in another way than by an outline which element has the keyboard. */
async function looksOtherwise(view: View): Promise<boolean> {
  const before = await view.picture();
  await blurred(view, true);
  const without = await view.picture();
  await blurred(view, false);
  return !Buffer.from(before).equals(Buffer.from(without));
}
