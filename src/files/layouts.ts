/** Arrangements from `layouts/`, or from a file of the user's own. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { z } from 'zod';
import { closestName } from '../common/nearest.ts';
import { type Problem, problem } from '../common/problem.ts';
import { list } from '../common/quoting.ts';
import { toDiagnostics } from '../describe/diagnostics.ts';
import { problemsOf } from '../describe/issues.ts';
import { parseText } from '../describe/source.ts';
import type { Page } from '../draw/head.ts';
import { type Arrangement, arrangementSchema } from '../place/arrangement.ts';
import { isBytes, LARGEST_KIT, readBytes, whyNot } from './read-file.ts';

/** The package's folder, from wherever in it this file runs. */
export function packageRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'layouts'))) folder = dirname(folder);
  return folder;
}

const layoutFolder = (): string => join(packageRoot(), 'layouts');

/** Names of the arrangements that come with the program. */
export const arrangementNames = (): readonly string[] =>
  readdirSync(layoutFolder())
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => name.slice(0, -'.yaml'.length))
    .sort();

/** The answer for a name that no arrangement has. */
const UNKNOWN = 'unknown';

/** Read once for as long as the file says the same. */
const known = new Map<string, { readonly text: string; readonly arrangement: Arrangement }>();

/** Where an arrangement's file is; absent for a name that none has. */
export function arrangementFile(name: string): string | undefined {
  if (/\.ya?ml$/.test(name)) return name;
  return arrangementNames().includes(name) ? join(layoutFolder(), `${name}.yaml`) : undefined;
}

/**
 * An arrangement by name, or by the path of a `.yaml` file.
 *
 * @returns the arrangement; `UNKNOWN` for a name that none has; else in words what is wrong with the file, a line for each error
 */
export function findArrangement(name: string): Arrangement | string {
  const file = arrangementFile(name);
  if (file === undefined) return UNKNOWN;
  const bytes = readBytes(file, LARGEST_KIT);
  if (!isBytes(bytes)) return `${file}: ${whyNot(bytes)}`;
  const text = Buffer.from(bytes).toString('utf8');
  const before = known.get(name);
  if (before?.text === text) return before.arrangement;
  const { source, value, problems } = parseText(text, file);
  const errors = problems.length > 0 ? problems : arrangementProblems(value);
  if (errors.length === 0) {
    const arrangement = arrangementSchema.parse(value);
    known.set(name, { text, arrangement });
    return arrangement;
  }
  return toDiagnostics(errors, source)
    .map(({ place, message, remedy }) => `${file}:${place.line}:${place.column}: ${message}. ${remedy}`)
    .join('\n');
}

/** What keeps a file from being an arrangement: the most common mistake is to name a kit. */
function arrangementProblems(value: unknown): readonly Problem[] {
  const what = 'the arrangement';
  const read = arrangementSchema.safeParse(value);
  if (read.success) return [];
  const keys = typeof value === 'object' && value !== null ? Object.keys(value) : [];
  if (keys.includes('joints') && !keys.includes('seats'))
    return [
      problem('bad-value', [], {
        why: 'it is a kit, not an arrangement',
        remedy: `Name one of layouts/ (${list(arrangementNames())}), or a file with seats.`,
      }),
    ];
  return problemsOf(read.error.issues, { schema: arrangementSchema, value, path: [], what });
}

/** What is wrong with a name that no arrangement could be found by; nothing when one is. */
export function arrangementErrors(got: string): readonly Problem[] {
  const found = findArrangement(got);
  if (typeof found !== 'string') return [];
  const path = ['arrangement'];
  if (found !== UNKNOWN) return [problem('bad-arrangement', path, { reasons: found.split('\n') })];
  const allowed = arrangementNames();
  const near = closestName(got, allowed);
  return [problem('unknown-arrangement', path, { got, allowed, ...(near ? { nearest: near } : {}) })];
}

const pageSchema = z.strictObject({
  page: z.string().describe('Name a kit uses; the same as the file’s'),
  width: z.number().positive().describe('Millimetres'),
  height: z.number().positive().describe('Millimetres'),
  margin: z.number().min(0).describe('Millimetres left free all round'),
  turns: z.boolean().optional().describe('Either way round, whichever prints larger'),
});

const pageFolder = (): string => join(layoutFolder(), 'pages');

/** Names of the page formats that come with the program. */
export const pageNames = (): readonly string[] =>
  readdirSync(pageFolder())
    .map((name) => name.slice(0, -'.yaml'.length))
    .sort();

/** What is wrong with a name that no page format has; nothing when one has it. */
export function pageErrors(got: string): readonly Problem[] {
  const allowed = pageNames();
  if (allowed.includes(got)) return [];
  const near = closestName(got, allowed);
  return [problem('unknown-page', ['page'], { got, allowed, ...(near ? { nearest: near } : {}) })];
}

/** A page format by name; `undefined` for a name that none has. */
export function findPage(name: string): Page | undefined {
  if (!pageNames().includes(name)) return undefined;
  return pageSchema.parse(parse(readFileSync(join(pageFolder(), `${name}.yaml`), 'utf8')));
}
