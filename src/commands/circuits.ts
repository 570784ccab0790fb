/** `circuits`: the circuits that ship, as a list or as pictures with a page. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Command, Option } from 'commander';
import type { Kit } from '../describe/kit.ts';
import { circuitFile, circuitFolder, circuitNames, extendedAs } from '../files/circuits.ts';
import { loadKit } from '../files/load.ts';
import { isBytes, LARGEST_DRAWING, readBytes } from '../files/read-file.ts';
import { hasContent, WriteError, writeAtomically } from '../files/write.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { prepare, render, renderInline, sheetsOf } from '../pipeline.ts';
import { drawKits } from '../publish/draw-kits.ts';
import {
  type GalleryEntry,
  galleryPage,
  galleryStyle,
  isGallery,
  sizeOfDrawing,
} from '../publish/gallery.ts';
import { fail, languageOption, print, printDiagnostics, printError, printJson } from './console.ts';
import { steps } from './draw.ts';

interface Flags {
  readonly json: boolean;
  readonly pictures?: string;
  readonly effort?: number;
  readonly language?: Language;
  readonly check: boolean;
}

interface Circuit {
  readonly name: string;
  readonly file: string;
  readonly kit: Kit;
}

export function addCircuits(program: Command): void {
  program
    .command('circuits')
    .description('circuits that ship, for kits to extend')
    .option('--json', 'as JSON', false)
    .addOption(
      new Option('--pictures <dir>', 'draw each into this folder, with a page that shows all').conflicts(
        'json',
      ),
    )
    .option('--effort <steps>', 'with --pictures: placement optimisation steps, as for draw', steps)
    .addOption(languageOption())
    .option(
      '--check',
      'with --pictures: write nothing; exit 1 if a file differs from what would be written',
      false,
    )
    .addHelpText('after', '\nexample: solderleaf circuits --pictures out/circuits')
    .action(async (flags: Flags, command: Command) => {
      const withPictures = flags.check || flags.effort !== undefined || flags.language !== undefined;
      if (flags.pictures === undefined && withPictures)
        command.error('error: --check, --effort and --language go with --pictures');
      const circuits = await load();
      if (flags.pictures !== undefined) return drawAll(circuits, flags.pictures, flags);
      if (flags.json) printJson(JSON.stringify(circuits.map(data), null, 2));
      else print(listOf(circuits));
    });
}

async function load(): Promise<readonly Circuit[]> {
  const circuits: Circuit[] = [];
  for (const name of circuitNames()) {
    const file = circuitFile(name);
    const { kit, diagnostics } = await loadKit(file);
    printDiagnostics(diagnostics);
    if (kit) circuits.push({ name, file, kit });
    else fail();
  }
  return circuits;
}

const data = ({ name, file, kit }: Circuit) => ({
  name,
  extends: extendedAs(name),
  file,
  title: kit.title,
  ...(kit.about === undefined ? {} : { about: kit.about }),
});

/** Columns of a line in a terminal. */
const COLUMNS = 100;

function listOf(circuits: readonly Circuit[]): string {
  const each = circuits.map(({ name, kit }) =>
    [extendedAs(name), ...[kit.title, ...(kit.about === undefined ? [] : [kit.about])].flatMap(wrapped)].join(
      '\n    ',
    ),
  );
  const one = circuits[0] === undefined ? 'circuit/NAME' : extendedAs(circuits[0].name);
  return [
    ...each,
    `To make a kit from one, write extends: ${one} in it. The files are in ${circuitFolder()}`,
  ].join('\n\n');
}

/** A text in lines of words. */
function wrapped(text: string): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < COLUMNS - 4)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

async function drawAll(
  circuits: readonly Circuit[],
  out: string,
  { effort, check, language }: Flags,
): Promise<void> {
  const spoken = language ?? DEFAULT_LANGUAGE;
  const page = join(out, `index${suffixOf(DEFAULT_LANGUAGE, spoken)}.html`);
  const style = join(out, 'index.css');
  const foreign = check ? [] : [page, style].filter(isForeign);
  for (const target of foreign)
    printError(
      `not written ${target}: it already exists and is not a page of circuits; move it, or choose another folder`,
    );
  if (foreign.length > 0) return fail();
  const entries: GalleryEntry[] = [];
  const options = {
    out,
    formats: ['svg'] as const,
    mode: 'static' as const,
    check,
    progress: printError,
    ...(effort === undefined ? {} : { effort }),
    ...(language === undefined ? {} : { language }),
  };
  const drawer = { prepare, sheetsOf, render, renderInline };
  for await (const outcome of drawKits(
    circuits.map(({ file }) => file),
    options,
    drawer,
  )) {
    printDiagnostics(outcome.diagnostics);
    for (const line of outcome.lines) print(line);
    for (const line of outcome.errorLines) printError(line);
    if (outcome.failed) fail();
    // What could not be drawn may have an old drawing, which the page must not show.
    if (outcome.failed && !check) continue;
    const circuit = circuits.find(({ file }) => file === outcome.file);
    const entry = circuit && entryOf(circuit, out, language);
    if (entry) entries.push(entry);
  }
  put(page, galleryPage(entries, spoken), check);
  put(style, galleryStyle, check);
}

/** What a file’s name says of its language, as `draw` names it: nothing of the usual one. */
const suffixOf = (usual: Language, language: Language): string => (language === usual ? '' : `-${language}`);

/** A circuit whose drawing is there; one that could not be drawn has been reported. */
function entryOf(
  { name, kit }: Circuit,
  out: string,
  language: Language = kit.language,
): GalleryEntry | undefined {
  const file = `${kit.id}${suffixOf(kit.language, language)}.svg`;
  const bytes = readBytes(join(out, file), LARGEST_DRAWING);
  const size = isBytes(bytes) ? sizeOfDrawing(Buffer.from(bytes).toString('utf8')) : undefined;
  return size && { kit, extended: extendedAs(name), picture: { file, ...size } };
}

function put(target: string, content: string, check: boolean): void {
  if (check) {
    const same = hasContent(target, content);
    print(`${same ? 'unchanged' : 'differs  '} ${target}`);
    if (!same) fail();
    return;
  }
  try {
    print(`${writeAtomically(target, content) ? 'written  ' : 'unchanged'} ${target}`);
  } catch (thrown) {
    if (!(thrown instanceof WriteError)) throw thrown;
    printError(
      `cannot write to ${thrown.folder}: ${thrown.reason} (${target}); choose another with --pictures`,
    );
    fail();
  }
}

/** Whether a file of that name is somebody else's. */
function isForeign(target: string): boolean {
  try {
    return !isGallery(readFileSync(target, 'utf8'));
  } catch {
    // What is not there, or cannot be read, is told of where it is written.
    return false;
  }
}
