/** What an editor is told of a kit that extends another: it needs no more than its id, and its parts may be changes. */
import { z } from 'zod';
import { commonFields } from '../parts/fields.ts';
import {
  extensionSchema,
  headFields,
  jointSchema,
  kitSchema,
  nameSchema,
  partSchema,
  partShapes,
} from './schema.ts';

/** Two schemas are the same to an editor when they print the same. */
const printed = (schema: z.ZodType): string =>
  JSON.stringify(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }));

/** What a field says of itself, within `optional` or without it. */
const wordsOf = (schema: z.ZodType): string =>
  schema.description ?? (schema instanceof z.ZodOptional ? wordsOf(schema.unwrap() as z.ZodType) : '');

/** A field of any kind that has it: which kind a part of the base is, only the base knows. */
function fieldOfAny(name: string): z.ZodType {
  const all = Object.values(partShapes).flatMap(({ shape }) => {
    const fields: Readonly<Record<string, z.ZodType>> = shape;
    const found = Object.hasOwn(fields, name) ? fields[name] : undefined;
    return found ? [found] : [];
  });
  const ways = [...new Map(all.map((schema) => [printed(schema), schema])).values()];
  const [first = z.unknown(), ...more] = ways;
  if (more.length === 0) return first.optional();
  const words = [...new Set(ways.map(wordsOf))].filter((text) => text !== '');
  return z
    .union([first, ...more])
    .optional()
    .describe(words.join('; or: '));
}

/** Worked out when an editor asks, since no other command needs it and that takes longer than many a command. */
function worked() {
  const fieldNames = [
    ...new Set(Object.values(partShapes).flatMap(({ shape }) => Object.keys(shape))),
  ].filter((field) => field !== 'kind');

  const changedPart = z
    .strictObject(Object.fromEntries(fieldNames.map((name) => [name, fieldOfAny(name)])))
    .describe('Changes of a part of the base: the fields written here replace its own');

  const codedPart = z
    .strictObject({
      ...changedPart.shape,
      kind: z.enum(Object.keys(partShapes)).describe('Kind of the part, the same as that of the item'),
      code: commonFields.code.unwrap().describe(wordsOf(commonFields.code)),
    })
    .describe('A part told by its stock code: its values are those of the item in the parts list')
    .meta({ id: 'coded-part' });

  const { extends: base, remove } = extensionSchema.shape;

  const extending = z
    .strictObject({
      extends: base.unwrap().describe(wordsOf(base)),
      ...headFields,
      title: headFields.title.optional(),
      remove: remove
        .unwrap()
        .extend({ joints: z.array(jointSchema).optional().describe('Joints of the base, as written there') })
        .optional()
        .describe('What is removed from the base, before anything is added'),
      parts: z
        .record(nameSchema, z.union([partSchema, codedPart, changedPart]))
        .optional()
        .describe('New parts, parts of another kind, and changes of the base’s parts'),
      joints: z
        .array(jointSchema)
        .optional()
        .describe('New joints; one between the same lugs as a joint of the base replaces it'),
    })
    .describe('A kit made from another, with changes');
  return { codedPart, extending };
}

let known: ReturnType<typeof worked> | undefined;
function schemas(): ReturnType<typeof worked> {
  known ??= worked();
  return known;
}

/** A piece of a kit, which one value of an axis adds to the kits of a family. */
export const pieceSchema = (): z.ZodType =>
  schemas()
    .extending.omit({ kit: true })
    .partial({ extends: true })
    .describe('What this value changes in the kit: parts, joints, remove, or any key of a kit but its id');

/** Every description that may be written. */
export function descriptionSchema(): z.ZodType {
  const { codedPart, extending } = schemas();
  return z.union([
    kitSchema.extend({
      parts: z
        .record(nameSchema, z.union([partSchema, codedPart]))
        .describe('The parts, each under a name of its own'),
    }),
    extending,
  ]);
}
