/** Every revision mark that was ever built, a file a kit in the workshop's own folder: a sheet may be in a drawer for years. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { isMark } from '../draw/mark.ts';
import { isBytes, readBytes } from '../files/read-file.ts';
import { WriteError, writeAtomically } from '../files/write.ts';

const markSchema = z.object({
  mark: z.string().refine(isMark),
  title: z.string(),
  /** What the kit was described in, from the workshop's folder, with slashes. */
  source: z.string(),
  /** What was printed beside the mark, where a date was given: `2026-11-30`. */
  date: z.string().optional(),
});
const fileSchema = z.object({ version: z.literal(1), kit: z.string(), marks: z.array(markSchema) });

type Mark = z.output<typeof markSchema>;

/** A mark that a kit has or had. */
export interface KitMark extends Mark {
  readonly kit: string;
}

const LARGEST = 50e6;

const marksFolder = (workshop: string): string => join(workshop, '.solderleaf', 'marks');
/** @param workshop the workshop's folder */
export const marksFile = (workshop: string, kit: string): string =>
  join(marksFolder(workshop), `${kit}.json`);

/** Absent for a file that is not there, that cannot be read, or of another version. */
function read(file: string): z.output<typeof fileSchema> | undefined {
  const bytes = readBytes(file, LARGEST);
  if (!isBytes(bytes)) return undefined;
  try {
    return fileSchema.safeParse(JSON.parse(Buffer.from(bytes).toString('utf8'))).data;
  } catch {
    return undefined;
  }
}

/**
 * Adds a mark to those of its kit, in the order of the marks; one that is there keeps its date where no other is given. A file that
 * cannot be read is left alone: it may be one of a later version.
 *
 * @param workshop the workshop's folder
 * @returns why it was not kept, in words
 */
export function keepMark(workshop: string, { kit, mark, title, source, date }: KitMark): string | undefined {
  const file = marksFile(workshop, kit);
  const before = read(file);
  if (!before && existsSync(file))
    return `${file} cannot be read, and was left as it is; “which” will not know ${mark} once ${kit} changes. Restore the file, or delete it`;
  const others = before?.marks.filter((one) => one.mark !== mark) ?? [];
  const day = date ?? before?.marks.find((one) => one.mark === mark)?.date;
  const own: Mark = { mark, title, source, ...(day === undefined ? {} : { date: day }) };
  const marks = [...others, own].sort((a, b) => (a.mark < b.mark ? -1 : 1));
  try {
    writeAtomically(file, `${JSON.stringify({ version: 1, kit, marks }, null, 1)}\n`);
    return undefined;
  } catch (thrown) {
    if (!(thrown instanceof WriteError)) throw thrown;
    return `${thrown.folder} cannot be written to: ${thrown.reason}; “which” will not know ${mark} once ${kit} changes`;
  }
}

/** All marks that were kept, by kit and mark. */
export function keptMarks(workshop: string): readonly KitMark[] {
  const folder = marksFolder(workshop);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .flatMap((name) => {
      const { kit, marks } = read(join(folder, name)) ?? { kit: '', marks: [] };
      return marks.map((one) => ({ kit, ...one }));
    });
}
