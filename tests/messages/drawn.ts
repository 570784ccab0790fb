/** Kits drawn in a language, and what a customer reads on the drawings. */
import { stepsOf } from '../../src/annotate/steps.ts';
import { inLanguage, type Kit } from '../../src/describe/kit.ts';
import { type Aspect, sheetsOf } from '../../src/draw/compose.ts';
import { findArrangement } from '../../src/files/layouts.ts';
import { formatFinding, inspect } from '../../src/inspect/index.ts';
import { type Language, languages } from '../../src/messages/language.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { buildCircuit } from '../../src/solve/build.ts';

export const translated = languages.filter((language) => language !== 'en');

/** What must hold of a drawing must hold without any search. */
const EFFORT = { steps: 0, seed: 1 };

/** A kit's drawings in a language, and what the check finds in them. */
export async function drawnIn(kit: Kit, language: Language, aspects: readonly Aspect[]) {
  const spoken = inLanguage(kit, language);
  const arrangement = findArrangement(kit.arrangement);
  if (typeof arrangement === 'string') throw new Error(arrangement);
  const prepared = await prepare(spoken, arrangement, { effort: EFFORT });
  const svgs = aspects
    .flatMap((aspect) => sheetsOf(prepared, aspect))
    .map((aspect) => render(prepared, aspect).svg);
  // Without the language as an option: the check takes it from the drawing.
  return { svgs, findings: svgs.flatMap((svg) => inspect(svg, kit)).map(formatFinding) };
}

/** Texts, title and description of a drawing, without its revision mark, which has letters by chance. */
export const textsOf = (svg: string): readonly string[] =>
  [...svg.matchAll(/<(?:text|title|desc)\b[^>]*>([^<]*)</g)]
    .map(([, text = '']) => text)
    .filter((text) => !/^Rev [\dA-Z]{4}-/.test(text));

export const wordsOf = (text: string): readonly string[] => text.toLowerCase().match(/\p{L}{2,}/gu) ?? [];

/** Numbers with decimals, as they are written. */
export const decimalsOf = (text: string): readonly string[] =>
  text.match(/(?<![\d.,])\d+[.,]\d+(?![\d.,])/g) ?? [];

/** All that a kit's steps say. */
export const stepTexts = (kit: Kit, language: Language): readonly string[] =>
  stepsOf(buildCircuit(inLanguage(kit, language))).flatMap(({ title, lines }) => [title, ...lines]);

/** Words that a kit's owner wrote: they stand as they are in every language. */
export const ownWords = (kit: Kit): ReadonlySet<string> =>
  new Set([kit.title, ...kit.parts.flatMap(({ label, name }) => [label, name])].flatMap(wordsOf));

const units = ['kω', 'mω', 'nf', 'pf', 'khz', 'hz', 'db', 'mm'];
/** IEC 60757, as they stand on the wires. */
const codes = ['bk', 'bn', 'rd', 'og', 'ye', 'gn', 'bu', 'vt', 'gy', 'wh', 'pk', 'gd', 'tq', 'sr', 'bkbu'];
/** The trade's words everywhere, or printed on the parts themselves; direct current; the standards' publisher. */
const trade = ['humbucker', 'log', 'lin', 'on', 'off', 'push', 'pull', 'no', 'load', 'dc', 'iec'];
/** Words that the language has in common with English. */
const common: Readonly<Record<string, readonly string[]>> = {
  de: 'in parallel signal single coil multimeter rest orange gold ring start'.split(' '),
  fr: 'position positions signal turquoise double jack mono orange violet or centre'.split(' '),
  es: 'cable jack mono control'.split(' '),
};
export const alike = (language: Language): ReadonlySet<string> =>
  new Set([...units, ...codes, ...trade, ...(common[language] ?? [])]);
