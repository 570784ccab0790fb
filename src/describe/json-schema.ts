/** The description's JSON Schema, by which editors complete and check a kit while it is written. */
import { z } from 'zod';
import { descriptionSchema } from './extending-schema.ts';
import { listSchema } from './stock-schema.ts';

/** JSON Schema, draft 2020-12, of what a person writes: before defaults and before units are read. */
export const kitJsonSchema = (): object => jsonSchema(descriptionSchema(), 'Solderleaf kit');

/** The same of a parts list. */
export const listJsonSchema = (): object => jsonSchema(listSchema, 'Solderleaf parts list');

export function jsonSchema(of: z.ZodType, title: string): object {
  const schema = z.toJSONSchema(of, {
    io: 'input',
    target: 'draft-2020-12',
    unrepresentable: 'any',
  });
  const { $schema, ...rest } = schema;
  return { $schema, title, ...rest };
}

/** The schema as the text of its file. */
export const formatted = (schema: object): string => `${JSON.stringify(schema, null, 2)}\n`;
export const formatKitJsonSchema = (): string => formatted(kitJsonSchema());
export const formatListJsonSchema = (): string => formatted(listJsonSchema());
