/** Writes what was made to the folder of outputs, and deletes there; nothing that is somebody else's. */
import { rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { isForeign } from '../../files/foreign.ts';
import { isBytes, LARGEST_DRAWING, readBytes } from '../../files/read-file.ts';
import { whyNotWritten } from '../../files/reason.ts';
import { WriteError, writeAtomically } from '../../files/write.ts';
import { type Cache, hashOf } from './cache.ts';
import type { MadeFile } from './make.ts';
import type { Entry } from './manifest.ts';

type Written = 'written' | 'unchanged' | { readonly failed: string };

/** The hash of what a file holds; absent where it cannot be read. */
function hashOfFile(file: string): string | undefined {
  const bytes = readBytes(file, LARGEST_DRAWING);
  return isBytes(bytes) ? hashOf(bytes) : undefined;
}

/** Hashes of files. One that is used for long remembers them for as long as size and time of a file are the same. */
export class FileHashes {
  readonly #known: Map<string, { readonly seen: string; readonly hash: string | undefined }> | undefined;

  constructor(remembers = false) {
    this.#known = remembers ? new Map() : undefined;
  }

  of(file: string): string | undefined {
    if (!this.#known) return hashOfFile(file);
    const { size, mtimeMs, ctimeMs, ino } = statSync(file, { throwIfNoEntry: false }) ?? {};
    const seen = [size, mtimeMs, ctimeMs, ino].join();
    const before = this.#known.get(file);
    if (before?.seen === seen) return before.hash;
    const hash = hashOfFile(file);
    this.#known.set(file, { seen, hash });
    return hash;
  }
}

export class Outputs {
  readonly #out: string;
  readonly #cache: Cache;
  readonly #before: ReadonlyMap<string, Entry>;

  /** @param before what earlier builds say they wrote */
  constructor(out: string, cache: Cache, before: ReadonlyMap<string, Entry>) {
    this.#out = out;
    this.#cache = cache;
    this.#before = before;
  }

  put({ name, sha256, content }: MadeFile): Written {
    const file = join(this.#out, name);
    const there = hashOfFile(file);
    if (there === sha256) return 'unchanged';
    if (there !== undefined && !this.#isOwn(name, there, content))
      return {
        failed: `not written ${file}: it already exists and was not made of this kit; move it, or choose another folder as “out” of the catalogue`,
      };
    try {
      writeAtomically(file, content);
      return 'written';
    } catch (thrown) {
      if (!(thrown instanceof WriteError)) throw thrown;
      return { failed: `not written ${file}: ${thrown.reason}` };
    }
  }

  /** An earlier version, by the record; of a build that was killed before it wrote one, by the cache, or by what the file says itself. */
  #isOwn(name: string, there: string, content: Uint8Array): boolean {
    if (this.#before.has(name) || this.#cache.findFile(there)) return true;
    return !name.endsWith('.png') && !isForeign(join(this.#out, name), Buffer.from(content).toString('utf8'));
  }

  /** Deletes a file that is still what was written; says why not, where not. */
  prune(name: string, { sha256 }: Entry): 'deleted' | 'changed' | { readonly failed: string } {
    const file = join(this.#out, name);
    if (hashOfFile(file) !== sha256) return 'changed';
    try {
      rmSync(file);
      return 'deleted';
    } catch (thrown) {
      return { failed: `not deleted ${file}: ${whyNotWritten(thrown)}` };
    }
  }
}
