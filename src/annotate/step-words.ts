/** How the steps and tests of the soldering name lugs, joints and figures, in one language. */
import type { Circuit } from '../circuit/circuit.ts';
import { roundedTo } from '../common/figures.ts';
import { type End, findPart, type Joint } from '../describe/kit.ts';
import { figuresIn } from '../messages/figures.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { lugInSentence } from '../messages/words.ts';
import { is, lugsOf } from '../parts/index.ts';

/**
 * A lug behind the name of its part: `Volume lug 1`, `Output tip`. Of a part with one lug, and of a component, whose legs are alike
 * in the hand, only the part's name.
 */
export function endName({ kit }: Pick<Circuit, 'kit'>, language: Language, { part: name, lug }: End): string {
  const part = findPart(kit, name);
  const label = part?.label ?? name;
  if (part && (is(part, 'component') || lugsOf(part).length === 1)) return label;
  return `${label} ${lugInSentence(language, lug)}`;
}

/** A joint by its two ends. */
export const jointName = (
  circuit: Pick<Circuit, 'kit'>,
  language: Language,
  { from, to }: Pick<Joint, 'from' | 'to'>,
): string =>
  sayIn(language)('test.joint', {
    from: endName(circuit, language, from),
    to: endName(circuit, language, to),
  });

/** Words one after another, in every language: `a, b, c`. Without an “and” before the last, since there may be one within them. */
export const rowOf = (words: readonly string[]): string => words.join(', ');

/** Ohms with three significant figures; the word for an open circuit where they are infinite. */
export const ohmsIn = (language: Language, ohms: number): string => figuresIn(language).figure(ohms, 'ohm');

/** The same rounded down or up, so that no value within the tolerances lies outside what is printed. */
export const ohmsAtLeast = (language: Language, ohms: number): string =>
  figuresIn(language).figure(roundedTo(ohms, 3, Math.floor), 'ohm');
export const ohmsAtMost = (language: Language, ohms: number): string =>
  figuresIn(language).figure(roundedTo(ohms, 3, Math.ceil), 'ohm');
