/** Bytes of a file to text. Pure: whoever reads the disk hands the bytes over. */
import { type Problem, problem } from '../common/problem.ts';

interface Decoded {
  /** Absent when the bytes are not text. */
  readonly text?: string;
  readonly problems: readonly Problem[];
}

/** Reads UTF-8, with or without a byte order mark. A NUL byte or a broken sequence means it is not text. */
export function decode(bytes: Uint8Array): Decoded {
  if (bytes.includes(0)) return { problems: [problem('not-text', [], {})] };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), problems: [] };
  } catch {
    return { problems: [problem('not-text', [], {})] };
  }
}
