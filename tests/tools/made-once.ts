/** Something that takes long to make and that several files of tests read: the first that asks makes it, the others wait for it. */
import { existsSync, mkdirSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { PLACEMENTS } from './placements-folder.ts';

const WAIT_MS = 100;
const WAIT_LONGEST_MS = 280_000;

/** A folder of this run of the tests, made by whichever process asks first. @throws Error when another process does not finish it */
export async function madeOnce(name: string, make: (folder: string) => Promise<void>): Promise<string> {
  const run = process.env[PLACEMENTS];
  if (run === undefined) throw new Error('only a run of the tests has a folder to share');
  const [folder, begun] = [join(run, name), join(run, `${name}-begun`)];
  try {
    // It stays when the folder is made: whoever cannot make it is not the first.
    mkdirSync(join(run, `${name}-taken`));
  } catch {
    for (let waited = 0; waited < WAIT_LONGEST_MS; waited += WAIT_MS) {
      if (existsSync(folder)) return folder;
      await new Promise((done) => setTimeout(done, WAIT_MS));
    }
    throw new Error(`${name} was begun by another file of tests and not finished: see what that one says`);
  }
  mkdirSync(begun);
  await make(begun);
  renameSync(begun, folder);
  return folder;
}
