/** `schema`: the description's JSON Schema. */
import type { Command } from 'commander';
import { formatKitJsonSchema } from '../describe/json-schema.ts';

export function addSchema(program: Command): void {
  program
    .command('schema')
    .description('print the JSON Schema of kit files, for editor completion')
    .addHelpText('after', '\nexample: solderleaf schema > kit.schema.json')
    .action(() => void process.stdout.write(formatKitJsonSchema()));
}
