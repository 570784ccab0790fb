/** Arrangements from `layouts/`, or from a file of the user's own. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isNode, LineCounter, parse, parseDocument } from 'yaml';
import { z } from 'zod';
import { nearest } from '../common/nearest.ts';
import { type Problem, problem } from '../common/problem.ts';
import type { Page } from '../draw/head.ts';
import { type Arrangement, arrangementSchema } from '../place/arrangement.ts';
import { isBytes, LARGEST_KIT, readBytes, whyNot } from './read-file.ts';

/** The package's folder, from wherever in it this file runs. */
function packageRoot(): string {
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

const known = new Map<string, Arrangement>();

/**
 * An arrangement by name, or by the path of a `.yaml` file.
 *
 * @returns the arrangement; `UNKNOWN` for a name that none has; else in words what is wrong with the file
 */
export function findArrangement(name: string): Arrangement | string {
  const before = known.get(name);
  if (before) return before;
  const own = /\.ya?ml$/.test(name);
  if (!own && !arrangementNames().includes(name)) return UNKNOWN;
  const file = own ? name : join(layoutFolder(), `${name}.yaml`);
  const bytes = readBytes(file, LARGEST_KIT);
  if (!isBytes(bytes)) return `${file}: ${whyNot(bytes)}`;
  try {
    const lines = new LineCounter();
    const document = parseDocument(Buffer.from(bytes).toString('utf8'), { lineCounter: lines });
    const [error] = document.errors;
    if (error) return `${file}:${error.linePos?.[0].line ?? 1}: ${error.message.split('\n', 1)[0]}`;
    const value: unknown = document.toJS();
    const read = arrangementSchema.safeParse(value);
    if (read.success) {
      known.set(name, read.data);
      return read.data;
    }
    const [issue] = read.error.issues;
    const node = document.getIn(pathOf(issue), true);
    const offset = isNode(node) ? (node.range?.[0] ?? 0) : 0;
    return `${file}:${lines.linePos(offset).line}: ${arrangementIssue(value, issue)}`;
  } catch (thrown) {
    return `${file}: ${thrown instanceof Error ? thrown.message.split('\n', 1)[0] : 'not readable'}`;
  }
}

/** Where an issue is; of a key that should not be there, that key. */
const pathOf = (issue: z.core.$ZodIssue | undefined): readonly (string | number)[] => [
  ...(issue?.path ?? []).filter((step) => typeof step !== 'symbol'),
  ...(issue?.code === 'unrecognized_keys' ? issue.keys.slice(0, 1) : []),
];

/** What keeps a file from being an arrangement: the most common mistake is to name a kit. */
function arrangementIssue(value: unknown, issue: z.core.$ZodIssue | undefined): string {
  const keys = typeof value === 'object' && value !== null ? Object.keys(value) : [];
  if (keys.includes('joints')) return 'it is a kit, not an arrangement';
  if (!keys.includes('seats')) return 'it is not an arrangement, as it has no seats';
  const path = pathOf(issue);
  const [first = ''] = path;
  const where = path.join('.');
  if (issue?.code === 'unrecognized_keys') return `${where}: unknown key`;
  if (path.length === 1 && !keys.includes(String(first))) return `${where}: it is missing`;
  if (issue?.code === 'too_big') return `${where}: it is too large; at most ${issue.maximum}`;
  if (issue?.code === 'too_small') return `${where}: it is too small; at least ${issue.minimum}`;
  return `${where}: it is not valid`;
}

/** What is wrong with a name that no arrangement could be found by; nothing when one is. */
export function arrangementErrors(got: string): readonly Problem[] {
  const found = findArrangement(got);
  if (typeof found !== 'string') return [];
  const path = ['arrangement'];
  if (found !== UNKNOWN) return [problem('bad-arrangement', path, { reason: found })];
  const allowed = arrangementNames();
  const near = nearest(got, allowed);
  return [problem('unknown-arrangement', path, { got, allowed, ...(near ? { nearest: near } : {}) })];
}

const pageSchema = z.strictObject({
  page: z.string().describe('Name a kit uses; the same as the file’s'),
  width: z.number().positive().describe('Millimetres'),
  height: z.number().positive().describe('Millimetres'),
  margin: z.number().min(0).describe('Millimetres left free all round'),
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
  const near = nearest(got, allowed);
  return [problem('unknown-page', ['page'], { got, allowed, ...(near ? { nearest: near } : {}) })];
}

/** A page format by name; `undefined` for a name that none has. */
export function findPage(name: string): Page | undefined {
  if (!pageNames().includes(name)) return undefined;
  return pageSchema.parse(parse(readFileSync(join(pageFolder(), `${name}.yaml`), 'utf8')));
}
