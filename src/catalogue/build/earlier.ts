/** What earlier builds wrote, by kit: from their record. */
import { join } from 'node:path';
import { hashOf } from './cache.ts';
import { ALL_KITS, type Entry, readEntries } from './manifest.ts';
import type { FileHashes } from './write-out.ts';

/** The key of a file that is asked for no more, and of one of a kit whose files could not all be written: no kit's outputs have these. */
const LEFT_OVER = hashOf('left over');
const NOT_WHOLE = hashOf('not all written');

export const leftOver = (entry: Entry): Entry => ({ ...entry, key: LEFT_OVER });
export const notWhole = (entry: Entry): Entry => ({ ...entry, key: NOT_WHOLE });

/** Why a file is left over, in words. */
export const whyLeft = ({ kit }: Entry, ids: ReadonlySet<string>): string =>
  kit === ALL_KITS
    ? 'no kit has shop among its outputs'
    : ids.has(kit)
      ? `it is no longer among the outputs of ${kit}`
      : `its kit ${kit} is no longer in the catalogue`;

export class Earlier {
  readonly entries: ReadonlyMap<string, Entry>;
  readonly #out: string;
  readonly #byKit = new Map<string, string[]>();

  /** @param out the folder of outputs */
  constructor(out: string) {
    this.#out = out;
    this.entries = readEntries(out);
    for (const [file, { kit }] of this.entries) {
      const files = this.#byKit.get(kit);
      if (files) files.push(file);
      else this.#byKit.set(kit, [file]);
    }
  }

  /** Files of a kit, those left over as well. */
  filesOf(kit: string): readonly string[] {
    return this.#byKit.get(kit) ?? [];
  }

  /** Files of a kit that are asked for. */
  wantedOf(kit: string): readonly string[] {
    return this.filesOf(kit).filter((file) => this.entries.get(file)?.key !== LEFT_OVER);
  }

  /** The key by which a kit's outputs were made, where they are all there and what was written. */
  keyOf(kit: string, hashes: FileHashes): string | undefined {
    const entries = this.wantedOf(kit).flatMap((file) => {
      const entry = this.entries.get(file);
      return entry ? [{ file, entry }] : [];
    });
    const key = entries[0]?.entry.key;
    const all = entries.every(
      ({ file, entry }) => entry.key === key && hashes.of(join(this.#out, file)) === entry.sha256,
    );
    return all && key !== NOT_WHOLE ? key : undefined;
  }

  /** The mark that a kit's outputs bear. */
  markOf(kit: string): string | null {
    return this.entries.get(this.filesOf(kit)[0] ?? '')?.mark ?? null;
  }
}
