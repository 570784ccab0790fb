/** `check`: problems and notes. */
import type { Command } from 'commander';
import { notesOf } from '../annotate/notes.ts';
import type { Problem } from '../common/problem.ts';
import type { Kit } from '../describe/kit.ts';
import { printReports, report } from '../describe/report.ts';
import { analyse } from '../pipeline.ts';
import { arrangementFaults, pageFaults } from '../publish/layouts.ts';
import { loadKit } from '../publish/load.ts';
import { fail, filesOf, say } from './console.ts';

export function addCheck(program: Command): void {
  program
    .command('check')
    .description('problems and notes, without drawing')
    .argument('<kit...>', 'kit files, or folders of them')
    .action(async (paths: string[]) => {
      for (const file of filesOf(paths)) {
        const { kit, reports, source } = await loadKit(file);
        const notes = kit ? report([...layoutFaults(kit), ...notesIn(kit)], source) : [];
        const all = [...reports, ...notes];
        if (all.length > 0) say(`${printReports(all)}\n`);
        const faults = all.filter((one) => one.severity === 'fault').length;
        say(`${file}: ${count(faults, 'fault')}, ${count(all.length - faults, 'note')}`);
        if (faults > 0) fail();
      }
    });
}

/** What a kit names of `layouts/`. */
const layoutFaults = (kit: Kit): readonly Problem[] => [
  ...arrangementFaults(kit.arrangement),
  ...(kit.page === undefined ? [] : pageFaults(kit.page)),
];

function notesIn(kit: Kit): readonly Problem[] {
  const { circuit, loads } = analyse(kit);
  return notesOf(circuit, loads);
}

const count = (n: number, what: string): string => `${n === 0 ? 'no' : n} ${what}${n === 1 ? '' : 's'}`;
