/** What the wire or lug joins that is pointed at or that has the focus; all of a drawing's are one stop of the Tab key. */
import { every, type ReadFigure } from './read.ts';

const NAMED = 'sl-named';
/** A component's leg is pointed at by the joint that it is part of. */
const LUG = '[data-lug]:not(.sl-leg-end)';
const ITEMS = `[data-joint], ${LUG}`;

/** Called with what the keyboard has moved to, so that it can be brought into view. */
type Reached = (item: Element) => void;

interface Names {
  readonly clear: () => void;
}

export function watchNames(read: ReadFigure, reached: Reached): Names {
  const { figure, name, views, joints, lugs } = read;
  // By what the visitor has at hand; a figure of an earlier version has one hint for all.
  const { hint: forAll = '', touchHint = forAll } = name.dataset;
  const hint = matchMedia('(any-hover: hover)').matches ? forAll : touchHint;
  name.textContent = hint;

  function show(item: Element | null | undefined): void {
    for (const one of every<Element>(figure, `.${NAMED}, .slf-named`))
      one.classList.remove(NAMED, 'slf-named');
    const joint =
      item?.getAttribute('data-joint') ?? item?.getAttribute('data-row') ?? item?.getAttribute('data-chip');
    const lug = lugs.get(item?.getAttribute('data-lug') ?? '');
    name.textContent = lug?.words ?? joints.get(joint ?? '') ?? hint;
    if (lug) item?.classList.add(NAMED);
    const marked = new Set(lug?.joints ?? (typeof joint === 'string' ? [joint] : []));
    for (const one of every<Element>(figure, '[data-joint]'))
      if (marked.has(one.getAttribute('data-joint') ?? '')) one.classList.add(NAMED);
    for (const one of every(figure, '[data-row]'))
      if (marked.has(one.dataset.row ?? '')) one.classList.add('slf-named');
  }
  /** What has the focus stays named when the pointer leaves. */
  const focused = (): Element | null => {
    const root = figure.getRootNode();
    const active = root instanceof ShadowRoot || root instanceof Document ? root.activeElement : null;
    return active?.matches(ITEMS) && figure.contains(active) ? active : null;
  };

  figure.addEventListener('pointerover', ({ target }) => {
    const found = target instanceof Element ? target.closest(`${ITEMS}, [data-chip], [data-row]`) : null;
    show(found ?? focused());
  });
  figure.addEventListener('pointerleave', () => show(focused()));
  figure.addEventListener('focusin', () => show(focused()));
  figure.addEventListener('focusout', () => show(null));
  for (const view of views) walk(view, read, reached);
  return { clear: () => show(null) };
}

/** Makes a drawing's wires, then its lugs, a row to walk along. */
function walk(view: HTMLElement, { joints, lugs }: ReadFigure, reached: Reached): void {
  const svg = view.querySelector('svg');
  if (!svg) return;
  // As a picture it would have no parts. It keeps its name; what else it is said to show is true of the first state alone.
  svg.setAttribute('role', 'group');
  svg.setAttribute('aria-labelledby', svg.getAttribute('aria-labelledby')?.split(' ')[0] ?? '');
  const number = (wire: Element): number => Number(wire.getAttribute('data-joint'));
  const wires = [...every<SVGElement>(svg, '[data-joint]')].sort((a, b) => number(a) - number(b));
  const items = [...wires, ...every<SVGElement>(svg, LUG)];
  items.forEach((item, i) => {
    const words =
      joints.get(item.getAttribute('data-joint') ?? '') ??
      lugs.get(item.getAttribute('data-lug') ?? '')?.words;
    item.setAttribute('role', 'img');
    item.setAttribute('aria-label', words ?? '');
    item.setAttribute('tabindex', i === 0 ? '0' : '-1');
  });
  const go = (to: SVGElement | undefined): void => {
    if (!to) return;
    for (const item of items) item.setAttribute('tabindex', item === to ? '0' : '-1');
    reached(to);
    // What is reached is in view already, or the page would jump.
    to.focus({ preventScroll: view.hasAttribute('data-zoomed') });
  };
  view.addEventListener('click', ({ target }) => {
    const found = target instanceof Element ? target.closest<SVGElement>(ITEMS) : null;
    if (found) go(found);
  });
  view.addEventListener('keydown', (event) => {
    const at = items.indexOf(event.target as SVGElement);
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (at < 0) {
      if (event.key !== 'Enter') return;
      go(items.find((item) => item.getAttribute('tabindex') === '0'));
    } else if (event.key === 'Escape') view.focus();
    else {
      const to = nextOf(event.key, at, items.length);
      if (to === undefined) return;
      go(items[to]);
    }
    event.preventDefault();
  });
}

function nextOf(key: string, at: number, count: number): number | undefined {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowDown':
      return (at + 1) % count;
    case 'ArrowLeft':
    case 'ArrowUp':
      return (at + count - 1) % count;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return undefined;
  }
}
