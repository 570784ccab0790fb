import { sayIn } from '../messages/say.ts';
import { definePart, type PartBase } from './kind.ts';
import { type LeverPoles, leverContacts, leverFace, leverOutline, lugsOfLever } from './lever.ts';

type Lever4 = PartBase<'lever-4'>;

const POLES = { pairs: [['A', 'B']], throws: [1, 2, 3, 4] } as const satisfies LeverPoles;
const CONTACTS = leverContacts([[1], [2], [3], [4]], POLES);

/** Lever switch, two poles, four throws, four positions: position n joins X0 to Xn on both poles. */
export const lever4 = definePart({
  kind: 'lever-4',
  what: 'four-way lever switch',
  is: ['switch'],
  moves: 'lever',
  mirrors: false,
  fields: {},
  build: (base): Lever4 => base,
  lugs: lugsOfLever(POLES),
  elements: () => [],
  contacts: () => CONTACTS,
  outline: (part, _, language) => leverOutline(part, sayIn(language)('face.four-way'), CONTACTS, POLES),
  face: (_, seen) => leverFace(seen, POLES),
});
