/** The figures of each kit as it was built last, a file a kit in the workshop's own folder for such things. */
import { readdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { isBytes, readBytes } from '../../files/read-file.ts';
import { WriteError, writeAtomically } from '../../files/write.ts';
import { figuresSchema, type KitFigures } from './figures.ts';

const LARGEST = 50e6;

export const figuresFile = (workshop: string, kit: string): string =>
  join(workshop, '.solderleaf', 'figures', `${kit}.json`);

/**
 * Stores what a kit is now, to be compared with later. A build calls it for each kit that it has made.
 *
 * @param workshop the workshop's folder
 * @throws WriteError
 */
export const saveFigures = (workshop: string, figures: KitFigures): boolean =>
  writeAtomically(figuresFile(workshop, figures.kit), `${JSON.stringify(figures, null, 1)}\n`);

/** Stores it, or says in words why that cannot be. */
export function notSaved(workshop: string, figures: KitFigures): string | undefined {
  try {
    saveFigures(workshop, figures);
    return undefined;
  } catch (thrown) {
    if (!(thrown instanceof WriteError)) throw thrown;
    return `${thrown.folder} cannot be written to: ${thrown.reason}; “changes” will not know what was built now`;
  }
}

/** What was stored; `undefined` where nothing was, and where it cannot be read or is of another version: the kit then counts as new. */
export function readFigures(workshop: string, kit: string): KitFigures | undefined {
  const bytes = readBytes(figuresFile(workshop, kit), LARGEST);
  if (!isBytes(bytes)) return undefined;
  try {
    return figuresSchema.safeParse(JSON.parse(Buffer.from(bytes).toString('utf8'))).data;
  } catch {
    return undefined;
  }
}

/** Kits whose figures were stored, by their ids. */
export function storedKits(workshop: string): readonly string[] {
  try {
    return readdirSync(dirname(figuresFile(workshop, 'x')))
      .flatMap((name) => /^(.+)\.json$/.exec(name)?.[1] ?? [])
      .sort();
  } catch {
    // A folder that is not there has none.
    return [];
  }
}

/**
 * Deletes what was stored of kits that are no longer in the catalogue, where it is something that this program stored.
 *
 * @param ids of the kits that are in it
 * @returns ids of the kits whose figures are gone; one that cannot be deleted is left, and told of as removed again
 */
export function forgetOthers(workshop: string, ids: readonly string[]): readonly string[] {
  const known = new Set(ids);
  return storedKits(workshop).filter((id) => {
    if (known.has(id) || readFigures(workshop, id)?.kit !== id) return false;
    try {
      rmSync(figuresFile(workshop, id));
      return true;
    } catch {
      return false;
    }
  });
}
