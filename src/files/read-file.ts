/** Files read with care: only what is a file, and none larger than anybody means to name. */
import { readFileSync, statSync } from 'node:fs';
import { type Problem, problem } from '../common/problem.ts';
import { whyNotRead } from './reason.ts';

/** Bytes; a kit has some thousand. */
export const LARGEST_KIT = 1e6;
/** Bytes; a drawing with its font has some hundred thousand. */
export const LARGEST_DRAWING = 20e6;

/** The bytes of a file, or what keeps it from being read. A pipe or a device is never opened, as it may have no end. */
export function readBytes(file: string, most: number): Uint8Array | Problem {
  try {
    const found = statSync(file);
    if (found.isDirectory()) return problem('file-unreadable', [], { reason: 'it is a folder' });
    if (!found.isFile())
      return problem('file-unreadable', [], { reason: 'it is a pipe, a socket or a device, not a file' });
    if (found.size > most) return problem('file-too-large', [], { most });
    return readFileSync(file);
  } catch (thrown) {
    return problem('file-unreadable', [], { reason: whyNotRead(thrown) });
  }
}

/** What keeps a file from being read, in words that follow its name. */
export const whyNot = (found: Problem): string =>
  'reason' in found.detail ? String(found.detail.reason) : 'it is too large';

/** Whether what was read is bytes. */
export const isBytes = (read: Uint8Array | Problem): read is Uint8Array => read instanceof Uint8Array;
