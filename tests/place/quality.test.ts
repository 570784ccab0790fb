/**
 * How good the places are: crossings, bends and wire length of the samples in free flow, before any search, after a short one and at
 * the usual effort, are no worse than they were when last looked at. Whoever makes them better sets them lower.
 */
import { expect, it } from 'vitest';
import { findArrangement } from '../../src/files/layouts.ts';
import { prepare } from '../../src/pipeline.ts';
import { DEFAULT_EFFORT } from '../../src/place/improve.ts';
import { measure } from '../bench/measure.ts';
import { placedOnce } from '../tools/placements.ts';
import { sample } from '../truth/draw.ts';

type Limits = readonly [crossings: number, bends: number, length: number];

it.each<[string, Limits, Limits, Limits]>([
  ['heron-ss', [2, 30, 4874], [3, 22, 3402], [2, 17, 2817]],
  ['kestrel-hss', [17, 71, 10272], [11, 52, 9263], [7, 41, 6446]],
  ['osprey-hsh', [15, 56, 9214], [10, 55, 9539], [6, 39, 6655]],
  ['plover-sss', [9, 33, 6393], [5, 34, 6227], [1, 29, 5744]],
  ['wren-hs', [4, 51, 7339], [2, 33, 4945], [3, 24, 3586]],
  ['wren-sh', [6, 41, 5815], [5, 33, 4604], [2, 26, 3943]],
])(
  '%s: places at 0 steps, at 200 and at the usual effort are no worse than %j, %j and %j',
  async (id, ...limits) => {
    const arrangement = findArrangement('free-flow');
    if (typeof arrangement === 'string') throw new Error(arrangement);
    for (const [i, steps] of [0, 200, DEFAULT_EFFORT.steps].entries()) {
      const { placement } = await prepare(sample(id), arrangement, {
        ...placedOnce,
        effort: { steps, seed: steps === DEFAULT_EFFORT.steps ? DEFAULT_EFFORT.seed : 1 },
      });
      const { crossings, bends, length } = measure(placement.wires.map(({ points }) => points));
      const found = [crossings, bends, Math.ceil(length)];
      expect(
        found.filter((one, k) => one > (limits[i]?.[k] ?? 0)),
        `${steps} steps: ${found}`,
      ).toEqual([]);
    }
  },
);
