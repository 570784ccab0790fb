/** What small switches with one or two poles and two throws share: lugs 1, 0, 2 of each pole in a column, the commons in the middle row. */
import { z } from 'zod';
import type { Columns } from './block.ts';
import type { Contact, LugSpec } from './kind.ts';

export type Poles = 1 | 2;

export const doubleThrowLugs = [
  { name: 'A1', role: 'throw', pole: 'A' },
  { name: 'A0', role: 'common', pole: 'A' },
  { name: 'A2', role: 'throw', pole: 'A' },
  { name: 'B1', role: 'throw', pole: 'B' },
  { name: 'B0', role: 'common', pole: 'B' },
  { name: 'B2', role: 'throw', pole: 'B' },
] as const satisfies readonly LugSpec[];

/** Two where it is not written: it is what shops stock. Common practice, no source. */
export const USUAL_POLES = 2;
export const polesField = z
  .union([z.literal(1), z.literal(2)])
  .optional()
  .describe('Poles, 1 or 2; 2 by default. With one pole the lugs are A1, A0 and A2');

const polesUpTo = (poles: Poles): readonly ('A' | 'B')[] => (poles === 1 ? ['A'] : ['A', 'B']);

export const lugsOfPoles = (poles: Poles): readonly LugSpec[] =>
  doubleThrowLugs.filter(({ pole }) => polesUpTo(poles).includes(pole));

const column = (pole: 'A' | 'B'): readonly string[] => [`${pole}1`, `${pole}0`, `${pole}2`];
export const columnsOfPoles = (poles: Poles): Columns => ({
  left: column('A'),
  right: poles === 1 ? [] : column('B'),
});

/** A position by what it is called, its word on the face, and the throw that each pole touches; no throw where it touches none. */
export interface Stop {
  readonly called: string;
  readonly mark: string;
  readonly a?: 1 | 2;
  readonly b?: 1 | 2;
}

export const contactsOfStops = (stops: readonly Stop[], poles: Poles): readonly Contact[] =>
  stops.map(({ called, mark, a, b }, i) => ({
    position: i + 1,
    called,
    mark,
    joins: polesUpTo(poles).flatMap((pole) => {
      const n = pole === 'A' ? a : b;
      return n === undefined ? [] : [[`${pole}0`, `${pole}${n}`]];
    }),
  }));
