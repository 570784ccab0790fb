/** A share of a catalogue: its kits divided among several machines, each of which builds its own. */
import { hashOf } from './cache.ts';

export interface Shard {
  /** From 1. */
  readonly index: number;
  readonly count: number;
}

const MOST_SHARDS = 10_000;

/** What is wrong with a shard as it is written, in words. */
interface WrongShard {
  readonly wrong: string;
}

const ALLOWED = `write the share and how many there are, such as 2/5; allowed: 1/1 to ${MOST_SHARDS}/${MOST_SHARDS}, the first no larger than the second`;

/** Reads `2/5`. */
export function shardOf(written: string): Shard | WrongShard {
  const [, index, count] = (/^(\d+)\/(\d+)$/.exec(written.trim()) ?? []).map(Number);
  return index === undefined || count === undefined || index < 1 || index > count || count > MOST_SHARDS
    ? { wrong: `“${written}” is not a share of a catalogue: ${ALLOWED}` }
    : { index, count };
}

/**
 * Where systems that run one job many times say which of them this is and how many there are, with the number of the first. From
 * memory of their manuals: CI_NODE_… from 1, CIRCLE_NODE_…, BUILDKITE_PARALLEL_JOB… and AWS_BATCH_JOB_ARRAY_… from 0, SLURM_ARRAY_TASK_…
 * as it was asked for. JOB_COMPLETION_INDEX comes alone; the count beside it is set by whoever writes the job.
 */
const INDEXED = [
  ['CI_NODE_INDEX', 'CI_NODE_TOTAL', 1],
  ['CIRCLE_NODE_INDEX', 'CIRCLE_NODE_TOTAL', 0],
  ['BUILDKITE_PARALLEL_JOB', 'BUILDKITE_PARALLEL_JOB_COUNT', 0],
  ['AWS_BATCH_JOB_ARRAY_INDEX', 'AWS_BATCH_JOB_ARRAY_SIZE', 0],
  ['JOB_COMPLETION_INDEX', 'JOB_COMPLETIONS', 0],
  ['SLURM_ARRAY_TASK_ID', 'SLURM_ARRAY_TASK_COUNT', 'SLURM_ARRAY_TASK_MIN'],
] as const;

type Environment = Readonly<Record<string, string | undefined>>;

/** The shard that the environment names, and by what; `undefined` where it names none. */
export function shardFrom(
  environment: Environment,
): (Shard & { readonly by: string }) | WrongShard | undefined {
  const own = environment.SOLDERLEAF_SHARD;
  if (own !== undefined && own.trim() !== '') {
    const read = shardOf(own);
    return 'wrong' in read
      ? { wrong: `SOLDERLEAF_SHARD: ${read.wrong}` }
      : { ...read, by: 'SOLDERLEAF_SHARD' };
  }
  for (const [index, count, first] of INDEXED) {
    const [i, n] = [environment[index], environment[count]];
    if (i === undefined || n === undefined) continue;
    const from = typeof first === 'number' ? first : Number(environment[first] ?? 1);
    const read = shardOf(`${Number(i) - from + 1}/${n}`);
    return 'wrong' in read
      ? { wrong: `${index}=${i} and ${count}=${n} name no share: ${ALLOWED}` }
      : { ...read, by: index };
  }
  return undefined;
}

/** Whether a kit is in a share: by its id alone, so that a kit that is added moves no other. */
export const isIn = ({ index, count }: Shard, id: string): boolean =>
  Number.parseInt(hashOf(id).slice(0, 12), 16) % count === index - 1;

/** `2-of-5`. */
export const shardName = ({ index, count }: Shard): string => `${index}-of-${count}`;
