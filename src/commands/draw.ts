/** `draw`: kits to SVG and PNG files. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import { hands, views } from '../describe/kit.ts';
import { themes } from '../draw/theme.ts';
import { prepare, render } from '../pipeline.ts';
import { DEFAULT_EFFORT } from '../place/improve.ts';
import { type DrawOptions, drawKits, type Format } from '../publish/draw-kits.ts';
import { arrangementFaults, pageFaults } from '../publish/layouts.ts';
import { modes } from '../publish/modes.ts';
import { complain, complainOf, fail, filesOf, refuse, say } from './console.ts';

function formats(written: string): readonly Format[] {
  const names = written.split(',').map((name) => name.trim());
  if (names.includes(''))
    throw new InvalidArgumentError(
      `“${written}” has a comma too many; write svg,png without a space between`,
    );
  const wrong = names.find((name) => name !== 'svg' && name !== 'png');
  if (wrong !== undefined) throw new InvalidArgumentError(`“${wrong}” is not a format; allowed: svg, png`);
  return [...new Set(names)] as readonly Format[];
}

function steps(written: string): number {
  const count = Number(written);
  if (!/^\d+$/.test(written) || count > MOST_STEPS)
    throw new InvalidArgumentError(`“${written}” is not a number of steps; allowed: 0 to ${MOST_STEPS}`);
  return count;
}

/** Beyond this a kit takes minutes and gains nothing that can be seen. */
const MOST_STEPS = 100_000;

type Options = Omit<DrawOptions, 'formats'> & { readonly format: readonly Format[] };

export function addDraw(program: Command): void {
  program
    .command('draw')
    .description('draw kits as SVG, and PNG if asked for')
    .argument('<kit...>', 'kit files, or folders of them')
    .option('--out <dir>', 'folder to write to', 'out')
    .option('--format <list>', 'svg, png or both, with a comma between', formats, ['svg'])
    .option(
      '--arrangement <name>',
      'an arrangement of layouts/, or a file of your own, in place of the kit’s',
    )
    .addOption(new Option('--view <side>', 'the side it is seen from, in place of the kit’s').choices(views))
    .addOption(new Option('--hand <hand>', 'the hand it is built for, in place of the kit’s').choices(hands))
    .addOption(
      new Option('--theme <name>', 'light, dark, or print without fills').choices(Object.keys(themes)),
    )
    .addOption(
      new Option('--mode <mode>', 'static; inline, whose inks a page may set; standalone, with its font')
        .choices(modes)
        .default('static'),
    )
    .option('--page <name>', 'a page format of layouts/pages/ to fit the sheet to, in place of the kit’s')
    .addOption(
      new Option('--state <setting>', 'one state with its live path, such as selector=2; or all').conflicts(
        'step',
      ),
    )
    .option(
      '--step <number>',
      'the drawing up to a step of the soldering, and what is to be done in it; or all',
    )
    .option(
      '--effort <steps>',
      `steps of the placement search, 0 for none (default: ${DEFAULT_EFFORT.steps})`,
      steps,
    )
    .option('--check', 'write nothing; exit 1 when a drawing on disk differs from what would be drawn', false)
    .addHelpText('after', '\nexample: solderleaf draw my-kit.yaml --format svg,png --page a4 --theme print')
    .action(async (paths: string[], { format, ...rest }: Options) => {
      const wrong = [
        ...(rest.arrangement === undefined ? [] : arrangementFaults(rest.arrangement)),
        ...(rest.page === undefined ? [] : pageFaults(rest.page)),
      ];
      if (wrong.length > 0) return refuse(wrong);
      const files = filesOf(paths);
      for await (const outcome of drawKits(
        files,
        { ...rest, formats: format, progress: complainOf },
        { prepare, render },
      )) {
        complain(outcome.reports);
        for (const line of outcome.lines) say(line);
        for (const trouble of outcome.troubles) complainOf(trouble);
        if (outcome.failed) fail();
      }
    });
}
