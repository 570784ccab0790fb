/** The messages of one language with their arguments put in: ICU MessageFormat, by intl-messageformat. */
import { IntlMessageFormat } from 'intl-messageformat';
import { de } from './de.ts';
import { en, type MessageKey, type Messages } from './en.ts';
import { es } from './es.ts';
import { fr } from './fr.ts';
import type { Language } from './language.ts';

export const messages: Readonly<Record<Language, Messages>> = { en, de, fr, es };

export type MessageValues = Readonly<Record<string, string | number>>;
/** Words a message: `say('kind.pot')`. */
export type Say = (key: MessageKey, values?: MessageValues) => string;

const speakers = new Map<Language, Say>();

/**
 * Speaks one language.
 *
 * @throws where a message has an argument that is not given: a mistake in the program, never in what a person wrote
 */
export function sayIn(language: Language): Say {
  const known = speakers.get(language);
  if (known) return known;
  const texts = messages[language];
  const parsed = new Map<MessageKey, IntlMessageFormat>();
  const parse = (key: MessageKey): IntlMessageFormat => {
    const message = new IntlMessageFormat(texts[key], language, undefined, { ignoreTag: true });
    parsed.set(key, message);
    return message;
  };
  const format: Say = (key, values) => String((parsed.get(key) ?? parse(key)).format(values));
  // What has no arguments is measured thousands of times when a sheet is fitted to a page.
  const fixed = new Map<MessageKey, string>();
  const say: Say = (key, values) => {
    if (values) return format(key, values);
    const text = fixed.get(key) ?? format(key);
    fixed.set(key, text);
    return text;
  };
  speakers.set(language, say);
  return say;
}

/** The key of a name in a table of messages, such as a kind of part; `undefined` where the table has none of it. */
export function keyOf(prefix: string, name: string): MessageKey | undefined {
  const key = `${prefix}.${name}`;
  return key in en ? (key as MessageKey) : undefined;
}

/** A number as the language writes it: `2.42`, `2,42`; without a separator between thousands, as on parts and meters. */
export function numberIn(
  language: Language,
  value: number,
  digits: { readonly least?: number; readonly most: number },
): string {
  return new Intl.NumberFormat(language, {
    useGrouping: false,
    minimumFractionDigits: digits.least ?? 0,
    maximumFractionDigits: digits.most,
  }).format(value);
}
