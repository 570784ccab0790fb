/** What every message is made of: its severity, and the user's own words quoted within bounds. */

/** An error stops the drawing of that kit; a warning is of what is likely a mistake; a note informs. */
export type Severity = 'error' | 'warning' | 'note';

export interface Message {
  readonly severity: Severity;
  readonly message: string;
  readonly remedy: string;
}

/** All kinds of parts and all lugs of any switch fit; more names help nobody, and longer text than this was pasted by mistake. */
const NAMES = 32;
const LETTERS = 60;

/** The user's own words in quotes: on one line, without control characters, cut when very long. */
export const quote = (text: string): string => {
  const plain = text.slice(0, LETTERS + 1).replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, ' ');
  return `“${plain.length > LETTERS ? `${plain.slice(0, LETTERS)}…` : plain}”`;
};
export const clip = (text: string): string => quote(text).slice(1, -1);
export const list = (names: readonly string[]): string =>
  names.length === 0
    ? 'none'
    : names.slice(0, NAMES).map(clip).join(', ') +
      (names.length > NAMES ? ` and ${names.length - NAMES} more` : '');
/** What is expected, without its example: the message stays short, the remedy shows the whole. */
export const headOf = (expected: string): string => expected.replace(/(?:,? such as |: | \(|, each ).*$/, '');
export const meant = (nearest: string | undefined, otherwise: string): string =>
  nearest === undefined ? otherwise : `Did you mean ${clip(nearest)}? ${otherwise}`;

/** `2, 3 and 4`. */
export const andList = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
