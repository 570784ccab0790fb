/** Paths of kits: what their endings say, and how a base's path is read. */
import { dirname, isAbsolute, join, normalize } from 'node:path';

/** A TypeScript kit, whatever the case of its ending. */
export const isScript = (file: string): boolean => /\.ts$/i.test(file);

/** Where a base lies: its path is written from the folder of the file that extends it. One file keeps one name in a chain. */
export function pathOfBase(name: string, from: string): string {
  if (isAbsolute(name)) return normalize(name);
  const path = join(dirname(from), name);
  return from.startsWith('./') && !path.startsWith('..') ? `./${path}` : path;
}
