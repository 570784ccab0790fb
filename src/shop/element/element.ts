/**
 * The element about a figure. It takes the figure into a shadow root with the stylesheet that the page names, so that the page's rules do
 * not reach it and its own do not reach the page. Until that stylesheet is there, and whenever a figure is not whole, what the page shows is
 * left as it is.
 */
import { type ReadFigure, readFigure } from './read.ts';
import { upgrade } from './upgrade.ts';

class SolderleafFigure extends HTMLElement {
  #waiting: MutationObserver | undefined;
  #done = false;

  connectedCallback(): void {
    if (this.#done) return;
    // A copy of an element has its shadow, and nothing in it works yet.
    const copied = this.shadowRoot;
    if (copied) this.#begin(copied, readFigure(copied));
    else if (document.readyState === 'loading')
      document.addEventListener('DOMContentLoaded', () => this.#look(), { once: true });
    else this.#look();
  }

  disconnectedCallback(): void {
    this.#waiting?.disconnect();
    this.#waiting = undefined;
  }

  /** Takes the figure when it is whole; a script of the page may write it later than the element. */
  #look(): void {
    if (this.#done || this.shadowRoot || !this.isConnected) return;
    const read = readFigure(this);
    if (read) {
      this.#waiting?.disconnect();
      this.#take(read);
    } else if (!this.#waiting) {
      this.#waiting = new MutationObserver(() => this.#look());
      this.#waiting.observe(this, { childList: true, subtree: true });
    }
  }

  #take({ figure }: ReadFigure): void {
    const root = this.attachShadow({ mode: 'open', clonable: true });
    const styles = document.createElement('link');
    styles.rel = 'stylesheet';
    styles.href = this.dataset.styles ?? '';
    // The figure shows through the slot for as long as the stylesheet takes.
    const slot = document.createElement('slot');
    root.append(styles, slot);
    styles.addEventListener('load', () => {
      if (this.#done || !this.contains(figure)) return;
      slot.replaceWith(figure);
      this.#begin(root, readFigure(root));
    });
  }

  #begin(root: ShadowRoot, read: ReadFigure | undefined): void {
    if (!read) return;
    this.#done = true;
    upgrade(root.host, read);
  }
}

/** Does nothing where an element of this form is there already. */
export function define(tag: string): void {
  if (!customElements.get(tag)) customElements.define(tag, SolderleafFigure);
}
