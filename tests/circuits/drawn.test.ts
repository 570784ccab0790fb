/** Every circuit that ships: without an error or a warning, solved as ngspice solves it, and drawn as it is described. */
import { expect, test } from 'vitest';
import { findArrangement } from '../../src/files/layouts.ts';
import { formatFinding, proofread } from '../../src/inspect/index.ts';
import { isPickup } from '../../src/parts/index.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { loadChecks, meterChecks, wrong } from '../oracle/compare.ts';
import { relationErrors } from '../oracle/relations.ts';
import { runSpice } from '../oracle/spice.ts';
import { jointErrors, read } from '../truth/reader.ts';
import { circuitKit, circuitNames, circuitOf } from './circuits.ts';

/** A short search: what must hold, must hold wherever it stops. */
const EFFORT = { steps: 200, seed: 1 };

test.each(circuitNames)('%s: named by its id, with no warning', async (name) => {
  const { kit, warnings } = await circuitOf(name);
  expect(kit.id).toBe(name);
  // Letters from neck to bridge, as the pickups are written; S for a single coil, H for a humbucker.
  const letters = kit.parts.filter(isPickup).map((part) => (part.kind === 'single-coil' ? 'S' : 'H'));
  expect(kit.title.replace(/^Bass /, '').split(',')[0]).toBe(letters.join(''));
  expect(name.replace(/^bass-/, '').split('-')[0]).toBe(letters.join('').toLowerCase());
  expect(kit.about).toMatch(/\.$/);
  expect(warnings).toEqual([]);
});

test('what sounds, every load and every meter reading: as ngspice has them', async () => {
  const circuits = (await Promise.all(circuitNames.map(circuitKit))).map((kit) => buildCircuit(kit));
  expect(await relationErrors(circuits)).toEqual([]);
  for (const circuit of circuits) {
    const checks = [...loadChecks(circuit), ...meterChecks(circuit)];
    expect(checks.length).toBeGreaterThan(0);
    for (let i = 0; i < checks.length; i += 100) {
      const batch = checks.slice(i, i + 100);
      const jobs = batch.map(({ job }) => job);
      expect(wrong(batch, await runSpice(jobs, 'lin 1 1000 1000'), 1e-6), circuit.kit.id).toEqual([]);
    }
  }
});

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
