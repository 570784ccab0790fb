/** `changes`: what building would change for customers. */
import { readFileSync } from 'node:fs';
import type { Command } from 'commander';
import { Cache, placementsIn } from '../catalogue/build/cache.ts';
import { programKey } from '../catalogue/build/keys.ts';
import { usualCache } from '../catalogue/build/workshop.ts';
import type { Catalogue } from '../catalogue/catalogue.ts';
import { changesPage, isChangesPage } from '../catalogue/changes/page.ts';
import { changesData, HEARD_WORDS, kitText, sumText } from '../catalogue/changes/report.ts';
import { forgetOthers, saveFigures } from '../catalogue/changes/store.ts';
import { type Surveyed, survey } from '../catalogue/changes/survey.ts';
import { readCatalogue } from '../catalogue/read-catalogue.ts';
import { WriteError, writeAtomically } from '../files/write.ts';
import { namedCache } from './build.ts';
import { fail, print, printDiagnostics, printError, printJson } from './console.ts';

interface Flags {
  readonly json: boolean;
  readonly html?: string;
  readonly check: boolean;
  readonly save: boolean;
}

export function addChanges(program: Command): void {
  program
    .command('changes')
    .description(
      'what has changed in a workshop’s kits since they were built: loads, readings, prices, drawings',
    )
    .argument('[dir]', 'the workshop’s folder, with its solderleaf.yaml', '.')
    .option('--json', 'as JSON, in ohms, hertz and decibels', false)
    .option(
      '--html <file>',
      'also write a page with old and new drawings side by side; draws each kit that has changed',
    )
    .option('--check', 'exit 1 if anything has changed', false)
    .option(
      '--save',
      'keep what the kits are now, to be compared with from here on; building does so too',
      false,
    )
    .addHelpText('after', '\nexample: solderleaf changes my-workshop --html changes.html')
    .action(async (path: string, { json, html, check, save }: Flags) => {
      const { catalogue, diagnostics } = await readCatalogue(path);
      printDiagnostics(diagnostics);
      if (!catalogue) return fail();
      if (html !== undefined && isForeign(html)) {
        printError(
          `not written ${html}: it already exists and is not a page of changes; move it, or choose another name`,
        );
        return fail();
      }
      const all: Surveyed[] = [];
      const progress = (kit: string): void => printError(`drawing ${kit}`);
      const draw = html !== undefined;
      const store = draw
        ? placementsIn(new Cache(namedCache() ?? usualCache(catalogue.folder)), programKey())
        : undefined;
      for await (const one of survey(catalogue, { draw, progress, ...(store ? { store } : {}) })) {
        all.push(one);
        const { changes } = one;
        if (!json && changes.became !== 'same') print(`${kitText(one)}\n`);
        if (changes.became === 'failed' || (check && changes.became !== 'same')) fail();
      }
      if (json) printJson(JSON.stringify(changesData(all), null, 2));
      else {
        if (all.some(({ changes }) => changes.figures.length > 0)) print(HEARD_WORDS);
        print(sumText(all.map(({ changes }) => changes)));
      }
      const say = json ? printError : print;
      if (html !== undefined) put(() => writeAtomically(html, changesPage(all)), html, say);
      if (save) saveAll(catalogue, all, say);
    });
}

/** What has errors is not kept: it is what it was built as that comes to customers. */
function saveAll({ folder, jobs }: Catalogue, all: readonly Surveyed[], say: (line: string) => void): void {
  const sound = all.flatMap(({ changes, figures }) =>
    figures && changes.became !== 'failed' ? [figures] : [],
  );
  for (const figures of sound) if (!put(() => saveFigures(folder, figures), figures.kit)) return;
  // While one has errors it may be one of these, whose id cannot be read.
  const forgotten = all.some(({ changes }) => changes.became === 'failed')
    ? []
    : forgetOthers(
        folder,
        jobs.map(({ id }) => id),
      );
  for (const id of forgotten) say(`deleted   figures of ${id}: it is no longer in the catalogue`);
  say(`kept      figures of ${sound.length} ${sound.length === 1 ? 'kit' : 'kits'}`);
}

function put(write: () => boolean, name: string, say?: (line: string) => void): boolean {
  try {
    const changed = write();
    say?.(`${changed ? 'written  ' : 'unchanged'} ${name}`);
    return true;
  } catch (thrown) {
    if (!(thrown instanceof WriteError)) throw thrown;
    printError(`cannot write to ${thrown.folder}: ${thrown.reason} (${name})`);
    fail();
    return false;
  }
}

/** Whether a file of that name is somebody else's. */
function isForeign(file: string): boolean {
  try {
    return !isChangesPage(readFileSync(file, 'utf8'));
  } catch {
    // What is not there, or cannot be read, is told of where it is written.
    return false;
  }
}
