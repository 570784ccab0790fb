/** Makes all outputs of one job, or finds that they were made before. Runs in a worker thread. */
import { toJson } from '../../analyse/index.ts';
import type { Diagnostic } from '../../common/problem.ts';
import { formatDiagnostics, toDiagnostics } from '../../describe/diagnostics.ts';
import { inLanguage, type Kit } from '../../describe/kit.ts';
import { markOf, type Prepared } from '../../draw/compose.ts';
import { lettersMissing } from '../../leaflet/letters.ts';
import { drawResponse, prepare, render, renderInline, sheetsOf } from '../../pipeline.ts';
import {
  drawPlan,
  isPlan,
  type Outcome,
  type PlanOptions,
  planOf,
  preparePlan,
  refused,
} from '../../publish/draw-plan.ts';
import { embedKit } from '../../publish/embed-kit.ts';
import {
  type LeafletWanted,
  leafletContent,
  leafletFiles,
  leafletFormats,
} from '../../publish/leaflet-plan.ts';
import { figuresOf } from '../../report/figures.ts';
import { loadsData } from '../../report/loads-data.ts';
import { type Job, type Output, SHOP_FOLDER } from '../catalogue.ts';
import { type KitFigures, figuresOf as kitFigures } from '../changes/figures.ts';
import { loadJob } from '../load-job.ts';
import { Cache, placementsIn } from './cache.ts';
import { madeKey } from './keys.ts';

/** What a worker is told; plain data. */
export interface Task {
  readonly job: Job;
  /** The cache's folder. */
  readonly cache: string;
  readonly program: string;
  /** Of the texts that the kit is read from, where it is known. */
  readonly readKey?: string;
  /** The key by which the outputs were made that are there, all of them sound. */
  readonly have?: string;
  /** Only tell whether they are up to date, and keep nothing. */
  readonly check: boolean;
}

export interface MadeFile {
  readonly name: string;
  readonly sha256: string;
  readonly content: Uint8Array;
}

/** What came of a task; plain data. */
export type Answer =
  | {
      readonly became: 'fresh';
      readonly key: string;
      /** To be compared with later, without a mark: its price may be another though its outputs are not. */
      readonly figures?: KitFigures;
    }
  | { readonly became: 'stale' }
  | { readonly became: 'failed'; readonly diagnostics: string }
  | {
      readonly became: 'made';
      readonly key: string;
      readonly mark: string | null;
      /** To be compared with later. */
      readonly figures: KitFigures;
      readonly files: readonly MadeFile[];
      /** Warnings, formatted. */
      readonly diagnostics: string;
      readonly notes: readonly string[];
      /** It was made before, and only had to be taken from the cache. */
      readonly found: boolean;
      /** Why the cache could not be written to. */
      readonly trouble?: string;
    };

/** What the cache keeps of what was made: everything but the files, which it keeps by their hashes. */
interface Record {
  readonly mark: string | null;
  readonly figures: KitFigures;
  readonly files: readonly { readonly name: string; readonly sha256: string }[];
  readonly notes: readonly string[];
}

export async function make({ job, cache: folder, program, readKey, have, check }: Task): Promise<Answer> {
  const cache = new Cache(folder);
  const loaded = await loadJob(job);
  if (!loaded.kit) return { became: 'failed', diagnostics: formatDiagnostics(loaded.diagnostics) };
  // What the catalogue says of a kit is its usual by then, so that its files have their plain names.
  const kit: Kit = {
    ...inLanguage(loaded.kit, job.language),
    arrangement: job.arrangement ?? loaded.kit.arrangement,
    ...(job.page === undefined ? {} : { page: job.page }),
  };
  const key = madeKey(program, kit, job);
  const learn = (): void => {
    if (readKey !== undefined && !check) cache.keep('read', readKey, key);
  };
  if (key === have) {
    learn();
    return check
      ? { became: 'fresh', key }
      : { became: 'fresh', key, figures: kitFigures({ ...loaded, kit }) };
  }
  if (check) return { became: 'stale' };
  const before = foundIn(cache, key);
  if (before) {
    learn();
    // What it costs by now, which is not part of the key.
    const figures = kit.list
      ? { ...kitFigures({ ...loaded, kit }), mark: before.figures.mark }
      : before.figures;
    return { became: 'made', key, ...before, figures, diagnostics: '', found: true, ...troubleOf(cache) };
  }
  const drawn = await drawAll({ ...loaded, kit }, job, cache, program);
  if ('failed' in drawn) return { became: 'failed', diagnostics: saidOf(drawn) };
  const files = drawn.files.map(({ name, content }) => ({ name, content, sha256: cache.keepFile(content) }));
  const { mark, figures, notes } = drawn;
  const record: Record = { mark, figures, notes, files: files.map(({ name, sha256 }) => ({ name, sha256 })) };
  // The files come first: a record that is there has all that it names.
  cache.keep('made', key, record);
  learn();
  const { diagnostics } = drawn;
  return { became: 'made', key, mark, figures, files, notes, diagnostics, found: false, ...troubleOf(cache) };
}

const troubleOf = ({ trouble }: Cache) => (trouble === undefined ? {} : { trouble });

const saidOf = ({ diagnostics, lines, errorLines }: Outcome): string =>
  [formatDiagnostics(diagnostics), ...lines, ...errorLines].filter((text) => text !== '').join('\n');

