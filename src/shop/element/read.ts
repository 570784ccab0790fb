/** A figure as its markup has it, read and checked before anything on the page is changed. */

/** One state: its card, and where each switch is in it. */
export interface ShownState {
  readonly number: string;
  readonly card: HTMLElement;
  readonly at: ReadonlyMap<string, string>;
  readonly words: string;
}

/** A lug's words and the joints that meet there. */
interface LugWords {
  readonly words: string;
  readonly joints: readonly string[];
}

export interface ReadFigure {
  readonly figure: HTMLElement;
  readonly bar: HTMLElement;
  readonly name: HTMLElement;
  readonly status: HTMLElement;
  readonly cards: HTMLElement;
  readonly views: readonly HTMLElement[];
  readonly states: readonly ShownState[];
  /** By switch, then by position. */
  readonly switches: ReadonlyMap<string, ReadonlyMap<string, HTMLInputElement>>;
  /** Words by number of the joint. */
  readonly joints: ReadonlyMap<string, string>;
  readonly lugs: ReadonlyMap<string, LugWords>;
}

export const wordsIn = (text: string | null | undefined): readonly string[] =>
  (text ?? '').split(/\s+/).filter((word) => word !== '');

/** All elements that a selector finds, as an array. */
export const every = <E extends Element = HTMLElement>(root: ParentNode, selector: string): readonly E[] => [
  ...root.querySelectorAll<E>(selector),
];

/** The figure among the children of an element; `undefined` where it is not there, or not whole. */
export function readFigure(host: ParentNode): ReadFigure | undefined {
  const figure = [...host.children].find((child) => child.matches('.slf'));
  if (!(figure instanceof HTMLElement)) return undefined;
  const part = (name: string): HTMLElement | null => figure.querySelector<HTMLElement>(`.slf-${name}`);
  const [bar, name, status, cards] = ['bar', 'name', 'status', 'cards'].map(part);
  const views = every(figure, '.slf-view').filter((view) => view.querySelector('svg[viewBox]'));
  if (!bar || !name || !status || !cards || views.length === 0) return undefined;
  const switches = switchesIn(bar);
  const states = every(cards, '[data-state]').map(stateOf);
  if (!switches || states.length === 0 || !states.every((state) => fits(state, switches))) return undefined;
  return {
    figure,
    bar,
    name,
    status,
    cards,
    views,
    states,
    switches,
    joints: new Map(
      every(figure, '[data-row]').map(({ dataset }) => [dataset.row ?? '', dataset.words ?? '']),
    ),
    lugs: new Map(
      every(figure, '[data-lug-words]').map(({ dataset, textContent }) => [
        dataset.lugWords ?? '',
        { words: textContent, joints: wordsIn(dataset.joints) },
      ]),
    ),
  };
}

function switchesIn(bar: HTMLElement): ReadFigure['switches'] | undefined {
  const found = every(bar, '[data-switch]').map(
    (group) =>
      [
        group.dataset.switch ?? '',
        new Map(every<HTMLInputElement>(group, 'input[type=radio]').map((radio) => [radio.value, radio])),
      ] as const,
  );
  return found.every(([, radios]) => radios.size > 0) ? new Map(found) : undefined;
}

const stateOf = (card: HTMLElement): ShownState => ({
  number: card.dataset.state ?? '',
  card,
  at: new Map(
    wordsIn(card.dataset.at).map((one) => {
      const [name = '', position = ''] = one.split('=');
      return [name, position];
    }),
  ),
  words: card.getAttribute('aria-label') ?? '',
});

/** Every switch is in a position that may be chosen. */
const fits = ({ number, at }: ShownState, switches: ReadFigure['switches']): boolean =>
  number !== '' && [...switches].every(([name, radios]) => radios.has(at.get(name) ?? ''));
