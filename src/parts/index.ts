/** All part kinds by name, and what the rest of the program asks of any part whatever its kind. */

import { remembered } from '../common/remembered.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import type {
  CircuitElement,
  ComponentFacts,
  Contact,
  ControlRole,
  LugRole,
  LugSpec,
  Moves,
  PickupPart,
  Seen,
  Terminal,
  Trait,
  Turning,
  UsualValue,
} from './kind.ts';
import * as all from './kinds.ts';
import type { Outline } from './outline.ts';
import type { Shape } from './shape.ts';

export { RESISTOR_TOLERANCE } from './resistor.ts';

type All = (typeof all)[keyof typeof all];
type Kinds = { readonly [D in All as D['kind']]: D };

/** Every kind by its name, in alphabetical order. */
export const kinds = Object.fromEntries(
  Object.values(all)
    .map((kind) => [kind.kind, kind] as const)
    // A bundler may keep the order of the exports, where Node sorts them by their names.
    .sort(([a], [b]) => (a < b ? -1 : 1)),
) as Kinds;

export type Kind = keyof Kinds;
export type Part = ReturnType<All['build']>;
export type Pickup = Extract<Part, PickupPart<string>>;
/** Names of a kind's lugs. */
export type LugName<K extends Kind> = (typeof kinds)[K]['lugs'][number]['name'];

/** What a kind answers about a part of its own; the table above guarantees that kind and part belong together. */
interface Answers {
  readonly what: string;
  readonly is: readonly Trait[];
  readonly mirrors: boolean;
  readonly turns?: Turning;
  readonly narrowTurns?: Turning;
  readonly lugs: readonly LugSpec[];
  readonly lugsOf?: (part: Part) => readonly LugSpec[];
  readonly elements: (part: Part) => readonly CircuitElement[];
  readonly contacts?: (part: Part) => readonly Contact[];
  readonly moves?: Moves;
  readonly component?: (part: Part) => ComponentFacts;
  readonly usual?: (part: Part) => readonly UsualValue[];
  readonly withOhms?: (part: Part, ohms: number, shaft?: string) => Part;
  readonly outline: (part: Part, caption: string | undefined, language: Language, narrow: boolean) => Outline;
  readonly face: (part: Part, seen: Seen) => readonly Shape[];
}
const answers = (part: Part): Answers => kinds[part.kind] as unknown as Answers;

export const whatIs = (part: Part): string => answers(part).what;
export const is = (part: Part, trait: Trait): boolean => answers(part).is.includes(trait);
export const isPickup = (part: Part): part is Pickup => is(part, 'pickup');
/** How a part may stand: quarter turns clockwise, and left for right before that. */
export interface Orientation {
  readonly turn: 0 | 1 | 2 | 3;
  readonly mirror: boolean;
}
const TURNS = { none: [0], halves: [0, 2], quarters: [0, 1, 2, 3], aside: [1, 3] } as const;

const ways = (part: Part, turns: Turning | 'none' = 'none'): readonly Orientation[] =>
  TURNS[turns].flatMap((turn): Orientation[] =>
    mayMirror(part)
      ? [
          { turn, mirror: false },
          { turn, mirror: true },
        ]
      : [{ turn, mirror: false }],
  );
const usualWays = remembered((part: Part) => ways(part, answers(part).turns));
const narrowWays = remembered((part: Part) => {
  const { turns, narrowTurns = turns } = answers(part);
  return ways(part, narrowTurns);
});
/** Every way a part of an outline may stand, the first of them the usual one: upright and unmirrored where it may. */
export const orientationsOf = (
  part: Part,
  { narrow }: Pick<Outline, 'narrow'> = {},
): readonly Orientation[] => (narrow ? narrowWays(part) : usualWays(part));
/** As what an arrangement seats it. */
export const seatOf = (part: Part): Trait | undefined => answers(part).is[0];
export const mayMirror = (part: Part): boolean => answers(part).mirrors;

export const lugsOf = (part: Part): readonly LugSpec[] => answers(part).lugsOf?.(part) ?? answers(part).lugs;
/** Names of the lugs with a role. */
export const lugsWith = (part: Part, role: LugRole): readonly string[] =>
  lugsOf(part).flatMap((lug) => (lug.role === role ? [lug.name] : []));
