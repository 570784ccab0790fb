/** Files written whole or not at all: beside the target first, then put in its place in one step. */
import { mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * @returns whether the file changed; one that holds the same already is left untouched
 * @throws the file system's own error when it cannot be written; the old file is then as it was
 */
export function writeWhole(file: string, content: string | Uint8Array): boolean {
  if (holds(file, content)) return false;
  mkdirSync(dirname(file), { recursive: true });
  const beside = `${file}.${process.pid}.part`;
  try {
    // A file that is there keeps its permissions.
    const mode = statSync(file, { throwIfNoEntry: false })?.mode;
    writeFileSync(beside, content, mode === undefined ? {} : { mode });
    renameSync(beside, file);
  } catch (thrown) {
    rmSync(beside, { force: true });
    throw thrown;
  }
  return true;
}

/** Whether a file exists and holds just this. */
export function holds(file: string, content: string | Uint8Array): boolean {
  try {
    return readFileSync(file).equals(Buffer.from(content));
  } catch {
    return false;
  }
}
