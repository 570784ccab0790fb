/** How many equations are solved, counted: a clock would tell more of the machine. `npm run bench` has the times. */
import { describe, expect, it, vi } from 'vitest';
import { solveLoads } from '../../src/analyse/index.ts';
import { kitFromValue } from '../../src/checked.ts';
import { must } from '../../src/common/must.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { Solver } from '../../src/solve/solver.ts';
import { manySettings } from '../bench/settings.ts';

function effort(throws: number) {
  const kit = must(kitFromValue(manySettings(throws), 'settings').kit, 'kit without an error');
  const solve = vi.spyOn(Solver.prototype, 'solve');
  const circuit = buildCircuit({ ...kit });
  const sounding = solve.mock.calls.length;
  solveLoads(circuit);
  const loads = solve.mock.calls.length - sounding;
  solve.mockRestore();
  return { states: circuit.states.length, sounding, loads };
}

describe('the effort for a circuit', () => {
  it('grows no faster than the number of its settings', () => {
    const [some, more] = [effort(2), effort(8)];
    expect(more.states).toBe(4 * some.states);
    expect(some.sounding).toBeGreaterThan(some.states);
    expect(some.loads).toBeGreaterThan(some.states);
    expect(more.sounding).toBeLessThanOrEqual(4 * some.sounding);
    expect(more.loads).toBeLessThanOrEqual(4 * some.loads);
  });
});
