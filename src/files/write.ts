/** Files written whole or not at all: beside the target first, then put in its place in one step. */
import { createHash, randomBytes } from 'node:crypto';
import {
  closeSync,
  fchmodSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { whyNotWritten } from './reason.ts';

/** A file that could not be written; the old one, if any, is as it was. */
export class WriteError extends Error {
  /** The folder it was to go to, and in words why it did not. */
  readonly folder: string;
  readonly reason: string;
  constructor(file: string, thrown: unknown) {
    const reason = whyNotWritten(thrown);
    super(`cannot write ${file}: ${reason}`);
    this.folder = dirname(file);
    this.reason = reason;
  }
}

/**
 * Writes beside the target and puts that in its place in one step. Where a link stands in the target's place the link is
 * replaced, and what it leads to is left alone; a file that has a second name (a hard link) keeps what it held under that name.
 *
 * @returns whether the file changed; one that holds the same already is left untouched
 * @throws WriteError, and the old file is then as it was
 */
export function writeAtomically(file: string, content: string | Uint8Array): boolean {
  if (hasContent(file, content)) return false;
  const folder = dirname(file);
  let beside: string | undefined;
  try {
    makeFolder(folder);
    // A file that is there keeps its permissions.
    const old = lstatSync(file, { throwIfNoEntry: false });
    if (old?.isDirectory()) throw new Error('EISDIR');
    clearOld(folder);
    const name = join(folder, tempFileName(process.pid));
    // Exclusively: whatever lies there, a link above all, is not ours and is never written through.
    const open = openSync(name, 'wx', old?.isFile() ? old.mode : 0o666);
    beside = name;
    try {
      writeFileSync(open, content);
      if (old?.isFile()) fchmodSync(open, old.mode);
    } finally {
      closeSync(open);
    }
    renameSync(name, file);
  } catch (thrown) {
    if (beside !== undefined) rmSync(beside, { force: true });
    throw new WriteError(file, thrown);
  }
  return true;
}

/** Names of files being written: this program's, on this machine, by the process that writes them. */
const PREFIX = `.solderleaf-${createHash('sha256').update(hostname()).digest('hex').slice(0, 8)}-`;
/** A name that nobody can guess, for a file that a process is writing. */
export const tempFileName = (pid: number): string => `${PREFIX}${pid}-${randomBytes(6).toString('hex')}.part`;
const cleared = new Set<string>();

/** Takes away what runs that were killed left half written; what a run that is still alive writes is let be. */
function clearOld(folder: string): void {
  if (cleared.has(folder)) return;
  cleared.add(folder);
  for (const name of readdirSync(folder)) {
    const pid = name.startsWith(PREFIX)
      ? /^(\d+)-[0-9a-f]{12}\.part$/.exec(name.slice(PREFIX.length))?.[1]
      : undefined;
    if (pid !== undefined && !isAlive(Number(pid))) rmSync(join(folder, name), { force: true });
  }
}

/** Whether there is a process of that number on this machine. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (thrown) {
    // Another user's process may not be asked, and is alive.
    return !(thrown instanceof Error && 'code' in thrown && thrown.code === 'ESRCH');
  }
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

/** Whether a file exists and holds just this. */
export function hasContent(file: string, content: string | Uint8Array): boolean {
  try {
    const wanted = Buffer.from(content);
    const found = statSync(file);
    return found.isFile() && found.size === wanted.length && readFileSync(file).equals(wanted);
  } catch {
    return false;
  }
}
