/** `draw` for many kits: each is drawn for itself, so that one bad kit does not stop the others. */
import { existsSync } from 'node:fs';
import { join, parse } from 'node:path';
import { notesOf } from '../annotate/notes.ts';
import { nth } from '../common/must.ts';
import { type Diagnostic, type Problem, problem } from '../common/problem.ts';
import { toDiagnostics } from '../describe/diagnostics.ts';
import type { Hand, Kit } from '../describe/kit.ts';
import { bareLegNotes } from '../draw/bare-legs.ts';
import { type Aspect, type Prepared, wantedWidth } from '../draw/compose.ts';
import { drawingName } from '../draw/drawing-name.ts';
import { isForeign } from '../files/foreign.ts';
import { arrangementErrors, findArrangement, findPage, pageErrors } from '../files/layouts.ts';
import { type Loaded, loadKit } from '../files/load.ts';
import { hasContent, WriteError, writeAtomically } from '../files/write.ts';
import { formatFinding, proofread, type Weight } from '../inspect/index.ts';
import type { Arrangement } from '../place/arrangement.ts';
import { DEFAULT_EFFORT } from '../place/improve.ts';
import { NoRouteError, type PlaceOptions } from '../place/place.ts';
import { buildCircuit } from '../solve/build.ts';
import { aspectsOf, type Wanted } from './aspects.ts';
import { inMode, type Mode } from './modes.ts';
import { pixelsAcross, svgToPng } from './png.ts';
import { typeNotes } from './type-notes.ts';

export type Format = 'svg' | 'png';
/** The pipeline: the kit placed, then any of its drawings. */
interface Drawer {
  readonly sheetsOf: (prepared: Prepared, aspect: Aspect) => readonly Aspect[];
  readonly prepare: (kit: Kit, arrangement: Arrangement, options: PlaceOptions) => Promise<Prepared>;
  readonly render: (prepared: Prepared, aspect: Aspect) => { readonly name: string; readonly svg: string };
  readonly renderInline: (prepared: Prepared, aspect: Aspect) => string;
}

export interface DrawOptions extends Wanted {
  readonly out: string;
  readonly formats: readonly Format[];
  /** In place of those the kit names. */
  readonly arrangement?: string;
  readonly hand?: Hand;
  readonly page?: string;
  readonly mode: Mode;
  /** Dots to an inch of a PNG. */
  readonly dpi?: number;
  /** Steps of the placement search. */
  readonly effort?: number;
  /** Write nothing; only compare. */
  readonly check: boolean;
  /** Told what is being done with a kit so large that it takes seconds. */
  readonly progress?: (line: string) => void;
}

/** Parts from which a kit takes seconds to draw. */
const LARGE = 80;

/** What became of one kit: its diagnostics, what is to be said of each file, and what could not be written. */
export interface Outcome {
  readonly file: string;
  readonly diagnostics: readonly Diagnostic[];
  readonly lines: readonly string[];
  readonly errorLines: readonly string[];
  readonly failed: boolean;
}

/** One drawing that is asked for: the names of its sheets, of which it may take only the first. */
interface Wished {
  readonly aspect: Aspect;
  readonly targets: readonly string[];
}

/** A kit with all that is to be drawn of it, known before anything is placed. */
interface Plan {
  readonly file: string;
  readonly loaded: Loaded;
  readonly kit: Kit;
  readonly arrangement: Arrangement;
  readonly page?: string;
  readonly drawings: readonly Wished[];
}

/**
 * Draws the kits of some files, each for itself, so that one bad kit does not stop the others. All names of files are worked
 * out first: two drawings of one name would overwrite each other, and then neither kit is drawn.
 */
export async function* drawKits(
  files: readonly string[],
  options: DrawOptions,
  drawer: Drawer,
): AsyncGenerator<Outcome> {
  const plans: (Plan | Outcome)[] = [];
  for (const file of files) plans.push(planOf(file, await loadKit(file), options));
  const takers = takersOf(plans.filter(isPlan));
  for (const plan of plans) {
    const error = isPlan(plan) ? takenError(plan, takers) : undefined;
    if (!isPlan(plan)) yield plan;
    else if (error) yield refused(plan.file, plan.loaded, toDiagnostics([error], plan.loaded.source));
    else yield await drawPlan(plan, options, drawer);
  }
}

const isPlan = (one: Plan | Outcome): one is Plan => 'drawings' in one;

const refused = (file: string, { diagnostics }: Loaded, errors: readonly Diagnostic[] = []): Outcome => ({
  file,
  diagnostics: [...diagnostics, ...errors],
  lines: [],
  errorLines: [],
  failed: true,
});

function planOf(file: string, loaded: Loaded, options: DrawOptions): Plan | Outcome {
  const { kit } = loaded;
  if (!kit) return refused(file, loaded);
  const arrangementName = options.arrangement ?? kit.arrangement;
  const arrangement = findArrangement(arrangementName);
  if (typeof arrangement === 'string')
    return refused(file, loaded, toDiagnostics(arrangementErrors(arrangementName), loaded.source));
  const pageName = options.page ?? usualPage(kit, options);
  const page = pageName === undefined ? undefined : findPage(pageName);
  if (pageName !== undefined && !page)
    return refused(file, loaded, toDiagnostics(pageErrors(pageName), loaded.source));
  const circuit = buildCircuit(kit);
  const aspects = aspectsOf(circuit, options, page);
  if ('wrong' in aspects)
    return { ...refused(file, loaded), lines: aspects.wrong.map((words) => `${file}: ${words}`) };
  return {
    file,
    loaded,
    kit,
    arrangement,
    ...(pageName === undefined ? {} : { page: pageName }),
    drawings: aspects.map((aspect) => ({
      aspect,
      // Cards may take a sheet each at most.
      targets: [1, ...(page ? circuit.states.map((_, i) => i + 2) : [])].map((sheet) =>
        join(
          options.out,
          `${drawingName(circuit, options.hand ?? kit.hand, { ...aspect, sheet })}${unusual(kit, options)}`,
        ),
      ),
    })),
  };
}

