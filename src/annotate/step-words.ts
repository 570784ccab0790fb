/** How the steps and tests of the soldering name lugs, joints and figures, in one language. */
import type { Circuit } from '../circuit/circuit.ts';
import { roundedTo } from '../common/figures.ts';
import { must } from '../common/must.ts';
import { formatFigure, formatQuantity } from '../common/units.ts';
import { type End, findPart, type Joint } from '../describe/kit.ts';
import type { Language } from '../messages/language.ts';
import { keyOf, numberIn, sayIn } from '../messages/say.ts';
import { is, lugsOf } from '../parts/index.ts';

/**
 * A lug behind the name of its part: `Volume lug 1`, `Output tip`. Of a part with one lug, and of a component, whose legs are alike
 * in the hand, only the part's name.
 */
export function endName(
  { kit }: Pick<Circuit, 'kit'>,
  _language: Language,
  { part: name, lug }: End,
): string {
  const part = findPart(kit, name);
  const label = part?.label ?? name;
  if (part && (is(part, 'component') || lugsOf(part).length === 1)) return label;
  // A bare number after a name would read as part of it.
  return /^\d+$/.test(lug) ? `${label} lug ${lug}` : `${label} ${lug}`;
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

/** Words one after another: `a, b, c`. */
export const rowOf = (language: Language, words: readonly string[]): string =>
  new Intl.ListFormat(language, { type: 'unit' }).format(words);

/** A colour in words: of an insulation of two colours `black and red`. */
export const colourIn = (language: Language, code: string): string =>
  new Intl.ListFormat(language).format(
    (code.match(/../g) ?? []).map((letters) =>
      sayIn(language)(must(keyOf('colour', letters), `colour ${letters}`)),
    ),
  );

const inLanguage = (language: Language, english: string): string =>
  english.replace(/\d+\.\d+/, (figure) => {
    const digits = figure.length - figure.indexOf('.') - 1;
    return numberIn(language, Number(figure), { least: digits, most: digits });
  });

/** Ohms with three significant figures; the word for an open circuit where they are infinite. */
export const ohmsIn = (language: Language, ohms: number): string =>
  Number.isFinite(ohms) ? inLanguage(language, formatFigure(ohms, 'ohm')) : sayIn(language)('test.open');

/** The same rounded down or up, so that no value within the tolerances lies outside what is printed. */
export const ohmsAtLeast = (language: Language, ohms: number): string =>
  inLanguage(language, formatQuantity(roundedTo(ohms, 3, Math.floor), 'ohm'));
export const ohmsAtMost = (language: Language, ohms: number): string =>
  inLanguage(language, formatQuantity(roundedTo(ohms, 3, Math.ceil), 'ohm'));
