/** Words that a part's own file or the solver gives, as a language says them; what a person has named stays as it is written. */
import { en } from './en.ts';
import { DEFAULT_LANGUAGE, type Language } from './language.ts';
import { keyOf, sayIn } from './say.ts';

/** The name of a lug as it stands on its tag: `tip`, `Spitze`. */
export function lugWords(language: Language, lug: string): string {
  const key = keyOf('lug', lug);
  return key === undefined ? lug : sayIn(language)(key);
}

const lugs = new Map<Language, ReadonlyMap<string, string>>();

/** The lug that a tag names, as descriptions have it: what `lugWords` says, read back. */
export function lugNamed(language: Language, words: string): string {
  const known =
    lugs.get(language) ??
    new Map(
      Object.keys(en).flatMap((key) => {
        const [, lug] = /^lug\.(.+)$/.exec(key) ?? [];
        return lug === undefined ? [] : [[lugWords(language, lug), lug] as const];
      }),
    );
  lugs.set(language, known);
  return known.get(words) ?? words;
}

/** A lug within a sentence: `lug 2`, `tip`. */
export const lugInSentence = (language: Language, lug: string): string =>
  /^\d+$/.test(lug) ? sayIn(language)('lugs.numbered', { lug }) : lugWords(language, lug);

/** What a switch's position or a blend's is called: `pulled out`, `herausgezogen`; the pickups that a blend is turned to are the kit's words. */
export function positionWords(language: Language, called: string): string {
  const key = keyOf('position', called);
  const say = sayIn(language);
  if (key !== undefined) return say(key);
  const [, pickups] = /^towards (.+)$/.exec(called) ?? [];
  if (pickups === undefined || language === DEFAULT_LANGUAGE) return called;
  return say('switch.towards', { pickups: listIn(language, pickups.split(/, | and /)) });
}

/** A coil of a pickup that has several: `coil A`. */
export function coilWords(language: Language, called: string): string {
  const key = keyOf('coil', called);
  return key === undefined ? called : sayIn(language)(key);
}

/** A wire's or a band's colour in words: `BKRD` is black and red. */
export const colourName = (language: Language, code: string): string =>
  listIn(
    language,
    (code.match(/../g) ?? []).map((letters) => {
      const key = keyOf('colour', letters);
      return key === undefined ? letters : sayIn(language)(key);
    }),
  );

/** Without the comma before the last that American English has. */
const LOCALES: Readonly<Record<Language, string>> = { en: 'en-GB', de: 'de', fr: 'fr', es: 'es' };

/** `2, 3 and 4`. */
export const listIn = (language: Language, words: readonly string[]): string =>
  new Intl.ListFormat(LOCALES[language], { type: 'conjunction' }).format(words);

/** Clauses that have commas of their own: `tip: Bridge; ring: Neck`. */
export const apartIn = (language: Language, clauses: readonly string[]): string =>
  clauses.length === 0 ? '' : clauses.reduce((first, next) => sayIn(language)('list.apart', { first, next }));

/** `up or down`. */
export const eitherIn = (language: Language, words: readonly string[]): string =>
  new Intl.ListFormat(LOCALES[language], { type: 'disjunction' }).format(words);
