/** `embed` for many kits, each for itself; then the files that all kits of the folder share. */
import { join } from 'node:path';
import type { Workshop } from '../describe/workshop.ts';
import { isForeign } from '../files/foreign.ts';
import type { Loaded } from '../files/load.ts';
import { workshopFor } from '../files/workshop.ts';
import type { Language } from '../messages/language.ts';
import { eachKit, type Load } from './draw-kits.ts';
import {
  type Drawer,
  isPlan,
  type Outcome,
  type Plan,
  type PlanOptions,
  planOf,
  preparePlan,
  refused,
} from './draw-plan.ts';
import { commonFiles, kitsIn, MANIFEST, manifestOf } from './embed-folder.ts';
import { type EmbedWanted, embedKit, embedPaths } from './embed-kit.ts';
import type { ShopContent } from './embed-shared.ts';
import { written } from './written.ts';

export interface EmbedOptions extends Omit<EmbedWanted, 'workshop'> {
  readonly out: string;
  /** In place of those that the kits name. */
  readonly arrangement?: string;
  readonly language?: Language;
  readonly progress?: (line: string) => void;
}

/** Makes the folders of the kits of some files, and at the end what they share with those that lie there already. */
export async function* embedKits(
  files: readonly string[],
  options: EmbedOptions,
  drawer: Drawer,
  load?: Load,
): AsyncGenerator<Outcome> {
  const planned = (file: string, loaded: Loaded) => planFor(file, loaded, options);
  yield* eachKit(files, planned, (plan) => put(plan, options, drawer), load);
  yield common(options.out);
}

const drawn = ({ out, arrangement, effort, language, progress }: EmbedOptions): PlanOptions => ({
  out,
  formats: ['svg'],
  mode: 'static',
  ...(arrangement === undefined ? {} : { arrangement }),
  ...(effort === undefined ? {} : { effort }),
  ...(language === undefined ? {} : { language }),
  ...(progress ? { progress } : {}),
});

function planFor(file: string, loaded: Loaded, options: EmbedOptions): Plan | Outcome {
  const plan = planOf(file, loaded, drawn(options));
  if (!isPlan(plan)) return plan;
  const { diagnostics } = workshopFor(loaded.source.file);
  if (diagnostics.length > 0) return refused(file, loaded, diagnostics);
  const targets = embedPaths(plan.kit.id).map((path) => join(options.out, path));
  return { ...plan, drawings: [{ aspect: {}, targets }] };
}

async function put(plan: Plan, options: EmbedOptions, drawer: Drawer): Promise<Outcome> {
  const prepared = await preparePlan(plan, drawn(options), drawer);
  if ('failed' in prepared) return prepared;
  const workshop: Workshop | undefined = workshopFor(plan.loaded.source.file).workshop;
  const made = await embedKit(plan, prepared, { ...options, ...(workshop ? { workshop } : {}) }, drawer);
  if ('failed' in made) return made;
  return {
    file: plan.file,
    diagnostics: made.diagnostics,
    ...allWritten(options.out, made.files, 'file for the shop page'),
  };
}

/** Nothing is written where one of the files would take the place of somebody else's. */
function allWritten(
  out: string,
  files: readonly ShopContent[],
  what: string,
): Pick<Outcome, 'lines' | 'errorLines' | 'failed'> {
  const lines: string[] = [];
  const errorLines: string[] = [];
  const all = files.map(({ path, content }) => ({ target: join(out, path), content }));
  const foreign = all.filter(({ target, content }) => isForeign(target, content));
  for (const { target, content } of foreign.length > 0 ? foreign : all) {
    const said = written(target, content, what);
    (said.isError ? errorLines : lines).push(said.text);
  }
  return { lines, errorLines, failed: errorLines.length > 0 };
}

/** Index, stylesheets, scripts and manifest, for all kits that lie in the folder. */
function common(out: string): Outcome {
  const { kits, wrong } = kitsIn(out);
  const outcome = { file: out, diagnostics: [], lines: [], errorLines: [], failed: false };
  const left = wrong.map(
    ({ file, reason }) =>
      `${file}: left out of the index and the manifest, as ${reason}; embed this kit again, or delete its folder`,
  );
  if (kits.length === 0) return { ...outcome, errorLines: left, failed: left.length > 0 };
  const files = commonFiles(kits);
  const manifest = { path: MANIFEST, content: manifestOf(out, kits, files) };
  const said = allWritten(out, [...files, manifest], 'file of a shop’s folder');
  return {
    ...outcome,
    lines: said.lines,
    errorLines: [...left, ...said.errorLines],
    failed: said.failed || left.length > 0,
  };
}
