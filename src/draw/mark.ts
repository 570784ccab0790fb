/**
 * The revision mark, worked out from what a customer sees: prints of a kit that say different things bear different marks, and prints
 * that say the same bear the same mark, whoever draws them, and whenever.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';

/** Digits and capitals; of those that are mistaken for one another on paper (0 O Q, 1 I L, 2 Z, 5 S, 6 G, 8 B, U V) at most one. */
const ALPHABET = '23456789ACDEFHJKMNPQRTVWXY';
/**
 * Characters of a mark. Each kit's mark is one of 26⁸, or 2.1 × 10¹¹. That any two of n kits have the same is as likely as n² / 2 to that number:
 * of 10,000 kits 1 in 4,200. `which` then names both.
 */
const LENGTH = 8;
const PATTERN = new RegExp(`^[${ALPHABET}]{4}-[${ALPHABET}]{4}$`);
const WORDS = new RegExp(`^Rev ([${ALPHABET}]{4}-[${ALPHABET}]{4})(?:, (\\d{4}-\\d{2}-\\d{2}))?$`);

/** What is printed: the mark, and a date where one is given (ISO 8601, `2026-11-30`). */
export interface Revision {
  readonly mark: string;
  readonly date?: string;
}

/** The mark of some texts, such as `7K3Q-9DXM`. */
export function markOfTexts(texts: readonly string[]): string {
  const bytes = sha256(utf8ToBytes(JSON.stringify(texts)));
  let rest = bytes.slice(0, 8).reduce((sum, byte) => sum * 256n + BigInt(byte), 0n);
  let mark = '';
  for (let i = 0; i < LENGTH; i++) {
    mark += ALPHABET[Number(rest % BigInt(ALPHABET.length))];
    rest /= BigInt(ALPHABET.length);
  }
  return `${mark.slice(0, LENGTH / 2)}-${mark.slice(LENGTH / 2)}`;
}

export const isMark = (text: string): boolean => PATTERN.test(text);

/** `Rev 7K3Q-9DXM, 2026-11-30`. */
export const revisionWords = ({ mark, date }: Revision): string =>
  `Rev ${mark}${date === undefined ? '' : `, ${date}`}`;

/** The same read back; `undefined` for other words. */
export function parseRevision(words: string): Revision | undefined {
  const [, mark, date] = WORDS.exec(words) ?? [];
  return mark === undefined ? undefined : { mark, ...(date === undefined ? {} : { date }) };
}

/** What a character that no mark has was most likely read for. */
const MISREAD: Readonly<Record<string, string>> = {
  0: 'Q',
  O: 'Q',
  Z: '2',
  S: '5',
  G: '6',
  B: '8',
  U: 'V',
  1: '7',
};

/** A mark as somebody typed it from paper, put right: small letters, other spacing, and characters that look alike. */
export function tidyMark(written: string): string {
  const letters = written
    .toUpperCase()
    .replace(/^\s*REV\b/, '')
    .replace(/[^A-Z\d]/g, '')
    .replace(/./g, (one) => MISREAD[one] ?? one);
  return letters.length === LENGTH ? `${letters.slice(0, LENGTH / 2)}-${letters.slice(LENGTH / 2)}` : letters;
}
