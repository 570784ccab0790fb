/** The catalogue's JSON Schema, by which editors complete and check `solderleaf.yaml` while it is written. */
import { z } from 'zod';
import { pieceSchema } from '../describe/extending-schema.ts';
import { formatted, jsonSchema } from '../describe/json-schema.ts';
import { workshopSchema } from '../describe/workshop.ts';
import { catalogueSchema, familySchema, kitEntrySchema } from './schema.ts';

/** A catalogue as it may be written. */
const written = (): z.ZodType =>
  catalogueSchema.extend({
    workshop: workshopSchema.optional(),
    kits: z
      .array(z.union([kitEntrySchema.shape.files, kitEntrySchema]))
      .optional()
      .describe(catalogueSchema.shape.kits.description ?? ''),
    families: z
      .array(
        familySchema.extend({
          matrix: z
            .record(z.string(), z.record(z.string(), z.union([pieceSchema(), z.null()])))
            .describe(familySchema.shape.matrix.description ?? ''),
        }),
      )
      .optional()
      .describe(catalogueSchema.shape.families.description ?? ''),
  });

/** JSON Schema, draft 2020-12, of a catalogue, as the text of its file. */
export const formatCatalogueJsonSchema = (): string =>
  formatted(jsonSchema(written(), 'Solderleaf catalogue'));
