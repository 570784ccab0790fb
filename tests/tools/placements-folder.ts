/**
 * A folder for the placements that the tests of one run share: new for each run and gone after it, so that whatever is in it was placed
 * by the source that is tested.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The processes that run the tests find the folder's name here. */
export const PLACEMENTS = 'SOLDERLEAF_TEST_PLACEMENTS';

export function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'solderleaf-placements-'));
  process.env[PLACEMENTS] = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}
