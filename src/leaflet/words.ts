/** Small words that several sections need. */
import { type Kit, labelOf } from '../describe/kit.ts';
import { keyOf, type Say } from '../messages/say.ts';
import { type Part, partOfControl, shaftOf, whatIs } from '../parts/index.ts';

/** What a part is, as a parts list names it. */
export function kindIn(part: Part, say: Say): string {
  const key = keyOf('kind', part.kind);
  return key === undefined ? whatIs(part) : say(key);
}

/** A control by its part's label, and of a part with several shafts by the shaft as well. */
export function controlName(kit: Kit, id: string, say: Say): string {
  const label = labelOf(kit, partOfControl(id));
  const key = keyOf('shaft', shaftOf(id) ?? '');
  return key === undefined ? label : `${label} (${say(key)})`;
}
