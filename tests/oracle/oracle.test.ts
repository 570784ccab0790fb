/**
 * Against a solver that is not ours: ngspice (through `eecircuit-engine`) solves the same circuits from a netlist that
 * is made without the program's own, and every load and the whole response must agree to 1e-6 of the figure.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { knobSettings, rolesOf, rotationsAt } from '../../src/analyse/controls.ts';
import { makeCircuit, sampleCircuit, sampleNames } from '../analyse/kits.ts';
import { type Check, loadChecks, meterChecks, portChecks, responseChecks, wrong } from './compare.ts';
import { randomHarness } from './random-circuit.ts';
import { relationErrors } from './relations.ts';
import { runSpice } from './spice.ts';

const LIMIT = 1e-6;
const SEED = 20250711;

/** Runs checks in batches, as one run holds some hundred circuits comfortably. */
async function failures(checks: readonly Check[], grid: string): Promise<readonly string[]> {
  const wrongs: string[] = [];
  for (let i = 0; i < checks.length; i += 100) {
    const batch = checks.slice(i, i + 100);
    wrongs.push(
      ...wrong(
        batch,
        await runSpice(
          batch.map((check) => check.job),
          grid,
        ),
        LIMIT,
      ),
    );
  }
  return wrongs;
}

describe('samples', () => {
  it.each(sampleNames())(
    '%s: every load, meter reading and response of every state',
    { timeout: 120_000 },
    async (name) => {
      const circuit = sampleCircuit(name);
      const roles = rolesOf(circuit);
      const checks = [
        ...loadChecks(circuit),
        ...meterChecks(circuit),
        ...circuit.states.flatMap((state) => responseChecks(circuit, state, {})),
      ];
      expect(checks.length).toBeGreaterThanOrEqual(5 * circuit.states.length);
      // 50 a decade from 10 Hz, so that 1 kHz, where signal load is taken, is on the grid.
      expect(await failures(checks, 'dec 50 10 1e5')).toEqual([]);
      const turned = circuit.states.flatMap((state) =>
        knobSettings.flatMap((knobs) => responseChecks(circuit, state, rotationsAt(roles, knobs))),
      );
      expect(await failures(turned, 'dec 10 10 1e5')).toEqual([]);
    },
  );
});

describe('300 random circuits', () => {
  const harnesses = fc.sample(randomHarness, { numRuns: 300, seed: SEED });
  const cases = harnesses.map(({ compact, rotations }) => ({ circuit: makeCircuit(compact), rotations }));
  const states = cases.flatMap(({ circuit }) => circuit.states);

  it('hold floating pickups, shorted states and sounding ones', () => {
    expect(cases.length).toBe(300);
    const silent = cases.filter(({ circuit }) => circuit.states.some((state) => state.sounding.length === 0));
    expect(silent.length).toBeGreaterThan(30);
    expect(states.filter((state) => state.shorted).length).toBeGreaterThan(10);
    expect(states.filter((state) => state.sounding.length > 0).length).toBeGreaterThan(200);
    expect(states.filter((state) => state.sounding.length > 1).length).toBeGreaterThan(50);
  });

  it('agree in what sounds, how loud, in which phase and in which chain', async () => {
    expect(await relationErrors(cases.map(({ circuit }) => circuit))).toEqual([]);
  });

  it('agree in every load and response', async () => {
    const checks = cases.flatMap(({ circuit, rotations }) => [
      ...loadChecks(circuit),
      ...circuit.states.flatMap((state) => [
        ...portChecks(circuit, state, rotations),
        ...responseChecks(circuit, state, rotations),
      ]),
    ]);
    expect(await failures(checks, 'dec 10 10 1e5')).toEqual([]);
  });
});
