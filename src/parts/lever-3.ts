import { sayIn } from '../messages/say.ts';
import { definePart, type PartBase } from './kind.ts';
import { leverContacts, leverFace, leverLugs, leverOutline } from './lever.ts';

type Lever3 = PartBase<'lever-3'>;

const CONTACTS = leverContacts([[1], [2], [3]]);

/** Lever switch, two poles, three throws, three positions: position n joins X0 to Xn on both poles. */
export const lever3 = definePart({
  kind: 'lever-3',
  what: 'three-way lever switch',
  is: ['switch'],
  moves: 'lever',
  mirrors: false,
  fields: {},
  build: (base): Lever3 => base,
  lugs: leverLugs,
  elements: () => [],
  contacts: () => CONTACTS,
  outline: (part, _, language) => leverOutline(part, sayIn(language)('face.three-way'), CONTACTS),
  face: (_, seen) => leverFace(seen),
});
