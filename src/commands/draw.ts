/** `draw`: kits to SVG and PNG files. */
import { type Command, InvalidArgumentError } from 'commander';
import { draw } from '../pipeline.ts';
import { drawFile, type Format } from '../publish/draw-kits.ts';
import { complain, fail, filesOf, say } from './console.ts';

function formats(written: string): readonly Format[] {
  const names = written.split(',').map((name) => name.trim());
  const wrong = names.find((name) => name !== 'svg' && name !== 'png');
  if (wrong !== undefined) throw new InvalidArgumentError(`“${wrong}” is no format; allowed: svg, png`);
  return [...new Set(names)] as readonly Format[];
}

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
    .option('--check', 'write nothing; exit 1 when a drawing on disk differs from what would be drawn', false)
    .action(
      async (
        paths: string[],
        options: { out: string; format: readonly Format[]; arrangement?: string; check: boolean },
      ) => {
        const taken = new Map<string, string>();
        for (const file of filesOf(paths)) {
          const { format, ...rest } = options;
          const outcome = await drawFile(file, { ...rest, formats: format }, draw, taken);
          complain(outcome.reports);
          for (const line of outcome.lines) say(line);
          if (outcome.failed) fail();
        }
      },
    );
}
