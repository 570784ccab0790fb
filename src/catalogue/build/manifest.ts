/**
 * The record of what was written: which files, of which kits, with which content, made from what. It tells a build what is out of
 * date without a cache, and what may be deleted; other commands find there which file shows what.
 */
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { isBytes, readBytes } from '../../files/read-file.ts';
import { writeAtomically } from '../../files/write.ts';
import { type Shard, shardName } from './shard.ts';

const hex = z.string().regex(/^[0-9a-f]{64}$/);

const entrySchema = z.object({
  kit: z.string(),
  /** From the workshop's folder, with slashes. */
  source: z.string(),
  sha256: hex,
  key: hex,
  mark: z.string().nullable(),
  /** How many warnings the kit has; absent where it has none, and in records of before they were counted. */
  warnings: z.int().positive().optional(),
});

const manifestSchema = z.object({ version: z.literal(1), outputs: z.record(z.string(), entrySchema) });

/** What the record has in place of a kit's id for a file that all kits share; no kit's id has such a sign. */
export const ALL_KITS = '*';

/** One file that was written. */
export type Entry = z.output<typeof entrySchema>;

/** By file, from the folder of outputs, with slashes. */
type Entries = ReadonlyMap<string, Entry>;

const LARGEST = 500e6;
const WHOLE = 'solderleaf-manifest.json';
const OF_SHARD = /^solderleaf-manifest-\d+-of-\d+\.json$/;

const nameOf = (shard: Shard | undefined): string =>
  shard ? `solderleaf-manifest-${shardName(shard)}.json` : WHOLE;

/** Records of shards that lie in a folder. */
function ofShards(out: string): readonly string[] {
  try {
    return readdirSync(out)
      .filter((name) => OF_SHARD.test(name))
      .sort();
  } catch {
    // A folder that is not there has none.
    return [];
  }
}

/** All that records in a folder say was written there; one that is damaged says nothing. */
export function readEntries(out: string): Map<string, Entry> {
  const all = new Map<string, Entry>();
  for (const name of [WHOLE, ...ofShards(out)]) {
    const bytes = readBytes(join(out, name), LARGEST);
    if (!isBytes(bytes)) continue;
    // Whatever it says, nothing outside of the folder is this program's.
    for (const [file, entry] of Object.entries(parsed(bytes)?.outputs ?? {}))
      if (isInside(file)) all.set(file, entry);
  }
  return all;
}

const isInside = (file: string): boolean =>
  !/^([/\\]|[a-z]:)/i.test(file) && !file.split(/[/\\]/).includes('..');

function parsed(bytes: Uint8Array): z.output<typeof manifestSchema> | undefined {
  try {
    return manifestSchema.safeParse(JSON.parse(Buffer.from(bytes).toString('utf8'))).data;
  } catch {
    return undefined;
  }
}

/** @throws WriteError */
export function writeEntries(out: string, entries: Entries, shard: Shard | undefined): void {
  const sorted = [...entries].sort(([a], [b]) => (a < b ? -1 : 1));
  const outputs = Object.fromEntries(
    sorted.map(([file, { kit, source, sha256, key, mark, warnings }]) => [
      file,
      { kit, source, sha256, key, mark, ...(warnings === undefined ? {} : { warnings }) },
    ]),
  );
  writeAtomically(join(out, nameOf(shard)), `${JSON.stringify({ version: 1, outputs }, null, 2)}\n`);
}

/** Takes away the records of shards, whose outputs are in the record of the whole by now. */
export function joinShards(out: string): void {
  for (const name of ofShards(out)) rmSync(join(out, name), { force: true });
}
