/** The words about a workshop's catalogue: see `wording.ts`. */
import { clip, list, type Message, quote } from './quoting.ts';

export interface CatalogueDetails {
  'no-catalogue': { folder: string };
  'outside-workshop': { got: string };
  'out-is-workshop': { got: string };
  'no-kit-found': { got: string };
  'scripts-not-run': { got: string; files: readonly string[] };
  /** `by`: what else has the id, a file or the pattern of a family. */
  'id-taken': { id: string; by: string };
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
  'scripts-not-run': (d) => ({
    severity: 'note',
    message: `not run, as a TypeScript kit is code: ${list(d.files)}`,
    remedy: `Name the file itself, in place of ${clip(d.got)}, to have it run.`,
  }),
  'id-taken': (d) =>
    error(
      `the id ${quote(d.id)} is also that of ${clip(d.by)}`,
      'Give each kit of the catalogue a unique id; it is used for the file names.',
    ),
};
