/** The one kit that a command works on: a file, a circuit that ships, or a kit of a workshop, which is named `shop#ID` or `shop/solderleaf.yaml#ID`. */
import { existsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Command } from 'commander';
import type { Job } from '../catalogue/catalogue.ts';
import { loadJob } from '../catalogue/load-job.ts';
import { readCatalogue } from '../catalogue/read-catalogue.ts';
import { closestName } from '../common/nearest.ts';
import { list } from '../common/quoting.ts';
import type { Kit } from '../describe/kit.ts';
import { isFolder } from '../files/find-kits.ts';
import { type Loaded, loadKit } from '../files/load.ts';
import { CATALOGUE } from '../files/parts-list.ts';
import { circuitOr, fail, printDiagnostics } from './console.ts';

/** Whether a path is a workshop's folder or its catalogue. */
export const isWorkshop = (path: string): boolean =>
  isFolder(path) ? existsSync(join(path, CATALOGUE)) : basename(path) === CATALOGUE;

/** The workshop and the id in `shop#ID`; nothing for any other path, such as that of a file with `#` in its name. */
export function workshopKitIn(path: string): { readonly workshop: string; readonly id: string } | undefined {
  const at = path.lastIndexOf('#');
  const workshop = path.slice(0, at);
  return at <= 0 || existsSync(path) || !isWorkshop(workshop)
    ? undefined
    : { workshop, id: path.slice(at + 1) };
}

/**
 * The job of one kit of a workshop.
 *
 * @returns nothing where the catalogue cannot be read, which is told, or where the path does not name a kit of a workshop; a kit
 *   that the workshop does not have is wrong usage
 */
export async function workshopJob(path: string, command: Command): Promise<Job | undefined> {
  const named = workshopKitIn(path);
  if (!named) return undefined;
  const { catalogue, diagnostics } = await readCatalogue(named.workshop);
  printDiagnostics(diagnostics);
  if (!catalogue) {
    fail();
    return undefined;
  }
  const ids = catalogue.jobs.map(({ id }) => id);
  const job = catalogue.jobs.find(({ id }) => id === named.id);
  if (job) return job;
  const near = closestName(named.id, ids);
  const meant = near === undefined ? '' : `did you mean ${near}? `;
  return command.error(
    `error: the workshop ${catalogue.file} has no kit “${named.id}”: ${meant}its kits: ${list(ids)}`,
  );
}

/** Refuses a workshop where kits are expected: its kits are named one by one, or built all together. */
export function refuseWorkshop(path: string, command: Command): void {
  if (!isWorkshop(path)) return;
  const folder = isFolder(path) ? path : dirname(path);
  const name = command.name();
  const all = name === 'draw' ? `, or make all of them with “solderleaf build ${folder}”` : '';
  command.error(
    `error: “${path}” is a workshop: name one of its kits, as in “solderleaf ${name} ${path}#ID”${all}; “solderleaf check ${folder}” lists them`,
  );
}

/** A kit by its file, its circuit's name or its id in a workshop; nothing where what keeps it from being loaded is told. */
export async function loadOne(path: string, command: Command): Promise<Loaded | undefined> {
  if (!workshopKitIn(path)) return loadKit(circuitOr(path, command));
  const job = await workshopJob(path, command);
  return job && loadJob(job);
}

/** The one kit that a command works on; complains and fails where there is none. */
export async function oneKit(path: string, command: Command): Promise<Kit | undefined> {
  refuseWorkshop(path, command);
  if (isFolder(path))
    return command.error(`error: ${command.name()} takes one kit file, and “${path}” is a folder`);
  const loaded = await loadOne(path, command);
  if (!loaded) return undefined;
  printDiagnostics(loaded.diagnostics);
  if (!loaded.kit) fail();
  return loaded.kit;
}
