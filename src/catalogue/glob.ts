/** Patterns of file names within a folder: `*` and `?` stay within a name, `**` stands for any number of folders. */
import { type Dirent, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { whyNotRead } from '../files/reason.ts';

export const isPattern = (text: string): boolean => /[*?]/.test(text);

/** A pattern as an expression that paths with forward slashes are compared with. */
function expression(pattern: string): RegExp {
  const steps = pattern.split('/').filter((step) => step !== '' && step !== '.');
  const words = steps.map((step, i) => {
    if (step === '**') return i === steps.length - 1 ? '.*' : '(?:[^/]+/)*';
    const one = step
      .replace(/[.+^${}()|[\]\\]/g, '\\$&')
      .replace(/\*+/g, '[^/]*')
      .replace(/\?/g, '[^/]');
    return i === steps.length - 1 ? one : `${one}/`;
  });
  return new RegExp(`^${words.join('')}$`);
}

/** Whether a name fits a pattern. */
export function matcher(pattern: string): (name: string) => boolean {
  const wanted = expression(pattern);
  return (name) => wanted.test(name);
}

/** A folder of these holds what other programs keep, and no kits of a workshop. */
const isPassed = (name: string): boolean => name.startsWith('.') || name === 'node_modules';

interface Below {
  /** By their paths from the folder, with forward slashes, in order; hidden ones are left out. */
  readonly files: readonly string[];
  /** Folders that cannot be looked into, and why. */
  readonly closed: readonly { readonly folder: string; readonly reason: string }[];
}

/** Every file below a folder. Links to folders are not followed, as they may lead round in a circle. */
export function filesBelow(folder: string, without: ReadonlySet<string> = new Set(), from = ''): Below {
  const entries = entriesIn(join(folder, from));
  if (!Array.isArray(entries)) return { files: [], closed: [entries] };
  const all = entries.map((entry): Below => {
    const path = `${from}${entry.name}`;
    if (without.has(path)) return { files: [], closed: [] };
    return entry.isDirectory() ? filesBelow(folder, without, `${path}/`) : { files: [path], closed: [] };
  });
  return { files: all.flatMap(({ files }) => files), closed: all.flatMap(({ closed }) => closed) };
}

/** The files of a folder alone, which may be a link to one. */
export function filesIn(folder: string, path: string): Below {
  const entries = entriesIn(join(folder, path));
  if (!Array.isArray(entries)) return { files: [], closed: [entries] };
  const before = path === '.' ? '' : `${path}/`;
  return {
    files: entries.flatMap((entry) => (entry.isDirectory() ? [] : [`${before}${entry.name}`])),
    closed: [],
  };
}

function entriesIn(folder: string): Dirent[] | Below['closed'][number] {
  try {
    return readdirSync(folder, { withFileTypes: true })
      .filter(({ name }) => !isPassed(name))
      .sort((a, b) => (a.name < b.name ? -1 : 1));
  } catch (thrown) {
    return { folder, reason: whyNotRead(thrown) };
  }
}

export function matching(pattern: string, paths: readonly string[]): readonly string[] {
  const wanted = expression(pattern);
  return paths.filter((path) => wanted.test(path));
}
