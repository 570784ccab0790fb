/** `schema`: the JSON Schema of kits, or of a workshop's catalogue. */
import { type Command, Option } from 'commander';
import { formatCatalogueJsonSchema } from '../catalogue/json-schema.ts';
import { formatKitJsonSchema } from '../describe/json-schema.ts';

const formats = { kit: formatKitJsonSchema, catalogue: formatCatalogueJsonSchema };

export function addSchema(program: Command): void {
  program
    .command('schema')
    .description('print the JSON Schema of kit files or of solderleaf.yaml, for editor completion')
    .addOption(
      new Option('--for <what>', 'which files the schema is of').choices(Object.keys(formats)).default('kit'),
    )
    .addHelpText(
      'after',
      '\nexample: solderleaf schema > kit.schema.json\n         solderleaf schema --for catalogue > catalogue.schema.json',
    )
    .action(
      (options: { readonly for: keyof typeof formats }) => void process.stdout.write(formats[options.for]()),
    );
}
