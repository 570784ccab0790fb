/** `leaflet`: the sheet of paper in the bag, as PDF and as a page. */
import { type Command, InvalidArgumentError } from 'commander';
import { arrangementErrors, pageErrors } from '../files/layouts.ts';
import { prepare, render, renderInline, sheetsOf } from '../pipeline.ts';
import { type LeafletFormat, leafletFormats } from '../publish/leaflet-plan.ts';
import { type LeafletsOptions, makeLeaflets } from '../publish/leaflets.ts';
import { fail, languageOption, print, printDiagnostics, printError, refuse } from './console.ts';
import { day, steps } from './draw.ts';
import { manyKits } from './many-kits.ts';

function formats(written: string): readonly LeafletFormat[] {
  const names = written.split(',').map((name) => name.trim());
  const wrong = names.find((name) => !leafletFormats.some((one) => one === name));
  if (wrong !== undefined)
    throw new InvalidArgumentError(
      wrong === ''
        ? `“${written}” has an extra comma; write pdf,html without a space`
        : `“${wrong}” is not a format; allowed: ${leafletFormats.join(', ')}`,
    );
  return leafletFormats.filter((one) => names.includes(one));
}

type Options = Omit<LeafletsOptions, 'formats'> & { readonly format: readonly LeafletFormat[] };

export function addLeaflet(program: Command): void {
  program
    .command('leaflet')
    .description('the leaflet of kits as PDF and as an HTML page: parts, cautions, steps, tests, loads')
    .argument('<kit...>', 'kit files, folders of them, or circuit/NAME for a circuit that ships')
    .option('--out <dir>', 'folder to write to', 'out')
    .option('--format <list>', 'pdf, html or both: pdf,html', formats, ['pdf'])
    .option(
      '--page <name>',
      'page format from layouts/pages/, such as a4, a5 or letter; overrides the kit file (default: a4)',
      (written: string) => written.toLowerCase(),
    )
    .option('--landscape', 'pages that lie on their side')
    .option(
      '--booklet',
      'besides a PDF of folded sheets, two pages on each side: print on both sides, flip on the short edge',
    )
    .option('--plot', 'with the plot of the frequency response')
    .addOption(languageOption())
    .option('--date <day>', 'a date to print beside the revision mark, such as 2026-11-30', day)
    .option(
      '--arrangement <name>',
      'an arrangement from layouts/, or the path of your own; overrides the kit file',
    )
    .option('--effort <steps>', 'placement optimisation steps; 0 turns optimisation off', steps)
    .addHelpText('after', '\nexample: solderleaf leaflet my-kit.yaml --page a5 --format pdf,html')
    .action(async (paths: string[], { format, ...rest }: Options, command: Command) => {
      const wrong = [
        ...(rest.arrangement === undefined ? [] : arrangementErrors(rest.arrangement)),
        ...(rest.page === undefined ? [] : pageErrors(rest.page)),
      ];
      if (wrong.length > 0) return refuse(wrong);
      const { files, load } = await manyKits(paths, command);
      for await (const outcome of makeLeaflets(
        files,
        { ...rest, formats: format, progress: printError },
        { prepare, sheetsOf, render, renderInline },
        load,
      )) {
        printDiagnostics(outcome.diagnostics);
        for (const line of outcome.lines) print(line);
        for (const line of outcome.errorLines) printError(line);
        if (outcome.failed) fail();
      }
    });
}
