/** What the tests ask a page: scripts that are run in it, also inside of elements' shadow trees. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { View } from './view.ts';

/** A page in which scripts can be run. */
type Asked = Pick<View, 'evaluate'>;

/** Every element of the page, those of open shadow trees behind their hosts. */
const EVERY = `const every = (root) => [...root.querySelectorAll('*')].flatMap((one) => [one, ...(one.shadowRoot ? every(one.shadowRoot) : [])]);`;

const asked = <Result>(view: Asked, body: string): Promise<Result> =>
  view.evaluate<Result>(`(async () => { ${EVERY} ${body} })()`);

/** Ids that occur more than once in one tree, where a reference would find the wrong one. */
export const idsTwice = (view: View): Promise<readonly string[]> =>
  asked(
    view,
    `const twice = (root) => {
      const seen = new Set();
      const ids = [...root.querySelectorAll('[id]')].map((one) => one.id);
      return ids.filter((id) => seen.has(id) || !seen.add(id));
    };
    return [document, ...every(document).map((one) => one.shadowRoot).filter(Boolean)].flatMap(twice);`,
  );

/** References by id that lead nowhere in their tree. */
export const lostReferences = (view: View): Promise<readonly string[]> =>
  asked(
    view,
    `return every(document).flatMap((one) => ['for', 'aria-labelledby', 'aria-describedby', 'aria-controls', 'aria-details', 'list', 'headers']
      .flatMap((name) => (one.getAttribute(name) ?? '').split(/\\s+/).filter(Boolean).map((id) => [name, id]))
      .filter(([, id]) => !one.getRootNode().querySelector('[id="' + CSS.escape(id) + '"]'))
      .map(([name, id]) => one.localName + ' ' + name + '=' + id));`,
  );

/** How far the page is wider than its window, CSS pixels. */
export const tooWide = (view: View): Promise<number> =>
  asked(view, 'return Math.max(0, document.scrollingElement.scrollWidth - innerWidth);');

/** Addresses of images that show nothing. Images that wait to come into view are fetched first. */
export const blankImages = (view: View): Promise<readonly string[]> =>
  asked(
    view,
    `const images = every(document).filter((one) => one.localName === 'img');
    for (const one of images) one.loading = 'eager';
    await Promise.all(images.map((one) => one.decode().catch(() => undefined)));
    return images.filter((one) => one.naturalWidth === 0).map((one) => one.src);`,
  );

/** How many of the elements that a script upgrades are on the page, and how many of them it has upgraded, once it has had its time. */
export const upgraded = (view: View): Promise<{ readonly all: number; readonly done: number }> =>
  asked(
    view,
    `const ours = () => every(document).filter((one) => one.localName.startsWith('solderleaf-'));
    const done = () => ours().filter((one) => one.shadowRoot).length;
    for (let waited = 0; done() < ours().length && waited < 5000; waited += 50)
      await new Promise((then) => setTimeout(then, 50));
    return { all: ours().length, done: done() };`,
  );

/** Time from navigation to the first paint of any content, ms. */
export const firstPaint = (view: Asked): Promise<number> =>
  asked(
    view,
    `for (let waited = 0; waited < 10000; waited += 50) {
      const [paint] = performance.getEntriesByName('first-contentful-paint');
      if (paint) return paint.startTime;
      await new Promise((then) => setTimeout(then, 50));
    }
    return Infinity;`,
  );

/** Waits until the page has all that it loads. */
export const loaded = (view: Asked): Promise<void> =>
  asked(
    view,
    `if (document.readyState !== 'complete') await new Promise((then) => addEventListener('load', then, { once: true }));`,
  );

/** Leaves what a visit can leave: things kept, a window's name, a place in the page, the focus, another choice in the figure. */
export const leave = (view: View): Promise<void> =>
  asked(
    view,
    `localStorage.setItem('left', '1');
    sessionStorage.setItem('left', '1');
    document.cookie = 'left=1';
    window.name = 'left';
    scrollTo({ top: 500, behavior: 'instant' });
    const radios = every(document).filter((one) => one.type === 'radio');
    radios.at(-1).click();
    radios.at(-1).focus({ preventScroll: true });`,
  );

