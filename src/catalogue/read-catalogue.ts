/** Reads `solderleaf.yaml`: which kits there are, and what is made of them. The kits themselves are not read. */
import { existsSync } from 'node:fs';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { type Diagnostic, type KeyPath, type Problem, problem } from '../common/problem.ts';
import { webFolder } from '../common/web-address.ts';
import { isMap, type Written } from '../describe/chain.ts';
import { decode } from '../describe/decode.ts';
import { toDiagnostics } from '../describe/diagnostics.ts';
import { problemsOf, typeName } from '../describe/issues.ts';
import { parseText, type Source, valueSource } from '../describe/source.ts';
import { isFolder } from '../files/find-kits.ts';
import { arrangementErrors, pageErrors } from '../files/layouts.ts';
import { CATALOGUE, PARTS_LISTS } from '../files/parts-list.ts';
import { isBytes, LARGEST_KIT, readBytes } from '../files/read-file.ts';
import { workshopIn } from '../files/workshop.ts';
import type { Catalogue } from './catalogue.ts';
import { expandFamily, readFamily } from './family.ts';
import { type Entry, jobsOf, type MeantFamily } from './kit-files.ts';
import { catalogueSchema, kitEntrySchema, type Settings } from './schema.ts';

interface CatalogueReading {
  /** Absent where `diagnostics` has an error. */
  readonly catalogue?: Catalogue;
  readonly diagnostics: readonly Diagnostic[];
}

/** Kits of one catalogue. Many more are a mistake in a matrix, and would take days to draw. */
const MOST_KITS = 10_000;

/**
 * Reads a workshop's catalogue.
 *
 * @param path the workshop's folder, or its `solderleaf.yaml`
 * @returns the catalogue, with a job for each kit; without it where anything in its file is wrong, so that no kit is taken for
 *   removed that only was misspelt. What is wrong with a kit itself is told where it is loaded.
 */
export async function readCatalogue(path: string): Promise<CatalogueReading> {
  const file = isFolder(path) ? join(path, CATALOGUE) : path;
  const wrong = (problems: readonly Problem[], source: Source): CatalogueReading => ({
    diagnostics: toDiagnostics(problems, source),
  });
  if (isFolder(path) && !existsSync(file))
    return wrong([problem('no-catalogue', [], { folder: path })], valueSource(file));
  const bytes = readBytes(file, LARGEST_KIT);
  if (!isBytes(bytes)) return wrong([bytes], valueSource(file));
  const { text, problems: undecoded } = decode(bytes);
  if (text === undefined) return wrong(undecoded, valueSource(file));
  const { source, value, problems } = parseText(text, file);
  if (problems.length > 0 || value === undefined) return wrong(problems, source);
  const read = await readValue(value, file);
  const diagnostics = [...toDiagnostics(read.problems, source), ...(read.ofLogo ?? [])];
  return diagnostics.some(({ severity }) => severity === 'error') || !read.catalogue
    ? { diagnostics }
    : { catalogue: read.catalogue, diagnostics };
}

async function readValue(value: unknown, file: string) {
  const folder = dirname(file);
  if (value === null) return { problems: [problem('file-empty', [], {})] };
  if (!isMap(value)) {
    const expected = 'a catalogue: its keys kits, families and outputs';
    return { problems: [problem('wrong-type', [], { expected, got: typeName(value) })] };
  }
  const what = 'the catalogue';
  const read = catalogueSchema.safeParse(value);
  const problems: Problem[] = read.success
    ? []
    : [...problemsOf(read.error.issues, { schema: catalogueSchema, value, path: [], what })];
  const head: Partial<typeof read.data> = read.data ?? {};
  const out = head.out ?? 'out';
  // What lies in the folder of outputs would be taken for kits, and what lies beside them for outputs.
  if (!relative(resolve(folder, out), resolve(folder)).startsWith('..'))
    problems.push(problem('out-is-workshop', ['out'], { got: out }));
  if (head.parts !== undefined && !existsSync(join(folder, head.parts)))
    problems.push(problem('file-unreadable', ['parts'], { reason: 'file not found' }));
  const all = settingsOf(value, folder, []);
  const entries = entriesOf(value, folder);
  const families = familiesOf(value, folder);
  const own = workshopIn(value, folder);
  problems.push(...own.problems, ...all.problems, ...entries.problems, ...families.problems);
  if (problems.length + own.diagnostics.length > 0) return { problems, ofLogo: own.diagnostics };
  const base = head.base === undefined ? undefined : webFolder(head.base);
  const workshop = { folder, file, out, own: [basename(file), ...partsNames(head.parts)] };
  const found = await jobsOf(entries.entries, families.families, workshop, {
    ...all.settings,
    ...(own.workshop ? { workshop: own.workshop } : {}),
    ...(typeof base === 'string' ? { base } : {}),
  });
  const parts = [...partsNames(head.parts)]
    .map((name) => join(folder, name))
    .find((name) => existsSync(name));
  const catalogue: Catalogue = {
    folder,
    file,
    out: isAbsolute(out) ? out : join(folder, out),
    ...(parts === undefined ? {} : { parts }),
    ...(head.currency === undefined ? {} : { currency: head.currency }),
    jobs: found.jobs,
  };
  return { catalogue, problems: found.problems };
}

