/** Protects other files: an output file is overwritten only if it is an earlier version of the same output. */
import { lstatSync } from 'node:fs';
import { isBytes, LARGEST_DRAWING, readBytes } from './read-file.ts';

const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47);
const idIn = (svg: string): string | undefined => /aria-labelledby="(\S+)-title /.exec(svg)?.[1];
const firstLine = (text: string): string | undefined => /^[^\r\n]*/.exec(text)?.[0];
const kitIn = (json: string): string | undefined => /^\{\s*"kit": *"([^"]*)"/.exec(json)?.[1];
/** Of a leaflet what it says of itself, in its page or in its PDF's own information. */
const leafletIn = (text: string): string | undefined => /Solderleaf leaflet [\w-]+/.exec(text)?.[0];
const isPdf = (text: string): boolean => text.startsWith('%PDF-');
/** Of a file for a shop's page what it says at its head: which file it is, and of which kit. */
const shopIn = (text: string): string | undefined =>
  /^(?:<!doctype html>)?(?:<!--|\/\*) (Solderleaf shop [\w -]+?) (?:-->|\*\/)/.exec(text)?.[1] ??
  /^\{\s*"form": 1,\s*("id": "[^"]*")/.exec(text)?.[1] ??
  /^\{\s*(?:"\$schema": "[^"]*",\s*"title"|"what"): "(Solderleaf [\w ]+)"/.exec(text)?.[1];
/** What two versions of a text have in common: a drawing its id, a leaflet and figures their kit, a table its head. */
const kept = (text: string): string | undefined => shopIn(text) ?? keptOfOther(text);
const keptOfOther = (text: string): string | undefined =>
  isPdf(text) || text.startsWith('<!doctype')
    ? leafletIn(text)
    : text.startsWith('<')
      ? idIn(text)
      : text.startsWith('{')
        ? kitIn(text)
        : firstLine(text);

/** Whether the target is a file other than an earlier version of the content. */
export function isForeign(target: string, content: string | Uint8Array): boolean {
  // A link is replaced, and what it leads to is left alone.
  if (!isPlainFile(target)) return false;
  const there = readBytes(target, LARGEST_DRAWING);
  // A file that cannot be read is reported when it is written.
  if (!isBytes(there) || there.length === 0) return false;
  if (typeof content !== 'string' && SIGNATURE.every((byte, i) => content[i] === byte))
    return !SIGNATURE.every((byte, i) => there[i] === byte);
  const [before, now] = [there, content].map((one) => kept(Buffer.from(one).toString('utf8')));
  return before !== now || now === undefined;
}

function isPlainFile(target: string): boolean {
  try {
    return lstatSync(target).isFile();
  } catch {
    // What is not there, or cannot be, is told of where it is written.
    return false;
  }
}
