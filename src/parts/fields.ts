/** Fields that several kinds share, as zod schemas. Each carries the words an editor shows at completion. */
import { z } from 'zod';
import { formatQuantity, parseQuantity, type Unit } from '../common/units.ts';

const EXAMPLES: Readonly<Record<Unit, string>> = {
  ohm: '470k, 4k7, 1M, 220 or 8.2k',
  farad: '22n, 0.022u, 4n7 or 680p',
  henry: '2.4H, 2.4 or 900m',
};
const WHAT: Readonly<Record<Unit, string>> = {
  ohm: 'a resistance',
  farad: 'a capacitance',
  henry: 'an inductance',
};

/** Sanity bounds, SI, inclusive: far outside anything a passive guitar holds, so that a mistaken prefix is caught. */
const BOUNDS: Readonly<Record<Unit, readonly [number, number]>> = {
  ohm: [0.1, 1e9],
  farad: [1e-13, 1e-3],
  henry: [1e-6, 1e3],
};

/** What a resistor may be, ohms, both included. */
export const ohmBounds = BOUNDS.ohm;

/** The most common mistake with resistances: `1m` is a thousandth of an ohm. */
function milli(written: string | number, unit: Unit): string {
  const digits = unit === 'ohm' ? /^\s*([\d.]+)\s*m/.exec(String(written))?.[1] : undefined;
  return digits === undefined ? '' : `; m means a thousandth, M million: did you mean ${digits}M?`;
}

const quantity = (unit: Unit) =>
  z
    .union([z.string(), z.number()], { error: `expected ${WHAT[unit]} such as ${EXAMPLES[unit]}` })
    .transform((written, ctx) => {
      const value = parseQuantity(written, unit);
      const [least, most] = BOUNDS[unit];
      const wrong =
        value === undefined
          ? `not ${WHAT[unit]}`
          : value <= 0
            ? `${WHAT[unit]} must be more than zero`
            : value < least || value > most
              ? `${WHAT[unit]} out of range; allowed: ${formatQuantity(least, unit)} to ${formatQuantity(most, unit)}${milli(written, unit)}`
              : undefined;
      if (value === undefined || wrong !== undefined) {
        ctx.addIssue({
          code: 'custom',
          message: wrong ?? '',
          params: { quantity: unit, examples: EXAMPLES[unit] },
        });
        return z.NEVER;
      }
      return value;
    });

/** Ohms, 0.1 Ω to 1 GΩ. */
export const ohms = (about: string) => quantity('ohm').describe(about);
/** Farads, 0.1 pF to 1 mF. */
export const farads = (about: string) => quantity('farad').describe(about);
/** Henries, 1 µH to 1 kH. */
export const henries = (about: string) => quantity('henry').describe(about);

/** A share written `20%` or 0.2; more than 0, less than 1. */
export const fraction = (about: string) =>
  z
    .union([z.string(), z.number()])
    .transform((written, ctx) => {
      const text = String(written).trim();
      const value = text.endsWith('%') ? Number(text.slice(0, -1)) / 100 : Number(text);
      if (!(value > 0 && value < 1)) {
        // A whole number is most often meant as so many per cent.
        const isPercent = value >= 1 && value < 100 && !text.endsWith('%');
        ctx.addIssue({
          code: 'custom',
          message: 'must be between 0 % and 100 %',
          params: { quantity: 'fraction', examples: isPercent ? `${text}%` : '5%, 20% or 0.2' },
        });
        return z.NEVER;
      }
      return value;
    })
    .describe(about);

export const LABEL_LONGEST = 30;

/** Characters of a stock code. */
const CODE_LONGEST = 40;

/** The code of an item of a parts list. */
export const codeField = z
  .string()
  .regex(/\S/)
  .max(CODE_LONGEST)
  .transform((code) => code.trim());

/** What may be written about any part. */
export const commonFields = {
  code: codeField
    .optional()
    .describe('Stock code of an item of the workshop’s parts list, in place of the values that it has there'),
  label: z
    .string()
    .regex(/\S/)
    .max(LABEL_LONGEST)
    .optional()
    .describe('Label on the drawing; by default the part’s name'),
};
