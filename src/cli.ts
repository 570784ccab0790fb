#!/usr/bin/env node
/** The commands. Thin: everything is done elsewhere. Exit 0 for success, 1 for problems in the input, 2 for wrong usage. */
import { createRequire } from 'node:module';
import { Command, CommanderError, InvalidArgumentError } from 'commander';
import { toJson } from './analyse/index.ts';
import { loadNotes } from './annotate/notes.ts';
import type { Report } from './common/problem.ts';
import { printKitJsonSchema } from './describe/json-schema.ts';
import { printReports, report } from './describe/report.ts';
import { analyse, draw } from './pipeline.ts';
import { drawFile, type Format } from './publish/draw-kits.ts';
import { kitFiles, loadKit } from './publish/load.ts';
import { loadsData, loadsTable } from './publish/table.ts';

const { version } = createRequire(import.meta.url)('../package.json') as { version: string };

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const complain = (reports: readonly Report[]): void => {
  if (reports.length > 0) process.stderr.write(`${printReports(reports)}\n\n`);
};
const fail = (): void => {
  process.exitCode = 1;
};

function formats(written: string): readonly Format[] {
  const names = written.split(',').map((name) => name.trim());
  const wrong = names.find((name) => name !== 'svg' && name !== 'png');
  if (wrong !== undefined) throw new InvalidArgumentError(`“${wrong}” is no format; allowed: svg, png`);
  return [...new Set(names)] as readonly Format[];
}

/** Files to work on; says so and fails when there are none. */
function filesOf(paths: readonly string[]): readonly string[] {
  const files = kitFiles(paths);
  if (files.length === 0) {
    process.stderr.write(`no kit found in ${paths.join(', ')}: a kit is a .yaml, .json or .ts file\n`);
    fail();
  }
  return files;
}

const program = new Command('solderleaf')
  .description('Wiring diagrams of guitar kits, annotated with what the circuit really does.')
  .version(version)
  .showHelpAfterError('(solderleaf --help shows how it is used)')
  .exitOverride();

program
  .command('draw')
  .description('draw kits as SVG, and PNG if asked for')
  .argument('<kit...>', 'kit files, or folders of them')
  .option('--out <dir>', 'folder to write to', 'out')
  .option('--format <list>', 'svg, png or both, with a comma between', formats, ['svg'])
  .option('--arrangement <name>', 'an arrangement of layouts/, or a file of your own, in place of the kit’s')
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

program
  .command('loads')
  .description('what each pickup works into, in every state')
  .argument('<kit>', 'kit file')
  .option('--json', 'as JSON, in ohms, unrounded', false)
  .action(async (path: string, options: { json: boolean }) => {
    const { kit, reports } = await loadKit(path);
    complain(reports);
    if (!kit) return fail();
    const { loads } = analyse(kit);
    say(options.json ? toJson(loadsData(kit, loads)) : `${kit.title}\n\n${loadsTable(loads)}`);
  });

program
  .command('check')
  .description('problems and notes, without drawing')
  .argument('<kit...>', 'kit files, or folders of them')
  .action(async (paths: string[]) => {
    for (const file of filesOf(paths)) {
      const { kit, reports, source } = await loadKit(file);
      const notes = kit ? report(loadNotes(analyse(kit).loads), source) : [];
      const all = [...reports, ...notes];
      if (all.length > 0) say(`${printReports(all)}\n`);
      const faults = all.filter((one) => one.severity === 'fault').length;
      say(`${file}: ${count(faults, 'fault')}, ${count(all.length - faults, 'note')}`);
      if (faults > 0) fail();
    }
  });

const count = (n: number, what: string): string => `${n === 0 ? 'no' : n} ${what}${n === 1 ? '' : 's'}`;

program
  .command('schema')
  .description('print the JSON Schema of a description, for completion in editors')
  .action(() => void process.stdout.write(printKitJsonSchema()));

try {
  await program.parseAsync();
} catch (thrown) {
  if (thrown instanceof CommanderError) process.exitCode = thrown.exitCode === 0 ? 0 : 2;
  else {
    // What the file system says, or a fault of ours: one line, never a trace.
    process.stderr.write(`solderleaf: ${thrown instanceof Error ? thrown.message : String(thrown)}\n`);
    fail();
  }
}
