/** Makes a figure's controls work. It sets nothing but what the markup has a place for, and says nothing but words of the markup. */
import { watchNames } from './names.ts';
import { printAlone } from './print.ts';
import type { ReadFigure } from './read.ts';
import { watchStates } from './states.ts';
import { watchView, zoomStep } from './view.ts';

export function upgrade(host: Element, read: ReadFigure): void {
  const { figure, bar, name, status, views } = read;
  const button = (act: string): Element | null => bar.querySelector(`[data-act="${act}"]`);
  const smaller = button('out');
  // All drawings are zoomed alike: which of them is seen depends on the room.
  const zoomed = (is: boolean): void => smaller?.setAttribute('aria-disabled', String(!is));
  const drawings = views.map((view) => watchView(view, zoomed));
  const names = watchNames(read, (item) => {
    for (const drawing of drawings) drawing.reveal(item);
  });
  const states = watchStates(read, button('path'));
  zoomed(false);
  const acts: Readonly<Record<string, () => void>> = {
    path: states.turnPath,
    in: () => {
      for (const drawing of drawings) drawing.zoom(zoomStep(true));
    },
    out: () => {
      for (const drawing of drawings) drawing.zoom(zoomStep(false));
    },
    reset: () => {
      for (const drawing of drawings) drawing.reset();
      states.reset();
      names.clear();
    },
    print: () => printAlone(host),
  };
  bar.addEventListener('click', ({ target }) => {
    const pressed = target instanceof Element ? target.closest<HTMLElement>('[data-act]') : null;
    acts[pressed?.dataset.act ?? '']?.();
  });
  for (const one of [bar, name, status]) one.hidden = false;
  figure.toggleAttribute('data-ready', true);
}
