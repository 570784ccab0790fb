/** Responses against a full matrix: of each pickup and of all together, of the reference, at settings of the knobs. */
import { describe, expect, it } from 'vitest';
import { solveKnobSettings, solveResponse } from '../../src/analyse/index.ts';
import { type Branch, capacitor, resistor, winding } from '../../src/solve/network.ts';
import { transfer } from '../circuit/dense.ts';
import { makeCircuit } from './kits.ts';

const A = { r: 6000, l: 2.4, c: 120e-12 };
const B = { r: 8000, l: 4, c: 90e-12 };
const written = ({ r, l, c }: typeof A) => ({
  kind: 'single-coil',
  resistance: r,
  inductance: l,
  capacitance: c,
});
const circuit = makeCircuit({
  parts: {
    a: written(A),
    b: written(B),
    lever: { kind: 'lever-3' },
    volume: { kind: 'pot', value: '250k', taper: 'linear' },
    out: { kind: 'jack' },
  },
  joints: [
    'a.hot > lever.A1',
    'lever.A1 > lever.A2',
    'b.hot > lever.B3',
    'lever.B3 > lever.B2',
    'lever.A0 > lever.B0',
    'lever.A0 > volume.3',
    'volume.2 > out.tip',
    'volume.1 > out.sleeve',
    'a.ground > out.sleeve',
    'b.ground > out.sleeve',
  ],
});
const coil = ({ r, l }: typeof A) => winding(2, 0, r, l);
const [a, b] = [coil(A), coil(B)];
const own = { a: [a, capacitor(2, 0, A.c)], b: [b, capacitor(2, 0, B.c)] };
/** The volume at so much of its turn, the coils at 2, the tip at 1. */
const harness = (volume: number, coils: readonly Branch[]): readonly Branch[] => [
  ...coils,
  ...(volume === 1 ? [resistor(2, 1, 1e-3)] : [resistor(2, 1, (1 - volume) * 250e3)]),
  resistor(1, 0, volume * 250e3),
  capacitor(1, 0, 300e-12),
  resistor(1, 0, 1e6),
];
const gain = (branches: readonly Branch[], sources: readonly Branch[], frequency: number): number => {
  const each = sources.map((source) => transfer(branches, { from: 1, to: 0 }, frequency, source));
  return Math.hypot(
    each.reduce((sum, { re }) => sum + re, 0),
    each.reduce((sum, { im }) => sum + im, 0),
  );
};

describe.each([10, 5])('with the volume at %i', (volume) => {
  const { frequencies, states } = solveResponse(circuit, {
    points: 9,
    from: 50,
    to: 15e3,
    knobs: { volume, tone: 10 },
  });
  it('each position, each pickup in it, and all together', () => {
    expect([frequencies[0], frequencies[8]]).toEqual([50, 15e3]);
    const sounding = [
      [['a', a]],
      [
        ['a', a],
        ['b', b],
      ],
      [['b', b]],
    ] as const;
    for (const [index, names] of sounding.entries()) {
      const coils = names.flatMap(([name]) => own[name]);
      const branches = harness(volume / 10, coils);
      const state = states[index];
      expect(state?.pickups.map(({ pickup }) => pickup)).toEqual(names.map(([name]) => name));
      for (const [k, frequency] of frequencies.entries()) {
        const all = names.map(([, source]) => source);
        expect((state?.together?.gain[k] ?? NaN) / gain(branches, all, frequency)).toBeCloseTo(1, 6);
        for (const [i, [, source]] of names.entries())
          expect((state?.pickups[i]?.gain[k] ?? NaN) / gain(branches, [source], frequency)).toBeCloseTo(1, 6);
      }
    }
  });
  it('the reference has a volume and a tone of 250 kΩ, which stand alike', () => {
    // At 5 its taper has a say, which the law of a track has a test of its own for.
    const plain = [...harness(1, own.a), resistor(2, 3, 250e3), capacitor(3, 0, 22e-9)];
    for (const [k, frequency] of volume === 10 ? frequencies.entries() : [])
      expect((states[0]?.pickups[0]?.reference.gain[k] ?? NaN) / gain(plain, [a], frequency)).toBeCloseTo(
        1,
        6,
      );
    const { shape, reference, difference } = states[0]?.pickups[0] ?? {};
    const [mine, other] = [shape?.resonance, reference?.shape.resonance];
    if (!mine || !other) throw new Error('no peak');
    expect(difference?.frequency).toBeCloseTo(mine.frequency - other.frequency, 9);
    expect(difference?.percent).toBeCloseTo(100 * (mine.frequency / other.frequency - 1), 9);
    expect(difference?.height).toBeCloseTo(mine.height - other.height, 9);
  });
});

it('the steps have every setting of every position, each with the shape that the sweep at that setting has', () => {
  const steps = solveKnobSettings(circuit);
  expect(steps).toHaveLength(3 * 9);
  for (const step of steps) {
    const found = solveResponse(circuit, { points: 1, knobs: step.knobs }).states[step.index];
    expect(step.together?.shape).toEqual(found?.together?.shape);
    expect(step.pickups.map(({ reference }) => reference.shape)).toEqual(
      found?.pickups.map(({ reference }) => reference.shape),
    );
    expect(step.together?.gain).toEqual([]);
  }
});
