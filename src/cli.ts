#!/usr/bin/env node
/** The command line. Exit 0 for success, 1 for problems in the input, 2 for wrong usage. */
import { createRequire } from 'node:module';
import { Command, CommanderError } from 'commander';
import { addBuild } from './commands/build.ts';
import { addChanges } from './commands/changes.ts';
import { addCheck } from './commands/check.ts';
import { addCircuits } from './commands/circuits.ts';
import { printError, refuseTwice, shown } from './commands/console.ts';
import { addDraw } from './commands/draw.ts';
import { addEmbed } from './commands/embed.ts';
import { addLeaflet } from './commands/leaflet.ts';
import { addLoads } from './commands/loads.ts';
import { addNew } from './commands/new.ts';
import { addOrder } from './commands/order.ts';
import { addPad } from './commands/pad.ts';
import { addResponse } from './commands/response.ts';
import { addSchema } from './commands/schema.ts';
import { addWhich } from './commands/which.ts';
import { whyNotWritten } from './files/reason.ts';

const { version } = createRequire(import.meta.url)('../package.json') as { version: string };

const program = new Command('solderleaf')
  .description('Wiring diagrams of guitar kits, annotated with calculated loads.')
  .version(version)
  .showHelpAfterError('(see solderleaf --help)')
  .configureOutput({
    writeErr: (text) => void process.stderr.write(shown(text)),
    writeOut: (text) => void process.stdout.write(shown(text)),
  })
  .exitOverride();

for (const add of [
  addDraw,
  addLeaflet,
  addEmbed,
  addLoads,
  addResponse,
  addPad,
  addCheck,
  addCircuits,
  addBuild,
  addWhich,
  addChanges,
  addNew,
  addOrder,
  addSchema,
])
  add(program);
for (const command of program.commands) refuseTwice(command);

// Whoever reads may stop early, as `head` does: that ends the printing, not the work nor what it comes to.
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (thrown: NodeJS.ErrnoException) => {
    if (thrown.code !== 'EPIPE' && thrown.code !== 'ERR_STREAM_DESTROYED') process.exitCode = 1;
  });

try {
  await program.parseAsync();
} catch (thrown) {
  if (thrown instanceof CommanderError) process.exitCode = thrown.exitCode === 0 ? 0 : 2;
  else {
    // What the file system says, or an error of ours: one line, never a trace.
    printError(`solderleaf: ${whyNotWritten(thrown)}`);
    process.exitCode = 1;
  }
}
