/** Small words that several sections need. */
import { keyOf, type Say } from '../messages/say.ts';
import { type Part, whatIs } from '../parts/index.ts';

/** What a part is, as a parts list names it. */
export function kindIn(part: Part, say: Say): string {
  const key = keyOf('kind', part.kind);
  return key === undefined ? whatIs(part) : say(key);
}

/** The colour of a band or of a wire's insulation in words: `GNYE` is green and yellow (IEC 60757). */
export function colourIn(code: string, say: Say): string {
  const [first = code, second] = code.match(/../g) ?? [];
  const name = (letters: string): string => {
    const key = keyOf('colour', letters);
    return key === undefined ? letters : say(key);
  };
  return second === undefined
    ? name(first)
    : say('leaflet.two-colours', { first: name(first), second: name(second) });
}
