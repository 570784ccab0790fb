/** What may be written in a parts list, for `parts.yaml` and, column by column, for CSV. */
import { z } from 'zod';
import { codeField } from '../parts/fields.ts';
import { type Kind, kinds } from '../parts/index.ts';
import { ownFields } from './stock.ts';

const price = z
  .union([z.number(), z.string()], { error: 'expected a price, such as 0.04' })
  .transform((written, ctx) => {
    const value = typeof written === 'number' ? written : Number.NaN;
    if (value >= 0 && Number.isFinite(value)) return value;
    ctx.addIssue({
      code: 'custom',
      message: value < 0 ? 'a price is zero or more' : 'not a price',
      params: { remedy: 'Write a number without the currency, such as 0.04.' },
    });
    return z.NEVER;
  });

/** Pieces beyond these are a mistake. */
const MOST_PIECES = 1e7;

const inStock = z
  .union([z.boolean(), z.number(), z.string()], { error: 'expected yes, no or a number of pieces' })
  .transform((written, ctx): boolean | number => {
    if (typeof written === 'boolean') return written;
    const word = typeof written === 'string' ? written.trim().toLowerCase() : written;
    if (word === 'yes' || word === 'no') return word === 'yes';
    if (typeof word === 'number' && Number.isInteger(word) && word >= 0 && word <= MOST_PIECES) return word;
    ctx.addIssue({
      code: 'custom',
      message: 'neither yes nor no nor a number of pieces',
      params: { remedy: 'Write yes or no, or how many pieces there are, such as 120.' },
    });
    return z.NEVER;
  });

/** What a list says of an item besides the fields of its kind. */
export const listFields = {
  code: codeField.describe('Stock code, by which kits name the item; no two items have the same'),
  price: price.optional().describe('Price of one piece, a number without the currency'),
  supplier: z.string().max(200).optional().describe('Note on the supplier, for your own use'),
  'in-stock': inStock.optional().describe('yes (by default), no, or the number of pieces in stock'),
  'replaced-by': codeField
    .optional()
    .describe('Code of the item of the same kind that is used while this one is not in stock'),
};

const itemShape = (kind: (typeof kinds)[Kind]) =>
  z.strictObject({
    kind: z.literal(kind.kind).describe(kind.what),
    ...listFields,
    ...(Object.fromEntries(
      Object.entries(kind.fields).filter(([field]) => !ownFields.includes(field)),
    ) as z.ZodRawShape),
  });

/** One strict object a kind. */
export const itemShapes = Object.fromEntries(
  Object.values(kinds).map((kind) => [kind.kind, itemShape(kind)]),
) as Readonly<Record<Kind, ReturnType<typeof itemShape>>>;

const [first, ...more] = Object.values(itemShapes);

export const currencyField = z
  .string()
  .regex(/^[A-Z]{3}$/, 'expected three capital letters, such as EUR')
  .describe('Currency of the prices, as its three letters (ISO 4217)');

/** The whole list, as an editor is told of it; it is read item by item. */
export const listSchema = z
  .strictObject({
    currency: currencyField.optional(),
    stock: z
      .array(z.discriminatedUnion('kind', [first as ReturnType<typeof itemShape>, ...more]))
      .describe('What the workshop buys, an item for each stock code'),
  })
  .describe('A workshop’s parts list');

/** The list's own keys, with its items left unread; `read-stock.ts` reads those one by one. */
export const listHeadSchema = z.strictObject({ currency: currencyField.optional(), stock: z.unknown() });
