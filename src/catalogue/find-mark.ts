/** Finds the kit that a revision mark stands for: in the record of what was built, or else in the drawings themselves. */
import { readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { editDistance } from '../common/nearest.ts';
import { idOfKit } from '../draw/drawing-name.ts';
import { isMark, tidyMark } from '../draw/mark.ts';
import { isBytes, LARGEST_DRAWING, readBytes } from '../files/read-file.ts';
import { readEntries } from './build/manifest.ts';
import type { KitMark } from './marks.ts';

/** A drawing that bears a mark. */
export interface Marked {
  readonly mark: string;
  /** Of the kit; from a drawing alone, the drawing's name. */
  readonly kit: string;
  readonly title?: string;
  /** What the kit is described in, from the workshop's folder, where the record tells. */
  readonly source?: string;
  /** The file that bears it, from the folder of outputs. */
  readonly file: string;
}

interface Found {
  readonly found: readonly Marked[];
  /** Kits that had it once, where no drawing bears it. */
  readonly earlier: readonly KitMark[];
  /** Where there is none: those that differ from it the least. */
  readonly near: readonly (Marked | KitMark)[];
  /** How many drawings with a mark there are. */
  readonly looked: number;
}

/** Differences to a mark that was probably meant: two letters misread, or exchanged. */
const NEAR = 2;
const MOST_NEAR = 3;

/** A kit of the catalogue, and where it is described. */
interface Described {
  readonly id: string;
  readonly source: string;
}

/**
 * @param written a mark as it was read from paper
 * @param out the folder of drawings
 * @param kits those that a drawing without a record may be of
 * @param kept marks that were ever built
 */
export function findMark(
  written: string,
  out: string,
  kits: readonly Described[] = [],
  kept: readonly KitMark[] = [],
): Found {
  const wanted = tidyMark(written);
  const all = markedIn(out, kits);
  const found = all.filter(({ mark }) => mark === wanted).map((one) => titled(one, out, kept));
  const earlier = found.length > 0 ? [] : kept.filter(({ mark }) => mark === wanted);
  const near = [...all, ...kept]
    .map((one) => ({ one, edits: editDistance(one.mark, wanted, NEAR + 1) }))
    .filter(({ edits }) => edits > 0 && edits <= NEAR)
    .sort((a, b) => a.edits - b.edits)
    .map(({ one }) => one);
  const isFound = found.length + earlier.length > 0;
  return {
    found,
    earlier,
    near: isFound ? [] : oncePerMark(near).slice(0, MOST_NEAR),
    looked: all.length,
  };
}

/** The marks that drawings of a kit bear now. */
export const marksOf = (kit: string, out: string, kits: readonly Described[]): readonly string[] => [
  ...new Set(
    markedIn(out, kits)
      .filter((one) => one.kit === kit)
      .map(({ mark }) => mark),
  ),
];

/** With the title that was printed beside the mark, which a record does not tell. */
function titled(one: Marked, out: string, kept: readonly KitMark[]): Marked {
  if (one.title !== undefined) return one;
  const known =
    kept.find(({ kit, mark }) => kit === one.kit && mark === one.mark) ?? markedDrawing(out, one.file);
  return known?.mark === one.mark && known.title !== undefined ? { ...one, title: known.title } : one;
}

const oncePerMark = <T extends { readonly mark: string }>(all: readonly T[]): readonly T[] =>
  all.filter(({ mark }, i) => all.findIndex((one) => one.mark === mark) === i);

/** What the record says first, then drawings of which it does not tell the mark. */
function markedIn(out: string, kits: readonly Described[]): readonly Marked[] {
  const entries = readEntries(out);
  const recorded = [...entries].flatMap(([file, { kit, source, mark }]): Marked[] =>
    mark !== null && isMark(mark) ? [{ mark, kit, source, file }] : [],
  );
  const known = new Set(recorded.map(({ file }) => file));
  const drawn = svgFiles(out)
    .filter((file) => !known.has(file))
    .flatMap((file): readonly Marked[] => {
      const one = markedDrawing(out, file);
      if (!one) return [];
      const entry = entries.get(file);
      if (entry) return [{ ...one, kit: entry.kit, source: entry.source }];
      const of = kitOf(one.kit, kits);
      return [of ? { ...one, kit: of.id, source: of.source } : one];
    });
  return [...recorded, ...drawn];
}

/** A drawing is called as its kit, or that and what makes it other than the usual one. */
const kitOf = (drawing: string, kits: readonly Described[]): Described | undefined =>
  kits
    .filter(({ id }) => `${drawing}-`.startsWith(`${idOfKit(id)}-`))
    .sort((a, b) => b.id.length - a.id.length)[0];

function svgFiles(out: string): readonly string[] {
  try {
    return readdirSync(out, { recursive: true, withFileTypes: true })
      .filter((one) => one.isFile() && /\.svg$/i.test(one.name))
      .map((one) => relative(out, join(one.parentPath, one.name)).split(sep).join('/'))
      .sort();
  } catch {
    // A folder that is not there has none.
    return [];
  }
}

function markedDrawing(out: string, file: string): Marked | undefined {
  const bytes = readBytes(join(out, file), LARGEST_DRAWING);
  if (!isBytes(bytes)) return undefined;
  const text = Buffer.from(bytes).toString('utf8');
  const root = /<svg\b[^>]*>/.exec(text)?.[0] ?? '';
  const mark = / data-revision="([^"]*)"/.exec(root)?.[1] ?? '';
  const kit = /aria-labelledby="(\S+)-title /.exec(root)?.[1];
  if (!isMark(mark) || kit === undefined) return undefined;
  const title = /<title\b[^>]*>([^<]*)<\/title>/.exec(text)?.[1];
  return { mark, kit, file, ...(title === undefined ? {} : { title: plain(title) }) };
}

const plain = (text: string): string =>
  text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');
