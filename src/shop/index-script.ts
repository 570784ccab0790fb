/**
 * What the page of all kits does in a browser: shows the kits that are searched for, and says how many. Built into a file of its own; all
 * words are in the page.
 */

const KITS = 'li.kit';

/** Without capitals and accents, so that nobody has to type them. */
const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

const split = (text: string | undefined): readonly string[] => (text ?? '').split(/\s+/).filter(Boolean);

function start(form: HTMLFormElement, count: HTMLElement): void {
  const kits = [...document.querySelectorAll<HTMLElement>(KITS)].map((element) => ({
    element,
    words: plain(element.dataset.words ?? ''),
    switches: split(element.dataset.switch),
    parts: split(element.dataset.parts),
  }));
  const show = (): void => {
    const asked = new FormData(form);
    const chosen = (name: string): string => String(asked.get(name) ?? '');
    const words = split(plain(chosen('words')));
    const [pickups, wanted] = [chosen('pickups'), chosen('switch')];
    const parts = asked.getAll('parts').map(String);
    let shown = 0;
    for (const { element, words: own, switches, parts: has } of kits) {
      const fits =
        words.every((word) => own.includes(word)) &&
        (pickups === '' || pickups === element.dataset.pickups) &&
        (wanted === '' || switches.includes(wanted)) &&
        parts.every((part) => has.includes(part));
      element.hidden = !fits;
      if (fits) shown++;
    }
    const { none = '', one = '', other = '' } = count.dataset;
    const said = shown === 0 ? none : shown === 1 ? one : other.replace('#', String(shown));
    // Said again only when it is another number, so that no reader is told twice.
    if (count.textContent !== said) count.textContent = said;
  };
  form.addEventListener('input', show);
  form.addEventListener('submit', (event) => event.preventDefault());
  // The fields are empty only after the event.
  form.addEventListener('reset', () => setTimeout(show));
  // A page that is come back to may have its fields filled in.
  addEventListener('pageshow', show);
  show();
}

const form = document.querySelector<HTMLFormElement>('form.filter');
const count = document.querySelector<HTMLElement>('.count');
if (form && count) start(form, count);
