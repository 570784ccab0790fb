/** `which`: the kit that a revision mark on a sheet stands for. */
import { existsSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { Command } from 'commander';
import type { Member } from '../catalogue/catalogue.ts';
import { findMark, type Marked, marksOf } from '../catalogue/find-mark.ts';
import { type KitMark, keptMarks } from '../catalogue/marks.ts';
import { readCatalogue } from '../catalogue/read-catalogue.ts';
import { isDay } from '../common/day.ts';
import { isFolder } from '../files/find-kits.ts';
import { CATALOGUE } from '../files/parts-list.ts';
import { fail, print, printDiagnostics, printError, printJson } from './console.ts';

export function addWhich(program: Command): void {
  program
    .command('which')
    .description('the kit, and the file that describes it, of a revision mark printed on a sheet')
    .usage('[options] <mark> [dir]')
    .argument(
      '<mark-and-dir...>',
      'the mark, such as 7K3Q-9DXM or Rev 7K3Q-9DXM; small letters, no hyphen and look-alikes will do. Then the workshop’s folder, or a folder of drawings, unless it is the current one',
    )
    .option('--json', 'as JSON', false)
    .addHelpText('after', '\nexample: solderleaf which 7K3Q-9DXM my-workshop')
    .action(async (words: readonly string[], { json }: { readonly json: boolean }, command: Command) => {
      const { mark, path = '.', more } = askedBy(words);
      if (more.length > 0)
        command.error(`error: write one mark and one folder; “${more[0] ?? ''}” is one word too many`);
      const where = await placeOf(path);
      if (!where) return fail();
      const { out, kits, kept } = where;
      const { found, earlier, near, looked } = findMark(mark, out, kits ?? [], kept);
      if (json) printJson(JSON.stringify({ found, earlier, near }, null, 2));
      else
        for (const line of [...linesOf(found, kits), ...earlierLines(earlier, out, kits ?? [])]) print(line);
      if (found.length + earlier.length > 0) return;
      printError(
        `no drawing in ${out} has the revision mark ${mark}${looked === 0 ? ': none there has any' : ''}`,
      );
      if (near.length > 0)
        printError(`Did you mean ${near.map((one) => `${one.mark} (${one.kit})`).join(', or ')}?`);
      fail();
    });
}

/** A mark as it is printed is two words, and a date may follow it. */
function askedBy(words: readonly string[]) {
  const isTwo = /^rev\.?$/i.test(words[0] ?? '') && words.length > 1;
  const [path, ...more] = words.slice(isTwo ? 2 : 1).filter((word, i) => i > 0 || !isDay(word));
  const mark = words
    .slice(0, isTwo ? 2 : 1)
    .join(' ')
    .replace(/,\s*\d{4}-\d{2}-\d{2}$|,$/, '');
  return { mark, more, ...(path === undefined ? {} : { path }) };
}

/** A kit of the catalogue; of a member also its family, in words. */
interface Known {
  readonly id: string;
  readonly source: string;
  readonly family?: string;
}

/** The folder of a workshop's outputs, its kits, and the marks that they ever had; a folder without a catalogue is one of drawings. */
async function placeOf(
  path: string,
): Promise<{ out: string; kits?: readonly Known[]; kept: readonly KitMark[] } | undefined> {
  if (isFolder(path) && !existsSync(join(path, CATALOGUE))) return { out: path, kept: [] };
  const { catalogue, diagnostics } = await readCatalogue(path);
  printDiagnostics(diagnostics);
  if (!catalogue) return undefined;
  const { out, folder, jobs } = catalogue;
  const kits = jobs.map(({ id, file, member }) => ({
    id,
    source: slashed(relative(folder, file)),
    ...(member ? { family: familyWords(member) } : {}),
  }));
  return { out, kits, kept: keptMarks(folder) };
}

/** `hss-{pickups}-{cap}: pickups bright, cap 22n`. */
const familyWords = ({ pattern, values }: Member): string =>
  `${pattern}: ${Object.entries(values)
    .map(([axis, value]) => `${axis} ${value}`)
    .join(', ')}`;

const slashed = (path: string): string => path.split(sep).join('/');

/** A line a kit, then the files that bear the mark. */
function linesOf(found: readonly Marked[], catalogue: readonly Known[] | undefined): readonly string[] {
  const kits = [...new Set(found.map(({ kit }) => kit))];
  return kits.flatMap((kit) => {
    const own = found.filter((one) => one.kit === kit);
    const [first] = own;
    const title = own.find((one) => one.title !== undefined)?.title;
    const known = catalogue?.find(({ id }) => id === kit);
    return [
      `${first?.mark}  ${kit}${title === undefined ? '' : `: ${title}`}`,
      ...(first?.source === undefined ? [] : [`    described in ${first.source}`]),
      ...(known?.family === undefined ? [] : [`    of the family ${known.family}`]),
      ...(catalogue && !known ? ['    no longer in the catalogue'] : []),
      ...own.map(({ file }) => `    ${file}`),
    ];
  });
}

/** A line a kit that bore the mark once: what has become of it. */
const earlierLines = (
  earlier: readonly KitMark[],
  out: string,
  catalogue: readonly Known[],
): readonly string[] =>
  earlier.map(({ mark, kit, title, source, date }) => {
    const known = catalogue.find(({ id }) => id === kit);
    const family = known?.family === undefined ? [] : [`of the family ${known.family}`];
    const dated = date === undefined ? [] : [`dated ${date}`];
    const of = `${kit} (${[title, ...dated, `described in ${known?.source ?? source}`, ...family].join('; ')})`;
    if (!known) return `${mark} is a revision of ${of}, which is no longer in the catalogue`;
    const now = marksOf(kit, out, catalogue);
    return `${mark} is an earlier revision of ${of}; ${now.length === 0 ? 'it has no drawings now' : `its drawings now bear ${now.join(' and ')}`}`;
  });
