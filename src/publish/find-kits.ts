/** Which files are meant by paths: a file is itself, a folder the kits that lie in it. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { decode } from '../describe/decode.ts';
import { isKitLike } from '../describe/read.ts';
import { LONGEST_TEXT, parseText } from '../describe/source.ts';

export interface FoundKits {
  readonly files: readonly string[];
  /** Files of a folder that could hold a kit by their names, and clearly hold none. */
  readonly passed: readonly string[];
}

const KIT_FILE = /\.(ya?ml|json|ts)$/;
const NO_KIT = /\.schema\.json$|\.d\.ts$/;

/** A file that is named is taken at its word, whatever it holds; those of a folder are looked into, by name. */
export function kitFiles(paths: readonly string[]): FoundKits {
  const found = paths.flatMap((path) => {
    if (!isFolder(path)) return [{ file: path, kit: true }];
    return readdirSync(path)
      .filter((name) => KIT_FILE.test(name) && !NO_KIT.test(name) && isFile(join(path, name)))
      .sort((a, b) => (a < b ? -1 : 1))
      .map((name) => ({ file: join(path, name), kit: mayBeKit(join(path, name)) }));
  });
  const those = (kit: boolean) => found.filter((one) => one.kit === kit).map((one) => one.file);
  return { files: those(true), passed: those(false) };
}

export const isFolder = (path: string): boolean =>
  statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
const isFile = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isFile() === true;

/** A key of a kit at the head of a line, for a text that cannot be parsed: what is wrong with a kit must be said. */
const KEY = /^[\s{,]*["']?(?:kit|parts|joints)["']?\s*:/m;
/** A script is run to be read, so that one must look like a kit first. */
const SCRIPT = /\bdefineKit\b|\bkit["']?\s*:/;

function mayBeKit(file: string): boolean {
  try {
    const { text } = decode(readFileSync(file));
    if (text === undefined) return false;
    if (file.endsWith('.ts')) return SCRIPT.test(text);
    const value = text.length > LONGEST_TEXT ? undefined : parseText(text, file).value;
    return value === undefined ? KEY.test(text) : isKitLike(value);
  } catch {
    // One that cannot be read is told as such where it is loaded.
    return true;
  }
}
