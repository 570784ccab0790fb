/** What has positions to choose, as cards tell them: switches, and blends in the middle and at their ends. */

import type { Circuit } from '../circuit/circuit.ts';
import { labelOf } from '../describe/kit.ts';
import type { Language } from '../messages/language.ts';
import { positionWords } from '../messages/words.ts';
import { contactsOf, type Part, partOfControl } from '../parts/index.ts';

/** One of them, in the order of a badge's numbers: its label, and what those positions are called that have a name. */
export interface Positioned {
  readonly label: string;
  /** `1 pushed in`. */
  readonly called: readonly string[];
  /** Nothing is written on its face, as on a blend's. */
  readonly plain?: true;
}

/** The positions of a switch that have a name. */
export const calledOf = (part: Part, language: Language): readonly string[] =>
  contactsOf(part).flatMap(({ position, called }) =>
    called === undefined ? [] : [`${position} ${positionWords(language, called)}`],
  );

/** Switches and blends, as the settings name them. */
export const positionedIn = ({ kit, states }: Circuit): readonly Positioned[] =>
  Object.keys(states[0]?.positions ?? {}).map((name): Positioned => {
    const called = new Map(
      states.flatMap(({ positions, positionNames }) =>
        positionNames[name] === undefined
          ? []
          : [
              [
                positions[name],
                `${positions[name]} ${positionWords(kit.language, positionNames[name])}`,
              ] as const,
            ],
      ),
    );
    return {
      label: labelOf(kit, partOfControl(name)),
      called: [...called.values()],
      ...(states[0]?.turned?.[name] === undefined ? {} : { plain: true as const }),
    };
  });

/** Where the blends stand in some states: `Blend at centre`; nothing of one that stands in several places there. */
export function blendText({ kit, states }: Circuit, indices: readonly number[]): string {
  const own = indices.flatMap((index) => states[index] ?? []);
  const blends = Object.keys(own[0]?.turned ?? {}).flatMap((id) => {
    const [name, ...more] = new Set(own.map(({ positionNames }) => positionNames[id]));
    return more.length === 0
      ? [`${labelOf(kit, partOfControl(id))} ${positionWords(kit.language, name ?? '')}`]
      : [];
  });
  return blends.join(', ');
}
