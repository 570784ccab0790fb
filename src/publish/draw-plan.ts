/** What is drawn of one kit: planned, prepared, drawn and read back; writing it is for others. */
import { join, parse } from 'node:path';
import { notesOf } from '../annotate/notes.ts';
import { nth } from '../common/must.ts';
import { type Diagnostic, type Problem, problem } from '../common/problem.ts';
import { toDiagnostics } from '../describe/diagnostics.ts';
import { type Hand, inLanguage, type Kit } from '../describe/kit.ts';
import { bareLegNotes } from '../draw/bare-legs.ts';
import { unitsAcross } from '../draw/column.ts';
import { type Aspect, markOf, type Prepared, readableWidth, wantedWidth } from '../draw/compose.ts';
import { drawingName, type Mode } from '../draw/drawing-name.ts';
import { arrangementErrors, findArrangement, findPage, pageErrors } from '../files/layouts.ts';
import type { Loaded } from '../files/load.ts';
import { formatFinding, proofread, type Weight } from '../inspect/index.ts';
import type { Language } from '../messages/language.ts';
import { type Arrangement, narrowColumn } from '../place/arrangement.ts';
import { DEFAULT_EFFORT } from '../place/improve.ts';
import { NoRouteError, type PlaceOptions } from '../place/place.ts';
import type { PlacementStore } from '../place/stored.ts';
import { buildCircuit } from '../solve/build.ts';
import { aspectsOf, type Wanted } from './aspects.ts';
import { withLetters } from './modes.ts';
import { pixelsAcross, svgToPng } from './png.ts';
import { typeNotes } from './type-notes.ts';

export type Format = 'svg' | 'png';

/** The pipeline: the kit placed, then any of its drawings. */
export interface Drawer {
  readonly sheetsOf: (prepared: Prepared, aspect: Aspect) => readonly Aspect[];
  readonly prepare: (kit: Kit, arrangement: Arrangement, options: PlaceOptions) => Promise<Prepared>;
  readonly render: (prepared: Prepared, aspect: Aspect) => { readonly name: string; readonly svg: string };
  readonly renderInline: (prepared: Prepared, aspect: Aspect) => string;
}

/** What is to be drawn of a kit. */
export interface PlanOptions extends Wanted {
  readonly out: string;
  readonly formats: readonly Format[];
  /** In place of those the kit names. */
  readonly arrangement?: string;
  readonly hand?: Hand;
  readonly page?: string;
  readonly language?: Language;
  readonly mode: Mode;
  /** Dots to an inch of a PNG. */
  readonly dpi?: number;
  /** Steps of the placement search. */
  readonly effort?: number;
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
export interface Plan {
  readonly file: string;
  readonly loaded: Loaded;
  readonly kit: Kit;
  readonly arrangement: Arrangement;
  readonly page?: string;
  readonly drawings: readonly Wished[];
}

export const refused = (
  file: string,
  { diagnostics }: Loaded,
  errors: readonly Diagnostic[] = [],
): Outcome => ({
  file,
  diagnostics: [...diagnostics, ...errors],
  lines: [],
  errorLines: [],
  failed: true,
});

/** What is to be drawn of a kit; or that nothing can be, and why. */
export function planOf(file: string, loaded: Loaded, options: PlanOptions): Plan | Outcome {
  if (!loaded.kit) return refused(file, loaded);
  const kit = inLanguage(loaded.kit, options.language);
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
          `${drawingName(circuit, options.hand ?? kit.hand, { ...aspect, sheet })}${unusual(loaded.kit ?? kit, options)}`,
        ),
      ),
    })),
  };
}

/** A kit's own page is that of its leaflet; pieces alone and columns are for elsewhere. */
const usualPage = (kit: Kit, { only, width }: PlanOptions): string | undefined =>
  only === undefined && width === undefined ? kit.page : undefined;

/** Whether there is something to draw. */
export const isPlan = (one: Plan | Outcome): one is Plan => 'kit' in one;

