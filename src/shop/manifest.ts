/** The list of all files of a shop’s folder with their hashes, by which a site knows what is new. */
import { z } from 'zod';

const fileSchema = z.strictObject({
  path: z.string().describe('From the folder, with slashes'),
  bytes: z.int().min(0),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  integrity: z
    .string()
    .regex(/^sha384-[A-Za-z0-9+/]{64}$/)
    .describe('For the integrity attribute of a page'),
});

export const shopManifestSchema = z.strictObject({
  what: z.literal('Solderleaf shop manifest'),
  form: z.literal(1),
  files: z.array(fileSchema),
});

export type ShopFile = z.output<typeof fileSchema>;

/** The manifest as its file’s text, files in the order of their paths. */
export const shopManifest = (files: readonly ShopFile[]): string =>
  `${JSON.stringify(
    {
      what: 'Solderleaf shop manifest',
      form: 1,
      files: [...files].sort((a, b) => (a.path < b.path ? -1 : 1)),
    },
    null,
    1,
  )}\n`;
