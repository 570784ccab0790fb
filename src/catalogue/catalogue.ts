/** A workshop's catalogue: which kits it sells, and what is made of each. */

import type { Written } from '../describe/chain.ts';
import type { Workshop } from '../describe/workshop.ts';
import type { Language } from '../messages/language.ts';

/** What can be made of a kit; `drawing` is its sheet, the rest are named as the commands that make them alone. */
export const outputs = [
  'drawing',
  'png',
  'positions',
  'steps',
  'inline',
  'response',
  'loads',
  'leaflet',
  'booklet',
  'shop',
] as const;
/** The folder of shop pages among the outputs. */
export const SHOP_FOLDER = 'shop';
export type Output = (typeof outputs)[number];

/** A member of a family: the family by its place in the catalogue's file, counted from 0, and by axis the value it has. */
export interface Member {
  readonly family: number;
  /** The pattern of the family's ids. */
  readonly pattern: string;
  readonly values: Readonly<Record<string, string>>;
}

/** One kit of a catalogue, and what is to be made of it. */
export interface Job {
  /** The kit's id, which names its files; no two jobs of a catalogue have the same. */
  readonly id: string;
  /** The file that describes it; for a member of a family the catalogue's own. */
  readonly file: string;
  /** All files that say this id, where there are several: the kit is then refused, since nobody knows which of them it is. */
  readonly clash?: readonly string[];
  /** The description of a member of a family, which extends a kit; absent where the file is the kit. */
  readonly description?: Written;
  /** Which member of which family it is. */
  readonly member?: Member;
  /** In place of those that the kit names. */
  readonly arrangement?: string;
  readonly page?: string;
  readonly language?: Language;
  /** Printed beside the revision mark: `2026-11-30`. */
  readonly date?: string;
  /** Who its leaflet and its shop pages are from. */
  readonly workshop?: Workshop;
  /** Address of the folder of its shop pages once it is uploaded, ending in a slash. */
  readonly base?: string;
  readonly outputs: readonly Output[];
}

export interface Catalogue {
  /** The workshop's folder, and the catalogue's file in it. */
  readonly folder: string;
  readonly file: string;
  /** Where outputs go to. */
  readonly out: string;
  /** The parts list's file, where there is one. */
  readonly parts?: string;
  /** A currency by its three letters (ISO 4217), for prices. */
  readonly currency?: string;
  readonly jobs: readonly Job[];
}
