/**
 * The contract of a part kind. One kind, one file: what a person may write about it, its lugs, its contact table, its
 * electrical elements, its outline, how it looks, and what it is to the rest of the program. To add a kind is to add a file
 * and name it in `index.ts`: nothing outside this folder goes by the name of a kind or of a lug.
 */

import type { z } from 'zod';
import type { Sourced, Unit } from '../common/units.ts';
import type { Language } from '../messages/language.ts';
import type { Outline } from './outline.ts';
import type { Shape } from './shape.ts';

/** What a lug is for; drawing and checks go by the role, never by the lug's name. `output`: a jack's tip, and its ring if it has one. */
export type LugRole =
  | 'hot'
  | 'return'
  /** The end of a coil that is soldered to the end of another coil of the same pickup where they are in series. */
  | 'link'
  /** The screen round a pickup's leads. */
  | 'shield'
  | 'anticlockwise'
  | 'wiper'
  | 'clockwise'
  | 'case'
  | 'common'
  | 'throw'
  | 'leg'
  | 'output'
  | 'sleeve'
  | 'point';

/** A place to solder to. `pole` names the switch pole it belongs to. */
export interface LugSpec<N extends string = string> {
  readonly name: N;
  readonly role: LugRole;
  readonly pole?: string;
  /** How many joints it has room for; `LUG_ROOM` where it does not say. */
  readonly room?: number;
}

/** More than three wires on a lug neither hold well nor can be told apart. Common practice, no source. */
export const LUG_ROOM = 3;

/** Resistance law of a track over rotation. IEC 60393 gives no midpoint for the log law, so it is a parameter. */
export type Taper = 'linear' | 'log' | 'reverse-log';

/**
 * How the resistance of a track is spread over its rotation: by a taper, or, as in a gang of a blend pot, evenly over the
 * anticlockwise or the clockwise half, with none over the other half.
 */
export type TrackLaw = Taper | 'lower-half' | 'upper-half';

/** An end of a rotation, seen from the shaft. */
export const trackEnds = ['clockwise', 'anticlockwise'] as const;
export type TrackEnd = (typeof trackEnds)[number];

/** What a control is for. */
export const controlRoles = ['volume', 'tone', 'blend', 'other'] as const;
export type ControlRole = (typeof controlRoles)[number];

/** A terminal of an element: a lug's name, or `#name` for a node inside the part. */
export type Terminal = string;

/**
 * Which way the wire of a coil runs from its hot end to its return, seen from the strings, and which pole of its magnet faces
 * them. Hum changes sign with the first, the strings' signal with each of the two; common practice, no source.
 */
export const winds = ['clockwise', 'anticlockwise'] as const;
export type Wind = (typeof winds)[number];
export const polarities = ['north', 'south'] as const;
export type Polarity = (typeof polarities)[number];

/**
 * What a part is electrically. Tolerances are fractions (0.2 for ±20 %). Of a pickup with several coils the return of each is soldered
 * to the hot end of the next where they are in series.
 */
export type CircuitElement =
  | {
      /** A winding: its source, `resistance` and `inductance` in series, `capacitance` and core loss across all three. */
      readonly kind: 'coil';
      readonly id: string;
      /** In words, where the pickup has several: `coil A`. */
      readonly called?: string;
      /** Volts of the signal per volt that the whole pickup gives in series, 1 by default; less than 0 where made the opposite way to the first coil. */
      readonly signal?: number;
      /** Volts of hum, 1 by default; −1 where wound the opposite way to the first coil, 0 where two coils inside cancel it. */
      readonly hum?: number;
      /** The source's positive side faces `hot`. */
      readonly hot: Terminal;
      readonly return: Terminal;
      readonly resistance: Sourced;
      readonly inductance: Sourced;
      readonly capacitance: Sourced;
      readonly coreLoss?: Sourced;
      /** Of resistance, inductance and capacitance, in this order. */
      readonly tolerances: readonly [Sourced, Sourced, Sourced];
    }
  | {
      /** Mutual inductance M of two coils of the part, as `factor` k: M = k √(La Lb). More than 0 where currents from hot to return aid. */
      readonly kind: 'coupling';
      readonly id: string;
      readonly coils: readonly [string, string];
      readonly factor: Sourced;
    }
  | {
      readonly kind: 'track';
      readonly id: string;
      readonly anticlockwise: Terminal;
      readonly wiper: Terminal;
      readonly clockwise: Terminal;
      readonly ohms: Sourced;
      readonly tolerance: Sourced;
      readonly taper: Sourced<TrackLaw>;
      /** Share of the track between the anticlockwise end and the wiper at half rotation, for a log law. */
      readonly midpoint: Sourced;
      /** At this end the wiper leaves the track and touches nothing. */
      readonly noLoad?: TrackEnd;
      /** The shaft that turns it, of a part with several; tracks of one shaft turn together. */
      readonly shaft?: string;
      /** What the kit says the control is for. */
      readonly role?: ControlRole;
    }
  | {
      readonly kind: 'resistance';
      readonly id: string;
      readonly a: Terminal;
      readonly b: Terminal;
      readonly ohms: Sourced;
      readonly tolerance: Sourced;
    }
  | {
      readonly kind: 'capacitance';
      readonly id: string;
      readonly a: Terminal;
      readonly b: Terminal;
      readonly farads: Sourced;
      readonly tolerance: Sourced;
    };