/** What the page finds of that. */
export const leftIn = (view: View): Promise<unknown> =>
  asked(
    view,
    `let active = document.activeElement;
    while (active.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    return [localStorage.length, sessionStorage.length, document.cookie, window.name, scrollY, active.localName,
      every(document).filter((one) => one.checked).map((one) => one.value), matchMedia('(prefers-color-scheme: dark)').matches,
      matchMedia('(forced-colors: active)').matches, innerWidth, history.state];`,
  );

/** All layout shifts since the page began, as Chromium counts them, and what moved. */
export const layoutShifts = (view: View): Promise<readonly string[]> =>
  asked(
    view,
    `return new Promise((then) => {
      const shifts = [];
      new PerformanceObserver((list) => {
        for (const one of list.getEntries())
          shifts.push(one.value.toFixed(4) + ' ' + one.sources.map(({ node, previousRect: a, currentRect: b }) =>
            (node?.nodeType === 1 ? node.localName + '.' + (node.getAttribute('class') ?? '') : node?.nodeName) + ' ' + a.y + '>' + b.y).join(', '));
      }).observe({ type: 'layout-shift', buffered: true });
      setTimeout(() => then(shifts), 500);
    });`,
  );

/** Words of the elements in a custom element's shadow that a selector finds and that are seen. */
export const shownIn = (view: View, element: string, selector: string): Promise<readonly string[]> =>
  asked(
    view,
    `return [...document.querySelectorAll(${JSON.stringify(element)})]
      .flatMap((one) => [...(one.shadowRoot ?? one).querySelectorAll(${JSON.stringify(selector)})])
      .filter((one) => one.checkVisibility({ visibilityProperty: true }))
      .map((one) => one.textContent);`,
  );

/** The element that has the keyboard, through shadow trees: its name, its accessible words, and whether one sees that it has it. */
export interface Focused {
  readonly element: string;
  readonly words: string;
  readonly seen: boolean;
}
export const focused = (view: View): Promise<Focused | null> =>
  asked(
    view,
    `let one = document.activeElement;
    while (one?.shadowRoot?.activeElement) one = one.shadowRoot.activeElement;
    if (!one || one === document.body) return null;
    const words = one.getAttribute('aria-label')
      ?? (one.getAttribute('aria-labelledby') ?? '').split(/\\s+/).map((id) => one.getRootNode().getElementById?.(id)?.textContent ?? '').join(' ').trim();
    const label = one.labels?.[0]?.textContent ?? '';
    const style = getComputedStyle(one);
    const near = [one, one.nextElementSibling, one.parentElement, one.labels?.[0]].filter(Boolean).map((it) => getComputedStyle(it));
    return {
      element: one.localName + (one.type ? ':' + one.type : ''),
      words: (words || label || one.textContent || one.value || '').replace(/\\s+/g, ' ').trim(),
      seen: near.some((it) => it.outlineStyle !== 'none' && parseFloat(it.outlineWidth) > 0),
    };`,
  );

/** Takes the keyboard from the element that has it, or gives it back. */
export const blurred = (view: View, away: boolean): Promise<void> =>
  asked(
    view,
    `if (!${away}) return globalThis.hadFocus.focus({ preventScroll: true });
    let one = document.activeElement;
    while (one?.shadowRoot?.activeElement) one = one.shadowRoot.activeElement;
    globalThis.hadFocus = one;
    one.blur();`,
  );

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/**
 * What axe-core finds against the page, one line each. It is run as a debugger runs a script, so that the policy stays as it is;
 * `preload` is off, as it would fetch stylesheets, which the policy forbids and the rules that count here do not need.
 */
export async function violations(view: View): Promise<readonly string[]> {
  if (!(await view.evaluate<boolean>(`'axe' in globalThis`))) await view.evaluate(`${axe};undefined`);
  return asked(
    view,
    `const { violations } = await axe.run(document, { preload: false, resultTypes: ['violations'] });
    return violations.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => id + ': ' + target.flat().join(' ') + ' ' + failureSummary.replace(/\\s+/g, ' ')));`,
  );
}
