/** The typed kit: what a description becomes once it is read, checked and its defaults are filled in. */
import { must } from '../common/must.ts';
import type { KeyPath } from '../common/problem.ts';
import type { Sourced } from '../common/units.ts';
import type { Language } from '../messages/language.ts';
import type { Part } from '../parts/index.ts';
import type { PartsList, Substitution } from './stock.ts';

/**
 * The five ways two lugs are joined. A drawing, a step and a cut list treat each differently: **wire** (cut and
 * stripped), **leg** (a component's own), **jumper** (short, between lugs of one part), **bend** (a lug bent back onto
 * its own case), **braid** (a shielded lead's screen).
 */
export const jointKinds = ['wire', 'leg', 'jumper', 'bend', 'braid'] as const;
export type JointKind = (typeof jointKinds)[number];

/** Which side a drawing is seen from. */
export const views = ['solder-side', 'component-side'] as const;
export type View = (typeof views)[number];

/** The player's hand that an instrument is built for. */
export const hands = ['right', 'left'] as const;
export type Hand = (typeof hands)[number];

/** One end of a joint: a part's name and one of its lugs. */
export interface End {
  readonly part: string;
  readonly lug: string;
}

export interface Joint {
  readonly kind: JointKind;
  readonly from: End;
  readonly to: End;
  /** IEC 60757 code of the insulation, when given: `WH`, `GNYE`. */
  readonly colour?: string;
  /** Cut length in metres, when given. */
  readonly length?: number;
  /** Step of the soldering, when given in place of the one worked out. */
  readonly step?: number;
  /** Index in the description's `joints`, so that a problem can point at it. */
  readonly index: number;
}

/** What stands between the harness and the listener, for the response. */
export interface OutputLoad {
  /** Farads, of the whole cable. */
  readonly cable: Sourced;
  /** Of the cable's capacitance, a fraction. */
  readonly cableTolerance: Sourced;
  /** Ohms, input of the amplifier. */
  readonly amplifier: Sourced;
  /** Hertz, where signal load is taken. */
  readonly frequency: Sourced;
}

/** Positions of switches in which something is intended; every switch named must be in one of its positions. */
export interface IntendedAt {
  /** By switch its positions, by number or name as they are written; without a switch, every setting is meant. */
  readonly positions: Readonly<Record<string, readonly (string | number)[]>>;
  /** Where it is written. */
  readonly path: KeyPath;
}

/** What is intended, so that it is neither an error nor a warning. */
interface Intended {
  readonly silent: readonly IntendedAt[];
  readonly outOfPhase: readonly IntendedAt[];
}

export interface Kit {
  /** Lower-case words joined by hyphens; names files and prefixes every id in the drawing. */
  readonly id: string;
  readonly title: string;
  /** What the circuit is for, in one or two sentences, when given. */
  readonly about?: string;
  /** Name of an arrangement in `layouts/`. */
  readonly arrangement: string;
  readonly view: View;
  readonly hand: Hand;
  /** That customers are spoken to in. */
  readonly language: Language;
  /** Name of a page format in `layouts/pages/`, when given. */
  readonly page?: string;
  /** In the order written; declaration order breaks every tie. */
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly outputLoad: OutputLoad;
  /** Ohms of the resistors the workshop has, when given; never empty. */
  readonly stock?: readonly number[];
  /** The workshop's parts list, when there is one. */
  readonly list?: PartsList;
  /** Parts that are another item of the list than the kit asks for, when there are any. */
  readonly substitutions?: readonly Substitution[];
  /** Silent and out-of-phase positions that are intended, when any are given. */
  readonly intended?: Intended;
}

/**
 * A kit as far as it could be read, for the checks that come after reading: they go on with what is sound, and keep
 * quiet about what hangs on a part or joint that is not.
 */
export interface Draft extends Kit {
  /** Parts whose description is faulty: their names count, any lug of theirs passes. Not among `parts`. */
  readonly opaque: readonly string[];
  /** Joints that could not be read, and so may be the very ones a check would miss. */
  readonly unread: number;
}

export const findPart = ({ parts }: Pick<Kit, 'parts'>, name: string): Part | undefined =>
  parts.find((part) => part.name === name);

/** @throws where the kit has no part of that name, which the caller knows it has */
export const partNamed = (kit: Pick<Kit, 'parts'>, name: string): Part =>
  must(findPart(kit, name), `part ${name}`);

/** The same kit, worded in another language where one is given. */
export const inLanguage = (kit: Kit, language: Language | undefined): Kit =>
  language === undefined || language === kit.language ? kit : { ...kit, language };

/** What the drawing calls a part. */
export const labelOf = (kit: Pick<Kit, 'parts'>, name: string): string => findPart(kit, name)?.label ?? name;