/** One position of a switch: the groups of its lugs that touch. */
export interface Contact {
  readonly position: number;
  /** What the position is called, where nobody counts them: `pulled out`; and in a word on the switch's face: `out`. */
  readonly called?: string;
  readonly mark?: string;
  /** The position is there to silence the output, as a pressed kill button: no output in it is not an error. */
  readonly silent?: true;
  readonly joins: readonly (readonly string[])[];
}

/**
 * How the positions of a switch are reached, and so how they are counted:
 *
 * - **lever**: along a slot, position 1 at the end next to the bridge (a convention of the trade)
 * - **toggle**: a short lever that points to its position
 * - **slider**: slides to its position
 * - **shaft**: turns, position 1 fully anticlockwise seen from the shaft (common practice, no source)
 */
export type Moves = 'lever' | 'toggle' | 'slider' | 'shaft';

/** What every part carries, whatever its kind. */
export interface PartBase<K extends string = string> {
  readonly kind: K;
  /** The key in the description; unique in the kit. */
  readonly name: string;
  /** What the drawing calls it. */
  readonly label: string;
  /** Of the item of the workshop's parts list that it is, where there is a list and the item is in it. */
  readonly code?: string;
  /** Of a kit for left-handed players: a control's full end is then the anticlockwise one. */
  readonly leftHanded?: true;
}

/** The plain harness a pickup was made for: one volume pot, one tone pot. Ohms. */
interface ReferenceHarness {
  readonly volume: Sourced;
  readonly tone: Sourced;
}

export interface PickupPart<K extends string> extends PartBase<K> {
  /** DC resistance of the whole pickup at 20 °C, ohms. */
  readonly resistance: Sourced;
  /** Inductance of the whole pickup, henries. */
  readonly inductance: Sourced;
  /** Winding and lead capacitance across the whole pickup, farads. */
  readonly capacitance: Sourced;
  /** Core loss as a resistor across the whole pickup, ohms; absent when not given. */
  readonly coreLoss?: Sourced;
  /** Tolerances of the winding's resistance, of inductance and of capacitance, fractions. */
  readonly tolerance: Sourced;
  readonly inductanceTolerance: Sourced;
  readonly capacitanceTolerance: Sourced;
  /** Ohms of the winding that the kind's usual inductance belongs to. */
  readonly usualResistance: number;
  readonly reference: ReferenceHarness;
  /** How the coil is made; of several, the first. Absent when not given. */
  readonly wind?: Wind;
  readonly polarity?: Polarity;
}

/**
 * What a part can be to the rest of the program. A part may be several of these; an arrangement seats it as the first that its
 * kind names.
 *
 * - **pickup**: has a coil that gives the signal, and the fields of `PickupPart`
 * - **switch**: has positions, each with its contacts
 * - **pot**: has a track and a wiper
 * - **component**: wired by its legs
 * - **jack**: where the signal leaves
 * - **ground-point**: grounded metal outside the harness
 */
export const traits = ['pickup', 'switch', 'pot', 'component', 'jack', 'ground-point'] as const;
export type Trait = (typeof traits)[number];

/** What a component shows of itself, so that the right one is picked up, and which of its legs get sleeving. */
export interface ComponentFacts {
  /** Its value as people read it: `470 kΩ`. */
  readonly value: string;
  /** Colour bands, IEC 60757 codes, first to last. */
  readonly bands?: readonly string[];
  /** What is printed on its body. */
  readonly print?: string;
  /** Names of the sleeved legs. */
  readonly sleeved: readonly string[];
}

