/** Builds whenever something in the workshop is saved. */
import { join, resolve, sep } from 'node:path';
import type { Catalogue } from '../catalogue.ts';
import { readCatalogue } from '../read-catalogue.ts';
import { OWN_FOLDER } from './workshop.ts';

/** An editor writes a file in several steps; milliseconds. */
const SETTLE = 30;

/**
 * Calls `build` once for every saving, or once for all that were saved while it was at work.
 *
 * @returns ends the watching
 */
export async function watchWorkshop(path: string, build: () => Promise<void>): Promise<() => Promise<void>> {
  const { watch } = await import('chokidar');
  const { catalogue } = await readCatalogue(path);
  const folder = catalogue?.folder ?? path;
  let timer: NodeJS.Timeout | undefined;
  let atWork = false;
  let again = false;
  const start = async (): Promise<void> => {
    if (atWork) {
      again = true;
      return;
    }
    atWork = true;
    do {
      again = false;
      await build();
    } while (again);
    atWork = false;
  };
  const watcher = watch(folder, {
    ignoreInitial: true,
    ignored: (file: string) => isOwn(file, folder, catalogue),
  });
  watcher.on('all', () => {
    clearTimeout(timer);
    timer = setTimeout(() => void start(), SETTLE);
  });
  await new Promise<void>((ready) => watcher.once('ready', ready));
  return () => watcher.close();
}

/** What a build writes itself, and what is no part of a workshop. */
function isOwn(file: string, folder: string, catalogue: Catalogue | undefined): boolean {
  const path = resolve(file);
  const below = (of: string): boolean => path === resolve(of) || path.startsWith(`${resolve(of)}${sep}`);
  return (
    below(join(folder, OWN_FOLDER)) ||
    (catalogue !== undefined && below(catalogue.out)) ||
    /[/\\](node_modules|\.git)([/\\]|$)/.test(path)
  );
}
