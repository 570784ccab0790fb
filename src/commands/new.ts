/** `new`: a workshop to start from, or one kit that extends another. Nothing that is there is written over. */
import { existsSync, lstatSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import type { Command } from 'commander';
import { idOfName } from '../catalogue/kit-id.ts';
import { newKitText } from '../catalogue/new/kit-text.ts';
import { LIST, newWorkshop } from '../catalogue/new/workshop.ts';
import { isScript } from '../files/kit-path.ts';
import { loadKit } from '../files/load.ts';
import { CATALOGUE, PARTS_LISTS } from '../files/parts-list.ts';
import { WriteError, writeAtomically } from '../files/write.ts';
import { circuitOr, fail, print, printDiagnostics, printError } from './console.ts';

const KIT_FILE = /\.ya?ml$/i;

export function addNew(program: Command): void {
  program
    .command('new')
    .description('make a workshop to start from, or with --from one kit that extends another')
    .argument('<dir-or-kit>', 'folder of the workshop; with --from the kit’s file, such as my-hss.yaml')
    .option('--from <kit>', 'the kit that is extended: a file, or circuit/NAME for a circuit that ships')
    .addHelpText(
      'after',
      '\nexample: solderleaf new my-workshop\n         solderleaf new my-hss.yaml --from circuit/hss-lever-5-1v2t-pads',
    )
    .action(async (target: string, options: { readonly from?: string }, command: Command) => {
      const { from } = options;
      if (from === undefined && /\.(ya?ml|json|ts|csv)$/i.test(target))
        command.error(
          `error: “${target}” is a file: say with --from which kit it extends, or name a folder for a new workshop`,
        );
      if (from !== undefined && !KIT_FILE.test(target))
        command.error(`error: with --from name a file for the new kit that ends in .yaml; found “${target}”`);
      if (from === undefined) await workshop(target);
      else await oneKit(target, from, command);
    });
}

/** A link that leads nowhere is there as well. */
function isThere(path: string): boolean {
  try {
    return lstatSync(path, { throwIfNoEntry: false }) !== undefined;
  } catch {
    // Where it cannot be looked at it cannot be written either, which says why.
    return false;
  }
}

async function workshop(folder: string): Promise<void> {
  if (isThere(join(folder, CATALOGUE))) {
    // Whoever deleted a kit of it does not want it back.
    printError(
      `${folder} is a workshop already; add one kit with solderleaf new ${join(folder, 'kits', 'NAME.yaml')} --from circuit/NAME`,
    );
    fail();
    return;
  }
  const list = PARTS_LISTS.map((name) => join(folder, name)).find(isThere);
  let kept = 0;
  for (const { path, text } of await newWorkshop()) {
    const file = path === LIST && list !== undefined ? list : join(folder, path);
    if (isThere(file)) {
      kept++;
      print(`kept      ${file}: it is there already`);
    } else if (!put(file, text)) return;
  }
  if (kept > 0) return;
  print(`
Next, one after another:
  solderleaf check ${folder}
  solderleaf build ${folder}
  solderleaf order ${folder} hss=20 hh=5
Then change a value in ${join(folder, LIST)} or in a kit, and build again.`);
}

async function oneKit(target: string, from: string, command: Command): Promise<void> {
  if (isThere(target)) {
    printError(`not written ${target}: it is there already; name another file`);
    fail();
    return;
  }
  if (isScript(from))
    return command.error('error: a TypeScript kit is code, which only another TypeScript kit may extend');
  const base = circuitOr(from, command);
  const { kit, layers, diagnostics } = await loadKit(base);
  printDiagnostics(diagnostics);
  if (!kit) {
    fail();
    return;
  }
  const extended = base === from ? pathFrom(dirname(target), from) : from;
  const schema = schemaNear(target);
  const text = newKitText({ id: idOfName(target), extended, kit, layers, ...schema });
  put(target, text);
}

/** A path as a kit writes it: from its own folder, with forward slashes. */
function pathFrom(folder: string, file: string): string {
  const path = relative(resolve(folder), resolve(file)).replaceAll('\\', '/');
  return path.startsWith('.') ? path : `./${path}`;
}

/** The kits' schema of a workshop made by this command, where the kit is in one. */
function schemaNear(target: string): { readonly schema?: string } {
  for (const schema of ['schemas/kit.schema.json', '../schemas/kit.schema.json'])
    if (existsSync(join(dirname(target), schema)))
      return { schema: schema.startsWith('.') ? schema : `./${schema}` };
  return {};
}

function put(file: string, text: string): boolean {
  try {
    writeAtomically(file, text);
    print(`written   ${file}`);
    return true;
  } catch (thrown) {
    if (!(thrown instanceof WriteError)) throw thrown;
    printError(`cannot write to ${thrown.folder}: ${thrown.reason} (${file})`);
    fail();
    return false;
  }
}
