/** Every circuit that ships in one of the other languages by turns: nothing is left in English, and the check finds nothing. */
import { expect, it } from 'vitest';
import { nth } from '../../src/common/must.ts';
import { circuitKit, circuitNames } from '../circuits/circuits.ts';
import { alike, drawnIn, ownWords, stepTexts, textsOf, translated, wordsOf } from './drawn.ts';

const turns = circuitNames.map((name, i) => [name, nth(translated, i % translated.length)] as const);

it.each(turns)('%s in %s', { timeout: 60_000 }, async (name, language) => {
  const kit = await circuitKit(name);
  const own = ownWords(kit);
  const english = await drawnIn(kit, 'en', [{}]);
  const words = new Set([...english.svgs.flatMap(textsOf), ...stepTexts(kit, 'en')].flatMap(wordsOf));
  const { svgs, findings } = await drawnIn(kit, language, [{}]);
  expect(findings).toEqual([]);
  const same = alike(language);
  const left = [...svgs.flatMap(textsOf), ...stepTexts(kit, language)]
    .flatMap(wordsOf)
    .filter((word) => words.has(word) && !own.has(word) && !same.has(word));
  expect([...new Set(left)]).toEqual([]);
});
