/** What a workshop says of itself, from the disk: in the catalogue's file, and its logo in a file beside. */
import { existsSync } from 'node:fs';
import { dirname, isAbsolute, join, resolve, sep } from 'node:path';
import { type Diagnostic, type Problem, problem } from '../common/problem.ts';
import { webAddress } from '../common/web-address.ts';
import { isMap } from '../describe/chain.ts';
import { decode } from '../describe/decode.ts';
import { toDiagnostics } from '../describe/diagnostics.ts';
import { problemsOf, typeName } from '../describe/issues.ts';
import { readLogo } from '../describe/logo.ts';
import { parseText, valueSource } from '../describe/source.ts';
import { glyphProblems, type Logo, type Workshop, workshopSchema } from '../describe/workshop.ts';
import { circuitFolder } from './circuits.ts';
import { CATALOGUE } from './parts-list.ts';
import { isBytes, LARGEST_KIT, readBytes, whyNot } from './read-file.ts';

/** Bytes of a logo. */
const LARGEST_LOGO = 200_000;

interface Read {
  /** Absent where nothing is said, or something of it is wrong. */
  readonly workshop?: Workshop;
  /** In the catalogue's file. */
  readonly problems: readonly Problem[];
  /** In the logo's. */
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Reads the key `workshop` of a catalogue.
 *
 * @param value the catalogue as it is written
 * @param folder the workshop's, from which the logo's path leads
 */
export function workshopIn(value: unknown, folder: string): Read {
  const written = isMap(value) ? value.workshop : undefined;
  if (written === undefined) return { problems: [], diagnostics: [] };
  const path = ['workshop'];
  const read = workshopSchema.safeParse(written);
  if (!isMap(written) || !read.success) {
    const expected =
      'a map, such as { name: …, address: …, website: …, colour: …, logo: logo.svg, closing: … }';
    const problems =
      isMap(written) && read.error
        ? problemsOf(read.error.issues, { schema: workshopSchema, value: written, path, what: '“workshop”' })
        : [problem('wrong-type', path, { expected, got: typeName(written) })];
    return { problems, diagnostics: [] };
  }
  const { logo: named, name, address, website, closing, colour } = read.data;
  const page = website === undefined ? undefined : webAddress(website);
  const glyphs = glyphProblems(read.data);
  const logo = named === undefined ? undefined : logoFrom(named, folder);
  const problems = [...glyphs, ...(logo?.problems ?? [])];
  const diagnostics = logo?.diagnostics ?? [];
  if (problems.length > 0 || diagnostics.length > 0) return { problems, diagnostics };
  const workshop: Workshop = {
    name: name.trim(),
    ...(address === undefined ? {} : { address: address.trim() }),
    ...(typeof page === 'string' ? { website: page } : {}),
    ...(colour === undefined ? {} : { colour: colour.toLowerCase() }),
    ...(logo?.logo ? { logo: logo.logo } : {}),
    ...(closing === undefined ? {} : { closing: closing.trim() }),
  };
  return { workshop, problems, diagnostics };
}

function logoFrom(
  named: string,
  folder: string,
): Pick<Read, 'problems' | 'diagnostics'> & { readonly logo?: Logo } {
  const path = ['workshop', 'logo'];
  const file = isAbsolute(named) ? named : join(folder, named);
  const bytes = readBytes(file, LARGEST_LOGO);
  if (!isBytes(bytes))
    return { problems: [problem('file-unreadable', path, { reason: whyNot(bytes) })], diagnostics: [] };
  const { text, problems } = decode(bytes);
  if (text === undefined) return { problems: [], diagnostics: toDiagnostics(problems, valueSource(file)) };
  const read = readLogo(text.replace(/^\uFEFF/, ''), file);
  return {
    ...(read.logo ? { logo: read.logo } : {}),
    problems: [],
    diagnostics: toDiagnostics(read.problems, read.source),
  };
}

/** Who a kit's leaflet is from, and what is wrong with what is said of it. */
interface Found {
  readonly workshop?: Workshop;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * The workshop of a kit's file: what `solderleaf.yaml` says in the kit's folder or the nearest one above it that has one. The circuits that ship
 * are from nobody's.
 */
export function workshopFor(kitFile: string): Found {
  const start = dirname(resolve(kitFile));
  const ships = resolve(circuitFolder());
  if (start === ships || start.startsWith(`${ships}${sep}`)) return { diagnostics: [] };
  for (let folder = start; ; folder = dirname(folder)) {
    const file = join(folder, CATALOGUE);
    if (existsSync(file)) return workshopFrom(file);
    if (folder === dirname(folder)) return { diagnostics: [] };
  }
}

function workshopFrom(file: string): Found {
  const bytes = readBytes(file, LARGEST_KIT);
  if (!isBytes(bytes)) return { diagnostics: toDiagnostics([bytes], valueSource(file)) };
  const { text, problems } = decode(bytes);
  if (text === undefined) return { diagnostics: toDiagnostics(problems, valueSource(file)) };
  const parsed = parseText(text, file);
  if (parsed.problems.length > 0) return { diagnostics: toDiagnostics(parsed.problems, parsed.source) };
  const read = workshopIn(parsed.value, dirname(file));
  const diagnostics = [...toDiagnostics(read.problems, parsed.source), ...read.diagnostics];
  return { ...(read.workshop ? { workshop: read.workshop } : {}), diagnostics };
}
