/**
 * What was made before, in one folder that several machines may share. Every entry is named by a hash and carries one of its
 * content, is written whole, and is checked when it is read: one that was cut short or changed is as if it were not there.
 */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { isBytes, LARGEST_DRAWING, readBytes } from '../../files/read-file.ts';
import { WriteError, writeAtomically } from '../../files/write.ts';
import type { PlacementStore } from '../../place/stored.ts';

/** Hex of the SHA-256 of some texts or bytes; where one ends and the next begins counts. */
export function hashOf(...parts: readonly (string | Uint8Array)[]): string {
  const hash = createHash('sha256');
  for (const part of parts) {
    const bytes = typeof part === 'string' ? Buffer.from(part) : part;
    if (parts.length > 1) hash.update(`${bytes.length}:`);
    hash.update(bytes);
  }
  return hash.digest('hex');
}

/** What entries are about: a kit as read by its texts, what was made by a kit, a placement, and a file that was made. */
type Shelf = 'read' | 'made' | 'placed' | 'files';

const isKey = (text: string): boolean => /^[0-9a-f]{64}$/.test(text);

export class Cache {
  readonly #folder: string;
  /** In words why the cache could not be written to, once. */
  #trouble: string | undefined;

  constructor(folder: string) {
    this.#folder = folder;
  }

  get trouble(): string | undefined {
    return this.#trouble;
  }

  /** A value that was kept under a key; absent where nothing sound is there. */
  find(shelf: Exclude<Shelf, 'files'>, key: string): unknown {
    const bytes = this.#read(shelf, key);
    if (!bytes) return undefined;
    const text = Buffer.from(bytes).toString('utf8');
    const end = text.indexOf('\n');
    // The key is under the seal as well, so that an entry that was renamed is none.
    if (text.slice(0, end) !== hashOf(key, text.slice(end + 1))) return undefined;
    try {
      return JSON.parse(text.slice(end + 1));
    } catch {
      // It was sealed by somebody else.
      return undefined;
    }
  }

  keep(shelf: Exclude<Shelf, 'files'>, key: string, value: unknown): void {
    const text = JSON.stringify(value);
    this.#write(shelf, key, `${hashOf(key, text)}\n${text}`);
  }

  /** A file's content by its hash; absent where it is not there or no longer the same. */
  findFile(sha256: string): Uint8Array | undefined {
    const bytes = this.#read('files', sha256);
    return bytes && hashOf(bytes) === sha256 ? bytes : undefined;
  }

  /** @returns the content's hash */
  keepFile(content: Uint8Array): string {
    const sha256 = hashOf(content);
    this.#write('files', sha256, content);
    return sha256;
  }

  #read(shelf: Shelf, key: string): Uint8Array | undefined {
    if (!isKey(key)) return undefined;
    const read = readBytes(join(this.#folder, shelf, key), LARGEST_DRAWING);
    return isBytes(read) ? read : undefined;
  }

  #write(shelf: Shelf, key: string, content: string | Uint8Array): void {
    try {
      writeAtomically(join(this.#folder, shelf, key), content);
    } catch (thrown) {
      // Without a cache everything can be made all the same.
      if (!(thrown instanceof WriteError)) throw thrown;
      this.#trouble = `the cache ${this.#folder} cannot be written to: ${thrown.reason}; what is made now is made again next time`;
    }
  }
}

/** Where placements made by one program are kept. */
export function placementsIn(cache: Cache, program: string): PlacementStore {
  const keyOf = (asked: string): string => hashOf(program, asked);
  return {
    find: (asked) => cache.find('placed', keyOf(asked)),
    keep: (asked, placement) => cache.keep('placed', keyOf(asked), placement),
  };
}
