/** `embed`: kits as a folder to upload for a shop's pages. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import { webFolder } from '../common/web-address.ts';
import { themes } from '../draw/theme.ts';
import { arrangementErrors } from '../files/layouts.ts';
import { prepare, render, renderInline, sheetsOf } from '../pipeline.ts';
import { DEFAULT_EFFORT } from '../place/improve.ts';
import { type EmbedOptions, embedKits } from '../publish/embed.ts';
import { fail, languageOption, print, printDiagnostics, printError, refuse } from './console.ts';
import { day, steps } from './draw.ts';
import { manyKits } from './many-kits.ts';

function folder(written: string): string {
  const read = webFolder(written);
  if (typeof read !== 'string') throw new InvalidArgumentError(`“${written}”: ${read.wrong}. ${read.remedy}`);
  return read;
}

export function addEmbed(program: Command): void {
  program
    .command('embed')
    .description(
      'kits as a folder to upload: pictures, data, fragments to paste into a shop page, and an index',
    )
    .argument(
      '<kit...>',
      'kit files, folders of them, circuit/NAME for a circuit that ships, or WORKSHOP#ID for a kit of a workshop',
    )
    .option('--out <dir>', 'folder to write to; kits that lie there already stay in its index', 'out/shop')
    .option(
      '--base <address>',
      'address of the folder once it is uploaded, such as https://www.example.com/drawings/; without it the fragments are for pages in the folder itself',
      folder,
    )
    .addOption(languageOption())
    .addOption(
      new Option(
        '--theme <name>',
        'of the pictures: light, dark, or print; a drawing within a page takes its inks from theme.css',
      ).choices(Object.keys(themes)),
    )
    .option('--date <day>', 'a date to print beside the revision mark, such as 2026-11-30', day)
    .option(
      '--arrangement <name>',
      'an arrangement from layouts/, or the path of your own; overrides the kit file',
    )
    .option(
      '--effort <steps>',
      `placement optimisation steps; 0 turns optimisation off (default: ${DEFAULT_EFFORT.steps})`,
      steps,
    )
    .addHelpText('after', '\nexample: solderleaf embed my-kit.yaml --base https://www.example.com/drawings/')
    .action(async (paths: string[], options: EmbedOptions, command: Command) => {
      const wrong = options.arrangement === undefined ? [] : arrangementErrors(options.arrangement);
      if (wrong.length > 0) return refuse(wrong);
      const { files, load } = await manyKits(paths, command);
      for await (const outcome of embedKits(
        files,
        { ...options, progress: printError },
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
