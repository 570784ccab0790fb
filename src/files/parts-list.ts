/** The workshop's parts list, from the disk: the nearest one above a kit. */
import { existsSync } from 'node:fs';
import { dirname, isAbsolute, join, resolve, sep } from 'node:path';
import { type Diagnostic, type Problem, problem } from '../common/problem.ts';
import { isKitLike, isMap } from '../describe/chain.ts';
import { decode } from '../describe/decode.ts';
import { toDiagnostics } from '../describe/diagnostics.ts';
import { LONGEST_LIST, readPartsList } from '../describe/read-stock.ts';
import { parseText, valueSource } from '../describe/source.ts';
import type { PartsList } from '../describe/stock.ts';
import { circuitFolder } from './circuits.ts';
import { isBytes, readBytes } from './read-file.ts';

/** Names of a parts list that need not be named anywhere. */
export const PARTS_LISTS = ['parts.yaml', 'parts.yml', 'parts.csv'] as const;
/** The name of a catalogue's file. */
export const CATALOGUE = 'solderleaf.yaml';

/** Whether a path is that of a parts list by its name. */
export const isListName = (path: string): boolean => /\.csv$|(?:^|[\\/])parts\.ya?ml$/i.test(path);

/**
 * The list that holds for a kit: `parts.yaml` or `parts.csv` in the kit's folder or the nearest one above it, or in its place the file
 * that `solderleaf.yaml` names there under `parts`. The circuits that ship are nobody's stock.
 */
export function partsListFor(kitFile: string): PartsList | undefined {
  const start = dirname(resolve(kitFile));
  if (start === resolve(circuitFolder()) || start.startsWith(`${resolve(circuitFolder())}${sep}`))
    return undefined;
  for (let folder = start; ; folder = dirname(folder)) {
    const found = listIn(folder, shorter(kitFile, folder));
    if (found !== 'none') return found;
    if (folder === dirname(folder)) return undefined;
  }
}

/** A folder above a file's, named as the file is: from the current folder where that is how the file is named. */
function shorter(kitFile: string, folder: string): string {
  for (let named = dirname(kitFile), whole = dirname(resolve(kitFile)); ; ) {
    if (whole === folder) return named;
    if (named === dirname(named) || named.endsWith('..')) return folder;
    [named, whole] = [dirname(named), dirname(whole)];
  }
}

/** @param named the folder as messages are to name it */
function listIn(folder: string, named: string): PartsList | undefined | 'none' {
  const catalogue = join(folder, CATALOGUE);
  const said = existsSync(catalogue) ? saidIn(catalogue) : undefined;
  const currency = said?.currency;
  if (said?.parts !== undefined) {
    const file = resolve(folder, said.parts);
    return listFrom(file, currency, isAbsolute(said.parts) ? file : join(named, said.parts));
  }
  const there = PARTS_LISTS.filter((name) => existsSync(join(folder, name)) && !isKit(join(folder, name)));
  const [only, ...more] = there;
  if (only === undefined) return said ? undefined : 'none';
  const file = join(named, only);
  if (more.length > 0) return failed(file, [problem('two-lists', [], { files: there })]);
  return listFrom(join(folder, only), currency, file);
}

/** What a catalogue says of the list; what is wrong with it is told where it is read as a catalogue. */
function saidIn(file: string): { readonly parts?: string; readonly currency?: string } {
  const value = valueIn(file);
  if (!isMap(value)) return {};
  const { parts, currency } = value;
  return {
    ...(typeof parts === 'string' && parts.trim() !== '' ? { parts } : {}),
    ...(typeof currency === 'string' ? { currency } : {}),
  };
}

/** A kit may be called `parts.yaml` as well. A long list is not parsed for that: its key at the head of a line tells. */
function isKit(file: string): boolean {
  if (/\.csv$/i.test(file) || /^stock\s*:/m.test(textIn(file) ?? '')) return false;
  const value = valueIn(file);
  return isMap(value) && !Object.hasOwn(value, 'stock') && isKitLike(value);
}

function textIn(file: string): string | undefined {
  const bytes = readBytes(file, LARGEST_LIST);
  return isBytes(bytes) ? decode(bytes).text : undefined;
}

/** A thousand kits have one catalogue and one list: they are parsed again only when their text has changed. */
const values = new Map<string, { readonly text: string; readonly value: unknown }>();

function valueIn(file: string): unknown {
  const text = textIn(file);
  if (text === undefined) return undefined;
  const before = values.get(file);
  if (before?.text === text) return before.value;
  const { value } = parseText(text, file, LONGEST_LIST);
  values.set(file, { text, value });
  return value;
}

/** Bytes. */
const LARGEST_LIST = 2 * LONGEST_LIST;

interface Known {
  readonly text: string;
  readonly currency: string | undefined;
  readonly list: PartsList;
}

const known = new Map<string, Known>();

/**
 * Reads a list. CSV may be in UTF-8, UTF-16 or Windows-1252, in which spreadsheets export it.
 *
 * @param currency of the prices, where the list does not say
 * @param named how messages name the file
 */
export function listFrom(file: string, currency?: string, named = file): PartsList {
  const bytes = readBytes(file, LARGEST_LIST);
  if (!isBytes(bytes)) return failed(named, [bytes]);
  const { text, problems } = /\.csv$/i.test(file) ? decodeTable(bytes) : decode(bytes);
  if (text === undefined) return failed(named, problems);
  const before = known.get(named);
  if (before?.text === text && before.currency === currency) return before.list;
  const list = readPartsList(text, named, currency);
  known.set(named, { text, currency, list });
  return list;
}

function failed(file: string, problems: readonly Problem[]): PartsList {
  const diagnostics: readonly Diagnostic[] = toDiagnostics(problems, valueSource(file));
  return { file, items: [], diagnostics };
}

function decodeTable(bytes: Uint8Array): ReturnType<typeof decode> {
  if (bytes[0] === 0xff && bytes[1] === 0xfe)
    return { text: new TextDecoder('utf-16le').decode(bytes), problems: [] };
  const read = decode(bytes);
  if (read.text !== undefined || bytes.includes(0)) return read;
  return { text: new TextDecoder('windows-1252').decode(bytes), problems: [] };
}
