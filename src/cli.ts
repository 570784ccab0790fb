#!/usr/bin/env node
/** The command line. Exit 0 for success, 1 for problems in the input, 2 for wrong usage. */
import { createRequire } from 'node:module';
import { Command, CommanderError } from 'commander';
import { addCheck } from './commands/check.ts';
import { addDraw } from './commands/draw.ts';
import { addLoads } from './commands/loads.ts';
import { addPad } from './commands/pad.ts';
import { addResponse } from './commands/response.ts';
import { addSchema } from './commands/schema.ts';

const { version } = createRequire(import.meta.url)('../package.json') as { version: string };

const program = new Command('solderleaf')
  .description('Wiring diagrams of guitar kits, annotated with what the circuit really does.')
  .version(version)
  .showHelpAfterError('(solderleaf --help shows how it is used)')
  .exitOverride();

for (const add of [addDraw, addLoads, addResponse, addPad, addCheck, addSchema]) add(program);

// Whoever reads may stop early, as `head` does: that is no fault of anybody's.
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (thrown: NodeJS.ErrnoException) => {
    process.exit(thrown.code === 'EPIPE' ? process.exitCode : 1);
  });

try {
  await program.parseAsync();
} catch (thrown) {
  if (thrown instanceof CommanderError) process.exitCode = thrown.exitCode === 0 ? 0 : 2;
  else {
    // What the file system says, or a fault of ours: one line, never a trace.
    process.stderr.write(`solderleaf: ${thrown instanceof Error ? thrown.message : String(thrown)}\n`);
    process.exitCode = 1;
  }
}
