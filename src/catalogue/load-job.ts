/** The kit of a job, with every problem of it. */
import { checked } from '../checked.ts';
import type { KeyPath } from '../common/problem.ts';
import { isMap } from '../describe/chain.ts';
import { decode } from '../describe/decode.ts';
import { kitFromPieces } from '../describe/read.ts';
import { parseText, type Source, type SourceText } from '../describe/source.ts';
import { readBaseFile } from '../files/bases.ts';
import { type Loaded, loadKit } from '../files/load.ts';
import { partsListFor } from '../files/parts-list.ts';
import { isBytes, LARGEST_KIT, readBytes } from '../files/read-file.ts';
import type { Job } from './catalogue.ts';
import { describeMember, readFamily } from './family.ts';

/** Reads and checks a job's kit. A problem of a member points at the line of the catalogue, or of the base, that it comes from. */
export async function loadJob(job: Job): Promise<Loaded> {
  const { description, file } = job;
  if (!description) return loadKit(file);
  const reading = kitFromPieces(description, memberSource(job), readBaseFile, partsListFor(file));
  return { file, ...checked(reading), layers: reading.layers ?? [] };
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
