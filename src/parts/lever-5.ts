import { sayIn } from '../messages/say.ts';
import { definePart, type PartBase } from './kind.ts';
import { leverContacts, leverFace, leverLugs, leverOutline } from './lever.ts';

type Lever5 = PartBase<'lever-5'>;

const CONTACTS = leverContacts([[1], [1, 2], [2], [2, 3], [3]]);

/** Lever switch, two poles, three throws, five stops: stops 2 and 4 touch two throws at once. */
export const lever5 = definePart({
  kind: 'lever-5',
  what: 'five-way lever switch',
  is: ['switch'],
  moves: 'lever',
  mirrors: false,
  fields: {},
  build: (base): Lever5 => base,
  lugs: leverLugs,
  elements: () => [],
  contacts: () => CONTACTS,
  outline: (part, _, language) => leverOutline(part, sayIn(language)('face.five-way'), CONTACTS),
  face: (_, seen) => leverFace(seen),
});
