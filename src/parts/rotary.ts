import { z } from 'zod';
import { sayIn } from '../messages/say.ts';
import { blockFace, blockOutline, type Columns } from './block.ts';
import { type Contact, definePart, type LugSpec, type PartBase } from './kind.ts';

interface Rotary extends PartBase<'rotary'> {
  readonly poles: number;
  readonly throws: number;
  /** Whether the contact touches the next throw before it leaves the last; it makes a difference between positions only. */
  readonly shorting: boolean;
}

const LETTERS = ['A', 'B', 'C', 'D'] as const;
/** Common practice, no source: the throws of one wafer, and of the poles of a switch that fits a guitar. */
const MOST_THROWS = 12;
const MOST_IN_ALL = 24;

const fields = {
  poles: z.int().min(1).max(LETTERS.length).optional().describe('Poles, 1 to 4; 1 by default'),
  throws: z
    .int()
    .min(2)
    .max(MOST_THROWS)
    .describe('Positions, 2 to 12, a throw for each on every pole; at most 24 throws in all'),
  shorting: z
    .boolean()
    .optional()
    .describe(
      'true: make before break; false, by default: break before make. It matters only between positions',
    ),
};

const polesOf = ({ poles }: Pick<Rotary, 'poles'>): readonly string[] => LETTERS.slice(0, poles);
const upTo = (throws: number): readonly number[] => Array.from({ length: throws }, (_, i) => i + 1);

const lugsOf = (part: Rotary): readonly LugSpec[] =>
  polesOf(part).flatMap((pole) =>
    [0, ...upTo(part.throws)].map(
      (n): LugSpec => ({ name: `${pole}${n}`, role: n === 0 ? 'common' : 'throw', pole }),
    ),
  );

const contactsOf = (part: Rotary): readonly Contact[] =>
  upTo(part.throws).map((n) => ({
    position: n,
    joins: polesOf(part).map((pole) => [`${pole}0`, `${pole}${n}`]),
  }));

/** Down the left edge and on down the right one, so that an even number of poles is divided between them. */
function columnsOf(part: Rotary): Columns {
  const names = lugsOf(part).map(({ name }) => name);
  const half = Math.ceil(names.length / 2);
  return { left: names.slice(0, half), right: names.slice(half) };
}

/** Rotary switch: position n joins X0 to Xn on every pole. */
export const rotary = definePart({
  kind: 'rotary',
  what: 'rotary switch',
  is: ['switch'],
  moves: 'shaft',
  mirrors: false,
  fields,
  build: (base, { poles, throws, shorting }): Rotary => ({
    ...base,
    poles: poles ?? 1,
    throws,
    shorting: shorting ?? false,
  }),
  validate: ({ poles = 1, throws }) => {
    const all = poles * throws;
    return all > MOST_IN_ALL
      ? [
          {
            path: ['throws'],
            why: `${poles} poles with ${throws} throws each are ${all} throws; at most ${MOST_IN_ALL} are allowed`,
            remedy: `With ${poles} poles write at most throws: ${Math.floor(MOST_IN_ALL / poles)}, or write fewer poles.`,
          },
        ]
      : [];
  },
  lugs: [] as readonly LugSpec[],
  lugsOf,
  elements: () => [],
  contacts: contactsOf,
  outline: (part, _, language, narrow) =>
    blockOutline(
      part.label,
      sayIn(language)('face.rotary', { kind: part.shorting ? 'shorting' : 'other' }),
      columnsOf(part),
      contactsOf(part),
      language,
      narrow,
    ),
  face: (part, seen) => blockFace(columnsOf(part), seen),
});
