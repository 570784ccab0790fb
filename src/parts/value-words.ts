/** What a part's value is, as people read it, and as a number to compare it by. */
import { formatQuantity } from '../common/units.ts';
import { gangWords } from './gang.ts';
import { componentOf, elementsLike, elementsOf, isPickup, type Part } from './index.ts';

/** `470 kΩ`, `22 nF`, `250 kΩ log`, of a pickup its winding’s `5.7 kΩ`; nothing of a part without a value, as a switch. */
export function valueWords(part: Part): string | undefined {
  const component = componentOf(part);
  if (component) return component.value;
  if (isPickup(part)) return formatQuantity(part.resistance.value, 'ohm');
  const gangs = elementsLike(part, 'track').map(({ ohms, ...track }) => gangWords({ ...track, value: ohms }));
  return gangs.length === 0 ? undefined : [...new Set(gangs)].join(' and ');
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
