import { describe, expect, it } from 'vitest';
import { solveLoads } from '../../src/analyse/index.ts';
import { differenceOf } from '../../src/analyse/loads.ts';
import { type Compact, makeCircuit, mixedSet, sampleCircuit } from './kits.ts';

/** Relative distance. */
const off = (value: number, expected: number): number => Math.abs(value / expected - 1);
const par = (...ohms: number[]): number => 1 / ohms.reduce((sum, r) => sum + 1 / r, 0);

it('the difference of a load from its reference: ohms and per cent, and none between two that are open', () => {
  expect(differenceOf(125e3, 250e3)).toEqual({ ohms: -125e3, percent: -50 });
  expect(differenceOf(250e3, 250e3)).toEqual({ ohms: 0, percent: 0 });
  expect(differenceOf(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY)).toEqual({ ohms: 0, percent: 0 });
  expect(differenceOf(250e3, Number.POSITIVE_INFINITY)).toEqual({
    ohms: Number.NEGATIVE_INFINITY,
    percent: -100,
  });
  expect(differenceOf(Number.POSITIVE_INFINITY, 250e3).ohms).toBe(Number.POSITIVE_INFINITY);
  // What only the last digits of solving tell apart is no distance; a millionth is one.
  expect(differenceOf(250e3 * (1 + 3e-15), 250e3)).toEqual({ ohms: 0, percent: 0 });
  expect(differenceOf(250e3 * (1 + 1e-6), 250e3).ohms).toBeCloseTo(0.25, 6);
});

describe('loads of the HSS set, five-way, 500k volume, 250k and 500k tones, 470k pads', () => {
  // Source: worked by hand from the parallel law (Kuphaldt, Lessons in Electric Circuits I, ch. 5), tone capacitor a short.
  const neck = par(500e3, 470e3);
  const both = par(500e3, 470e3, 470e3);
  const rows = [
    { bridge: [500e3, par(500e3, 500e3)] },
    { bridge: [neck, par(neck, 500e3)], middle: [neck, par(neck, 500e3)] },
    { middle: [neck, par(neck, 500e3)] },
    { middle: [both, par(both, 500e3, 250e3)], neck: [both, par(both, 500e3, 250e3)] },
    { neck: [neck, par(neck, 250e3)] },
  ] as const satisfies readonly Readonly<Record<string, readonly [number, number]>>[];
  const solved = solveLoads(sampleCircuit('kestrel-hss'));

  it.each(rows.map((row, i) => [i + 1, row] as const))('position %i', (position, row) => {
    const state = solved[position - 1];
    expect(state?.state.positions).toEqual({ selector: position });
    expect(state?.pickups.map((load) => load.pickup).sort()).toEqual(Object.keys(row).sort());
    for (const [pickup, [dc, signal]] of Object.entries(row)) {
      const load = state?.pickups.find((one) => one.pickup === pickup);
      expect(off(load?.dcLoad ?? 0, dc)).toBeLessThan(1e-3);
      expect(off(load?.signalLoad ?? 0, signal)).toBeLessThan(5e-3);
    }
  });

  it('gives the reference harness of each kind (common practice, no source)', () => {
    const first = solved[0]?.pickups[0]?.reference;
    const third = solved[2]?.pickups[0]?.reference;
    expect(off(first?.dcLoad ?? 0, 500e3)).toBeLessThan(1e-9);
    expect(off(first?.signalLoad ?? 0, 250e3)).toBeLessThan(5e-3);
    expect(off(third?.dcLoad ?? 0, 250e3)).toBeLessThan(1e-9);
    expect(off(third?.signalLoad ?? 0, 125e3)).toBeLessThan(5e-3);
  });

  it('takes the capacitor in: signal load is above the figure that takes it for a short', () => {
    const load = solved[0]?.pickups[0];
    expect(load?.signalLoad).toBeGreaterThan(250e3);
    // Series R and C as one conductance: G = R / (R² + X²) (Kuphaldt II, ch. 5).
    const x = 1 / (2 * Math.PI * 1000 * 22e-9);
    expect(off(load?.signalLoad ?? 0, 1 / (1 / 500e3 + 500e3 / (500e3 ** 2 + x ** 2)))).toBeLessThan(1e-9);
  });

  it('counts the other pickup and the amplifier into the total load', () => {
    const alone = solved[0]?.pickups[0];
    expect(off(alone?.total.dcLoad ?? 0, par(500e3, 1e6))).toBeLessThan(1e-9);
    const shared = solved[1]?.pickups.find((load) => load.pickup === 'middle');
    expect(off(shared?.total.dcLoad ?? 0, par(neck, 1e6, 8.4e3))).toBeLessThan(1e-9);
  });
});

describe('edges', () => {
  const volumeOnly: Compact = {
    parts: {
      only: { kind: 'single-coil' },
      volume: { kind: 'pot', value: '250k' },
      output: { kind: 'jack' },
    },
    joints: ['only.hot > volume.3', 'volume.2 > output.tip', 'volume.1 > output.sleeve'],
  };

  it('a pickup whose return hangs free sounds nowhere', () => {
    expect(solveLoads(makeCircuit(volumeOnly))[0]?.pickups).toEqual([]);
  });

  it('a pickup alone at the jack works into no load at all', () => {
    const circuit = makeCircuit({
      parts: { only: { kind: 'single-coil' }, output: { kind: 'jack' } },
      joints: ['only.hot > output.tip', 'only.ground > output.sleeve'],
    });
    expect(solveLoads(circuit)[0]?.pickups[0]).toMatchObject({ dcLoad: Infinity, signalLoad: Infinity });
  });

  it('a capacitor alone is not a load either', () => {
    const circuit = makeCircuit({
      parts: {
        only: { kind: 'single-coil' },
        output: { kind: 'jack' },
        cap: { kind: 'capacitor', value: '1n' },
      },
      joints: [
        'only.hot > output.tip',
        'only.ground > output.sleeve',
        'cap.1 > output.tip',
        'cap.2 > output.sleeve',
      ],
    });
    expect(solveLoads(circuit)[0]?.pickups[0]).toMatchObject({ dcLoad: Infinity, signalLoad: Infinity });
  });

  it('a shorted output leaves nothing sounding', () => {
    const circuit = makeCircuit({
      ...mixedSet,
      joints: [...mixedSet.joints, 'output.tip > output.sleeve'],
    });
    expect(solveLoads(circuit).every((state) => state.state.shorted && state.pickups.length === 0)).toBe(
      true,
    );
  });

  it('is the same twice', () => {
    expect(solveLoads(makeCircuit(mixedSet))).toEqual(solveLoads(makeCircuit(mixedSet)));
  });
});
