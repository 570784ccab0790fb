/**
 * What a person may write, once for YAML, JSON and TypeScript. The parts' share comes from `parts/`: each kind
 * brings its fields. Every object is strict, so that a misspelt key is found.
 */
import { z } from 'zod';
import { ID, ID_LONGEST, NAME_LONGEST } from '../common/names.ts';
import { DEFAULT_LANGUAGE, languages } from '../messages/language.ts';
import { commonFields, farads, fraction, ohms } from '../parts/fields.ts';
import { type Kind, kinds } from '../parts/index.ts';
import { intendedField } from './intended.ts';
import { hands, type JointKind, jointKinds, views } from './kit.ts';
import { colourField, hertzField, JOINT, lengthField } from './words.ts';

const shapeOf = <K extends string, S extends z.ZodRawShape>(kind: {
  readonly kind: K;
  readonly what: string;
  readonly fields: S;
  readonly lugs: readonly { readonly name: string }[];
}) =>
  z.strictObject({
    kind: z
      .literal(kind.kind)
      .describe(`${kind.what}; lugs ${kind.lugs.map(({ name }) => name).join(', ') || 'as its fields say'}`),
    ...commonFields,
    ...kind.fields,
  });

type PartShapes = { readonly [K in Kind]: ReturnType<typeof shapeOf<K, (typeof kinds)[K]['fields']>> };

/** One strict object a kind. The cast says what the loop does: each key with the shape of its own kind. */
export const partShapes = Object.fromEntries(
  Object.values(kinds).map((kind) => [kind.kind, shapeOf(kind as Parameters<typeof shapeOf>[0])]),
) as unknown as PartShapes;

type Shape = PartShapes[Kind];

export const partSchema = z
  .discriminatedUnion('kind', Object.values(partShapes) as unknown as [Shape, ...Shape[]])
  .meta({ id: 'part', description: 'One part of the kit' });

export const nameSchema = z.string().regex(ID).max(NAME_LONGEST).describe('Name of a part, such as tone-cap');

const JOINT_WORDS: Readonly<Record<JointKind, string>> = {
  wire: 'A wire, cut and stripped: PART.LUG > PART.LUG',
  leg: 'A component leg, bare or sleeved: PART.LUG > PART.LUG',
  jumper: 'A short bare wire between lugs of one part: PART.LUG > PART.LUG',
  bend: 'A pot’s lug bent back onto its own case: POT.1 > POT.case',
  braid: 'The braided shield of a lead: PART.LUG > PART.LUG',
};

const jointText = z.string().regex(JOINT);
/** What may stand beside a joint's kind. */
export const jointExtras = {
  colour: colourField.optional(),
  length: lengthField.optional(),
  step: z
    .int()
    .min(1)
    .max(99)
    .optional()
    .describe(
      'Soldering step of this joint; overrides the automatic step: 1 ground, 2 jumpers, 3 components, 4 switch to pots, 5 output, 6 pickups',
    ),
};

const jointShape = <K extends JointKind>(kind: K) =>
  z.strictObject({ [kind]: jointText.describe(JOINT_WORDS[kind]), ...jointExtras } as {
    readonly [P in K]: typeof jointText;
  } & typeof jointExtras);

export const jointShapes = {
  wire: jointShape('wire'),
  leg: jointShape('leg'),
  jumper: jointShape('jumper'),
  bend: jointShape('bend'),
  braid: jointShape('braid'),
} as const satisfies Readonly<Record<JointKind, unknown>>;

export const jointSchema = z
  .union([jointText.describe(JOINT_WORDS.wire), ...jointKinds.map((kind) => jointShapes[kind])])
  .describe(
    'How two lugs are connected: a wire written as PART.LUG > PART.LUG, or the kind of joint with its ends',
  )
  .meta({ id: 'joint' });

/** Characters of what a kit is for: two sentences. */
const ABOUT_LONGEST = 300;
const STOCK_EXAMPLE = '[220k, 270k, 470k]';

/** The kit's own fields, apart from parts and joints. */
export const headFields = {
  kit: z
    .string()
    .regex(ID)
    .max(ID_LONGEST)
    .describe('Id of the kit, which names its files: lower-case words joined by hyphens'),
  title: z.string().regex(/\S/).max(80).describe('Title above the drawing'),
  about: z
    .string()
    .regex(/\S/)
    .max(ABOUT_LONGEST)
    .optional()
    .describe('What the circuit is for, in one or two sentences; shown in lists of circuits'),
  arrangement: z
    .string()
    .min(1)
    .optional()
    .describe(
      'How the parts are laid out: free-flow (by default), bass-row, cavity-2x2, narrow-column, pickguard, plate-row or single-control; or the path of an arrangement file',
    ),
  view: z.enum(views).optional().describe('Which side the drawing is seen from; the solder side by default'),
  hand: z.enum(hands).optional().describe('Right- or left-handed build; right by default'),
  language: z
    .enum(languages)
    .optional()
    .describe(`Language of drawing and leaflet: ${languages.join(', ')}; ${DEFAULT_LANGUAGE} by default`),
  page: z
    .string()
    .min(1)
    .toLowerCase()
    .optional()
    .describe('Page the sheet is fitted to: a4, a4-landscape, a5, a5-landscape, letter or letter-landscape'),
  stock: z
    .array(ohms('A resistance, such as 470k'), {
      error: `expected a list of resistances, such as ${STOCK_EXAMPLE}`,
    })
    .min(1)
    .optional()
    .describe('Resistors the workshop has, from which pads are chosen; any E12 value by default'),
  'output-load': z
    .strictObject({
      cable: farads('Capacitance of the whole cable; 300p by default, 3 m of 100 pF/m').optional(),
      'cable-tolerance': fraction('Tolerance of the cable’s capacitance; 20% by default').optional(),
      amplifier: ohms('Input resistance of the amplifier; 1M by default').optional(),
      frequency: hertzField.optional(),
    })
    .optional()
    .describe('Output load: cable and amplifier input; and the frequency for signal loads'),
  intended: intendedField.optional(),
};

/** What a kit that extends another says of it. The joints are read one by one, as those of the kit are. */
export const extensionSchema = z.object({
  extends: z
    .string()
    .min(1)
    .optional()
    .describe(
      'Kit that this one is made from, with changes: a path from this file, such as ./base.yaml, or circuit/NAME',
    ),
  remove: z
    .strictObject({
      parts: z.array(z.string()).optional().describe('Parts of the base, removed with their joints'),
      joints: z
        .array(z.unknown())
        .optional()
        .describe('Joints of the base, as written there; only the two lugs count'),
      keys: z
        .array(z.string())
        .optional()
        .describe('Keys of the base, such as page or volume.label, for which the default then holds'),
    })
    .optional()
    .describe('What is removed from the base, before anything is added'),
});

/** The kit's fields with parts and joints left unread; `read.ts` reads those one by one. */
export const headSchema = z.strictObject({
  ...headFields,
  parts: z.unknown(),
  joints: z.unknown(),
  ...extensionSchema.shape,
});

/** A kit that is complete by itself. */
export const kitSchema = z
  .strictObject({
    ...headFields,
    parts: z.record(nameSchema, partSchema).describe('The parts, each under a name of its own'),
    joints: z.array(jointSchema).describe('The joints, in the order they are soldered'),
  })
  .describe('A wiring kit: its parts and how they are connected');

export type KitInput = z.input<typeof kitSchema>;
export type PartInput = z.input<typeof partSchema>;
