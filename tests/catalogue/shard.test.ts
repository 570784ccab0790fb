/** Shares of a catalogue, as they are written and as the environment gives them. */
import { describe, expect, it } from 'vitest';
import { isIn, shardFrom, shardOf } from '../../src/catalogue/build/shard.ts';

describe('a share', () => {
  it('is read as it is written', () => {
    expect(shardOf('2/5')).toEqual({ index: 2, count: 5 });
    for (const wrong of ['0/5', '6/5', '2', '2/', 'a/b', '2/5/6', '-1/5', '1.5/5', '1/10001'])
      expect(shardOf(wrong), wrong).toMatchObject({ wrong: expect.stringContaining('such as 2/5') });
  });
  it('of the environment is counted from where each system begins', () => {
    const of = (environment: Record<string, string>) => shardFrom(environment);
    expect(of({})).toBeUndefined();
    expect(of({ SOLDERLEAF_SHARD: '' })).toBeUndefined();
    expect(of({ SOLDERLEAF_SHARD: '3/5', CI_NODE_INDEX: '1', CI_NODE_TOTAL: '2' })).toMatchObject({
      index: 3,
      count: 5,
    });
    expect(of({ CI_NODE_INDEX: '1', CI_NODE_TOTAL: '2' })).toMatchObject({ index: 1, by: 'CI_NODE_INDEX' });
    expect(of({ CIRCLE_NODE_INDEX: '0', CIRCLE_NODE_TOTAL: '2' })).toMatchObject({ index: 1, count: 2 });
    expect(of({ JOB_COMPLETION_INDEX: '4', JOB_COMPLETIONS: '5' })).toMatchObject({ index: 5, count: 5 });
    expect(
      of({ SLURM_ARRAY_TASK_ID: '12', SLURM_ARRAY_TASK_MIN: '10', SLURM_ARRAY_TASK_COUNT: '5' }),
    ).toMatchObject({ index: 3, count: 5 });
    expect(of({ CI_NODE_INDEX: '1' })).toBeUndefined();
    expect(of({ SOLDERLEAF_SHARD: '7/5' })).toMatchObject({
      wrong: expect.stringMatching(/^SOLDERLEAF_SHARD: “7\/5”/),
    });
    expect(of({ CI_NODE_INDEX: '3', CI_NODE_TOTAL: '2' })).toMatchObject({
      wrong: expect.stringMatching(/^CI_NODE_INDEX=3 and CI_NODE_TOTAL=2/),
    });
  });
  it('has each kit in just one of them, about as many in each, and the same whatever other kits there are', () => {
    const ids = Array.from({ length: 1000 }, (_, i) => `kit-${i}`);
    const shares = [1, 2, 3, 4, 5].map((index) => ids.filter((id) => isIn({ index, count: 5 }, id)));
    expect(shares.flat().sort()).toEqual([...ids].sort());
    // 200 ± 4 standard deviations of a draw, √(1000 · 0.2 · 0.8) = 12.6.
    for (const share of shares) expect(Math.abs(share.length - 200)).toBeLessThan(51);
  });
});
