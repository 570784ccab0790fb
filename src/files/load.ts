/** Kit files from the disk: bytes, text, kit and every problem of it, the circuit's errors included. */
import { type Checked, checked } from '../checked.ts';
import { decode } from '../describe/decode.ts';
import { type Reading, readKit } from '../describe/read.ts';
import { valueSource } from '../describe/source.ts';
import { isBytes, LARGEST_KIT, readBytes } from './read-file.ts';
import { isScript, runScript } from './script.ts';

/** What a file gave: a kit when it has no error, and the diagnostics in any case. */
export interface Loaded extends Checked {
  readonly file: string;
}

export const loadKit = async (file: string): Promise<Loaded> => ({
  file,
  ...checked(await readFile(file)),
});

async function readFile(file: string): Promise<Reading> {
  const bytes = readBytes(file, LARGEST_KIT);
  if (!isBytes(bytes)) return { problems: [bytes], source: valueSource(file) };
  if (isScript(file)) return runScript(file);
  const { text, problems } = decode(bytes);
  return text === undefined ? { problems, source: valueSource(file) } : readKit(text, file);
}
