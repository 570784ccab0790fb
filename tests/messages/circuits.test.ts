/** Every circuit that ships in every language: nothing is left in English, and the check finds nothing. */
import { expect, it } from 'vitest';
import { circuitKit, circuitNames } from '../circuits/circuits.ts';
import { alike, drawnIn, ownWords, stepTexts, textsOf, translated, wordsOf } from './drawn.ts';

it.each(circuitNames)('%s', { timeout: 60_000 }, async (name) => {
  const kit = await circuitKit(name);
  const own = ownWords(kit);
  const english = await drawnIn(kit, 'en', [{}]);
  const words = new Set([...english.svgs.flatMap(textsOf), ...stepTexts(kit, 'en')].flatMap(wordsOf));
  for (const language of translated) {
    const { svgs, findings } = await drawnIn(kit, language, [{}]);
    expect(findings, language).toEqual([]);
    const same = alike(language);
    const left = [...svgs.flatMap(textsOf), ...stepTexts(kit, language)]
      .flatMap(wordsOf)
      .filter((word) => words.has(word) && !own.has(word) && !same.has(word));
    expect([...new Set(left)], language).toEqual([]);
  }
});
