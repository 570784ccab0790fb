/** `check`: problems and notes of kits; with `--drawing` also what is wrong with drawings of them, read as they are written. */
import { statSync } from 'node:fs';
import type { Command } from 'commander';
import { notesOf } from '../annotate/notes.ts';
import { loadJob } from '../catalogue/load-job.ts';
import { readCatalogue } from '../catalogue/read-catalogue.ts';
import type { Diagnostic, Problem } from '../common/problem.ts';
import { decode } from '../describe/decode.ts';
import { formatDiagnostics, toDiagnostics } from '../describe/diagnostics.ts';
import { explainPart } from '../describe/explain.ts';
import { inheritedNotes } from '../describe/inherited.ts';
import { findPart, type Kit } from '../describe/kit.ts';
import type { PartsList } from '../describe/stock.ts';
import { isFolder } from '../files/find-kits.ts';
import { arrangementErrors, pageErrors } from '../files/layouts.ts';
import type { Loaded } from '../files/load.ts';
import { isListName, listFrom } from '../files/parts-list.ts';
import { isBytes, LARGEST_DRAWING, readBytes, whyNot } from '../files/read-file.ts';
import { formatFinding, inspectAmong } from '../inspect/index.ts';
import { analyse } from '../pipeline.ts';
import { explainTable } from '../report/explain-table.ts';
import { counted, countOf, countsOf, type KitCheck, Teller } from '../report/kit-checks.ts';
import { circuitOr, fail, filesOf, print, refuse } from './console.ts';
import { isWorkshop, loadOne, refuseWorkshop, workshopKitIn } from './one-kit.ts';

export function addCheck(program: Command): void {
  program
    .command('check')
    .description('errors, warnings and notes, without drawing')
    .argument(
      '[kit...]',
      'kit files, folders of them, a workshop’s folder, WORKSHOP#ID for one of its kits, circuit/NAME for a circuit that ships, or a parts list (parts.yaml, .csv)',
    )
    .option('--drawing <file...>', 'SVG drawings to check; compared with the kits given')
    .option(
      '--explain <part>',
      'show where each value of a part was written: the kit, one of its bases, or a default',
    )
    .addHelpText('after', '\nexample: solderleaf check my-kit.yaml samples')
    .action(async (named: string[], options: { drawing?: string[]; explain?: string }, command: Command) => {
      const { paths: given, drawing } = sorted(named, options.drawing);
      const paths = given.map((path) => circuitOr(path, command));
      if (paths.length === 0 && !drawing) command.error('error: name a kit, or a drawing with --drawing');
      const [only] = paths;
      if (options.explain !== undefined && only !== undefined) refuseWorkshop(only, command);
      if (options.explain !== undefined && (paths.length !== 1 || only === undefined || isFolder(only)))
        command.error('error: --explain takes one kit file');
      const kits = new Map<string, Kit>();
      const lists = paths.filter((path) => isListName(path) && !isFolder(path));
      for (const file of lists) checkList(listFrom(file));
      const teller = new Teller();
      for (const path of paths.filter(isWorkshop)) await checkCatalogue(path, kits, teller);
      const singles = paths.filter((path) => workshopKitIn(path));
      const others = paths.filter((path) => ![...lists, ...singles].includes(path) && !isWorkshop(path));
      const files = others.length > 0 ? filesOf(others) : [];
      const checks: KitCheck[] = [];
      for (const file of [...singles, ...files]) {
        const loaded = await loadOne(file, command);
        if (!loaded) continue;
        if (options.explain !== undefined) explain(loaded, options.explain);
        if (loaded.kit) kits.set(file, loaded.kit);
        checks.push(checkKit(file, loaded));
      }
      tell(teller, checks);
      for (const file of drawing ?? []) if (!checkDrawing(file, kits)) fail();
    });
}

/** Prints where a part's values come from; a kit with errors has a history all the same. */
function explain({ kit, layers }: Loaded, name: string): void {
  // What keeps a base from being read is told by the check itself.
  if (layers.length === 0) return;
  const found = explainPart(layers, name, kit && findPart(kit, name), kit);
  if ('code' in found) refuse([found]);
  else print(`${explainTable(found)}\n`);
}

