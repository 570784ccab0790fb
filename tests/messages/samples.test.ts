/**
 * The samples in every language: all that a customer reads is in it, figures are written as it writes them, the check finds nothing,
 * and the same kit gives the same bytes.
 */
import { expect, it } from 'vitest';
import { inLanguage } from '../../src/describe/kit.ts';
import { drawResponse } from '../../src/pipeline.ts';
import { sample, samples } from '../truth/draw.ts';
import { alike, decimalsOf, drawnIn, ownWords, textsOf, translated, wordsOf } from './drawn.ts';

/** The whole, the other side, one position in black and white, two steps, and pieces that have a title of their own. */
const ASPECTS = [
  {},
  { view: 'component-side' },
  { state: 0, theme: 'print' },
  { step: 2 },
  { step: 3, theme: 'print' },
  { only: ['drawing', 'key', 'cards'] },
] as const;

const readIn = async (name: string, language: 'en' | 'de' | 'fr' | 'es') => {
  const kit = sample(name);
  const { svgs, findings } = await drawnIn(kit, language, ASPECTS);
  const plot = drawResponse(inLanguage(kit, language));
  return { svgs: [...svgs, plot], findings, texts: [...svgs, plot].flatMap(textsOf) };
};

it.each(samples)('%s', { timeout: 60_000 }, async (name) => {
  const own = ownWords(sample(name));
  const english = await readIn(name, 'en');
  expect(english.findings).toEqual([]);
  for (const svg of english.svgs) expect(svg).not.toMatch(/^<svg[^>]* lang=/);
  const words = new Set(english.texts.flatMap(wordsOf));
  const decimals = new Set(english.texts.flatMap(decimalsOf));
  expect(decimals.size).toBeGreaterThan(10);
  for (const language of translated) {
    const { svgs, findings, texts } = await readIn(name, language);
    expect(findings, language).toEqual([]);
    for (const svg of svgs) {
      expect(svg).toMatch(new RegExp(`^<svg[^>]* lang="${language}"`));
      expect(svg).toMatch(new RegExp(`^<svg[^>]* xml:lang="${language}"`));
    }
    const same = alike(language);
    const left = texts.filter((text) =>
      wordsOf(text).some((word) => words.has(word) && !own.has(word) && !same.has(word)),
    );
    expect([...new Set(left)], language).toEqual([]);
    // The outside opinion of how a language writes a number is that of ICU.
    const written = [...decimals].map((number) => {
      const digits = number.split('.')[1]?.length ?? 0;
      return new Intl.NumberFormat(language, {
        useGrouping: false,
        minimumFractionDigits: digits,
        maximumFractionDigits: digits,
      }).format(Number(number));
    });
    expect([...new Set(texts.flatMap(decimalsOf))].sort(), language).toEqual(written.sort());
  }
});

it('would find a sentence that was left in English', async () => {
  const { texts } = await readIn('heron-ss', 'de');
  const words = new Set(wordsOf('Multimeter: pickups connected, all controls on 10.'));
  const same = alike('de');
  const left = (text: string): boolean => wordsOf(text).some((word) => words.has(word) && !same.has(word));
  expect(texts.some(left)).toBe(false);
  expect([...texts, 'Multimeter: pickups connected.'].some(left)).toBe(true);
});

it('the same bytes however often it is drawn', async () => {
  for (const language of translated) {
    const [one, other] = [await readIn('wren-hs', language), await readIn('wren-hs', language)];
    expect(one.svgs).toEqual(other.svgs);
  }
});