export const elementsOf = (part: Part): readonly CircuitElement[] => answers(part).elements(part);
/** Empty for a part that is not a switch. Always the same ones for a part, so that what is closed can be told by identity. */
export const contactsOf = remembered(
  (part: Part): readonly Contact[] => answers(part).contacts?.(part) ?? [],
);
/** What touches in a position, in the first one where none is given; absent for a part that is not a switch. */
export function contactAt(part: Part, position: number | undefined): Contact | undefined {
  const contacts = contactsOf(part);
  return contacts.find((contact) => contact.position === position) ?? contacts[0];
}
/** What a hand moves to choose a switch's position; absent where its positions' names say it. */
export const movesOf = (part: Part): Moves | undefined => answers(part).moves;
/** Absent for a part without component legs. */
export const componentOf = (part: Part): ComponentFacts | undefined => answers(part).component?.(part);
export const usualValuesOf = (part: Part): readonly UsualValue[] => answers(part).usual?.(part) ?? [];
/** The part with another resistance, all of it or what one of its shafts turns; as it is where its kind has none to change. */
export const withOhms = (part: Part, ohms: number, shaft?: string): Part =>
  answers(part).withOhms?.(part, ohms, shaft) ?? part;
/** Finding the type size that long labels fit in takes its time, and every stage asks. */
const outlines = remembered((_part: Part) => new Map<string, Outline>());

/** @param narrow whether in the form that takes least room across, where the kind has one */
export function outlineOf(
  part: Part,
  caption?: string,
  language: Language = DEFAULT_LANGUAGE,
  narrow = false,
): Outline {
  const known = outlines(part);
  const key = JSON.stringify([language, caption, narrow]);
  const outline = known.get(key) ?? answers(part).outline(part, caption, language, narrow);
  known.set(key, outline);
  return outline;
}
export const faceOf = (part: Part, seen: Seen): readonly Shape[] => answers(part).face(part, seen);

type ElementOf<E extends CircuitElement['kind']> = Extract<CircuitElement, { readonly kind: E }>;

/** The part's elements of one kind. */
export const elementsLike = <E extends CircuitElement['kind']>(
  part: Part,
  kind: E,
): readonly ElementOf<E>[] =>
  elementsOf(part).filter((element): element is ElementOf<E> => element.kind === kind);

/** What one shaft turns: all tracks of a pot, or of one with several shafts those of one. */
export interface Control {
  /** Unique in the kit: the part's name, with the shaft's behind it where the part has several. */
  readonly id: string;
  readonly part: string;
  /** What the kit says it is for. */
  readonly role?: ControlRole;
  /** Never empty. */
  readonly tracks: readonly ElementOf<'track'>[];
}

/** The control that turns a track. */
export const controlIdOf = (part: Part, { shaft }: ElementOf<'track'>): string =>
  shaft === undefined ? part.name : `${part.name}.${shaft}`;

/** The shaft that a control is, of a part with several. */
export const shaftOf = (id: string): string | undefined => id.split('.')[1];

/** The part that a control is of, or a switch's own name. */
export const partOfControl = (id: string): string => id.split('.')[0] ?? id;

/** The controls of a part, in the order of its tracks; none for one that has nothing to turn. */
export const controlsOf = remembered((part: Part): readonly Control[] => {
  const found = new Map<string, ElementOf<'track'>[]>();
  for (const track of elementsLike(part, 'track')) {
    const id = controlIdOf(part, track);
    found.set(id, [...(found.get(id) ?? []), track]);
  }
  return [...found].map(([id, tracks]) => {
    const role = tracks.find((track) => track.role !== undefined)?.role;
    return { id, part: part.name, tracks, ...(role === undefined ? {} : { role }) };
  });
});

/** A component that is a resistance and nothing else: that element. */
export function resistorOf(part: Part): ElementOf<'resistance'> | undefined {
  const [only, ...more] = is(part, 'component') ? elementsOf(part) : [];
  return only?.kind === 'resistance' && more.length === 0 ? only : undefined;
}

/** Every terminal of an element. */
export function terminalsOf(element: CircuitElement): readonly Terminal[] {
  switch (element.kind) {
    case 'coil':
      return [element.hot, element.return];
    case 'coupling':
      return [];
    case 'track':
      return [element.anticlockwise, element.wiper, element.clockwise];
    case 'resistance':
    case 'capacitance':
      return [element.a, element.b];
  }
}
