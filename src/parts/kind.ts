/**
 * The contract of a part kind. One kind, one file: what a person may write about it, its lugs, its contact
 * table, its electrical elements. To add a kind is to add a file and name it in `index.ts`.
 */
import type { z } from 'zod';
import type { Sourced } from '../common/units.ts';

/** What a lug is for; drawing and faults go by the role, never by the lug's name. */
export type LugRole =
  | 'hot'
  | 'return'
  | 'anticlockwise'
  | 'wiper'
  | 'clockwise'
  | 'case'
  | 'common'
  | 'throw'
  | 'leg'
  | 'tip'
  | 'sleeve'
  | 'point';

/** A place to solder to. `pole` names the switch pole it belongs to. */
export interface LugSpec {
  readonly name: string;
  readonly role: LugRole;
  readonly pole?: string;
}

/** Resistance law of a track over rotation. IEC 60393 gives no midpoint for the log law, so it is a parameter. */
export type Taper = 'linear' | 'log' | 'reverse-log';

/** A terminal of an element: a lug's name, or `#name` for a node inside the part. */
export type Terminal = string;

/** What a part is electrically. Tolerances are fractions (0.2 for ±20 %). */
export type Element =
  | {
      /** A winding: its source, `resistance` and `inductance` in series, `capacitance` and core loss across all three. */
      readonly kind: 'coil';
      readonly id: string;
      /** The source's positive side faces `hot`. */
      readonly hot: Terminal;
      readonly return: Terminal;
      readonly resistance: Sourced;
      readonly inductance: Sourced;
      readonly capacitance: Sourced;
      readonly coreLoss?: Sourced;
    }
  | {
      readonly kind: 'track';
      readonly id: string;
      readonly anticlockwise: Terminal;
      readonly wiper: Terminal;
      readonly clockwise: Terminal;
      readonly ohms: Sourced;
      readonly tolerance: Sourced;
      readonly taper: Sourced<Taper>;
      /** Share of the track between the anticlockwise end and the wiper at half rotation, for a log law. */
      readonly midpoint: Sourced;
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

/** One setting of a switch: the groups of its lugs that touch. */
export interface Contact {
  readonly position: number;
  readonly joins: readonly (readonly string[])[];
}

/** What every part carries, whatever its kind. */
export interface PartBase<K extends string = string> {
  readonly kind: K;
  /** The key in the description; unique in the kit. */
  readonly name: string;
  /** What the drawing calls it. */
  readonly label: string;
}

/** The contract itself. `S` is what may be written, `P` what the rest of the program reads. */
export interface PartKind<K extends string, S extends z.ZodRawShape, P extends PartBase<K>> {
  readonly kind: K;
  /** In words, for messages: `single coil pickup`. */
  readonly what: string;
  readonly fields: S;
  readonly build: (base: PartBase<K>, written: z.output<z.ZodObject<S>>) => P;
  readonly lugs: (part: P) => readonly LugSpec[];
  readonly elements: (part: P) => readonly Element[];
  /** Switches only. */
  readonly contacts?: (part: P) => readonly Contact[];
}

/** Checks a kind against the contract while keeping its exact types. */
export const definePart = <K extends string, S extends z.ZodRawShape, P extends PartBase<K>>(
  kind: PartKind<K, S, P>,
): PartKind<K, S, P> => kind;
