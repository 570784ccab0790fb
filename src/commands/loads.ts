/** `loads`: what each pickup works into. */
import type { Command } from 'commander';
import { toJson } from '../analyse/index.ts';
import { analyse } from '../pipeline.ts';
import { loadKit } from '../publish/load.ts';
import { loadsData, loadsTable } from '../publish/table.ts';
import { complain, fail, say } from './console.ts';

export function addLoads(program: Command): void {
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
}
