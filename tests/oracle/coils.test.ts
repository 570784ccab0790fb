/**
 * Coupled coils against ngspice, which has an element of its own for them: every way to join the two coils of a humbucker with
 * four leads, and circuits by chance in which any lead goes anywhere.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeCircuit } from '../analyse/kits.ts';
import { type Check, loadChecks, meterChecks, responseChecks, wrong } from './compare.ts';
import { randomFourLead } from './random-four-lead.ts';
import { runSpice } from './spice.ts';
import { ways } from './ways.ts';

const LIMIT = 1e-6;
const GRID = 'dec 50 10 1e5';

const failures = async (checks: readonly Check[], grid = GRID): Promise<readonly string[]> =>
  wrong(
    checks,
    await runSpice(
      checks.map(({ job }) => job),
      grid,
    ),
    LIMIT,
  );

describe('two coils of one pickup', () => {
  it.each(Object.keys(ways))('%s: loads, readings and response', async (name) => {
    const circuit = makeCircuit(ways[name] ?? { parts: {}, joints: [] });
    const checks = [
      ...loadChecks(circuit),
      ...meterChecks(circuit),
      ...circuit.states.flatMap((state) => responseChecks(circuit, state, {})),
      ...circuit.states.flatMap((state) => responseChecks(circuit, state, { volume: 0.5 })),
    ];
    expect(checks.length).toBeGreaterThanOrEqual(7);
    expect(await failures(checks)).toEqual([]);
  });

  it('would find a coupling that is half as close', async () => {
    const { parts, joints } = ways['coil B shorted'] ?? { parts: {}, joints: [] };
    const loose = makeCircuit({
      parts: { ...parts, bridge: { kind: 'four-lead-humbucker', coupling: 0.075 } },
      joints,
    });
    const [state] = loose.states;
    if (!state) throw new Error('no state');
    const [check] = responseChecks(makeCircuit({ parts, joints }), state, {});
    const [other] = responseChecks(loose, state, {});
    if (!check || !other) throw new Error('nothing sounds');
    expect(await failures([{ ...other, job: check.job }])).toHaveLength(1);
  });
});

describe('200 random circuits with them', () => {
  const cases = fc
    .sample(randomFourLead, { numRuns: 200, seed: 20250712 })
    .map(({ compact, rotations }) => ({ circuit: makeCircuit(compact), rotations }));
  const states = cases.flatMap(({ circuit }) => circuit.states);

  it('hold split pickups and whole ones', () => {
    const split = states.filter(({ coils }) => coils !== undefined);
    expect(split.length).toBeGreaterThan(20);
    expect(states.filter(({ sounding, coils }) => sounding.length > 0 && !coils).length).toBeGreaterThan(15);
  });

  it('agree in every response', { timeout: 120_000 }, async () => {
    const checks = cases.flatMap(({ circuit, rotations }) =>
      circuit.states.flatMap((state) => responseChecks(circuit, state, rotations)),
    );
    expect(checks.length).toBeGreaterThan(100);
    for (let i = 0; i < checks.length; i += 100)
      expect(await failures(checks.slice(i, i + 100), 'dec 10 10 1e5')).toEqual([]);
  });
});
