/** From the entries of a catalogue to the files they mean, and a job for each of them and for each member of its families. */
import { join, normalize } from 'node:path';
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import { isFolder, isKitName, sortOf } from '../files/find-kits.ts';
import type { Job, Member, Output } from './catalogue.ts';
import { describeMember, type Family, memberId } from './family.ts';
import { filesBelow, filesIn, isPattern, matching } from './glob.ts';
import { idIn, idOfName, plainIdIn } from './kit-id.ts';
import type { Settings } from './schema.ts';

/** One entry of `kits`. */
export interface Entry {
  /** A path from the workshop's folder, or a pattern. */
  readonly files: string;
  readonly settings: Settings;
  /** Where it is written. */
  readonly path: KeyPath;
}

export interface MeantFamily {
  readonly family: Family;
  readonly members: readonly Member['values'][];
  readonly settings: Settings;
}

interface Workshop {
  readonly folder: string;
  /** The catalogue's file. */
  readonly file: string;
  /** Where outputs go to, from the folder: no kits are looked for there. */
  readonly out: string;
  /** Files that are no kits. */
  readonly own: readonly string[];
}

/** A file that several entries mean is one kit, of which a later entry may say more, or something else. */
export async function jobsOf(
  entries: readonly Entry[],
  families: readonly MeantFamily[],
  workshop: Workshop,
  all: Settings,
) {
  const problems: Problem[] = [];
  const meant = new Map<string, Settings>();
  const out = normalize(workshop.out).replace(/\/$/, '');
  const below = entries.some(({ files }) => isPattern(files))
    ? filesBelow(workshop.folder, new Set([out]))
    : { files: [], closed: [] };
  for (const { files, settings, path } of entries) {
    const { kits, scripts, closed } = filesOf(files, workshop, below);
    // What lies there is not gone, and must not be taken for that.
    for (const one of closed) problems.push(problem('folder-unreadable', path, one));
    if (scripts.length > 0) problems.push(problem('scripts-not-run', path, { got: files, files: scripts }));
    if (kits.length + scripts.length + closed.length === 0)
      problems.push(problem('no-kit-found', path, { got: files }));
    for (const kit of kits) meant.set(kit, { ...meant.get(kit), ...settings });
  }
  const files: Job[] = [];
  for (const [kit, settings] of meant) {
    const file = join(workshop.folder, kit);
    files.push({ id: (await idIn(file)) ?? '', file, outputs: USUAL, ...all, ...settings });
  }
  const jobs = oncePerId(files);
  const takers = new Map(jobs.flatMap(({ id, file }) => (id === '' ? [] : [[id, file]])));
  for (const { family, members, settings } of families) {
    const made = members.map((values) => memberJob(family, values, workshop.file, { ...all, ...settings }));
    // One is told: the others of a family are most often taken in the same way.
    const taken = made.find(({ id }) => takers.has(id));
    const path = [...family.path, 'kit'];
    if (taken) problems.push(problem('id-taken', path, { id: taken.id, by: [takers.get(taken.id) ?? ''] }));
    for (const { id } of made) takers.set(id, `the family ${family.kit}`);
    problems.push(
      ...twice(made.map(({ id }) => id))
        .map((id) => problem('id-taken', path, { id, by: ['another member of this family'] }))
        .slice(0, 1),
    );
    jobs.push(...made);
  }
  return { jobs: named(jobs), problems };
}

/** Files of one id are one job, which fails: so each id is known to be in the catalogue, and the other kits are made. */
function oncePerId(jobs: readonly Job[]): Job[] {
  const filesOf = new Map<string, string[]>();
  for (const { id, file } of jobs) filesOf.set(id, [...(filesOf.get(id) ?? []), file]);
  return jobs.flatMap((job) => {
    const [first, ...others] = (job.id === '' ? undefined : filesOf.get(job.id)) ?? [job.file];
    if (job.file !== first) return [];
    return [others.length === 0 ? job : { ...job, clash: [first, ...others] }];
  });
}

/** What is made of a kit where nobody says. */
const USUAL: readonly Output[] = ['drawing'];

const twice = (ids: readonly string[]): readonly string[] => {
  const seen = new Set<string>();
  return ids.filter((id) => seen.size === seen.add(id).size);
};

function memberJob(family: Family, values: Member['values'], file: string, settings: Settings): Job {
  const { description } = describeMember(family, values);
  const member = { family: family.index, pattern: family.kit, values };
  return { id: memberId(family, values), file, description, member, outputs: USUAL, ...settings };
}

/** Gives jobs whose kits say no id one that is free: they will fail, each under a name of its own. */
function named(jobs: readonly Job[]): readonly Job[] {
  const taken = new Set(jobs.map(({ id }) => id));
  return jobs.map((job) => {
    if (job.id !== '') return job;
    const name = idOfName(job.file);
    let id = name;
    for (let i = 2; taken.has(id); i++) id = `${name}-${i}`;
    taken.add(id);
    return { ...job, id };
  });
}

/** A file that is named is taken at its word; those of a folder or a pattern are looked into. */
function filesOf(files: string, { folder, own }: Workshop, below: ReturnType<typeof filesBelow>) {
  const path = normalize(files).replace(/\/$/, '');
  const pattern = isPattern(files);
  if (!pattern && !isFolder(join(folder, path))) return { kits: [path], scripts: [], closed: [] };
  const { files: all, closed } = pattern ? below : filesIn(folder, path);
  const sorts = (pattern ? matching(files, all) : all)
    .filter((name) => !own.includes(name) && isKitName(name.slice(name.lastIndexOf('/') + 1)))
    .map((name) => ({ name, sort: sortOfMany(join(folder, name)) }));
  const those = (wanted: 'kit' | 'script') =>
    sorts.flatMap(({ name, sort }) => (sort === wanted ? [name] : []));
  return { kits: those('kit'), scripts: those('script'), closed };
}

/** Where a file says its id plainly, it need not be parsed to be a kit. */
const sortOfMany = (file: string) => (plainIdIn(file) === undefined ? sortOf(file) : 'kit');
