/**
 * A leaflet as plain data, before it is a page of anything: what stands in it and in which order, not how it looks. Texts are
 * plain text; whoever writes them into a format escapes them there.
 */
import type { Language } from '../messages/language.ts';

/** A drawing as large as it is printed, and what it shows in words, for those who cannot see it. */
export interface Picture {
  /** The text of an SVG file. */
  readonly svg: string;
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  readonly alt: string;
}

/** What stands in a table's cell: text, a name with what is said of it below, a box to tick, or a picture. */
export type Cell =
  | { readonly is: 'text'; readonly text: string; readonly strong?: true }
  | { readonly is: 'said'; readonly name: string; readonly text: string }
  | { readonly is: 'tick' }
  | { readonly is: 'picture'; readonly picture: Picture };

/** How wide a column is: as its contents need, or a share of what is left. */
interface Column {
  readonly head: string;
  /** Of the width that is left over, as a number to compare with the other columns’; as wide as its contents where it is absent. */
  readonly share?: number;
  readonly align?: 'right';
}

/** A picture, and what is said of it. */
export interface Shown {
  readonly picture: Picture;
  /** Of the width, as a fraction; the picture is no wider. */
  readonly share: number;
  readonly blocks: readonly Block[];
}

/** Every table has a head, which is repeated on each page; no row is divided. */
export interface Table {
  readonly is: 'table';
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
}

export type Block =
  | {
      readonly is: 'heading';
      readonly level: 1 | 2;
      readonly text: string;
    }
  | {
      readonly is: 'paragraph';
      readonly text: string;
      readonly small?: true;
      readonly strong?: true;
      /** With a box to tick in front. */
      readonly tick?: true;
    }
  | { readonly is: 'list'; readonly items: readonly string[]; readonly tick?: true }
  | Table
  | {
      readonly is: 'figure';
      readonly picture: Picture;
      /** On one page with the beginning of what comes next. */
      readonly held?: true;
    }
  /** A page of its own with one picture, the page turned round where that is larger. */
  | {
      readonly is: 'sheet';
      readonly heading: string;
      /** Above the picture. */
      readonly caption?: string;
      readonly picture: Picture;
      /** Below the picture: what its lines and signs mean. */
      readonly key?: Picture;
      readonly turned: boolean;
    }
  /** Set apart and kept together: cautions, a test. */
  | { readonly is: 'box'; readonly role: 'caution' | 'test'; readonly blocks: readonly Block[] }
  /** A picture and what is said of it, side by side and on one page; one below the other where the picture's share is 1. */
  | ({ readonly is: 'beside' } & Shown)
  /** Pictures in rows of two, each with what is said of it below. */
  | { readonly is: 'pairs'; readonly items: readonly Shown[] }
  /** On one page, the next one if need be; only what no page has room for is divided. */
  | { readonly is: 'together'; readonly blocks: readonly Block[] }
  /**
   * Steps and what stands between them. All their drawings are as many times larger than given as leaves them with their tests and takes the fewest pages, and no more
   * than so many times.
   */
  | { readonly is: 'steps'; readonly largest: number; readonly blocks: readonly Block[] }
  /**
   * Only in steps: what is soldered, and the tests of that, all on one page, the next one if need be. Where no page has room for both, what is soldered stays
   * whole, the tests follow it, none divided, and the heading stands above them on each of their pages.
   */
  | {
      readonly is: 'step';
      readonly blocks: readonly Block[];
      readonly heading: string;
      readonly tests: readonly Shown[];
      /** Stands with the last test. */
      readonly closing: readonly Block[];
    }
  /** The list of headings with their pages. */
  | { readonly is: 'contents'; readonly heading: string }
  /** Lines to write on, five at least, and more down to the end of the page; there the last words. */
  | { readonly is: 'lines'; readonly closing?: string };

/** Who the leaflet is from. */
export interface Sender {
  readonly name: string;
  readonly address?: string;
  /** Inked headings; a colour as `#0b6e99`. */
  readonly colour?: string;
  readonly logo?: Picture;
}

/** Paper that a leaflet is made for; millimetres. */
export interface Paper {
  readonly width: number;
  readonly height: number;
  /** Blank on each side; running title and page number stand in it. */
  readonly margin: number;
}

/** Paper so narrow, as half of an A5 sheet is, has no room for much beside anything, millimetres. */
const NARROW = 120;
export const isNarrow = ({ width }: Pick<Paper, 'width'>): boolean => width < NARROW;

export interface Leaflet {
  readonly paper: Paper;
  /** Whether `isNarrow` says so of its paper. */
  readonly narrow: boolean;
  /** All pages have the same size: none is turned round. */
  readonly bound: boolean;
  /** By these words a file is known to be a leaflet of a kit, and may be written over by another version of it. */
  readonly generator: string;
  readonly language: Language;
  /** Of the document, as a reader's window shows it. */
  readonly title: string;
  /** Above the title: what kind of paper this is. */
  readonly kind: string;
  /** The kit in words. */
  readonly heading: string;
  /** What it is for, the kit's id, its revision. */
  readonly lines: readonly string[];
  /** On the first page, as large as the room that is left there; not printed where that is too little. */
  readonly cover: Picture;
  /** At the head of every page but the first, on either side. */
  readonly running: string;
  readonly revision: string;
  readonly sender?: Sender;
  readonly blocks: readonly Block[];
}

export const text = (content: string): Cell => ({ is: 'text', text: content });
export const strong = (content: string): Cell => ({ is: 'text', text: content, strong: true });
export const TICK: Cell = { is: 'tick' };
