/** The kits that a command works on one after another: files, folders, circuits that ship, and kits of a workshop. */
import type { Command } from 'commander';
import type { Job } from '../catalogue/catalogue.ts';
import { loadJob } from '../catalogue/load-job.ts';
import { inLanguage } from '../describe/kit.ts';
import { isFolder, kitFiles } from '../files/find-kits.ts';
import { type Loaded, loadKit } from '../files/load.ts';
import type { Load } from '../publish/draw-kits.ts';
import { circuitOr, filesOf } from './console.ts';
import { isWorkshop, refuseWorkshop, workshopJob, workshopKitIn } from './one-kit.ts';

/** Kits may lie right beside a workshop's catalogue: then its folder is one of kits like any other. */
const hasNoKits = (path: string): boolean =>
  isWorkshop(path) && !(isFolder(path) && kitFiles([path]).files.length > 0);

/** A kit of a workshop is drawn in the arrangement and the language and on the page that its catalogue says. */
async function loadAny(file: string, job: Job | undefined): Promise<Loaded> {
  if (!job) return loadKit(file);
  const loaded = await loadJob(job);
  const { kit } = loaded;
  const { arrangement = kit?.arrangement, page = kit?.page } = job;
  if (!kit || arrangement === undefined) return loaded;
  const said = { ...inLanguage(kit, job.language), arrangement, ...(page === undefined ? {} : { page }) };
  return { ...loaded, kit: said };
}

/** What is named on the command line, and how each is read; refuses what is not a kit. */
export async function manyKits(
  paths: readonly string[],
  command: Command,
): Promise<{ readonly files: readonly string[]; readonly load: Load }> {
  const jobs = new Map<string, Job>();
  const others: string[] = [];
  for (const path of paths) {
    const job = await workshopJob(path, command);
    if (job) jobs.set(path, job);
    else if (!workshopKitIn(path)) others.push(circuitOr(path, command));
  }
  for (const path of others) if (hasNoKits(path)) refuseWorkshop(path, command);
  const files = [...(others.length > 0 ? filesOf(others) : []), ...jobs.keys()];
  return { files, load: (file) => loadAny(file, jobs.get(file)) };
}
