/** Small words that several sections need. */
import { keyOf, type Say } from '../messages/say.ts';
import { type Part, whatIs } from '../parts/index.ts';

/** What a part is, as a parts list names it. */
export function kindIn(part: Part, say: Say): string {
  const key = keyOf('kind', part.kind);
  return key === undefined ? whatIs(part) : say(key);
}
