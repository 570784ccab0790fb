/** Every circuit that ships: without an error or a warning, and solved as ngspice solves it. */
import { expect, test } from 'vitest';
import { solveLoads } from '../../src/analyse/index.ts';
import type { End, Kit } from '../../src/describe/kit.ts';
import { isPickup, kinds } from '../../src/parts/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { loadChecks, meterChecks, wrong } from '../oracle/compare.ts';
import { relationErrors } from '../oracle/relations.ts';
import { runSpice } from '../oracle/spice.ts';
import { circuitKit, circuitNames, circuitOf } from './circuits.ts';

test.each(circuitNames)('%s: named by its id, with no warning', async (name) => {
  const { kit, warnings } = await circuitOf(name);
  expect(kit.id).toBe(name);
  // S for a single coil, H for a humbucker: two from neck to bridge, as the pickups are written; three as the trade says HSS for a
  // humbucker at the bridge (the handbook's worked figures have it so).
  const written = kit.parts.filter(isPickup).map((part) => (part.kind === 'single-coil' ? 'S' : 'H'));
  const letters = written.length === 3 ? written.reverse() : written;
  expect(kit.title.replace(/^Bass /, '').split(',')[0]).toBe(letters.join(''));
  expect(name.replace(/^bass-/, '').split('-')[0]).toBe(letters.join('').toLowerCase());
  expect(kit.about).toMatch(/\.$/);
  expect(warnings).toEqual([]);
});

/** A kit with two outputs as two with one: the second reader knows no stereo jack. What is on the other output stays, and is silent. */
function halves(kit: Kit): readonly Kit[] {
  const jack = kit.parts.find(({ kind }) => kind === 'stereo-jack');
  if (!jack) return [kit];
  const mono = kinds.jack.build({ kind: 'jack', name: jack.name, label: jack.label }, {});
  return ['tip', 'ring'].map((lug): Kit => {
    const other = lug === 'tip' ? 'ring' : 'tip';
    const isAt = (end: End, which: string): boolean => end.part === jack.name && end.lug === which;
    const moved = (end: End): End => (isAt(end, lug) ? { ...end, lug: 'tip' } : end);
    return {
      ...kit,
      parts: kit.parts.map((part) => (part === jack ? mono : part)),
      joints: kit.joints
        .filter(({ from, to }) => !isAt(from, other) && !isAt(to, other))
        .map((joint) => ({ ...joint, from: moved(joint.from), to: moved(joint.to) })),
    };
  });
}

test('two outputs have the figures that each has by itself', async () => {
  const stereo = (await Promise.all(circuitNames.map(circuitKit))).filter((kit) => halves(kit).length > 1);
  expect(stereo.length).toBeGreaterThan(0);
  for (const kit of stereo) {
    const alone = halves(kit).flatMap((half) =>
      solveLoads(buildCircuit(half)).flatMap(({ pickups }) => pickups),
    );
    const both = solveLoads(buildCircuit(kit)).flatMap(({ pickups }) => pickups);
    expect(both.map(({ pickup }) => pickup).sort()).toEqual(alone.map(({ pickup }) => pickup).sort());
    for (const { pickup, dcLoad, signalLoad, total } of both) {
      const one = alone.find((other) => other.pickup === pickup);
      expect(dcLoad).toBeCloseTo(one?.dcLoad ?? 0, 3);
      expect(signalLoad).toBeCloseTo(one?.signalLoad ?? 0, 3);
      expect(total.signalLoad).toBeCloseTo(one?.total.signalLoad ?? 0, 3);
    }
  }
});

test('what sounds, every load and every meter reading: as ngspice has them', async () => {
  const circuits = (await Promise.all(circuitNames.map(circuitKit)))
    .flatMap(halves)
    .map((kit) => buildCircuit(kit));
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
