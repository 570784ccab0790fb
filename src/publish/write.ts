/** Files written whole or not at all: beside the target first, then put in its place in one step. */
import { mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/** A file that could not be written; the old one, if any, is as it was. */
export class Unwritable extends Error {
  /** The folder it was to go to, and in words why it did not. */
  readonly folder: string;
  readonly reason: string;
  constructor(file: string, thrown: unknown) {
    const reason = reasonOf(thrown);
    super(`cannot write ${file}: ${reason}`);
    this.folder = dirname(file);
    this.reason = reason;
  }
}

/**
 * @returns whether the file changed; one that holds the same already is left untouched
 * @throws Unwritable, and the old file is then as it was
 */
export function writeWhole(file: string, content: string | Uint8Array): boolean {
  if (holds(file, content)) return false;
  const beside = `${file}.${process.pid}.part`;
  let begun = false;
  try {
    makeFolder(dirname(file));
    // A file that is there keeps its permissions.
    const old = statSync(file, { throwIfNoEntry: false });
    if (old?.isDirectory()) throw new Error('EISDIR');
    begun = true;
    writeFileSync(beside, content, old === undefined ? {} : { mode: old.mode });
    renameSync(beside, file);
  } catch (thrown) {
    if (begun) rmSync(beside, { force: true });
    throw new Unwritable(file, thrown);
  }
  return true;
}

/** Folder by folder from the top: told to do it in one go, Node tries for ever where the system lets none be made. */
function makeFolder(folder: string): void {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return;
  const above = dirname(folder);
  if (above !== folder) makeFolder(above);
  try {
    mkdirSync(folder);
  } catch (thrown) {
    // Another process may have made it in between.
    if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory()) throw thrown;
  }
}

const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'you have no permission to',
  EPERM: 'you have no permission to',
  EROFS: 'that disk can only be read',
  EEXIST: 'a file stands where the folder should be',
  ENOTDIR: 'a file stands where the folder should be',
  EISDIR: 'a folder stands where the file should be',
  ENOENT: 'no folder can be made there',
  ENOSPC: 'the disk is full',
  EFBIG: 'the file grew larger than the system allows',
  ENAMETOOLONG: 'the name is too long',
};

function reasonOf(thrown: unknown): string {
  const message = thrown instanceof Error ? thrown.message : String(thrown);
  return REASONS[/^E[A-Z]+/.exec(message)?.[0] ?? ''] ?? message;
}

/** Whether a file exists and holds just this. */
export function holds(file: string, content: string | Uint8Array): boolean {
  try {
    return readFileSync(file).equals(Buffer.from(content));
  } catch {
    return false;
  }
}
