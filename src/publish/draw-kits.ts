/** `draw` for many kits: each is drawn for itself, so that one bad kit does not stop the others. */
import { existsSync } from 'node:fs';
import { parse } from 'node:path';
import { type Problem, problem } from '../common/problem.ts';
import { toDiagnostics } from '../describe/diagnostics.ts';
import { isForeign } from '../files/foreign.ts';
import { type Loaded, loadKit } from '../files/load.ts';
import { hasContent, WriteError, writeAtomically } from '../files/write.ts';
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

export interface DrawOptions extends PlanOptions {
  /** Write nothing; only compare. */
  readonly check: boolean;
}

/**
 * Draws the kits of some files, each for itself, so that one bad kit does not stop the others. All names of files are worked
 * out first: two drawings of one name would overwrite each other, and then neither kit is drawn.
 *
 * @param load reads the kit of one of `files`; by default from the file of that name
 */
export async function* drawKits(
  files: readonly string[],
  options: DrawOptions,
  drawer: Drawer,
  load: (file: string) => Promise<Loaded> = loadKit,
): AsyncGenerator<Outcome> {
  const plans: (Plan | Outcome)[] = [];
  for (const file of files) plans.push(planOf(file, await load(file), options));
  const takers = takersOf(plans.filter(isPlan));
  for (const plan of plans) {
    const error = isPlan(plan) ? takenError(plan, takers) : undefined;
    if (!isPlan(plan)) yield plan;
    else if (error) yield refused(plan.file, plan.loaded, toDiagnostics([error], plan.loaded.source));
    else yield await put(plan, options, drawer);
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

interface WriteResult {
  readonly text: string;
  readonly failed: boolean;
  /** It goes to the stream of complaints. */
  readonly isError?: boolean;
}

function compared(target: string, content: string | Uint8Array): WriteResult {
  if (hasContent(target, content)) return { text: `unchanged ${target}`, failed: false };
  return { text: `${existsSync(target) ? 'differs  ' : 'missing  '} ${target}`, failed: true };
}

function written(target: string, content: string | Uint8Array): WriteResult {
  if (isForeign(target, content))
    return {
      text: `not written ${target}: it already exists and is not a drawing of this kit; move it, or choose another folder with --out`,
      failed: true,
      isError: true,
    };
  try {
    return {
      text: `${writeAtomically(target, content) ? 'written  ' : 'unchanged'} ${target}`,
      failed: false,
    };
  } catch (thrown) {
    if (!(thrown instanceof WriteError)) throw thrown;
    const text = `cannot write to ${thrown.folder}: ${thrown.reason} (${target}); choose another with --out`;
    return { text, failed: true, isError: true };
  }
}
