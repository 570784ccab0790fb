/** Arrangements from `layouts/`, or from a file of the user's own. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { z } from 'zod';
import type { Page } from '../draw/head.ts';
import { type Arrangement, arrangementSchema } from '../place/arrangement.ts';

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
export const UNKNOWN = 'unknown';

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
  if (!existsSync(file)) return `${file}: there is no such file`;
  try {
    const read = arrangementSchema.safeParse(parse(readFileSync(file, 'utf8')));
    if (!read.success) {
      const issue = read.error.issues[0];
      return `${file}: ${issue?.path.join('.') || 'arrangement'}: ${issue?.message ?? 'not an arrangement'}`;
    }
    known.set(name, read.data);
    return read.data;
  } catch (thrown) {
    return `${file}: ${thrown instanceof Error ? thrown.message.split('\n', 1)[0] : 'not readable'}`;
  }
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

/** A page format by name; `undefined` for a name that none has. */
export function findPage(name: string): Page | undefined {
  if (!pageNames().includes(name)) return undefined;
  return pageSchema.parse(parse(readFileSync(join(pageFolder(), `${name}.yaml`), 'utf8')));
}
