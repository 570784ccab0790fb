/** The state that the switches are in: its card, its contacts and what it makes live. */
import { every, type ReadFigure, type ShownState, wordsIn } from './read.ts';

interface States {
  /** Back to the first state, with its signal path shown. */
  readonly reset: () => void;
  /** Shows the signal path alone, or everything alike. */
  readonly turnPath: () => void;
}

/** About what switches that stay in view take up of it, CSS pixels. */
const HELD = 90;
/** More than a page is high, CSS pixels. */
const FAR = 1e6;

/** @param button says by `aria-pressed` whether the signal path is shown */
export function watchStates(read: ReadFigure, button: Element | null): States {
  const { figure, states, switches, status, cards, views, bar } = read;
  let path = true;
  let shown: ShownState | undefined;

  /** As the switches are; where no state is so, one that agrees with the switch that was turned. */
  function chosen(turned?: string): ShownState | undefined {
    const asked = new Map(
      [...switches].map(([name, radios]) => [
        name,
        [...radios.values()].find(({ checked }) => checked)?.value ?? '',
      ]),
    );
    const agrees = ({ at }: ShownState, names: Iterable<string>): boolean =>
      [...names].every((name) => at.get(name) === asked.get(name));
    return (
      states.find((state) => agrees(state, switches.keys())) ??
      states.find((state) => turned !== undefined && agrees(state, [turned])) ??
      states[0]
    );
  }

  function show(state: ShownState | undefined): void {
    if (!state) return;
    for (const { card } of states) card.toggleAttribute('data-off', card !== state.card);
    for (const line of every(bar, '[data-now]'))
      line.toggleAttribute('data-off', line.dataset.now !== state.number);
    for (const [name, radios] of switches) {
      const radio = radios.get(state.at.get(name) ?? '');
      if (radio) radio.checked = true;
    }
    for (const view of views) showIn(view, state.number);
    // What is there at first is read with the page; only what changes is told.
    if (shown && shown !== state) {
      const sounds = state.card.querySelector('.slf-sounds')?.textContent ?? '';
      status.textContent = `${state.words}: ${sounds}`;
    }
    shown = state;
  }

  function showIn(view: HTMLElement, number: string): void {
    const live = (element: Element): boolean => wordsIn(element.getAttribute('data-live')).includes(number);
    const joints = new Set<string>();
    for (const element of every<Element>(view, '[data-joint], [data-live]')) {
      element.classList.toggle('sl-off', path && !live(element));
      if (live(element)) joints.add(element.getAttribute('data-joint') ?? '');
    }
    for (const chip of every<Element>(view, '[data-chip]'))
      chip.classList.toggle('sl-off', path && !joints.has(chip.getAttribute('data-chip') ?? ''));
    for (const element of every<Element>(view, '[data-shown]'))
      if (wordsIn(element.getAttribute('data-shown')).includes(number)) element.removeAttribute('display');
      else element.setAttribute('display', 'none');
  }

  bar.addEventListener('change', ({ target }) => {
    const group = target instanceof Element ? target.closest<HTMLElement>('[data-switch]') : null;
    if (group) show(chosen(group.dataset.switch));
  });
  const setPath = (on: boolean): void => {
    path = on;
    button?.setAttribute('aria-pressed', String(on));
  };
  // What the card says is said in short below the switches while it is scrolled past. What is still to come counts as in view, or a jump
  // from above it to below would not be told.
  new IntersectionObserver(
    (entries) => {
      const now = entries.at(-1);
      figure.toggleAttribute('data-past', now?.isIntersecting === false && now.boundingClientRect.top < 0);
    },
    { rootMargin: `-${HELD}px 0px ${FAR}px` },
  ).observe(cards);
  // Cards lie upon one another now, so there is nothing to scroll.
  cards.removeAttribute('tabindex');
  show(states[0]);
  return {
    reset: () => {
      setPath(true);
      show(states[0]);
    },
    turnPath: () => {
      setPath(!path);
      show(shown);
    },
  };
}
