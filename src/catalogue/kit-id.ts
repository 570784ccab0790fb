/** A kit's id, told from its file without reading the kit: a catalogue has thousands. */
import { parse } from 'node:path';
import { ID, ID_LONGEST } from '../common/names.ts';
import { isMap } from '../describe/chain.ts';
import { decode } from '../describe/decode.ts';
import { parseText } from '../describe/source.ts';
import { isScript } from '../files/kit-path.ts';
import { readKitFile } from '../files/load.ts';
import { isBytes, LARGEST_KIT, readBytes } from '../files/read-file.ts';

/** The key at the head of a line, as it nearly always stands; else the text is parsed. */
const PLAIN = /^kit:[ \t]+([a-z0-9-]+)[ \t]*(?:#.*)?\r?$/gm;

const isId = (id: unknown): id is string => typeof id === 'string' && id.length <= ID_LONGEST && ID.test(id);

const textOf = (file: string): string | undefined => {
  const bytes = readBytes(file, LARGEST_KIT);
  return isBytes(bytes) ? decode(bytes).text : undefined;
};

function plainId(text: string): string | undefined {
  const [only, ...more] = [...text.matchAll(PLAIN)];
  return only && more.length === 0 && isId(only[1]) ? only[1] : undefined;
}

/** The id of a file that says it at the head of a line, which no script does. */
export function plainIdIn(file: string): string | undefined {
  const text = isScript(file) ? undefined : textOf(file);
  return text === undefined ? undefined : plainId(text);
}

/** @returns nothing where the file does not say it: what is wrong with the kit is told where it is loaded */
export async function idIn(file: string): Promise<string | undefined> {
  if (isScript(file)) {
    const { draft } = await readKitFile(file);
    return isId(draft?.id) ? draft.id : undefined;
  }
  const text = textOf(file);
  if (text === undefined) return undefined;
  const plain = plainId(text);
  if (plain !== undefined) return plain;
  const { value } = parseText(text, file);
  return isMap(value) && isId(value.kit) ? value.kit : undefined;
}

/** The id under which a kit is reported that has none: its file's name, as far as it can be one. */
export function idOfName(file: string): string {
  const words = parse(file)
    .name.toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+|-+$/g, '')
    .slice(0, ID_LONGEST)
    .replace(/-+$/, '');
  return isId(words) ? words : 'unnamed';
}
