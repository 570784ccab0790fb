/** Every language says everything, with the same arguments, in words that can be drawn; and nothing is kept that nobody says. */
import { describe, expect, it } from 'vitest';
import { missingGlyphs } from '../../src/common/text.ts';
import { colours } from '../../src/describe/words.ts';
import { languages } from '../../src/messages/language.ts';
import { messages } from '../../src/messages/say.ts';
import * as kinds from '../../src/parts/kinds.ts';
import { argumentsOf, differing, unsaid } from '../tools/messages.ts';

const keys = Object.keys(messages.en);
/** What a table of messages has of. */
const namesIn = (prefix: string): readonly string[] =>
  keys.flatMap((key) => (key.startsWith(`${prefix}.`) ? [key.slice(prefix.length + 1)] : [])).sort();

describe.each(languages)('%s', (language) => {
  const own = Object.entries(messages[language]);
  it('has every message and no other, in the order of the English ones', () =>
    expect(Object.keys(messages[language])).toEqual(keys));
  it('says something each time, without blanks around it', () =>
    expect(own.filter(([, text]) => text === '' || text.trim() !== text)).toEqual([]));
  it('in letters that the drawings’ font has', () =>
    expect(own.filter(([, text]) => missingGlyphs(text).length > 0)).toEqual([]));
});

describe.each(languages.filter((language) => language !== 'en'))('%s is set as it is there', (language) => {
  const own = Object.entries(messages[language]);
  const found = (pattern: RegExp) => own.filter(([, text]) => pattern.test(text));
  // The International System of Units, 9th edition, 5.4.3: a space between number and unit; a line must not end there.
  it('a figure and its unit stay on one line', () =>
    expect(found(/\d (?:[kM]?Ω|k?Hz|dB|V|mm|%|°C)/)).toEqual([]));
  it('with a decimal comma', () => expect(found(/\d\.\d/)).toEqual([]));
  // Imprimerie nationale, “Lexique des règles typographiques”: a no-break space before : ; ! ? and inside « ».
  if (language === 'fr')
    it('with a no-break space before a colon, a semicolon and inside guillemets', () =>
      expect(found(/ [:;!?»]|« |[^\u00a0\d\s{[:][;!?»]|\p{L}:/u)).toEqual([]));
});

// One word for one thing: what a leaflet calls a leg, a lug or the jack is what its drawings call it.
it.each([
  ['de', /Anschlussdr|Messgerät|Tonpoti/],
  ['fr', /l’appareil|L’interrupteur|ronflette/],
  ['es', /\bpatas?\b|conector|medidor|\bMacarrón|punta y la malla/],
  ['en', /\b(?:darker|nearly 0|a strand between)\b/],
] as const)('%s has one word for one thing', (language, others) =>
  expect(Object.entries(messages[language]).filter(([, text]) => others.test(text))).toEqual([]),
);

it('all have the same arguments', () => {
  expect(differing()).toEqual([]);
  const say = { 'a.b': '{one} and {n, plural, =1 {one} other {{two}}}', 'c.d': 'word' };
  expect(argumentsOf(say['a.b'])).toEqual(['n', 'one', 'two']);
  const others = { en: say, de: say, fr: { ...say, 'c.d': '{word}' }, es: { 'a.b': say['a.b'], x: '' } };
  expect(differing(others)).toEqual([
    'fr: c.d has the arguments “word”, in English “”',
    'es: no message c.d',
    'es: x is no message in English',
  ]);
});

it('every message is said somewhere', () => {
  expect(unsaid()).toEqual([]);
  expect(unsaid(['a.b', 'kind.x', 'c.d'], "say('a.b'); keyOf('kind', k)")).toEqual(['c.d']);
});

describe('a table that is looked up has what there is, and no more', () => {
  const all = Object.values(kinds);
  it('kinds of parts', () => expect(namesIn('kind')).toEqual(all.map(({ kind }) => kind as string).sort()));
  it('colours', () =>
    // Green-and-yellow is said as its two colours.
    expect(namesIn('colour')).toEqual(colours.filter((code) => code.length === 2).sort()));
  it('lugs that have a word for a name', () => {
    const named = all.flatMap(({ lugs }) => lugs.map(({ name }) => name as string));
    expect(namesIn('lug')).toEqual([...new Set(named.filter((name) => /^[a-z-]{3,}$/.test(name)))].sort());
  });
});