/** Solves and places the kit of a plan; `store` is where placements are kept. */
export async function preparePlan(
  { file, loaded, kit, arrangement, drawings }: Plan,
  options: PlanOptions,
  drawer: Drawer,
  store?: PlacementStore,
): Promise<Prepared | Outcome> {
  const placeOptions: PlaceOptions = {
    ...(options.hand ? { hand: options.hand } : {}),
    ...(options.effort === undefined ? {} : { effort: { ...DEFAULT_EFFORT, steps: options.effort } }),
    ...(kit.parts.length < LARGE
      ? {}
      : { progress: (stage) => options.progress?.(`${file}: ${kit.parts.length} parts, ${stage}`) }),
    ...(store ? { store } : {}),
  };
  const placed = async (by: Arrangement): Promise<Prepared | undefined> =>
    drawer.prepare(kit, by, placeOptions).catch((thrown: unknown) => {
      if (thrown instanceof NoRouteError) return undefined;
      throw thrown;
    });
  const usual = await placed(arrangement);
  const prepared = options.arrangement === undefined ? await readable(usual, drawings, placed) : usual;
  return prepared ?? refused(file, loaded, toDiagnostics([problem('no-route', ['kit'], {})], loaded.source));
}

/** A kit placed anew for a column, where its type would be too small as it is placed and becomes larger so. */
async function readable(
  usual: Prepared | undefined,
  drawings: Plan['drawings'],
  placed: (by: Arrangement) => Promise<Prepared | undefined>,
): Promise<Prepared | undefined> {
  const { width, ...rest } = drawings[0]?.aspect ?? {};
  if (!usual || width === undefined) return usual;
  const aspect = { ...rest, width };
  const wanted = readableWidth(usual, aspect);
  if (wanted === undefined || wanted <= width) return usual;
  const narrow = await placed(narrowColumn(unitsAcross(width)));
  const reached = narrow && readableWidth(narrow, aspect);
  // It is the same revision, whichever way its parts stand.
  return narrow && reached !== undefined && reached < wanted ? { ...narrow, mark: markOf(usual) } : usual;
}

/** A file to be written; what it holds is worked out when it is asked for, so that not all of a kit's are held at once. */
interface DrawnFile {
  readonly target: string;
  readonly content: () => Promise<string | Uint8Array>;
}

/** The drawings of a kit, read back and found true to it. */
interface Drawn {
  readonly diagnostics: readonly Diagnostic[];
  /** Each with its files, and with what is to be said of it. */
  readonly drawings: readonly { readonly files: readonly DrawnFile[]; readonly notes: readonly string[] }[];
}

/** Draws all of a plan; nothing of it where one of its drawings is not true to the kit. */
export function drawPlan(
  plan: Plan,
  prepared: Prepared,
  options: PlanOptions,
  drawer: Drawer,
): Drawn | Outcome {
  const { file, loaded } = plan;
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
  const { mode, dpi } = options;
  return {
    diagnostics,
    drawings: drawn.map(({ name, svg, target, aspect }) => ({
      files: options.formats.map((format) => ({
        target: `${target}.${format}`,
        content: async () =>
          format === 'png'
            ? svgToPng(svg, pixelsAcross(svg, dpi))
            : mode === 'inline'
              ? drawer.renderInline(prepared, aspect)
              : mode === 'standalone'
                ? withLetters(drawer.render(prepared, { ...aspect, mode }).svg)
                : svg,
      })),
      notes: typeNotes(name, svg, plan.page, aspect),
    })),
  };
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

/** What of a file's name the drawing's own does not say: another page, arrangement, language or mode than the kit's usual ones. */
function unusual(kit: Kit, options: PlanOptions): string {
  const { arrangement, page, language, mode } = options;
  return [
    ...(arrangement === undefined || arrangement === kit.arrangement ? [] : [parse(arrangement).name]),
    ...(page === undefined || page === usualPage(kit, options) ? [] : [page]),
    ...(language === undefined || language === kit.language ? [] : [language]),
    ...(mode === 'static' ? [] : [mode]),
  ]
    .map((word) => `-${word}`)
    .join('');
}