/** A kit's own page is that of its leaflet; pieces alone and columns are for elsewhere. */
const usualPage = (kit: Kit, { only, width }: DrawOptions): string | undefined =>
  only === undefined && width === undefined ? kit.page : undefined;

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

async function drawPlan(plan: Plan, options: DrawOptions, drawer: Drawer): Promise<Outcome> {
  const { file, loaded, kit } = plan;
  const prepared = await drawer
    .prepare(kit, plan.arrangement, {
      ...(options.hand ? { hand: options.hand } : {}),
      ...(options.effort === undefined ? {} : { effort: { ...DEFAULT_EFFORT, steps: options.effort } }),
      ...(kit.parts.length < LARGE
        ? {}
        : { progress: (stage) => options.progress?.(`${file}: ${kit.parts.length} parts, ${stage}`) }),
    })
    .catch((thrown: unknown) => {
      if (thrown instanceof NoRouteError) return undefined;
      throw thrown;
    });
  if (!prepared)
    return refused(file, loaded, toDiagnostics([problem('no-route', ['kit'], {})], loaded.source));
  const narrow = plan.drawings.flatMap(({ aspect }) => wantedWidth(prepared, aspect) ?? [])[0];
  if (narrow !== undefined)
    return {
      ...refused(file, loaded),
      lines: [
        `${file}: --width ${options.width} is too narrow for the load cards of this kit; at least ${narrow} is needed, or --only drawing,key`,
      ],
    };
  const drawn = plan.drawings.flatMap(({ aspect, targets }) =>
    drawer.sheetsOf(prepared, aspect).map((sheet, i) => ({
      ...drawer.render(prepared, sheet),
      target: nth(targets, i),
      aspect: sheet,
    })),
  );
  // A drawing is read back before anything of its kit is written.
  const proofs = toDiagnostics(
    drawn.flatMap(({ name, svg }) => proofOf(name, svg, prepared)),
    loaded.source,
  );
  const warnings = toDiagnostics(notesOf(prepared.circuit, prepared.loads), loaded.source).filter(
    ({ severity }) => severity === 'warning',
  );
  const legs = toDiagnostics(bareLegNotes(prepared.circuit, prepared.placement), loaded.source);
  const diagnostics = [...loaded.diagnostics, ...warnings, ...legs, ...proofs];
  if (proofs.some(({ severity }) => severity === 'error'))
    return { file, diagnostics, lines: [], errorLines: [], failed: true };
  const lines: string[] = [];
  const errorLines: string[] = [];
  let failed = false;
  const { mode } = options;
  for (const { name, svg, target, aspect } of drawn) {
    for (const format of options.formats) {
      const text = mode === 'inline' ? () => drawer.renderInline(prepared, aspect) : () => inMode(svg, mode);
      const content = format === 'svg' ? await text() : await svgToPng(svg, pixelsAcross(svg, options.dpi));
      const said = options.check
        ? compared(`${target}.${format}`, content)
        : written(`${target}.${format}`, content);
      failed ||= said.failed;
      (said.isError ? errorLines : lines).push(said.text);
    }
    lines.push(...typeNotes(name, svg, plan.page, aspect));
  }
  return { file, diagnostics, lines, errorLines, failed };
}

/** More findings than these of one drawing are only counted. */
const MOST_FINDINGS = 3;

/** What the check of a drawing finds in it, as problems of its kit. */
function proofOf(drawing: string, svg: string, prepared: Prepared): readonly Problem[] {
  // Small type has a note of its own: only a larger page makes it larger.
  const found = proofread(svg, prepared).filter(({ rule }) => rule !== 'small-type');
  const of = (weight: Weight) => {
    const all = found.filter((one) => one.weight === weight).map(formatFinding);
    return { drawing, findings: all.slice(0, MOST_FINDINGS), more: Math.max(0, all.length - MOST_FINDINGS) };
  };
  const [misleading, untidy] = [of('misleading'), of('untidy')];
  return [
    ...(misleading.findings.length > 0 ? [problem('drawing-misleads', ['kit'], misleading)] : []),
    ...(untidy.findings.length > 0 ? [problem('drawing-untidy', ['kit'], untidy)] : []),
  ];
}

/** What of a file's name the drawing's own does not say: another page, arrangement or mode than the kit's usual ones. */
function unusual(kit: Kit, options: DrawOptions): string {
  const { arrangement, page, mode } = options;
  return [
    ...(arrangement === undefined || arrangement === kit.arrangement ? [] : [parse(arrangement).name]),
    ...(page === undefined || page === usualPage(kit, options) ? [] : [page]),
    ...(mode === 'static' ? [] : [mode]),
  ]
    .map((word) => `-${word}`)
    .join('');
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
