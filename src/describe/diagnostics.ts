/** Problems put in place and into words, and printed for the terminal. */
import { inBase } from '../common/extends-wording.ts';
import type { Diagnostic, KeyPath, Problem, ProblemCode } from '../common/problem.ts';
import { type Details, wording } from '../common/wording.ts';
import { jointKinds } from './kit.ts';
import type { Source } from './source.ts';

/** More than these at once help nobody. */
const MOST_REPORTS = 50;
/** Columns of a line that an excerpt shows. */
const EXCERPT = 100;

/** Gives each problem its place and its words; file by file, in the order of the file, at one place in the order found. */
export function toDiagnostics(problems: readonly Problem[], source: Source): readonly Diagnostic[] {
  const reports = problems.map((found) => reportOne(found, source));
  const files = [...new Set([source.file, ...reports.map(({ place }) => place.file)])];
  return reports.sort(
    (a, b) =>
      files.indexOf(a.place.file) - files.indexOf(b.place.file) ||
      a.place.line - b.place.line ||
      a.place.column - b.place.column,
  );
}

function reportOne(problem: Problem, whole: Source): Diagnostic {
  const { source, found } = whole.resolve?.(problem) ?? { source: whole, found: problem };
  const words = wordsOf(found.code, {
    ...found.detail,
    ...inheritedFrom(problem, source, whole),
  } as Details[ProblemCode]);
  // Without exact places the path is the only way to find the spot.
  const at = source.exact || found.path.length === 0 ? '' : `${pathText(found.path)}: `;
  const whose =
    source.file === whole.file
      ? undefined
      : inBase(whole.called ?? whole.file, found === problem, source.ships === true);
  return {
    code: found.code,
    place: source.placeOf(found),
    ...words,
    message: `${at}${words.message}`,
    ...(whose === undefined ? {} : { remedy: `${words.remedy} ${whose}`, whose }),
  };
}

/** Where a problem's other place is written, if that is in a file of its own. */
function inheritedFrom(problem: Problem, source: Source, whole: Source) {
  if (!problem.other || !whole.resolve) return {};
  const { source: its, found } = whole.resolve({ ...problem, path: problem.other });
  if (its.file === source.file) return {};
  const { file, line } = its.placeOf(found);
  return { inherited: its.exact ? `${file}, line ${line}` : file };
}

/** A path as a script would write it, without the steps that lie within a joint's text. */
function pathText(path: KeyPath): string {
  const steps = path[0] === 'joints' ? path.filter((step) => !WITHIN_JOINT.has(step)) : path;
  return steps.join('.').replace(/\.(\d+)/g, '[$1]');
}
const WITHIN_JOINT: ReadonlySet<string | number> = new Set([...jointKinds, 'from', 'to', 'lug']);

const wordsOf = <C extends ProblemCode>(code: C, detail: Details[C]) => wording[code](detail);

/**
 * One report as text: place, code and message on the first line, the excerpt with a caret under the column, then
 * what to do. Ends without a line break.
 */
export function formatDiagnostic({ code, severity, place, message, remedy }: Diagnostic): string {
  // A line break in a file's name would make two lines of this one.
  const file = place.file.replace(/[\n\t]/g, '\uFFFD');
  const head = `${file}:${place.line}:${place.column}  ${severity}  ${code}\n    ${message}`;
  const gutter = String(place.line);
  const { shown, caret } = crop(place.excerpt, place.column - 1);
  const excerpt =
    shown.trim() === ''
      ? ''
      : `\n\n    ${gutter} │ ${shown}\n    ${' '.repeat(gutter.length)} │ ${' '.repeat(caret)}^\n`;
  return remedy === '' ? `${head}${excerpt}`.trimEnd() : `${head}${excerpt}\n    ${remedy}`;
}

/** All diagnostics of one file, the first fifty in full. */
export function formatDiagnostics(diagnostics: readonly Diagnostic[]): string {
  const more = diagnostics.length - MOST_REPORTS;
  const printed = diagnostics.slice(0, MOST_REPORTS).map(formatDiagnostic);
  return [...printed, ...(more > 0 ? [`and ${more} more`] : [])].join('\n\n');
}

/** The part of a line around a column, without indentation, tabs and control characters. */
function crop(line: string, column: number): { readonly shown: string; readonly caret: number } {
  const indent = Math.min(line.search(/\S|$/), column);
  const start = column - indent > EXCERPT - 20 ? column - EXCERPT / 2 : indent;
  const clean = (text: string): string => text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, ' ');
  const before = start > indent ? '… ' : '';
  const after = line.length > start + EXCERPT ? ' …' : '';
  return {
    shown: `${before}${clean(line.slice(start, start + EXCERPT)).trimEnd()}${after}`,
    // In characters, not UTF-16 units, since that is what a terminal lays out.
    caret: [...(before + line.slice(start, column))].length,
  };
}