/** `--drawing` takes every name after it, and a kit may be among them: a name that is neither a folder nor a kit file is a drawing. */
function sorted(named: readonly string[], drawing: readonly string[] | undefined) {
  const isKit = (path: string): boolean =>
    isFolder(path) ||
    (/\.(ya?ml|json|ts)$/i.test(path) && statSync(path, { throwIfNoEntry: false })?.isFile() === true);
  const isDrawing = (path: string): boolean => /\.svg$/i.test(path);
  const drawings = [...(drawing ?? []).filter((path) => !isKit(path)), ...named.filter(isDrawing)];
  return {
    paths: [...named.filter((path) => !isDrawing(path)), ...(drawing ?? []).filter(isKit)],
    ...(drawings.length > 0 ? { drawing: drawings } : {}),
  };
}

/** What a kit names of `layouts/`. */
const layoutErrors = (kit: Kit): readonly Problem[] => [
  ...arrangementErrors(kit.arrangement),
  ...(kit.page === undefined ? [] : pageErrors(kit.page)),
];

function notesIn(kit: Kit): readonly Problem[] {
  const { circuit, loads } = analyse(kit);
  return notesOf(circuit, loads);
}

function checkKit(named: string, { kit, diagnostics, source, layers }: Loaded): KitCheck {
  const found = kit ? [...layoutErrors(kit), ...inheritedNotes(layers, kit), ...notesIn(kit)] : [];
  return { named, id: named, diagnostics: [...diagnostics, ...toDiagnostics(found, source)] };
}

function tell(teller: Teller, checks: readonly KitCheck[]): void {
  for (const line of teller.tell(checks)) print(line);
  if (checks.some(({ diagnostics }) => countOf(diagnostics, 'error') > 0)) fail();
}

/** A workshop's folder is checked by its catalogue, members of families included. */
async function checkCatalogue(path: string, kits: Map<string, Kit>, teller: Teller): Promise<void> {
  const { catalogue, diagnostics } = await readCatalogue(path);
  if (diagnostics.length > 0) print(`${formatDiagnostics(diagnostics)}\n`);
  if (!catalogue) return fail();
  const checks: KitCheck[] = [];
  for (const job of catalogue.jobs) {
    // Of a family all members are in one file.
    const named = job.member ? `${job.file}, ${job.id}` : job.file;
    const loaded = await loadJob(job);
    if (loaded.kit) kits.set(named, loaded.kit);
    checks.push({ ...checkKit(named, loaded), id: job.id });
  }
  tell(teller, checks);
  const all = checks.flatMap((one) => one.diagnostics);
  print(`${catalogue.file}: ${counted(checks.length, 'kit')}: ${countsOf(all)}`);
}

/** A parts list by itself: what is wrong with it, and how many items it has. */
function checkList({ file, diagnostics, items }: PartsList): void {
  printAll(file, diagnostics);
  const inStock = items.filter((item) => item.inStock);
  print(`${file}: ${counted(items.length, 'item')}, ${inStock.length} in stock`);
}

function printAll(file: string, all: readonly Diagnostic[]): void {
  if (all.length > 0) print(`${formatDiagnostics(all)}\n`);
  print(`${file}: ${countsOf(all)}`);
  if (countOf(all, 'error') > 0) fail();
}

/** One line a finding, its place in the units of the drawing; then how many, and what it was compared with. */
function checkDrawing(file: string, kits: ReadonlyMap<string, Kit>): boolean {
  const read = readText(file);
  if (read.text === undefined) {
    print(`${file}: ${read.reason}`);
    return false;
  }
  const { findings, kit } = inspectAmong(read.text, [...kits.values()]);
  for (const finding of findings) print(`${file}:${formatFinding(finding)}`);
  const described = [...kits].find(([, one]) => one === kit)?.[0];
  const compared = described ? `joints and values compared with ${described}` : 'not compared with a kit';
  print(`${file}: ${counted(findings.length, 'finding')}, ${compared}`);
  // One that is of none of the kits named has a finding for that.
  return findings.length === 0;
}

function readText(file: string): { readonly text?: string; readonly reason: string } {
  const bytes = readBytes(file, LARGEST_DRAWING);
  if (!isBytes(bytes)) return { reason: whyNot(bytes) };
  const { text } = decode(bytes);
  return { ...(text === undefined ? {} : { text }), reason: 'not an SVG drawing: it is not text in UTF-8' };
}
