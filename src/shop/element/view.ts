/** Zooming and moving one drawing by its view box, so that it stays sharp and the page keeps its shape. */

interface View {
  readonly zoom: (factor: number) => void;
  readonly reset: () => void;
  /** Moves the drawing until an element of it is in view. */
  readonly reveal: (item: Element) => void;
}

const MOST = 8;
const STEP = 1.5;
/** Share of the view that an arrow key moves the drawing by. */
const MOVE = 0.2;
/** How far a pointer goes before it moves the drawing rather than points at something, CSS pixels. */
const STILL = 5;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface At {
  readonly clientX: number;
  readonly clientY: number;
}

const between = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

/** @param changed told whether the drawing is larger than at first, after each change */
export function watchView(view: HTMLElement, changed: (zoomed: boolean) => void): View {
  const svg = view.querySelector('svg');
  const [x = 0, y = 0, width = 0, height = 0] = (svg?.getAttribute('viewBox') ?? '')
    .split(/[\s,]+/)
    .map(Number);
  const whole: Box = { x, y, width, height };
  if (!svg || !(width > 0 && height > 0)) return { zoom: () => {}, reset: () => {}, reveal: () => {} };
  let box = whole;

  function show(next: Box): void {
    box = {
      ...next,
      x: between(whole.x, next.x, whole.x + whole.width - next.width),
      y: between(whole.y, next.y, whole.y + whole.height - next.height),
    };
    svg?.setAttribute('viewBox', [box.x, box.y, box.width, box.height].map((n) => n.toFixed(2)).join(' '));
    const zoomed = box.width < whole.width;
    view.toggleAttribute('data-zoomed', zoomed);
    changed(zoomed);
  }
  const reset = (): void => {
    show(whole);
    svg.setAttribute('viewBox', [x, y, width, height].join(' '));
  };

  /** Units of the drawing by CSS pixel, and where a point of the page is in the drawing. */
  const scale = (): number => box.width / (svg.getBoundingClientRect().width || 1);
  const pointOf = ({ clientX, clientY }: At) => {
    const { left, top } = svg.getBoundingClientRect();
    return { x: box.x + (clientX - left) * scale(), y: box.y + (clientY - top) * scale() };
  };

  /** About a point, which stays where it is. */
  function zoom(factor: number, about = { x: box.x + box.width / 2, y: box.y + box.height / 2 }): void {
    const to = between(whole.width / MOST, box.width / factor, whole.width);
    const by = to / box.width;
    if (to === whole.width) reset();
    else
      show({
        x: about.x - (about.x - box.x) * by,
        y: about.y - (about.y - box.y) * by,
        width: to,
        height: box.height * by,
      });
  }
  const move = (dx: number, dy: number): void => show({ ...box, x: box.x + dx, y: box.y + dy });

  view.addEventListener(
    'wheel',
    (event) => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      zoom(event.deltaY < 0 ? STEP : 1 / STEP, pointOf(event));
    },
    { passive: false },
  );
  view.addEventListener('keydown', (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const by = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowUp: [0, -1],
      ArrowDown: [0, 1],
    }[event.key];
    if (event.key === '+' || event.key === '=') zoom(STEP);
    else if (event.key === '-') zoom(1 / STEP);
    else if (event.key === '0') reset();
    // Where everything is in view, the arrows are the page's.
    else if (by && event.target === view && box.width < whole.width)
      move((by[0] ?? 0) * MOVE * box.width, (by[1] ?? 0) * MOVE * box.height);
    else return;
    event.preventDefault();
  });
  drag(view, {
    zoom: (factor, at) => zoom(factor, pointOf(at)),
    move: (dx, dy) => move(-dx * scale(), -dy * scale()),
  });

  return {
    zoom: (factor) => zoom(factor),
    reset,
    reveal: (item) => {
      if (box.width >= whole.width || !svg.contains(item)) return;
      const { left, top, width: w, height: h } = item.getBoundingClientRect();
      const middle = pointOf({ clientX: left + w / 2, clientY: top + h / 2 });
      show({ ...box, x: middle.x - box.width / 2, y: middle.y - box.height / 2 });
    },
  };
}

/** By one button of each: a step nearer or further. */
export const zoomStep = (nearer: boolean): number => (nearer ? STEP : 1 / STEP);

interface Moves {
  readonly zoom: (factor: number, at: At) => void;
  readonly move: (dx: number, dy: number) => void;
}

/** One pointer moves a drawing that is larger than its view, two make it larger or smaller. */
function drag(view: HTMLElement, { zoom, move }: Moves): void {
  const down = new Map<number, At>();
  let from: At | undefined;
  let moving = false;
  const apart = (): number => {
    const [a, b] = [...down.values()];
    return a && b ? Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY) : 0;
  };
  view.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    down.set(event.pointerId, event);
    from = event;
    moving = false;
  });
  view.addEventListener('pointermove', (event) => {
    const before = down.get(event.pointerId);
    if (!before) return;
    const wide = apart();
    down.set(event.pointerId, event);
    if (down.size === 2) {
      const [a, b] = [...down.values()];
      if (a && b && wide > 0 && apart() > 0)
        zoom(apart() / wide, { clientX: (a.clientX + b.clientX) / 2, clientY: (a.clientY + b.clientY) / 2 });
      return;
    }
    moving ||=
      from !== undefined && Math.hypot(event.clientX - from.clientX, event.clientY - from.clientY) > STILL;
    if (!moving || !view.hasAttribute('data-zoomed')) return;
    view.setPointerCapture(event.pointerId);
    move(event.clientX - before.clientX, event.clientY - before.clientY);
  });
  for (const type of ['pointerup', 'pointercancel'] as const)
    view.addEventListener(type, ({ pointerId }) => down.delete(pointerId));
  // What moved the drawing points at nothing.
  view.addEventListener(
    'click',
    (event) => {
      if (moving && view.hasAttribute('data-zoomed')) event.stopImmediatePropagation();
    },
    { capture: true },
  );
  // Two fingers are ours, one scrolls the page.
  view.addEventListener(
    'touchstart',
    (event) => {
      if (event.touches.length > 1) event.preventDefault();
    },
    { passive: false },
  );
}
