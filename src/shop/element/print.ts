/** Prints one figure and nothing else of its page. */

const PRINTING = 'solderleaf-printing';
const PRINTED = 'solderleaf-printed';

export function printAlone(host: Element): void {
  const page = host.ownerDocument.documentElement;
  page.classList.add(PRINTING);
  host.classList.add(PRINTED);
  window.addEventListener(
    'afterprint',
    () => {
      page.classList.remove(PRINTING);
      host.classList.remove(PRINTED);
    },
    { once: true },
  );
  window.print();
}
