/** Words and figures that are looked up or formatted, in each language. */
import { describe, expect, it } from 'vitest';
import { whereText } from '../../src/circuit/position.ts';
import { textWidth } from '../../src/common/text.ts';
import { colours } from '../../src/describe/words.ts';
import { en } from '../../src/messages/en.ts';
import { figuresIn } from '../../src/messages/figures.ts';
import { type Language, languages } from '../../src/messages/language.ts';
import { messages } from '../../src/messages/say.ts';
import {
  colourName,
  eitherIn,
  listIn,
  lugInSentence,
  lugNamed,
  lugWords,
  positionWords,
} from '../../src/messages/words.ts';
import * as kinds from '../../src/parts/kinds.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { makeKit } from '../analyse/kits.ts';

const inEach = <T>(words: (language: Language) => T): readonly T[] => languages.map(words);

describe('figures', () => {
  it('have the decimal sign of the language, as ICU writes it, and their unit on the same line', () => {
    for (const language of languages) {
      const figure = new Intl.NumberFormat(language, { minimumSignificantDigits: 3 }).format(2.4);
      const blank = language === 'en' ? ' ' : '\u00a0';
      const figures = figuresIn(language);
      expect(figures.figure(2400, 'ohm')).toBe(`${figure}${blank}kΩ`);
      expect(figures.hertz(2400)).toBe(`${figure}${blank}kHz`);
      expect(figures.quantity(22e-9, 'farad')).toBe(`22${blank}nF`);
      expect(figures.decibels(-2.4)).toBe(`−${new Intl.NumberFormat(language).format(2.4)}${blank}dB`);
    }
  });
  it('with a sign where they are differences, and a word where a resistance is open', () => {
    expect(inEach((language) => figuresIn(language).figure(Number.POSITIVE_INFINITY, 'ohm'))).toEqual([
      'open',
      'offen',
      'ouvert',
      'abierto',
    ]);
    const { percent } = figuresIn('en');
    expect([percent(31), percent(-35), percent(0), percent(0, '±')]).toEqual([
      '+31 %',
      '−35 %',
      '0 %',
      '±0 %',
    ]);
  });
  it('leave other dots alone', () => {
    expect(figuresIn('de').of('R. 4.7 kΩ log.')).toBe('R. 4,7\u00a0kΩ log.');
  });
});

describe('names of lugs', () => {
  const names = Object.keys(en).flatMap((key) => /^lug\.(.+)$/.exec(key)?.[1] ?? []);
  it.each(languages)('%s: every kind’s, each another, and read back', (language) => {
    const drawn = Object.values(kinds).flatMap(({ lugs }) => lugs.map(({ name }) => name as string));
    const worded = drawn.filter((name) => /^[a-z-]{3,}$/.test(name));
    expect(worded.length).toBeGreaterThan(10);
    expect(worded.filter((name) => !names.includes(name))).toEqual([]);
    const words = names.map((name) => lugWords(language, name));
    expect(new Set(words).size).toBe(names.length);
    expect(words.map((one) => lugNamed(language, one))).toEqual(names);
  });
  it.each(languages)('%s: what stands on a pickup’s or a jack’s tag has room on it', (language) => {
    // The tags of these are 56 wide, and are rounded at their ends.
    const fixed = names.filter((name) => !['case', 'common', 'frame'].includes(name));
    const wide = fixed.filter((name) => textWidth(lugWords(language, name), 12, 'bold') > 50);
    expect(wide).toEqual([]);
  });
  it('numbers, and those of a kit’s own switch, stand as they are', () => {
    expect(inEach((language) => lugWords(language, 'A2'))).toEqual(['A2', 'A2', 'A2', 'A2']);
    expect(inEach((language) => lugInSentence(language, '2'))).toEqual([
      'lug 2',
      'Öse 2',
      'cosse 2',
      'terminal 2',
    ]);
    expect(lugNamed('de', 'mine')).toBe('mine');
  });
});

