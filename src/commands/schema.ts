/** `schema`: the JSON Schema of kits, or of a parts list. */
import { type Command, Option } from 'commander';
import { formatKitJsonSchema, formatListJsonSchema } from '../describe/json-schema.ts';

const SCHEMAS = { kit: formatKitJsonSchema, parts: formatListJsonSchema };

export function addSchema(program: Command): void {
  program
    .command('schema')
    .description('print the JSON Schema of kit files or of a parts list, for editor completion')
    .addOption(
      new Option('--for <file>', 'kit files, or parts for parts.yaml')
        .choices(Object.keys(SCHEMAS))
        .default('kit'),
    )
    .addHelpText('after', '\nexample: solderleaf schema > kit.schema.json')
    .action(
      (flags: { readonly for: keyof typeof SCHEMAS }) => void process.stdout.write(SCHEMAS[flags.for]()),
    );
}
