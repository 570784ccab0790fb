/** What is said of a file that is written, or that would be. */
import { existsSync } from 'node:fs';
import { isForeign } from '../files/foreign.ts';
import { hasContent, WriteError, writeAtomically } from '../files/write.ts';

interface WriteResult {
  readonly text: string;
  readonly failed: boolean;
  /** It goes to the stream of complaints. */
  readonly isError?: boolean;
}

/** Whether a file is as it would be written. */
export function compared(target: string, content: string | Uint8Array): WriteResult {
  if (hasContent(target, content)) return { text: `unchanged ${target}`, failed: false };
  return { text: `${existsSync(target) ? 'differs  ' : 'missing  '} ${target}`, failed: true };
}

/**
 * Writes a file, unless another than an earlier version of it is there; says what came of it.
 *
 * @param what the file is, in words
 */
export function written(target: string, content: string | Uint8Array, what = 'drawing'): WriteResult {
  if (isForeign(target, content))
    return {
      text: `not written ${target}: it already exists and is not a ${what} of this kit; move it, or choose another folder with --out`,
      failed: true,
      isError: true,
    };
  try {
    return {
      text: `${writeAtomically(target, content) ? 'written  ' : 'unchanged'} ${target}`,
      failed: false,
    };
  } catch (thrown) {
    if (!(thrown instanceof WriteError)) throw thrown;
    const text = `cannot write to ${thrown.folder}: ${thrown.reason} (${target}); choose another with --out`;
    return { text, failed: true, isError: true };
  }
}
