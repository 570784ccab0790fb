/** The catalogue's JSON Schema, by which editors complete and check `solderleaf.yaml` while it is written. */
import { z } from 'zod';
import { pieceSchema } from '../describe/extending-schema.ts';
import { catalogueSchema, familySchema, kitEntrySchema } from './schema.ts';

const written = catalogueSchema.extend({
  kits: z
    .array(z.union([kitEntrySchema.shape.files, kitEntrySchema]))
    .optional()
    .describe(catalogueSchema.shape.kits.description ?? ''),
  families: z
    .array(
      familySchema.extend({
        matrix: z
          .record(z.string(), z.record(z.string(), z.union([pieceSchema, z.null()])))
          .describe(familySchema.shape.matrix.description ?? ''),
      }),
    )
    .optional()
    .describe(catalogueSchema.shape.families.description ?? ''),
});

/** JSON Schema, draft 2020-12, of a catalogue, as the text of its file. */
export function formatCatalogueJsonSchema(): string {
  const schema = z.toJSONSchema(written, { io: 'input', target: 'draft-2020-12', unrepresentable: 'any' });
  const { $schema, ...rest } = schema;
  return `${JSON.stringify({ $schema, title: 'Solderleaf catalogue', ...rest }, null, 2)}\n`;
}