const partsNames = (named: string | undefined): readonly string[] =>
  named === undefined ? PARTS_LISTS : [named];

/** Whether a path leads to below the workshop's folder. */
function below(path: string, folder: string): boolean {
  const to = relative(resolve(folder), resolve(folder, path));
  return to !== '' && to !== '..' && !to.startsWith(`..${sep}`) && !isAbsolute(to);
}

function entriesOf(value: Written, folder: string) {
  const entries: Entry[] = [];
  const problems: Problem[] = [];
  const kits = Array.isArray(value.kits) ? (value.kits as readonly unknown[]) : [];
  for (const [i, written] of kits.entries()) {
    const path: KeyPath = ['kits', i];
    const entry = typeof written === 'string' ? { files: written } : written;
    const read = kitEntrySchema.safeParse(entry);
    if (!isMap(entry) || !read.success) {
      const expected =
        'a file, a folder or a pattern, such as kits/*.yaml, or { files: kits/*.yaml, page: a5 }';
      problems.push(
        ...(isMap(entry) && read.error
          ? problemsOf(read.error.issues, {
              schema: kitEntrySchema,
              value: entry,
              path,
              what: `item ${i + 1} of “kits”`,
            })
          : [problem('wrong-type', path, { expected, got: typeName(entry) })]),
      );
      continue;
    }
    const at = typeof written === 'string' ? path : [...path, 'files'];
    const files = read.data.files.replaceAll('\\', '/');
    const { settings, problems: wrong } = settingsOf(entry, folder, path);
    problems.push(...wrong);
    if (files !== '.' && files !== './' && !below(files, folder))
      problems.push(problem('outside-workshop', at, { got: files }));
    else entries.push({ files, settings, path: at });
  }
  return { entries, problems };
}

function familiesOf(value: Written, folder: string) {
  const families: MeantFamily[] = [];
  const problems: Problem[] = [];
  let left = MOST_KITS;
  const all = Array.isArray(value.families) ? (value.families as readonly unknown[]) : [];
  for (const [index, written] of all.entries()) {
    const { family, problems: unread } = readFamily(written, index);
    problems.push(...unread);
    const { settings, problems: wrong } = settingsOf(isMap(written) ? written : {}, folder, [
      'families',
      index,
    ]);
    problems.push(...wrong);
    if (!family) continue;
    const { members, problems: found } = expandFamily(family, left);
    left -= members.length;
    problems.push(...found);
    families.push({ family, members, settings });
  }
  return { families, problems };
}

/** What is to be made of kits, as far as the catalogue or an entry of it says. */
function settingsOf(value: Written, folder: string, path: KeyPath) {
  const { outputs, arrangement, page, language, date } =
    kitEntrySchema.partial().loose().safeParse(value).data ?? {};
  const named =
    arrangement !== undefined && /\.ya?ml$/.test(arrangement) ? join(folder, arrangement) : arrangement;
  const problems = [
    ...(named === undefined ? [] : arrangementErrors(named)),
    ...(page === undefined ? [] : pageErrors(page)),
  ].map((found) => ({ ...found, path: [...path, ...found.path] }) as Problem);
  const settings: Settings = {
    ...(outputs === undefined ? {} : { outputs }),
    ...(named === undefined ? {} : { arrangement: named }),
    ...(page === undefined ? {} : { page }),
    ...(language === undefined ? {} : { language }),
    ...(date === undefined ? {} : { date }),
  };
  return { settings, problems };
}
