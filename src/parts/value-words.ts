/** What a part's value is, as people read it, and as a number to compare it by. */
import { figuresIn } from '../messages/figures.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { listIn } from '../messages/words.ts';
import { gangWords } from './gang.ts';
import { componentOf, elementsLike, elementsOf, isPickup, type Part } from './index.ts';

/** `470 kΩ`, `22 nF`, `250 kΩ log`, of a pickup its winding’s `5.7 kΩ`; nothing of a part without a value, as a switch. */
export function valueWords(part: Part, language: Language = DEFAULT_LANGUAGE): string | undefined {
  const component = componentOf(part);
  if (component) return figuresIn(language).of(component.value);
  if (isPickup(part)) return figuresIn(language).quantity(part.resistance.value, 'ohm');
  const gangs = elementsLike(part, 'track').map(({ ohms, ...track }) =>
    gangWords({ ...track, value: ohms }, language),
  );
  return gangs.length === 0 ? undefined : listIn(language, [...new Set(gangs)]);
}

/** Ohms, or of a capacitor farads; nothing of a part without a value. */
export function valueNumber(part: Part): number | undefined {
  if (isPickup(part)) return part.resistance.value;
  for (const element of elementsOf(part)) {
    if (element.kind === 'capacitance') return element.farads.value;
    if (element.kind === 'resistance' || element.kind === 'track') return element.ohms.value;
  }
  return undefined;
}
