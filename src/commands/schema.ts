/** `schema`: the JSON Schema of kits, of a parts list or of a workshop's catalogue. */
import { type Command, Option } from 'commander';
import { formatCatalogueJsonSchema } from '../catalogue/json-schema.ts';
import { formatKitJsonSchema, formatListJsonSchema } from '../describe/json-schema.ts';

const SCHEMAS = {
  kit: formatKitJsonSchema,
  parts: formatListJsonSchema,
  catalogue: formatCatalogueJsonSchema,
};

export function addSchema(program: Command): void {
  program
    .command('schema')
    .description('print the JSON Schema of kits, parts lists or catalogues, for editor completion')
    .addOption(
      new Option('--for <file>', 'kit files, parts for parts.yaml, or catalogue for solderleaf.yaml')
        .choices(Object.keys(SCHEMAS))
        .default('kit'),
    )
    .addHelpText('after', '\nexample: solderleaf schema > kit.schema.json')
    .action(
      (flags: { readonly for: keyof typeof SCHEMAS }) => void process.stdout.write(SCHEMAS[flags.for]()),
    );
}
