/** The words about a workshop's catalogue: see `wording.ts`. */
import { ID_LONGEST } from './names.ts';
import { andList, clip, list, type Message, meant, quote } from './quoting.ts';

export interface CatalogueDetails {
  'no-catalogue': { folder: string };
  'outside-workshop': { got: string };
  'out-is-workshop': { got: string };
  'no-kit-found': { got: string };
  'folder-unreadable': { folder: string; reason: string };
  'scripts-not-run': { got: string; files: readonly string[] };
  /** `by`: what else has the id, files or the pattern of a family. */
  'id-taken': { id: string; by: readonly string[] };
  'bad-member-id': { id: string; pattern: string };
  'too-many-kits': { count: number; most: number };
  'axis-not-in-id': { axis: string; pattern: string };
  'unknown-axis': { got: string; nearest?: string; allowed: readonly string[] };
  'unknown-axis-value': { axis: string; got: string; nearest?: string; allowed: readonly string[] };
  'family-empty': Record<never, never>;
  /** `what`: in words what the logo's file has that it must not have. */
  'bad-logo': { what: string; remedy: string };
  /** `first` and `second`: the two values, as `axis: value`; `said`: what each of them says of `what`. */
  'axes-contradict': { what: string; first: string; second: string; said: readonly [string, string] };
}

type Wording = { readonly [C in keyof CatalogueDetails]: (detail: CatalogueDetails[C]) => Message };

const error = (message: string, remedy: string): Message => ({ severity: 'error', message, remedy });

export const catalogueWording: Wording = {
  'no-catalogue': (d) =>
    error(
      `the folder ${quote(d.folder)} has no catalogue`,
      'Name a folder that has a file solderleaf.yaml, or make a workshop to start from: solderleaf new DIR.',
    ),
  'outside-workshop': (d) =>
    error(
      `${quote(d.got)} is outside the workshop’s folder`,
      'Write a path from the folder of this file, such as kits/hss.yaml, kits or kits/*.yaml.',
    ),
  'out-is-workshop': (d) =>
    error(
      `${quote(d.got)} is the workshop’s own folder, or one above it`,
      'Write a folder that holds nothing but outputs, such as out.',
    ),
  'no-kit-found': (d) => ({
    severity: 'warning',
    message: `no kit found by ${quote(d.got)}`,
    remedy: 'Correct the path, or remove the entry; a kit is a .yaml, .json or .ts file.',
  }),
  'folder-unreadable': (d) =>
    error(`the folder ${quote(d.folder)} cannot be read: ${d.reason}`, 'Check the path and the permissions.'),
  'scripts-not-run': (d) => ({
    severity: 'note',
    message: `not run, as a TypeScript kit is code: ${list(d.files)}`,
    remedy: `Name the file itself, in place of ${clip(d.got)}, to have it run.`,
  }),
  'id-taken': (d) =>
    error(
      `the id ${quote(d.id)} is also that of ${andList(d.by.map(clip))}`,
      'Give each kit of the catalogue a unique id; it is used for the file names.',
    ),
  'bad-member-id': (d) =>
    error(
      `${quote(d.id)}, made from ${quote(d.pattern)}, is not a valid kit id`,
      `Use lower-case letters, digits and single hyphens, also in the names of the matrix; at most ${ID_LONGEST} characters.`,
    ),
  'too-many-kits': (d) =>
    error(
      `the catalogue would have ${d.count} kits`,
      `Use at most ${d.most} in one catalogue: take values out of the matrix, exclude combinations, or divide the workshop into two folders.`,
    ),
  'axis-not-in-id': (d) =>
    error(
      `the ids made from ${quote(d.pattern)} do not tell the values of ${quote(d.axis)} apart`,
      `Write {${clip(d.axis)}} into the id, or remove that axis from the matrix.`,
    ),
  'unknown-axis': (d) =>
    error(
      `the matrix has no axis ${quote(d.got)}`,
      meant(d.nearest, `Axes of this family: ${list(d.allowed)}.`),
    ),
  'unknown-axis-value': (d) =>
    error(
      `the axis ${quote(d.axis)} has no value ${quote(d.got)}`,
      meant(d.nearest, `Its values: ${list(d.allowed)}.`),
    ),
  'bad-logo': (d) => error(`the logo cannot be used: ${d.what}`, d.remedy),
  'family-empty': () =>
    error('this family has no members', 'Give each axis a value, and leave one combination under except.'),
  'axes-contradict': (d) =>
    error(
      `${quote(d.first)} and ${quote(d.second)} contradict each other about ${clip(d.what)}: ${clip(d.said[0])} and ${clip(d.said[1])}`,
      'Write it under one axis only, or exclude the combination under except.',
    ),
};
