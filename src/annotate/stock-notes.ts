/** What the workshop's parts list has to do with a kit: what replaces what, and values that are not in the list. */

import { type Problem, problem } from '../common/problem.ts';
import { named } from '../common/stock-wording.ts';
import { type Kit, labelOf } from '../describe/kit.ts';
import { itemOf, type NamedItem } from '../describe/stock.ts';
import { isLookedUp, nearestInStock } from '../describe/stock-match.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { is } from '../parts/index.ts';
import { valueWords } from '../parts/value-words.ts';

type Stocked = Pick<Kit, 'parts' | 'list' | 'substitutions'>;

/**
 * A line for each part that is another item than the kit asks for: `Neck pad: 470 kΩ (R-470K) is replaced by 510 kΩ (R-510K)`.
 *
 * @param language English, as reports are, where it is left out
 */
export function substitutionLines(kit: Stocked, language: Language = DEFAULT_LANGUAGE): readonly string[] {
  const words = ({ code, value }: NamedItem): string => {
    const item = kit.list && itemOf(kit.list, code);
    const own = item ? valueWords(item.part, language) : value;
    return named({ code, ...(own === undefined ? {} : { value: own }) });
  };
  return (kit.substitutions ?? []).map(({ part, from, to }) =>
    sayIn(language)('stock.replaced', { part: labelOf(kit, part), from: words(from), to: words(to) }),
  );
}

export const stockNotes = (kit: Stocked): readonly Problem[] => [
  ...(kit.substitutions ?? []).map(({ part, path, from, to }) =>
    problem('substituted', path, { part: labelOf(kit, part), from, to }),
  ),
  ...unlisted(kit),
];

/** Parts of a kind that the list has, and of a value that it has not. A pickup of which nothing is written can be any. */
function unlisted({ parts, list }: Stocked): readonly Problem[] {
  if (!list) return [];
  return parts
    .filter((part) => part.code === undefined && isLookedUp(list, part))
    .filter((part) => !is(part, 'pickup') || ('resistance' in part && part.resistance.from === 'given'))
    .map((part) =>
      problem('not-listed', ['parts', part.name, 'value'], {
        part: part.name,
        got: valueWords(part) ?? `a ${part.kind}`,
        nearest: nearestInStock(list, part),
        file: list.file,
      }),
    );
}
