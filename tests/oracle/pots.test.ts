/**
 * Pots of every kind against ngspice, from zero to full: loads, meter readings and responses. The laws that its netlist is made by are
 * the test's own (`own-netlist.ts`).
 */
import { expect, it } from 'vitest';
import { readMeter } from '../../src/analyse/meter.ts';
import { makeCircuit } from '../analyse/kits.ts';
import { type Check, loadChecks, meterChecks, portChecks, responseChecks, wrong } from './compare.ts';
import { bassKit, controlsKit, dualBlendKit } from './pot-kits.ts';
import { runSpice } from './spice.ts';

const failures = async (checks: readonly Check[]): Promise<readonly string[]> =>
  wrong(
    checks,
    await runSpice(
      checks.map(({ job }) => job),
      'dec 10 10 1e5',
    ),
    1e-6,
  );

const ROTATIONS = [0, 0.1, 0.25, 0.5, 0.6, 0.75, 0.9, 1];

it.each([
  ['a blend and a stacked pot', bassKit(), ['blend', 'controls.a', 'controls.b']],
  ['a blend of linear gangs', bassKit({ taper: 'linear' }), ['blend']],
  ['a dual pot of two values as a blend', dualBlendKit, ['blend']],
  ['volume, and a no-load tone control', controlsKit({ 'no-load': true }), ['volume', 'tone']],
])('%s, at every rotation', { timeout: 60_000 }, async (_, kit, controls) => {
  const circuit = makeCircuit(kit);
  const checks = [
    ...loadChecks(circuit),
    ...meterChecks(circuit),
    ...circuit.states.flatMap((state) =>
      controls.flatMap((control) =>
        ROTATIONS.flatMap((x) => [
          ...portChecks(circuit, state, { [control]: x }),
          ...responseChecks(circuit, state, { [control]: x }),
        ]),
      ),
    ),
  ];
  expect(checks.length).toBeGreaterThan(50);
  expect(await failures(checks)).toEqual([]);
});

it('a no-load tone control is out of circuit at full, and in it just below', () => {
  const load = (rotation: number): number => {
    const circuit = makeCircuit(controlsKit({ 'no-load': true }));
    const [state] = circuit.states;
    const [check] = state ? portChecks(circuit, state, { tone: rotation }) : [];
    return check?.job.lines.filter((line) => line.kind === 'R').length ?? 0;
  };
  // Below full both parts of the tone control's track are there, at full only the whole of it, off the wiper.
  expect([load(1), load(0.99)]).toEqual([2, 3]);
  const jack = (fields: object) =>
    readMeter(makeCircuit(controlsKit(fields)))[0]?.volumeFull.jack.disconnected;
  expect(jack({ 'no-load': true })).toBeCloseTo(250e3, 3);
});
