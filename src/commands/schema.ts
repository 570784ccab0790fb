/** `schema`: the JSON Schema of kits, of a parts list, of a workshop's catalogue, or of a kit's data for a shop page. */
import { type Command, Option } from 'commander';
import { formatCatalogueJsonSchema } from '../catalogue/json-schema.ts';
import { formatKitJsonSchema, formatListJsonSchema } from '../describe/json-schema.ts';
import { formatShopJsonSchema } from '../shop/kit-data.ts';

const SCHEMAS = {
  kit: formatKitJsonSchema,
  parts: formatListJsonSchema,
  catalogue: formatCatalogueJsonSchema,
  shop: formatShopJsonSchema,
};

export function addSchema(program: Command): void {
  program
    .command('schema')
    .description(
      'print the JSON Schema of kits, parts lists or catalogues, for editor completion, or of a kit’s data for a shop page',
    )
    .addOption(
      new Option(
        '--for <file>',
        'kit files, parts for parts.yaml, catalogue for solderleaf.yaml, or shop for the data that embed writes',
      )
        .choices(Object.keys(SCHEMAS))
        .default('kit'),
    )
    .addHelpText('after', '\nexample: solderleaf schema > kit.schema.json')
    .action(
      (flags: { readonly for: keyof typeof SCHEMAS }) => void process.stdout.write(SCHEMAS[flags.for]()),
    );
}