describe('names of positions', () => {
  it('are looked up; the kit’s own stand as they are, and a blend’s pickups with them', () => {
    expect(inEach((language) => positionWords(language, 'pulled out'))).toEqual([
      'pulled out',
      'herausgezogen',
      'tiré',
      'sacado',
    ]);
    expect(positionWords('de', 'fett')).toBe('fett');
    expect(inEach((language) => positionWords(language, 'towards neck and bridge'))).toEqual([
      'towards neck and bridge',
      'in Richtung neck und bridge',
      'vers neck et bridge',
      'hacia neck y bridge',
    ]);
  });
  it('every kind’s is known', () => {
    const called = Object.values(kinds).flatMap((kind) => {
      const part = ownPart(kind.kind);
      return part ? (kind.contacts?.(part as never) ?? []) : [];
    });
    const words = new Set(
      called.flatMap(({ called: one, mark }) => [one, mark].filter((word) => word !== undefined)),
    );
    expect(words.size).toBeGreaterThan(6);
    expect([...words].filter((word) => !(`position.${word}` in messages.en))).toEqual([]);
  });
});

/** A part of a kind with the least that must be written; none of those that a kit describes. */
function ownPart(kind: string) {
  const written: Readonly<Record<string, object>> = {
    'mini-toggle': { action: 'on-off-on' },
    rotary: { throws: 3 },
    'push-pull': { value: '500k' },
  };
  const switches = ['kill-button', 'mini-toggle', 'push-pull', 'rotary', 'slide', 'toggle-3', 'lever-5'];
  if (!switches.includes(kind)) return undefined;
  return makeKit({ parts: { x: { kind, ...written[kind] } as never }, joints: [] }).parts[0];
}

describe('lists and colours', () => {
  it('have the language’s own and and or', () => {
    expect(inEach((language) => listIn(language, ['1', '2', '3']))).toEqual([
      '1, 2 and 3',
      '1, 2 und 3',
      '1, 2 et 3',
      '1, 2 y 3',
    ]);
    expect(inEach((language) => eitherIn(language, ['a', 'b']))).toEqual([
      'a or b',
      'a oder b',
      'a ou b',
      'a o b',
    ]);
    expect([listIn('de', ['a']), listIn('de', [])]).toEqual(['a', '']);
  });
  it('every colour has a name, of two colours both', () => {
    for (const language of languages)
      for (const code of colours) expect(colourName(language, code)).not.toMatch(/[A-Z]{2}/);
    expect(inEach((language) => colourName(language, 'GNYE'))).toEqual([
      'green and yellow',
      'grün und gelb',
      'vert et jaune',
      'verde y amarillo',
    ]);
  });
});

describe('where something holds', () => {
  const circuit = buildCircuit(
    makeKit({
      parts: { n: { kind: 'single-coil' }, s: { kind: 'lever-3' }, o: { kind: 'jack' } },
      joints: ['n.hot > s.A1', 's.A0 > o.tip', 'n.ground > o.sleeve'],
    }),
  );
  const { states } = circuit;
  const say = (language: Language, some: readonly number[]): string =>
    whereText(
      circuit,
      states.filter((_, i) => some.includes(i)),
      states,
      undefined,
      language,
    );
  it('in every language, the only switch without its name', () => {
    expect(inEach((language) => say(language, [1]))).toEqual([
      ' in position 2',
      ' in Stellung 2',
      ' en position 2',
      ' en la posición 2',
    ]);
    expect(inEach((language) => say(language, [0, 2]))).toEqual([
      ' in positions 1 and 3',
      ' in den Stellungen 1 und 3',
      ' dans les positions 1 et 3',
      ' en las posiciones 1 y 3',
    ]);
    expect(inEach((language) => say(language, [0, 1, 2]))).toEqual([
      ' in every position',
      ' in jeder Stellung',
      ' dans toutes les positions',
      ' en todas las posiciones',
    ]);
  });
});
