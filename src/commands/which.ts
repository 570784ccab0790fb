/** `which`: the kit that a revision mark on a sheet stands for. */
import { existsSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { Command } from 'commander';
import { findMark, type Marked } from '../catalogue/find-mark.ts';
import { readCatalogue } from '../catalogue/read-catalogue.ts';
import { CATALOGUE } from '../catalogue/schema.ts';
import { isFolder } from '../files/find-kits.ts';
import { fail, print, printDiagnostics, printError, printJson } from './console.ts';

export function addWhich(program: Command): void {
  program
    .command('which')
    .description('the kit, and the file that describes it, of a revision mark printed on a sheet')
    .argument('<mark>', 'the mark, such as 7K3Q-9DXM; small letters, no hyphen and look-alikes will do')
    .argument('[dir]', 'the workshop’s folder, or a folder of drawings', '.')
    .option('--json', 'as JSON', false)
    .addHelpText('after', '\nexample: solderleaf which 7K3Q-9DXM my-workshop')
    .action(async (mark: string, path: string, { json }: { readonly json: boolean }) => {
      const where = await placeOf(path);
      if (!where) return fail();
      const { out, kits } = where;
      const { found, near, looked } = findMark(mark, out, kits);
      if (json) printJson(JSON.stringify({ found, near }, null, 2));
      else for (const line of linesOf(found)) print(line);
      if (found.length > 0) return;
      printError(
        `no drawing in ${out} has the revision mark ${mark}${looked === 0 ? ': none there has any' : ''}`,
      );
      if (near.length > 0)
        printError(`Did you mean ${near.map((one) => `${one.mark} (${one.kit})`).join(', or ')}?`);
      fail();
    });
}

/** The folder of a workshop's outputs, and its kits; a folder without a catalogue is one of drawings. */
async function placeOf(path: string) {
  if (isFolder(path) && !existsSync(join(path, CATALOGUE))) return { out: path, kits: [] };
  const { catalogue, diagnostics } = await readCatalogue(path);
  printDiagnostics(diagnostics);
  if (!catalogue) return undefined;
  const { out, folder, jobs } = catalogue;
  return { out, kits: jobs.map(({ id, file }) => ({ id, source: slashed(relative(folder, file)) })) };
}

const slashed = (path: string): string => path.split(sep).join('/');

/** A line a kit, then the files that bear the mark. */
function linesOf(found: readonly Marked[]): readonly string[] {
  const kits = [...new Set(found.map(({ kit }) => kit))];
  return kits.flatMap((kit) => {
    const own = found.filter((one) => one.kit === kit);
    const [first] = own;
    const title = own.find((one) => one.title !== undefined)?.title;
    return [
      `${first?.mark}  ${kit}${title === undefined ? '' : `: ${title}`}`,
      ...(first?.source === undefined ? [] : [`    described in ${first.source}`]),
      ...own.map(({ file }) => `    ${file}`),
    ];
  });
}
