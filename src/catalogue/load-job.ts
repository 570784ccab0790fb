/** The kit of a job, with every problem of it. */
import { checked } from '../checked.ts';
import { type KeyPath, problem } from '../common/problem.ts';
import { isMap } from '../describe/chain.ts';
import { decode } from '../describe/decode.ts';
import { toDiagnostics } from '../describe/diagnostics.ts';
import { kitFromPieces } from '../describe/read.ts';
import { parseText, type Source, type SourceText, valueSource } from '../describe/source.ts';
import { readBaseFile } from '../files/bases.ts';
import { isScript } from '../files/kit-path.ts';
import { type Loaded, loadKit } from '../files/load.ts';
import { partsListFor } from '../files/parts-list.ts';
import { isBytes, LARGEST_KIT, readBytes } from '../files/read-file.ts';
import type { Job } from './catalogue.ts';
import { describeMember, readFamily } from './family.ts';

/** Reads and checks a job's kit. A problem of a member points at the line of the catalogue, or of the base, that it comes from. */
export async function loadJob(job: Job): Promise<Loaded> {
  const { description, file, clash } = job;
  if (clash) return refused(job.id, clash);
  if (!description) return loadKit(file);
  const reading = kitFromPieces(description, memberSource(job), readBaseFile, partsListFor(file));
  return { file, ...checked(reading), layers: reading.layers ?? [] };
}

/** A kit that several files say they are: each of them is told of, with the others' names. */
function refused(id: string, clash: readonly string[]): Loaded {
  const [file = ''] = clash;
  const diagnostics = clash.flatMap((one) => {
    const by = clash.filter((other) => other !== one);
    return toDiagnostics([problem('id-taken', ['kit'], { id, by })], sourceFor(one));
  });
  return { file, source: sourceFor(file), diagnostics, layers: [] };
}

function sourceFor(file: string): Source {
  const bytes = isScript(file) ? undefined : readBytes(file, LARGEST_KIT);
  const text = bytes && isBytes(bytes) ? decode(bytes).text : undefined;
  return text === undefined ? valueSource(file) : parseText(text, file).source;
}

/** Where a member's pieces are written: looked for only when there is a problem, so that thousands of members cost nothing. */
const memberSource = (job: Job): Source => ({
  file: job.file,
  called: job.id,
  exact: true,
  placeOf: (found) => {
    const { value, source } = catalogueText(job.file);
    const path = pathOf(job, value, found.path);
    return source.placeOf({ ...found, path });
  },
});

function pathOf({ member }: Job, catalogue: unknown, path: KeyPath): KeyPath {
  if (!member || !isMap(catalogue) || !Array.isArray(catalogue.families)) return [];
  const written: unknown = catalogue.families[member.family];
  const { family } = readFamily(written, member.family);
  return family ? describeMember(family, member.values).pathOf(path) : [];
}

/** The catalogue's text that was parsed last: many members' problems are in one. */
let last: { readonly file: string; readonly text: string; readonly parsed: SourceText } | undefined;

function catalogueText(file: string): SourceText {
  const bytes = readBytes(file, LARGEST_KIT);
  const text = (isBytes(bytes) ? decode(bytes).text : undefined) ?? '';
  if (last?.file !== file || last.text !== text) last = { file, text, parsed: parseText(text, file) };
  return last.parsed;
}
