/**
 * Arrangements: which part stands where, as data. A seat takes pickups, switches, pots and so on in the order the kit
 * names them; parts without a seat are placed where their wires are shortest. An arrangement without seats leaves
 * everything to the layered layout.
 */
import { z } from 'zod';
import { ID } from '../common/names.ts';
import { type Trait, traits } from '../parts/kind.ts';

/** Grid units; a sheet is some sixty across, and what stands further out was mistyped. */
const FARTHEST = 400;
/** Millimetres; with it two parts a few units apart would not fit on an instrument. */
const LARGEST_UNIT = 50;
const unit = z.number().int().min(-FARTHEST).max(FARTHEST);
const pair = z.tuple([unit, unit]);

/** How a seat may be turned; words stay upright, and not every part has room for them in every way it might stand. */
const TURNS: Readonly<Record<Trait, readonly number[]>> = {
  pot: [0, 1, 2, 3],
  pickup: [0, 2],
  switch: [0, 2],
  jack: [0, 2],
  'ground-point': [0, 1, 2, 3],
  component: [0, 1, 2, 3],
};

export const arrangementSchema = z
  .strictObject({
    arrangement: z.string().regex(ID).describe('Name a kit uses; the same as the file’s'),
    about: z.string().describe('What it shows, for a person choosing'),
    millimetres: z
      .number()
      .positive()
      .max(LARGEST_UNIT)
      .optional()
      .describe('What one grid unit between seats is on the instrument, for estimates of wire lengths'),
    widest: z
      .number()
      .int()
      .min(1)
      .max(FARTHEST)
      .optional()
      .describe(
        'The most grid units that parts and wires may take across: then everything is placed within a column so wide, or the least that the kit needs, as high as it comes out; not with seats',
      ),
    seats: z
      .array(
        z
          .strictObject({
            seat: z.enum(traits).describe('What sits here, in the order the kit names them'),
            at: pair.describe('Column and row of the first one’s top left corner, in grid units'),
            step: pair.default([0, 0]).describe('From one to the next, in grid units'),
            wrap: z
              .strictObject({
                after: z.number().int().min(1).max(FARTHEST).describe('How many stand in one row'),
                step: pair.describe('From one row to the next, in grid units'),
              })
              .optional()
              .describe('Rows, for parts that stand two by two'),
            turn: z
              .union([z.literal(0), z.literal(1), z.literal(2), z.literal(3)])
              .optional()
              .describe(
                'Quarter turns clockwise; where neither this nor mirror is given, as wires are shortest. 1 and 3 for pots, components and ground points alone; a push-pull pot always stands upright',
              ),
            mirror: z.boolean().optional().describe('Left and right exchanged'),
          })
          .superRefine(({ seat, turn = 0 }, context) => {
            const allowed = TURNS[seat];
            if (!allowed.includes(turn))
              context.addIssue({
                code: 'custom',
                path: ['turn'],
                message: `a ${seat} cannot be drawn turned by ${turn === 2 ? 'a half' : 'a quarter'}`,
                params: {
                  remedy: `Allowed here: ${allowed.join(', ')}; only pots, components and ground points may be turned by quarters.`,
                },
              });
          }),
      )
      .max(100)
      .describe('Where parts sit; the rest is placed between them'),
  })
  .superRefine(({ widest, seats }, context) => {
    if (widest === undefined || seats.length === 0) return;
    context.addIssue({
      code: 'custom',
      path: ['widest'],
      message: 'a column has no seats',
      params: { remedy: 'Leave out widest, or the seats: seats: [].' },
    });
  });

/** A control arrangement, read from `layouts/`. */
export type Arrangement = z.output<typeof arrangementSchema>;

/** No seats: everything where its wires are shortest. */
export const freeFlow: Arrangement = {
  arrangement: 'free-flow',
  about: 'Signal from left to right, parts placed for short wires; not based on any instrument.',
  seats: [],
};

/**
 * Everything in a narrow column, such as a phone has room for.
 *
 * @param widest grid units across that parts and wires may take
 */
export const narrowColumn = (widest: number): Arrangement => ({
  arrangement: 'narrow-column',
  about: 'Parts one below the other in a column as narrow as a phone; not based on any instrument.',
  widest,
  seats: [],
});
