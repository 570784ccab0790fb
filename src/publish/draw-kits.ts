/** `draw` for many kits: each is drawn for itself, so that one bad kit does not stop the others. */
import { parse } from 'node:path';
import { type Problem, problem } from '../common/problem.ts';
import { toDiagnostics } from '../describe/diagnostics.ts';
import { type Loaded, loadKit } from '../files/load.ts';
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
import { compared, written } from './written.ts';

export interface DrawOptions extends PlanOptions {
  /** Write nothing; only compare. */
  readonly check: boolean;
}

/**
 * Draws the kits of some files.
 *
 * @param load reads the kit of one of `files`; by default from the file of that name
 */
export const drawKits = (
  files: readonly string[],
  options: DrawOptions,
  drawer: Drawer,
  load?: Load,
): AsyncGenerator<Outcome> =>
  eachKit(
    files,
    (file, loaded) => planOf(file, loaded, options),
    (plan) => put(plan, options, drawer),
    load,
  );

/** Reads a kit by what names it. */
export type Load = (file: string) => Promise<Loaded>;

/**
 * Makes something of the kits of some files, of each for itself, so that one bad kit does not stop the others. All names of files are
 * worked out first: two files of one name would overwrite each other, and then nothing is made of either kit.
 *
 * @param load reads the kit of one of `files`; by default from the file of that name
 */
export async function* eachKit(
  files: readonly string[],
  planned: (file: string, loaded: Loaded) => Plan | Outcome,
  made: (plan: Plan) => Promise<Outcome>,
  load: Load = loadKit,
): AsyncGenerator<Outcome> {
  const plans: (Plan | Outcome)[] = [];
  for (const file of files) plans.push(planned(file, await load(file)));
  const takers = takersOf(plans.filter(isPlan));
  for (const plan of plans) {
    const error = isPlan(plan) ? takenError(plan, takers) : undefined;
    if (!isPlan(plan)) yield plan;
    else if (error) yield refused(plan.file, plan.loaded, toDiagnostics([error], plan.loaded.source));
    else yield await made(plan);
  }
}

/** Files by the names of the drawings they ask for; some file systems do not tell capitals from small letters. */
function takersOf(plans: readonly Plan[]): ReadonlyMap<string, readonly string[]> {
  const takers = new Map<string, string[]>();
  for (const { file, drawings } of plans)
    for (const target of drawings.flatMap(({ targets }) => targets))
      takers.set(target.toLowerCase(), [...(takers.get(target.toLowerCase()) ?? []), file]);
  return takers;
}

function takenError(
  { file, kit, drawings }: Plan,
  takers: ReadonlyMap<string, readonly string[]>,
): Problem | undefined {
  for (const target of drawings.flatMap(({ targets }) => targets)) {
    const others = takers.get(target.toLowerCase()) ?? [];
    const other = others.find((one) => one !== file) ?? others[others.indexOf(file) + 1];
    if (other === undefined) continue;
    return parse(target).name === kit.id
      ? problem('kit-id-taken', ['kit'], { id: kit.id, file: other })
      : problem('output-taken', ['kit'], { output: target, file: other });
  }
  return undefined;
}

async function put(plan: Plan, options: DrawOptions, drawer: Drawer): Promise<Outcome> {
  const prepared = await preparePlan(plan, options, drawer);
  if ('failed' in prepared) return prepared;
  const drawn = drawPlan(plan, prepared, options, drawer);
  if ('failed' in drawn) return drawn;
  const lines: string[] = [];
  const errorLines: string[] = [];
  let failed = false;
  for (const { files, notes } of drawn.drawings) {
    for (const { target, content } of files) {
      const said = (options.check ? compared : written)(target, await content());
      failed ||= said.failed;
      (said.isError ? errorLines : lines).push(said.text);
    }
    lines.push(...notes);
  }
  return { file: plan.file, diagnostics: drawn.diagnostics, lines, errorLines, failed };
}
