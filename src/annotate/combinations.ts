/** Settings of several switches in as few words as they take: `1 or 2 of the first with 3 of the second`. */

import type { Circuit, Setting, State } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { positionWords } from '../messages/words.ts';
import { contactAt } from '../parts/index.ts';

/** By switch its positions; every one of a switch is meant with every one of the others. */
type Combination = readonly (readonly number[])[];

/** Settings gathered into combinations: two that differ in one switch only become one, the last switch first. */
export function combinationsOf(settings: readonly Pick<Setting, 'positions'>[]): readonly Combination[] {
  let all: readonly Combination[] = settings.map(({ positions }) =>
    Object.values(positions).map((position) => [position]),
  );
  for (let at = (all[0]?.length ?? 0) - 1; at >= 0; at--) all = gathered(all, at);
  return all;
}

function gathered(all: readonly Combination[], at: number): readonly Combination[] {
  const alike = new Map<string, Combination>();
  for (const one of all) {
    const key = JSON.stringify(one.map((positions, i) => (i === at ? [] : positions)));
    const known = alike.get(key);
    const own = nth(one, at);
    alike.set(
      key,
      known ? known.map((positions, i) => (i === at ? [...positions, ...own] : positions)) : one,
    );
  }
  return [...alike.values()];
}

/** The switches' positions in some states, short: by switch where each goes with each. */
export const badgeOf = (states: readonly State[]): string =>
  combinationsOf(states)
    .map((combination) => combination.map((positions) => positions.join('/')).join('·'))
    .join(', ');

/** The same in the words on the switches' faces; of a blend in those for where it stands. */
export const combinationsIn = (
  { kit, states }: Circuit,
  some: readonly State[],
): readonly (readonly string[])[] => {
  const ids = Object.keys(some[0]?.positions ?? {});
  const wordOf = (id: string, position: number): string => {
    const part = kit.parts.find(({ name }) => name === id);
    const mark = part && contactAt(part, position)?.mark;
    const blend = states.find(
      ({ turned, positions }) => turned?.[id] !== undefined && positions[id] === position,
    );
    const called = mark ?? blend?.positionNames[id];
    return called === undefined ? String(position) : positionWords(kit.language, called);
  };
  return combinationsOf(some).map((combination) =>
    combination.map((positions, i) => positions.map((one) => wordOf(nth(ids, i), one)).join('/')),
  );
};
