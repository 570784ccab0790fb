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
  ['heron-ss', [2, 28, 4858], [1, 24, 3197]],
  ['kestrel-hss', [14, 69, 10906], [8, 51, 8953]],
  ['osprey-hsh', [11, 55, 9567], [9, 40, 5904]],
  ['plover-sss', [8, 34, 6880], [3, 34, 4461]],
  ['wren-hs', [6, 42, 7001], [4, 24, 3921]],
  ['wren-sh', [6, 42, 5330], [3, 27, 4486]],
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
