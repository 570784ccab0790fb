/**
 * What every page and fragment for a shop is made with: elements as data, printed by a library that escapes, so that no title can end an
 * attribute or begin an element. Only drawings, which this program drew, go in as they are.
 */
import type { Comment, Element, Nodes, Root } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';

/** A drawing within a page, as its text. */
interface Raw {
  readonly type: 'raw';
  readonly value: string;
}
declare module 'hast' {
  interface RootContentMap {
    raw: Raw;
  }
  interface ElementContentMap {
    raw: Raw;
  }
}

/** A drawing of this program’s own; nothing else may be put in so. */
export const drawn = (svg: string): Raw => ({ type: 'raw', value: svg.trimEnd() });

/** First words of every file of a shop's folder that can have a comment: by them it is known to be an earlier version. */
export const SHOP = 'Solderleaf shop';

/** @param what the file is: `index`, or of a kit its id and which fragment */
export const signature = (what: string): Comment => ({ type: 'comment', value: ` ${SHOP} ${what} ` });

/** Text of a page or a fragment, ending in a newline. */
export const htmlText = (...nodes: readonly Nodes[]): string =>
  `${toHtml({ type: 'root', children: nodes } as Root, { allowDangerousHtml: true })}\n`;

/**
 * Data within a page, which no browser runs and which needs no leave of a content security policy. Nothing in it can end the element, as
 * it has no `<`.
 */
export const dataBlock = (type: string, value: unknown): Element =>
  h('script', { type }, JSON.stringify(value).replaceAll('<', '\\u003c'));
