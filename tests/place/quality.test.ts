/**
 * How good the places are: crossings, bends and wire length of the samples in free flow, before any search and after a short
 * one, are no worse than they were when last looked at. Whoever makes them better sets them lower.
 */
import { expect, it } from 'vitest';
import { findArrangement } from '../../src/files/layouts.ts';
import { prepare } from '../../src/pipeline.ts';
import { measure } from '../bench/measure.ts';
import { sample } from '../truth/draw.ts';

type Limits = readonly [crossings: number, bends: number, length: number];

it.each<[string, Limits, Limits]>([
  ['heron-ss', [7, 27, 3047], [4, 23, 3907]],
  ['kestrel-hss', [16, 74, 10007], [13, 60, 9872]],
  ['osprey-hsh', [17, 53, 8165], [11, 55, 8815]],
  ['plover-sss', [13, 33, 5932], [6, 34, 6455]],
  ['wren-hs', [8, 48, 5985], [3, 29, 4849]],
  ['wren-sh', [7, 37, 4999], [2, 27, 4279]],
])('%s: places before and after 200 steps are no worse than %j and %j', async (id, ...limits) => {
  const arrangement = findArrangement('free-flow');
  if (typeof arrangement === 'string') throw new Error(arrangement);
  for (const [i, steps] of [0, 200].entries()) {
    const { placement } = await prepare(sample(id), arrangement, { effort: { steps, seed: 1 } });
    const { crossings, bends, length } = measure(placement.wires.map(({ points }) => points));
    const found = [crossings, bends, Math.ceil(length)];
    expect(
      found.filter((one, k) => one > (limits[i]?.[k] ?? 0)),
      `${steps} steps: ${found}`,
    ).toEqual([]);
  }
});