function foundIn(cache: Cache, key: string) {
  // What the seal holds together was written by this program.
  const record = cache.find('made', key) as Record | undefined;
  if (!record) return undefined;
  const files: MadeFile[] = [];
  for (const { name, sha256 } of record.files) {
    const content = cache.findFile(sha256);
    if (!content) return undefined;
    files.push({ name, sha256, content });
  }
  return { mark: record.mark, figures: record.figures, notes: record.notes, files };
}

const DRAWER = { prepare, sheetsOf, render, renderInline };
const PLAIN: PlanOptions = { out: '', formats: ['svg'], mode: 'static' };

/** Whether a leaflet is made. */
const signed = ({ outputs }: Pick<Job, 'outputs'>): boolean =>
  outputs.includes('leaflet') || outputs.includes('booklet');

/** Which drawings each output is. */
function plansOf({ outputs: wanted, date }: Job): readonly PlanOptions[] {
  const plain: PlanOptions = { ...PLAIN, ...(date === undefined ? {} : { date }) };
  const has = (output: Output): boolean => wanted.includes(output);
  const formats = [...(has('drawing') ? ['svg' as const] : []), ...(has('png') ? ['png' as const] : [])];
  // A leaflet and a shop page have the drawing in them, which is read back for them too.
  const drawn = formats.length > 0 || signed({ outputs: wanted }) || has('shop');
  return [
    ...(drawn ? [{ ...plain, formats }] : []),
    ...(has('positions') ? [{ ...plain, position: 'all' }] : []),
    ...(has('steps') ? [{ ...plain, step: 'all' }] : []),
    ...(has('inline') ? [{ ...plain, mode: 'inline' as const }] : []),
  ];
}

interface Drawn {
  readonly figures: KitFigures;
  readonly files: readonly { readonly name: string; readonly content: Uint8Array }[];
  readonly mark: string | null;
  readonly notes: readonly string[];
  readonly diagnostics: string;
}

type Read = Awaited<ReturnType<typeof loadJob>> & { readonly kit: Kit };

async function drawAll(loaded: Read, job: Job, cache: Cache, program: string): Promise<Drawn | Outcome> {
  const files = new Map<string, Uint8Array>();
  const notes = new Set<string>();
  const said = new Map<string, Diagnostic>();
  const say = (diagnostics: readonly Diagnostic[]): void => {
    for (const one of diagnostics) said.set(formatDiagnostics([one]), one);
  };
  say(loaded.diagnostics);
  const letters = signed(job) ? lettersMissing(loaded.kit) : [];
  if (letters.length > 0) return refused(job.file, loaded, toDiagnostics(letters, loaded.source));
  const store = placementsIn(cache, program);
  let prepared: Prepared | undefined;
  for (const options of plansOf(job)) {
    const plan = planOf(job.file, loaded, options);
    if (!isPlan(plan)) return plan;
    const placed: Prepared | Outcome = prepared ?? (await preparePlan(plan, options, DRAWER, store));
    if ('failed' in placed) return placed;
    prepared = placed;
    const drawn = drawPlan(plan, prepared, options, DRAWER);
    if ('failed' in drawn) return drawn;
    // The kit's own are the same whichever of its drawings is made.
    say(drawn.diagnostics);
    for (const { files: some, notes: own } of drawn.drawings) {
      for (const { target, content } of some) files.set(target, bytesOf(await content()));
      for (const note of own) notes.add(note);
    }
  }
  const { id } = loaded.kit;
  if (job.outputs.includes('response')) files.set(`${id}-response.svg`, bytesOf(drawResponse(loaded.kit)));
  if (job.outputs.includes('loads'))
    files.set(`${id}-loads.json`, bytesOf(`${toJson(loadsData(figuresOf(loaded.kit)))}\n`));
  if (prepared && job.outputs.includes('shop')) {
    const plan = planOf(job.file, loaded, PLAIN);
    const made = isPlan(plan) ? await embedKit(plan, prepared, job, DRAWER, store) : plan;
    if ('failed' in made) return made;
    say(made.diagnostics);
    for (const { path, content } of made.files) files.set(`${SHOP_FOLDER}/${path}`, bytesOf(content));
  }
  if (prepared) for (const { name, content } of await leafletsOf(prepared, job)) files.set(name, content);
  return {
    files: [...files].map(([name, content]) => ({ name, content })),
    mark: prepared === undefined ? null : markOf(prepared),
    figures: kitFigures(loaded, prepared),
    notes: [...notes],
    diagnostics: formatDiagnostics([...said.values()]),
  };
}

/** A kit's leaflet as PDF and as a page, and as folded sheets, where they are asked for. */
async function leafletsOf(prepared: Prepared, { outputs, date, workshop }: Job) {
  const wanted: LeafletWanted = {
    formats: outputs.includes('leaflet') ? leafletFormats : [],
    booklet: outputs.includes('booklet'),
    plot: outputs.includes('response'),
    ...(workshop ? { workshop } : {}),
    ...(date === undefined ? {} : { date }),
  };
  const made: { readonly name: string; readonly content: Uint8Array }[] = [];
  for (const { target, as } of leafletFiles(prepared.circuit.kit, '', wanted))
    made.push({ name: target, content: bytesOf(await leafletContent(prepared, as, wanted)) });
  return made;
}

const bytesOf = (content: string | Uint8Array): Uint8Array =>
  typeof content === 'string' ? Buffer.from(content) : content;
