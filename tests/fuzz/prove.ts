/** What must hold of any text at all: a drawing, or problems with a place and words; never an exception, and never for long. */
import { solveLoads } from '../../src/analyse/index.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { readKit } from '../../src/checked.ts';
import type { Diagnostic } from '../../src/common/problem.ts';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { arrangementErrors, findArrangement, findPage, pageErrors } from '../../src/files/layouts.ts';
import { formatFinding, proofread } from '../../src/inspect/index.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { mutant } from './mutations.ts';

/** Seconds of the processor's time that one description may take, drawing included. */
const LONGEST = 2;

export interface Proof {
  /** What became of it. */
  readonly outcome: 'refused' | 'drawn';
  readonly errors: readonly string[];
  /** Seconds of the processor's time. */
  readonly seconds: number;
}

/** How often what takes longer is timed: the processor's time grows on a machine that does something else beside it. */
const TIMES = 3;

/** Reads, checks and draws the description of a seed. */
export async function prove(seed: number): Promise<Proof> {
  const text = mutant(seed);
  const first = await attempt(text);
  let { seconds } = first;
  for (let i = 1; i < TIMES && seconds > LONGEST; i++)
    seconds = Math.min(seconds, (await attempt(text)).seconds);
  const errors = [...first.errors, ...(seconds > LONGEST ? [`took ${seconds.toFixed(1)} s`] : [])];
  return { ...first, seconds, errors: errors.map((one) => `seed ${seed}: ${one}`) };
}

async function attempt(text: string): Promise<Proof> {
  const start = process.cpuUsage();
  const errors: string[] = [];
  let outcome: Proof['outcome'] = 'refused';
  try {
    const { kit, diagnostics, source } = readKit(text, 'fuzz.yaml');
    errors.push(...wrongIn(diagnostics, text));
    if (kit) {
      outcome = 'drawn';
      const circuit = buildCircuit(kit);
      errors.push(...wrongIn(toDiagnostics(notesOf(circuit, solveLoads(circuit)), source), text));
      errors.push(...(await drawingErrors(kit)));
    } else if (diagnostics.length === 0) errors.push('refused without a word');
  } catch (thrown) {
    errors.push(`threw ${thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown)}`);
  }
  const { user, system } = process.cpuUsage(start);
  return { outcome, errors, seconds: (user + system) / 1e6 };
}

/** Words that leak from underneath. `null` may stand in what the user wrote. */
const LEAK = /\bundefined\b|\[object|\bNaN\b|Invalid input|\bzod\b|\n\s+at /;

/** What is wrong with problems as they are told. */
function wrongIn(diagnostics: readonly Diagnostic[], text: string): readonly string[] {
  const lines = text.split(/\r\n|\r|\n/);
  return diagnostics.flatMap(({ code, place, message, remedy }) => {
    const { line, column, excerpt } = place;
    const placed =
      line >= 1 &&
      line <= lines.length &&
      excerpt === lines[line - 1] &&
      column >= 1 &&
      column <= excerpt.length + 1;
    return [
      ...(placed ? [] : [`${code} at ${line}:${column}, which is not in the text`]),
      ...(message.trim() === '' || remedy.trim() === '' ? [`${code} has no words`] : []),
      ...(LEAK.test(`${message} ${remedy}`) && !LEAK.test(text) ? [`${code}: ${message} / ${remedy}`] : []),
    ];
  });
}

/** Draws a kit without a search, in its own arrangement and on its own page, and reads the drawing back. */
async function drawingErrors(kit: Kit): Promise<readonly string[]> {
  const refused = [
    ...arrangementErrors(kit.arrangement),
    ...(kit.page === undefined ? [] : pageErrors(kit.page)),
  ];
  const arrangement = findArrangement(kit.arrangement);
  if (refused.length > 0 || typeof arrangement === 'string') return [];
  const page = kit.page === undefined ? undefined : findPage(kit.page);
  const prepared = await prepare(kit, arrangement, { effort: { steps: 0, seed: 1 } });
  const { svg } = render(prepared, page && typeof page === 'object' ? { page } : {});
  // Type that is small on a page has a note of its own.
  return proofread(svg, prepared)
    .filter(({ rule }) => rule !== 'small-type')
    .map((one) => `drawn with a finding: ${formatFinding(one)}`);
}
