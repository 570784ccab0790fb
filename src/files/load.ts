/** Kit files from the disk: bytes, text, kit and every problem of it, the circuit's errors included. */
import { type Checked, checked } from '../checked.ts';
import type { Layer } from '../describe/chain.ts';
import { decode } from '../describe/decode.ts';
import { type Reading, readKit } from '../describe/read.ts';
import { valueSource } from '../describe/source.ts';
import { readBaseFile } from './bases.ts';
import { isScript } from './kit-path.ts';
import { partsListFor } from './parts-list.ts';
import { isBytes, LARGEST_KIT, readBytes } from './read-file.ts';
import { runScript } from './script.ts';

/** What a file gave: a kit when it has no error, and the diagnostics in any case. */
export interface Loaded extends Checked {
  readonly file: string;
  /** The descriptions that the kit is made of, its own last; empty where one of them cannot be read. */
  readonly layers: readonly Layer[];
}

export async function loadKit(file: string): Promise<Loaded> {
  const reading = await readKitFile(file);
  return { file, ...checked(reading), layers: reading.layers ?? [] };
}

/** Reads a kit's file as it is: what its circuit does is not looked at. */
export async function readKitFile(file: string): Promise<Reading> {
  const bytes = readBytes(file, LARGEST_KIT);
  if (!isBytes(bytes)) return { problems: [bytes], source: valueSource(file) };
  const list = partsListFor(file);
  if (isScript(file)) return runScript(file, readBaseFile, list);
  const { text, problems } = decode(bytes);
  return text === undefined
    ? { problems, source: valueSource(file) }
    : readKit(text, file, readBaseFile, list);
}
