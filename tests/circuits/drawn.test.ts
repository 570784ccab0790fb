/** Every circuit that ships is drawn as it is described. */
import { expect, test } from 'vitest';
import { findArrangement } from '../../src/files/layouts.ts';
import { formatFinding, proofread } from '../../src/inspect/index.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { jointErrors, read } from '../truth/reader.ts';
import { circuitKit, circuitNames } from './circuits.ts';

/** A short search: what must hold, must hold wherever it stops. */
const EFFORT = { steps: 200, seed: 1 };

test.each(circuitNames)(
  '%s: the drawing has no finding, and a second reader finds its joints',
  async (name) => {
    const kit = await circuitKit(name);
    const arrangement = findArrangement(kit.arrangement);
    if (typeof arrangement === 'string') throw new Error(arrangement);
    const prepared = await prepare(kit, arrangement, { effort: EFFORT });
    const { svg } = render(prepared);
    expect(proofread(svg, prepared).map(formatFinding)).toEqual([]);
    expect(jointErrors(read(svg), kit)).toEqual([]);
  },
);
