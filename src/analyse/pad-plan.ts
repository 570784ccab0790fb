/** What the padding choice is asked, and what it answers: plain data, one advice a pickup. */
import type { LugId } from '../circuit/circuit.ts';
import type { AvailableValues } from '../common/series.ts';
import type { Kit } from '../describe/kit.ts';
import type { Alternative, Cause } from './pad-alternatives.ts';
import type { Effect, Match } from './pad-effects.ts';

export interface PadOptions {
  /** `dc` unless told otherwise: what the trade means by “sees 250k”. */
  readonly match?: Match;
  /** E12 unless told otherwise. A stock holds one value at least, each from 0.1 Ω to 1 GΩ. */
  readonly series?: AvailableValues;
  /** A load this near its reference is left alone; a fraction, 0.05 unless told otherwise. */
  readonly near?: number;
}

/** An available value, and what it makes of the loads. */
export interface PadOption {
  readonly ohms: number;
  /** The matched load in the judged state, ohms, and its distance from the reference. */
  readonly load: number;
  readonly percent: number;
  /** Every pickup in every state with this value fitted. */
  readonly effects: readonly Effect[];
}

/** One pickup’s load in the state it was judged in. */
export interface Judged {
  readonly pickup: string;
  /** Index of the state it was judged in. */
  readonly state: number;
  /** The matched load there and its reference, ohms; an existing pad that is to be replaced is out. */
  readonly load: number;
  readonly reference: number;
  readonly percent: number;
  /** Pickups in series with it wherever it sounds: a resistor is chosen for them together. */
  readonly pair?: readonly string[];
}

export type PadAdvice =
  /** Near enough its reference already; `notInStock`: ohms of a resistor that loads it and is not in stock. */
  | (Judged & { readonly kind: 'fits'; readonly notInStock?: number })
  | (Judged & {
      readonly kind: 'pad';
      /** The name the part gets, and its two lugs; of a pad that it has already, its own. */
      readonly part: string;
      readonly from: LugId;
      readonly to: LugId;
      /** For a new one: what the drawing calls it, and whether its first leg passes a switch. */
      readonly label?: string;
      readonly sleeved: boolean;
      /** Pads that it has now: the first is to get the chosen value, any others are to be taken out. */
      readonly replaces: readonly string[];
      /** Whether the pad it has is the chosen one, so that there is nothing to do. */
      readonly present: boolean;
      /** Ohms of the pad that is there and fits, but is not in stock. */
      readonly notInStock?: number;
      /** The value that would meet the reference exactly. */
      readonly ideal: number;
      readonly chosen: PadOption;
      /** Loads that it takes over 10 % further from their reference, elsewhere. */
      readonly worse: readonly Effect[];
      readonly below?: PadOption;
      readonly above?: PadOption;
      readonly alternatives: readonly Alternative[];
    })
  /** Its load is below the reference, and a resistor more can only lower it. */
  | (Judged & {
      readonly kind: 'too-heavy';
      /** What loads it, heaviest first. */
      readonly causes: readonly Cause[];
      readonly alternatives: readonly Alternative[];
    })
  /** A resistor would help, but the nearest available leaves the load further off than it is now. */
  | (Judged & {
      readonly kind: 'no-stock';
      readonly ideal: number;
      readonly nearest: PadOption;
      readonly notInStock?: number;
    })
  /** It meets its reference without the pads it has. */
  | (Judged & {
      readonly kind: 'needless';
      readonly pads: readonly string[];
      readonly without: number;
      readonly alternatives: readonly Alternative[];
    })
  /** Its DC load fits, and no tone control loads it: that is how the circuit is, and no error of a value. */
  | (Judged & {
      readonly kind: 'no-tone';
      /** Whether the kit has a tone control that works on other pickups. */
      readonly others: boolean;
      /** The available value that would stand in for the tone control, ohms. */
      readonly standIn?: number;
      readonly alternatives: readonly Alternative[];
    })
  /** It is in series, wherever it sounds, with a pickup named before it, which has the advice for both. */
  | (Judged & { readonly kind: 'pair'; readonly first: string })
  /** It is joined for good to a pickup named before it, whose pad it shares: one pad cannot be chosen for both. */
  | (Judged & { readonly kind: 'shares'; readonly pads: readonly string[]; readonly owner: string })
  /** Not even a short to ground brings the load down: its return is not at ground. */
  | (Judged & { readonly kind: 'out-of-reach' })
  | { readonly kind: 'silent'; readonly pickup: string };

export interface PadPlan {
  readonly match: Match;
  readonly series: AvailableValues;
  readonly advice: readonly PadAdvice[];
  /** The kit with every chosen pad fitted; the very kit given when there is none. */
  readonly kit: Kit;
  /** All chosen pads together, in every state. */
  readonly effects: readonly Effect[];
}
