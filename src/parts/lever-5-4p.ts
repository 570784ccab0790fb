import { sayIn } from '../messages/say.ts';
import { definePart, type PartBase } from './kind.ts';
import { type LeverPoles, leverContacts, leverFace, leverOutline, lugsOfLever } from './lever.ts';

type Lever54p = PartBase<'lever-5-4p'>;

const POLES = {
  pairs: [
    ['A', 'B'],
    ['C', 'D'],
  ],
  throws: [1, 2, 3, 4, 5],
} as const satisfies LeverPoles;
const CONTACTS = leverContacts([[1], [2], [3], [4], [5]], POLES);

/** Lever switch, four poles, five throws, five positions: position n joins X0 to Xn on all four poles, and no two throws at once. */
export const lever5FourPole = definePart({
  kind: 'lever-5-4p',
  what: 'four-pole five-way lever switch',
  is: ['switch'],
  moves: 'lever',
  mirrors: false,
  fields: {},
  build: (base): Lever54p => base,
  lugs: lugsOfLever(POLES),
  elements: () => [],
  contacts: () => CONTACTS,
  outline: (part, _, language) =>
    leverOutline(part, sayIn(language)('face.five-way-four-pole'), CONTACTS, POLES),
  face: (_, seen) => leverFace(seen, POLES),
});
