/** Patterns of file names within a folder: `*` and `?` stay within a name, `**` stands for any number of folders. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';

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

/** A folder of these holds what other programs keep, and no kits of a workshop. */
const isPassed = (name: string): boolean => name.startsWith('.') || name === 'node_modules';

/** Every file below a folder, by its path from there, with forward slashes, in order; hidden ones are left out. */
export function filesBelow(folder: string, without: ReadonlySet<string> = new Set(), from = ''): string[] {
  return readdirSync(join(folder, from), { withFileTypes: true })
    .filter(({ name }) => !isPassed(name) && !without.has(`${from}${name}`))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) =>
      entry.isDirectory() ? filesBelow(folder, without, `${from}${entry.name}/`) : [`${from}${entry.name}`],
    );
}

export function matching(pattern: string, paths: readonly string[]): readonly string[] {
  const wanted = expression(pattern);
  return paths.filter((path) => wanted.test(path));
}
