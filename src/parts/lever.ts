/** What the lever switches of this folder share: two poles, three throws, lugs A0–A3 and B0–B3. */
import type { Contact, LugSpec } from './kind.ts';

const POLES = ['A', 'B'] as const;

/** Pole letter, then throw number; 0 is the common. */
export const leverLugs: readonly LugSpec[] = POLES.flatMap((pole) =>
  [0, 1, 2, 3].map((n): LugSpec => ({ name: `${pole}${n}`, role: n === 0 ? 'common' : 'throw', pole })),
);

/** Contacts from the throws each stop touches, the same on both poles; position 1 first. */
export const leverContacts = (throws: readonly (readonly number[])[]): readonly Contact[] =>
  throws.map((touched, i) => ({
    position: i + 1,
    joins: POLES.map((pole) => [0, ...touched].map((n) => `${pole}${n}`)),
  }));
