/** `draw`: kits to SVG and PNG files. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import { lineColours } from '../annotate/lines.ts';
import { isDay } from '../common/day.ts';
import { hands, views } from '../describe/kit.ts';
import { LEAST_WIDTH, MOST_WIDTH } from '../draw/column.ts';
import { modes } from '../draw/drawing-name.ts';
import { inOrder, type Piece, pieces } from '../draw/pieces.ts';
import { themes } from '../draw/theme.ts';
import { arrangementErrors, pageErrors } from '../files/layouts.ts';
import { prepare, render, renderInline, sheetsOf } from '../pipeline.ts';
import { DEFAULT_EFFORT } from '../place/improve.ts';
import { type DrawOptions, drawKits } from '../publish/draw-kits.ts';
import type { Format } from '../publish/draw-plan.ts';
import { fail, languageOption, print, printDiagnostics, printError, refuse } from './console.ts';
import { manyKits } from './many-kits.ts';

function formats(written: string): readonly Format[] {
  const names = written.split(',').map((name) => name.trim());
  if (names.includes(''))
    throw new InvalidArgumentError(`“${written}” has an extra comma; write svg,png without a space`);
  const wrong = names.find((name) => name !== 'svg' && name !== 'png');
  if (wrong !== undefined) throw new InvalidArgumentError(`“${wrong}” is not a format; allowed: svg, png`);
  return [...new Set(names)] as readonly Format[];
}

function only(written: string): readonly Piece[] {
  const names = written.split(',').map((name) => name.trim());
  const wrong = names.find((name) => !isPiece(name));
  if (wrong === '')
    throw new InvalidArgumentError(`“${written}” has an extra comma; write drawing,key without a space`);
  if (wrong !== undefined)
    throw new InvalidArgumentError(`“${wrong}” is not a piece; allowed: ${pieces.join(', ')}`);
  return inOrder(names.filter(isPiece));
}

const isPiece = (name: string): name is Piece => pieces.some((piece) => piece === name);

function columnWidth(written: string): number {
  const width = Number(written);
  if (!/^\d+$/.test(written) || width < LEAST_WIDTH || width > MOST_WIDTH)
    throw new InvalidArgumentError(
      `“${written}” is not a width in whole CSS pixels; allowed: ${LEAST_WIDTH} to ${MOST_WIDTH}`,
    );
  return width;
}

/** A number of steps as it is written on the command line. */
export function steps(written: string): number {
  const count = Number(written);
  if (!/^\d+$/.test(written) || count > MOST_STEPS)
    throw new InvalidArgumentError(`“${written}” is not a number of steps; allowed: 0 to ${MOST_STEPS}`);
  return count;
}

/** A day that there is, as ISO 8601 writes it. */
export function day(written: string): string {
  if (!isDay(written))
    throw new InvalidArgumentError(
      `“${written}” is not a date; write year, month and day, such as 2026-11-30`,
    );
  return written;
}

const [LEAST_DPI, MOST_DPI] = [36, 1200] as const;

function resolution(written: string): number {
  const dpi = Number(written);
  if (!/^\d+$/.test(written) || dpi < LEAST_DPI || dpi > MOST_DPI)
    throw new InvalidArgumentError(
      `“${written}” is not a resolution in dots per inch; allowed: ${LEAST_DPI} to ${MOST_DPI}`,
    );
  return dpi;
}

/** Beyond this a kit takes minutes and gains nothing that can be seen. */
const MOST_STEPS = 100_000;

type Options = Omit<DrawOptions, 'formats'> & { readonly format: readonly Format[] };

export function addDraw(program: Command): void {
  program
    .command('draw')
    .description('draw kits as SVG or PNG')
    .argument(
      '<kit...>',
      'kit files, folders of them, circuit/NAME for a circuit that ships, or WORKSHOP#ID for a kit of a workshop',
    )
    .option('--out <dir>', 'folder to write to', 'out')
    .option('--format <list>', 'svg, png or both: svg,png', formats, ['svg'])
    .option(
      '--arrangement <name>',
      'an arrangement from layouts/, or the path of your own; overrides the kit file',
    )
    .addOption(new Option('--view <side>', 'side it is seen from; overrides the kit file').choices(views))
    .addOption(new Option('--hand <hand>', 'right- or left-handed; overrides the kit file').choices(hands))
    .addOption(languageOption())
    .addOption(
      new Option('--theme <name>', 'light, dark, or print (black and grey, no fills)').choices(
        Object.keys(themes),
      ),
    )
    .addOption(
      new Option(
        '--lines <what>',
        'what a line’s colour tells: insulation, where the kit gives it; or signal, which pickup it belongs to',
      ).choices(lineColours),
    )
    .addOption(
      new Option(
        '--mode <mode>',
        'static; inline: colours set by the web page’s stylesheet; standalone: font embedded',
      )
        .choices(modes)
        .default('static'),
    )
    .option(
      '--page <name>',
      'page format the sheet is fitted to, from layouts/pages/, on more sheets where it takes them; overrides the kit file',
      (written: string) => written.toLowerCase(),
    )
    .option(
      '--only <list>',
      `pieces alone, without the title: ${pieces.join(', ')} (of a step), or several: drawing,key`,
      only,
    )
    .addOption(
      new Option(
        '--width <pixels>',
        'sheet for a column of a web page so many CSS pixels wide, such as 360 for a phone: pieces one below the other, parts too unless --arrangement is given',
      )
        .argParser(columnWidth)
        .conflicts('page'),
    )
    .addOption(
      new Option(
        '--position <switch=n>',
        'one switch position with its signal path, by numbers or names, such as selector=2,phase=up; or all',
      ).conflicts('step'),
    )
    .option('--step <number>', 'drawing up to soldering step N, with a checklist of its joints; or all')
    .option('--date <day>', 'a date to print beside the revision mark, such as 2026-11-30', day)
    .option(
      '--effort <steps>',
      `placement optimisation steps; 0 turns optimisation off (default: ${DEFAULT_EFFORT.steps})`,
      steps,
    )
    .option(
      '--dpi <number>',
      'resolution of PNG files (default: 300 with a page, else 1600 pixels wide)',
      resolution,
    )
    .option('--check', 'write nothing; exit 1 if a drawing on disk differs from what would be drawn', false)
    .addHelpText('after', '\nexample: solderleaf draw my-kit.yaml --format svg,png --page a4 --theme print')
    .action(async (paths: string[], { format, ...rest }: Options, command: Command) => {
      const wrong = [
        ...(rest.arrangement === undefined ? [] : arrangementErrors(rest.arrangement)),
        ...(rest.page === undefined ? [] : pageErrors(rest.page)),
      ];
      if (wrong.length > 0) return refuse(wrong);
      const { files, load } = await manyKits(paths, command);
      for await (const outcome of drawKits(
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