/** A value that people mistype, and what it usually is, both ends included; SI units. */
export interface UsualValue {
  /** The field it is written in; `a.value` where that is one in another. */
  readonly field: string;
  /** With its article: `a pot`. */
  readonly what: string;
  readonly value: number;
  readonly unit: Exclude<Unit, 'henry'>;
  readonly least: number;
  readonly most: number;
}

/** What is wrong with a part as it is written, beyond what its fields can say one by one. */
export interface FieldIssue {
  /** From the part: `['positions', 2]`. */
  readonly path: readonly (string | number)[];
  readonly why: string;
  readonly remedy: string;
}

/** What a face depends on besides its part. */
export interface Seen {
  readonly outline: Outline;
  /** That the outline is worded in; English where it does not say. */
  readonly language?: Language;
  /** Lugs joined by the contacts that are drawn closed. */
  readonly closed: readonly (readonly string[])[];
  /** Rotation of each track by its id, 0 to 1; where its kind rests by itself where it does not say. */
  readonly turned?: Readonly<Record<string, number>>;
}

/** Half turns only, or quarters too; `aside`: by a quarter to either side, never upright. */
export type Turning = 'halves' | 'quarters' | 'aside';

/** The contract itself. `S` is what may be written, `P` what the rest of the program reads, `N` the names of the lugs. */
export interface PartKind<
  K extends string,
  S extends z.ZodRawShape,
  P extends PartBase<K>,
  N extends string = string,
> {
  readonly kind: K;
  /** In words, for messages: `single coil pickup`. */
  readonly what: string;
  /** Only a part with the fields of `PickupPart` may be a pickup. */
  readonly is: readonly Trait[];
  /** Whether it may be drawn left for right; not where the order of its lugs tells the side it is seen from. */
  readonly mirrors: boolean;
  /** By what it may be turned where an arrangement leaves it open; not at all where it does not say. */
  readonly turns?: Turning;
  /** The same in the form for a narrow column; as elsewhere where it does not say. */
  readonly narrowTurns?: Turning;
  readonly fields: S;
  readonly build: (base: PartBase<K>, written: z.output<z.ZodObject<S>>) => P;
  /** What is wrong with what is written; nothing where it does not say. */
  readonly validate?: (written: z.output<z.ZodObject<S>>) => readonly FieldIssue[];
  readonly lugs: readonly LugSpec<N>[];
  /** Where the lugs hang on the part, as of a switch that the kit describes; `lugs` is empty then. */
  readonly lugsOf?: (part: P) => readonly LugSpec[];
  readonly elements: (part: P) => readonly CircuitElement[];
  /** Switches only. */
  readonly contacts?: (part: P) => readonly Contact[];
  /** Switches only: what a hand moves to choose a position; absent where the positions' names say it, or the kit's own words. */
  readonly moves?: Moves;
  /** Components only. */
  readonly component?: (part: P) => ComponentFacts;
  readonly usual?: (part: P) => readonly UsualValue[];
  /** The same part with another resistance, ohms, or with that of one of its shafts; where resistance is what it is about. */
  readonly withOhms?: (part: P, ohms: number, shaft?: string) => P;
  /** Size, lugs and text, seen from the solder side; `caption` is what the annotation says beside the part, `narrow` asks for the kind's narrow form. */
  readonly outline: (part: P, caption: string | undefined, language: Language, narrow?: boolean) => Outline;
  /** What it looks like between its lugs' tags and under its labels. */
  readonly face: (part: P, seen: Seen) => readonly Shape[];
}

/** Checks a kind against the contract while keeping its exact types. */
export const definePart = <
  K extends string,
  S extends z.ZodRawShape,
  P extends PartBase<K>,
  const N extends string,
>(
  kind: PartKind<K, S, P, N>,
): PartKind<K, S, P, N> => kind;

/** A part made by the program itself, by default labelled with its name. */
export const make = <K extends string, S extends z.ZodRawShape, P extends PartBase<K>, N extends string>(
  { kind, build }: PartKind<K, S, P, N>,
  { name, label = name }: { readonly name: string; readonly label?: string },
  written: z.output<z.ZodObject<S>>,
): P => build({ kind, name, label }, written);
