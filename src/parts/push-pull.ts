import { sayIn } from '../messages/say.ts';
import { blockFace, blockOutline, type Columns } from './block.ts';
import { type Composed, compose } from './compose.ts';
import { type Contact, definePart, type LugSpec, type PartBase } from './kind.ts';
import { type Pot, pot } from './pot.ts';

type Behind = PartBase<'push-pull-switch'>;

const LUGS = [
  { name: 'A1', role: 'throw', pole: 'A' },
  { name: 'A0', role: 'common', pole: 'A' },
  { name: 'A2', role: 'throw', pole: 'A' },
  { name: 'B1', role: 'throw', pole: 'B' },
  { name: 'B0', role: 'common', pole: 'B' },
  { name: 'B2', role: 'throw', pole: 'B' },
] as const satisfies readonly LugSpec[];
const COLUMNS: Columns = { left: ['A1', 'A0', 'A2'], right: ['B1', 'B0', 'B2'] };
/** Pushed in, position 1, each common touches throw 1; pulled out, position 2, throw 2. Common practice, no source. */
const CONTACTS: readonly Contact[] = (
  [
    ['pushed in', 'in'],
    ['pulled out', 'out'],
  ] as const
).map(([called, mark], i) => ({
  position: i + 1,
  called,
  mark,
  joins: ['A', 'B'].map((pole) => [`${pole}0`, `${pole}${i + 1}`]),
}));

/** The switch behind a push-pull pot: two poles, two throws, the commons in the middle row. */
const behind = definePart({
  kind: 'push-pull-switch',
  what: 'switch of a push-pull pot',
  is: ['switch'],
  mirrors: false,
  fields: {},
  build: (base): Behind => base,
  lugs: LUGS,
  elements: () => [],
  contacts: () => CONTACTS,
  outline: ({ label }, _, language, narrow) =>
    blockOutline(label, sayIn(language)('face.push-pull'), COLUMNS, CONTACTS, language, narrow),
  face: (_, seen) => blockFace(COLUMNS, seen),
});

/** Push-pull pot: a pot, and a switch with two poles and two throws that its shaft works. */
export const pushPull = compose('push-pull', 'push-pull pot', pot, behind) satisfies {
  readonly build: (...given: never) => Composed<'push-pull', Pot, Behind>;
};
