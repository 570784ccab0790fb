/** Which files are meant by paths: a file is itself, a folder the kits that lie in it. */
import { readdirSync, realpathSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { isKitLike } from '../describe/chain.ts';
import { decode } from '../describe/decode.ts';
import { LONGEST_TEXT, parseText } from '../describe/source.ts';
import { isScript } from './kit-path.ts';
import { isListName } from './parts-list.ts';
import { isBytes, LARGEST_KIT, readBytes } from './read-file.ts';
import { whyNotRead } from './reason.ts';

interface FoundKits {
  readonly files: readonly string[];
  /** Files of a folder that could hold a kit by their names, and clearly hold none. */
  readonly passed: readonly string[];
  /** Scripts of a folder that look like kits: they are run only when they are named themselves. */
  readonly scripts: readonly string[];
  /** Folders that cannot be looked into, and why. */
  readonly closed: readonly { readonly folder: string; readonly reason: string }[];
}

type Sort = 'kit' | 'none' | 'script';

const KIT_FILE = /\.(ya?ml|json|ts)$/i;
/** Whether a file could hold a kit by its name. */
export const isKitName = (name: string): boolean => KIT_FILE.test(name) && !NO_KIT.test(name);
/** Files that begin with a dot are hidden: an editor's locks and what it keeps for itself. A workshop's catalogue is not a kit. */
const NO_KIT = /^\.|^solderleaf\.yaml$|\.schema\.json$|\.d\.ts$/i;

/** A file that is named is taken at its word, whatever it holds; those of a folder are looked into, by name. */
export function kitFiles(paths: readonly string[]): FoundKits {
  const closed: { folder: string; reason: string }[] = [];
  const named = paths.flatMap((path): readonly { file: string; sort: Sort }[] => {
    if (!isFolder(path)) return [{ file: path, sort: 'kit' }];
    try {
      return (
        readdirSync(path)
          .filter((name) => isKitName(name) && !isFolder(join(path, name)))
          .sort((a, b) => (a < b ? -1 : 1))
          .map((name) => ({ file: join(path, name), sort: sortOf(join(path, name)) }))
          // A workshop's list is not a kit, and nobody takes it for one.
          .filter(({ file, sort }) => sort !== 'none' || !isListName(file))
      );
    } catch (thrown) {
      closed.push({ folder: path, reason: whyNotRead(thrown) });
      return [];
    }
  });
  // A file that is named twice, by itself and by its folder or by two paths, is one kit.
  const seen = new Set<string>();
  const found = named.filter(({ file }) => {
    const before = seen.size;
    return seen.add(realPath(file)).size > before;
  });
  const those = (sort: Sort) => found.filter((one) => one.sort === sort).map((one) => one.file);
  return { files: those('kit'), passed: those('none'), scripts: those('script'), closed };
}

function realPath(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    // What is not there is told where it is loaded.
    return file;
  }
}

export function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    // What is not there, or is a link that leads nowhere, is told where it is loaded.
    return false;
  }
}

/** A key of a kit at the head of a line, for a text that cannot be parsed: what is wrong with a kit must be said. */
const KEY = /^[\s{,]*["']?(?:kit|parts|joints)["']?\s*:/m;
/** A script is run to be read, so that one must look like a kit first. */
const SCRIPT = /\bdefineKit\b|\bkit["']?\s*:/;

/** What a file holds, as far as it must be looked into to tell. */
export function sortOf(file: string): Sort {
  const bytes = readBytes(file, LARGEST_KIT);
  // One that cannot be read is told as such where it is loaded.
  if (!isBytes(bytes)) return 'kit';
  const { text } = decode(bytes);
  // Keys are plain letters in any encoding: a kit saved in another one is a kit with an error, not another file.
  const plain = text ?? Buffer.from(bytes).toString('latin1').replaceAll('\0', '');
  if (isScript(file)) return SCRIPT.test(plain) ? 'script' : 'none';
  const value = text === undefined || text.length > LONGEST_TEXT ? undefined : parseText(text, file).value;
  const kit = value === undefined ? KEY.test(plain) : isKitLike(value) && !isFigures(value);
  return kit ? 'kit' : 'none';
}

/** Figures of a kit as `--json` prints them have its id, and are not a kit. */
const isFigures = (value: unknown): boolean =>
  typeof value === 'object' &&
  value !== null &&
  'pickups' in value &&
  ('positions' in value || 'effects' in value) &&
  !('parts' in value) &&
  !('joints' in value);
