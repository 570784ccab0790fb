/** What a person writes in `solderleaf.yaml`. Every object is strict, so that a misspelt key is found. */

import { z } from 'zod';
import { isDay } from '../common/day.ts';
import { webFolder } from '../common/web-address.ts';
import { currencyField } from '../describe/stock-schema.ts';
import { languages } from '../messages/language.ts';
import { type Job, outputs } from './catalogue.ts';

const text = z.string().regex(/\S/);

/** What is made of kits: for all of them, and for those of one entry in place of that. */
const settingFields = {
  outputs: z
    .array(z.enum(outputs))
    .min(1)
    .optional()
    .describe(`What is made of each kit: ${outputs.join(', ')}; drawing by default`),
  arrangement: text
    .optional()
    .describe(
      'Arrangement in place of those that the kits name; a .yaml file is found from the workshop’s folder',
    ),
  page: text.toLowerCase().optional().describe('Page format in place of those that the kits name'),
  language: z
    .enum(languages)
    .optional()
    .describe(`Language in place of those that the kits name: ${languages.join(', ')}`),
  date: text
    .refine(isDay, {
      error: 'not a date',
      params: { remedy: 'Write year, month and day with hyphens between them, such as 2026-11-30.' },
    })
    .optional()
    .describe('Date to print beside the revision mark, such as 2026-11-30'),
};

export const kitEntrySchema = z.strictObject({
  files: text.describe(
    'A kit file, a folder of them, or a pattern such as kits/*.yaml; ** stands for any number of folders',
  ),
  ...settingFields,
});

/** A family with its matrix left unread; `family.ts` reads that value by value. */
export const familySchema = z.strictObject({
  kit: text.describe(
    'Ids of the members, with the name of each axis in braces, such as hss-{pickups}-{pots}',
  ),
  title: text.optional().describe('Titles of the members, with axes in braces as in kit'),
  about: text.optional().describe('What the members are for, with axes in braces as in kit'),
  extends: text.describe('Kit that the members extend: a path from this file, or circuit/NAME'),
  matrix: z
    .record(z.string(), z.record(z.string(), z.unknown()))
    .describe('By axis its values, each with what it changes in the kit; every combination is a member'),
  except: z
    .array(z.record(z.string(), z.unknown()))
    .optional()
    .describe('Combinations that are no members, such as { pickups: bright, pots: 250k }'),
  ...settingFields,
});

/** The catalogue with its kits and its workshop left unread; `read-catalogue.ts` reads those one by one. */
export const catalogueSchema = z.strictObject({
  out: text
    .optional()
    .describe('Folder that everything made of the kits goes to, from the workshop’s; out by default'),
  currency: currencyField.optional(),
  parts: text.optional().describe('The parts list, a .yaml or .csv file; parts.yaml or parts.csv by default'),
  workshop: z.unknown().optional(),
  base: text
    .superRefine((written, context) => {
      const read = webFolder(written);
      if (typeof read !== 'string')
        context.addIssue({ code: 'custom', message: read.wrong, params: { remedy: read.remedy } });
    })
    .optional()
    .describe(
      'Address of the folder shop of the outputs once it is uploaded, such as https://www.example.com/drawings/',
    ),
  ...settingFields,
  kits: z.array(z.unknown()).optional().describe('The kits: files, folders and patterns'),
  families: z.array(z.unknown()).optional().describe('Families of kits that a matrix makes from one kit'),
});

/** What is to be made of kits, where anything of it is said. */
export type Settings = Partial<
  Pick<Job, 'outputs' | 'arrangement' | 'page' | 'language' | 'date' | 'workshop' | 'base'>
>;
