/** The description's JSON Schema, by which editors complete and check a kit while it is written. */
import { z } from 'zod';
import { descriptionSchema } from './extending-schema.ts';

/** JSON Schema, draft 2020-12, of what a person writes: before defaults and before units are read. */
export function kitJsonSchema(): object {
  const schema = z.toJSONSchema(descriptionSchema, {
    io: 'input',
    target: 'draft-2020-12',
    unrepresentable: 'any',
  });
  const { $schema, ...rest } = schema;
  return { $schema, title: 'Solderleaf kit', ...rest };
}

/** The schema as the text of its file. */
export const formatKitJsonSchema = (): string => `${JSON.stringify(kitJsonSchema(), null, 2)}\n`;
