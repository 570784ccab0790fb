/** `leaflet` for many kits, each for itself. */
import { toDiagnostics } from '../describe/diagnostics.ts';
import { pageErrors } from '../files/layouts.ts';
import type { Loaded } from '../files/load.ts';
import { workshopFor } from '../files/workshop.ts';
import { lettersMissing } from '../leaflet/letters.ts';
import { eachKit, type Load } from './draw-kits.ts';
import {
  type Drawer,
  drawPlan,
  isPlan,
  type Outcome,
  type Plan,
  type PlanOptions,
  planOf,
  preparePlan,
  refused,
} from './draw-plan.ts';
import { type LeafletWanted, leafletContent, leafletFiles } from './leaflet-plan.ts';
import { written } from './written.ts';

export interface LeafletsOptions extends LeafletWanted {
  readonly out: string;
  /** In place of the kit's. */
  readonly arrangement?: string;
  /** Steps of the placement search. */
  readonly effort?: number;
  readonly progress?: (line: string) => void;
}

/** Makes the leaflets of the kits of some files. */
export const makeLeaflets = (
  files: readonly string[],
  options: LeafletsOptions,
  drawer: Drawer,
  load?: Load,
): AsyncGenerator<Outcome> =>
  eachKit(
    files,
    (file, loaded) => leafletPlan(file, loaded, options),
    (plan) => put(plan, options, drawer),
    load,
  );

/** The drawing is planned too: it is read back before a leaflet shows it. */
const drawn = ({ out, arrangement, effort, language, progress }: LeafletsOptions): PlanOptions => ({
  out,
  formats: ['svg'],
  mode: 'static',
  ...(arrangement === undefined ? {} : { arrangement }),
  ...(effort === undefined ? {} : { effort }),
  ...(language === undefined ? {} : { language }),
  ...(progress ? { progress } : {}),
});

function leafletPlan(file: string, loaded: Loaded, options: LeafletsOptions): Plan | Outcome {
  const plan = planOf(file, loaded, drawn(options));
  if (!isPlan(plan)) return plan;
  const { diagnostics } = workshopFor(loaded.source.file);
  if (diagnostics.length > 0) return refused(file, loaded, diagnostics);
  const wrong = [
    ...lettersMissing(plan.kit),
    ...(plan.kit.page === undefined ? [] : pageErrors(plan.kit.page)),
  ];
  if (wrong.length > 0) return refused(file, loaded, toDiagnostics(wrong, loaded.source));
  const targets = leafletFiles(plan.loaded.kit ?? plan.kit, options.out, options).map(({ target }) => target);
  return { ...plan, drawings: plan.drawings.map(({ aspect }) => ({ aspect, targets })) };
}

async function put(plan: Plan, options: LeafletsOptions, drawer: Drawer): Promise<Outcome> {
  const prepared = await preparePlan(plan, drawn(options), drawer);
  if ('failed' in prepared) return prepared;
  const proof = drawPlan(
    { ...plan, drawings: [{ aspect: {}, targets: [''] }] },
    prepared,
    drawn(options),
    drawer,
  );
  if ('failed' in proof) return proof;
  const lines: string[] = [];
  const errorLines: string[] = [];
  let failed = false;
  const { workshop } = workshopFor(plan.loaded.source.file);
  const wanted = workshop ? { ...options, workshop } : options;
  for (const { target, as } of leafletFiles(plan.loaded.kit ?? plan.kit, options.out, options)) {
    const said = written(target, await leafletContent(prepared, as, wanted), 'leaflet');
    failed ||= said.failed;
    (said.isError ? errorLines : lines).push(said.text);
  }
  return { file: plan.file, diagnostics: proof.diagnostics, lines, errorLines, failed };
}
