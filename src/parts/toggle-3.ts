import { sayIn } from '../messages/say.ts';
import { blockFace, blockOutline, type Columns } from './block.ts';
import { type Contact, definePart, type LugSpec, type PartBase } from './kind.ts';

type Toggle3 = PartBase<'toggle-3'>;

const LUGS = [
  { name: '1', role: 'throw', pole: 'A' },
  { name: 'common', role: 'common', pole: 'A' },
  { name: '2', role: 'throw', pole: 'A' },
  { name: 'frame', role: 'case' },
] as const satisfies readonly LugSpec[];
const COLUMNS: Columns = { left: ['1', 'common', '2'], right: ['frame'], frame: 'frame' };
/** At rest in the middle both springs touch the common; the lever lifts the one on its far side. Common practice, no source. */
const CONTACTS: readonly Contact[] = (
  [
    ['up', 'up', ['1']],
    ['in the middle', 'middle', ['1', '2']],
    ['down', 'down', ['2']],
  ] as const
).map(([called, mark, throws], i) => ({
  position: i + 1,
  called,
  mark,
  joins: [['common', ...throws]],
}));

/** Three-way toggle: up joins common and 1, the middle all three, down common and 2. Its frame is a point to solder ground to. */
export const toggle3 = definePart({
  kind: 'toggle-3',
  what: 'three-way toggle switch',
  is: ['switch'],
  moves: 'toggle',
  mirrors: false,
  fields: {},
  build: (base): Toggle3 => base,
  lugs: LUGS,
  elements: () => [],
  contacts: () => CONTACTS,
  outline: ({ label }, _, language, narrow) =>
    blockOutline(label, sayIn(language)('face.three-way-toggle'), COLUMNS, CONTACTS, language, narrow),
  face: (_, seen) => blockFace(COLUMNS, seen),
});
