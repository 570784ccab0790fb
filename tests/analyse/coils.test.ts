/**
 * What the coils of one pickup give in each way to join them. The figures follow from two equal coils with La = L / (2 (1 + k)), M = k La:
 * in series L, in parallel (La + M) / 2 = L / 4, one alone La, one beside a shorted one La (1 − k²) where reactance rules (any text on
 * coupled circuits); R, R / 4 and R / 2. That half of a pickup gives half of its voltage is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { isHumCancelling } from '../../src/analyse/hum.ts';
import { solveLoads } from '../../src/analyse/loads.ts';
import { readJack } from '../../src/analyse/meter.ts';
import { solveResponse } from '../../src/analyse/response.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { voiceName } from '../../src/circuit/circuit.ts';
import { impedanceOf } from '../../src/solve/measure.ts';
import { makeNetlist } from '../../src/solve/netlist.ts';
import { ways } from '../oracle/ways.ts';
import { type Compact, makeCircuit } from './kits.ts';

const K = 0.15;
const L = 4.4;

function first<T>(list: readonly T[]): T {
  const [one] = list;
  if (one === undefined) throw new Error('empty');
  return one;
}
const way = (name: string): Circuit => makeCircuit(ways[name] ?? { parts: {}, joints: [] });

/** Henries between tip and sleeve with no pot to load it and no capacitance: at a frequency where resistance is small. */
function inductance({ parts, joints }: Compact): number {
  const bare = {
    ...parts,
    bridge: { ...parts.bridge, kind: 'four-lead-humbucker', resistance: 10, capacitance: '0.1p' },
    volume: { kind: 'pot', value: '900M' },
  };
  const circuit = makeCircuit({ parts: bare, joints });
  const { branches, jack } = makeNetlist(circuit, first(circuit.states));
  if (!jack) throw new Error('no jack');
  return impedanceOf(branches, jack, 1000).im / (2000 * Math.PI);
}

describe('two coils of 8.2 kΩ and 4.4 H', () => {
  // Half of the voltage, less what the shorted coil's current induces: 1 − jωM / (R + jωL) at 1 kHz, with M = k · 1.91 H.
  const omega = 2 * Math.PI * 1000;
  const own = L / (2 * (1 + K));
  const size = 4100 ** 2 + (omega * own) ** 2;
  const SHORTED =
    20 *
    Math.log10(0.5 * Math.hypot(1 - (omega * omega * K * own * own) / size, (omega * K * own * 4100) / size));
  it.each([
    ['series', 'bridge', 8200, L, 0],
    ['series, the other way round', 'bridge', 8200, L, 0],
    ['parallel', 'bridge', 2050, L / 4, -6.02],
    ['coil B shorted', 'bridge coil A', 4100, (L / (2 * (1 + K))) * (1 - K ** 2), SHORTED],
    ['coil A shorted', 'bridge coil B', 4100, (L / (2 * (1 + K))) * (1 - K ** 2), SHORTED],
    ['coil B in the air', 'bridge coil A', 4100, L / (2 * (1 + K)), -6.02],
    ['coil B lifted', 'bridge coil A', 4100, L / (2 * (1 + K)), -6.02],
  ] as const)('%s: %s, %i Ω, %f H, %f dB', (name, voice, ohms, henries, level) => {
    const circuit = way(name);
    const { state, pickups } = first(solveLoads(circuit));
    expect(state.sounding.map((pickup) => voiceName(state, pickup))).toEqual([voice]);
    expect(1 / (1 / first(readJack(circuit)) - 1 / 500e3)).toBeCloseTo(ohms, 6);
    expect(inductance(ways[name] ?? { parts: {}, joints: [] })).toBeCloseTo(henries, 3);
    const [entry] = pickups;
    // The one volume pot of 500 kΩ, whatever the pickup is.
    expect(entry?.dcLoad).toBeCloseTo(500e3, 3);
    expect(entry?.reference.dcLoad).toBeCloseTo(500e3, 3);
    // Of levels to a decibel: pots load what has more impedance a little more.
    expect(Math.abs((entry?.level ?? NaN) - level)).toBeLessThan(0.5);
  });

  it('in series is the two-lead humbucker in every figure', () => {
    const { parts, joints } = ways.series ?? { parts: {}, joints: [] };
    const two = makeCircuit({
      parts: { ...parts, bridge: { kind: 'humbucker', resistance: '8.2k', 'core-loss': '800k' } },
      joints: [
        'bridge.hot > volume.3',
        'bridge.ground > volume.case',
        ...joints.filter((joint) => typeof joint === 'string' && !joint.includes('bridge')),
      ],
    });
    const four = makeCircuit({
      parts: {
        ...parts,
        bridge: { kind: 'four-lead-humbucker', resistance: '8.2k', 'core-loss': '800k', coupling: 0.4 },
      },
      joints,
    });
    const [a, b] = [two, four].map((circuit) => first(solveResponse(circuit, { points: 60 }).states));
    for (const [i, gain] of (a?.together?.gain ?? []).entries())
      expect((b?.together?.gain[i] ?? NaN) / gain).toBeCloseTo(1, 9);
    expect(a?.together?.gain).toHaveLength(60);
    const [loads, other] = [two, four].map((circuit) => first(first(solveLoads(circuit)).pickups));
    expect(other?.total.signalLoad).toBeCloseTo(loads?.total.signalLoad ?? NaN, 3);
    expect(first(readJack(four))).toBeCloseTo(first(readJack(two)), 6);
  });

  it('in parallel, and against each other, are told; in series there is nothing to tell', () => {
    const coils = (name: string) => first(first(solveLoads(way(name))).pickups).coils;
    expect(coils('series')).toEqual({ joined: 'series', outOfPhase: false });
    expect(coils('parallel')).toEqual({ joined: 'parallel', outOfPhase: false });
    expect(coils('coils against each other')).toEqual({ joined: 'series', outOfPhase: true });
    expect(coils('coils against each other, parallel')).toEqual({ joined: 'parallel', outOfPhase: true });
    expect(coils('coil B shorted')).toBeUndefined();
    expect(first(solveLoads(way('coils against each other'))).silentTogether).toBe(true);
    expect(first(solveLoads(way('parallel'))).silentTogether).toBe(false);
  });

  it('split through a resistor: one pickup still, less of it, into the same load', () => {
    const circuit = way('split through a resistor');
    const { state, pickups } = first(solveLoads(circuit));
    expect([state.sounding, state.coils]).toEqual([['bridge'], undefined]);
    const [entry] = pickups;
    // 4.1 kΩ beside 4.7 kΩ, and 4.1 kΩ.
    expect(1 / (1 / first(readJack(circuit)) - 1 / 500e3)).toBeCloseTo(4100 + (4100 * 4700) / 8800, 6);
    expect(entry?.level).toBeLessThan(-2);
    expect(entry?.level).toBeGreaterThan(-6);
    expect(entry?.dcLoad).toBeCloseTo(500e3, 3);
  });
});

describe('hum', () => {
  const hums = (circuit: Circuit) => circuit.states.map((state) => isHumCancelling(circuit, state));

  it.each([
    ['series', true],
    ['parallel', true],
    ['coil B shorted', false],
    ['coil A shorted', false],
    ['coil B in the air', false],
    // The signal cancels; the hum, which knows no magnets, adds up.
    ['coils against each other', false],
    ['coils against each other, parallel', false],
    // At mains frequency hardly any reactance: 4.7 kΩ takes half of the second coil's hum.
    ['split through a resistor', false],
    ['two in series', true],
    ['wound alike, in series', false],
    // The split one hums, and there is nothing against it.
    ['two in parallel, one split', false],
  ] as const)('%s: %s', (name, expected) => {
    expect(hums(way(name))).toEqual([expected]);
  });

  const set = (neck: object, middle: object): Circuit =>
    makeCircuit({
      parts: {
        neck: { kind: 'single-coil', ...neck },
        middle: { kind: 'single-coil', ...middle },
        selector: { kind: 'lever-3' },
        volume: { kind: 'pot', value: '250k' },
        output: { kind: 'jack' },
      },
      joints: [
        'middle.hot > selector.A1',
        'selector.A1 > selector.A2',
        'neck.hot > selector.B3',
        'selector.B3 > selector.B2',
        'selector.A0 > selector.B0',
        'selector.B0 > volume.3',
        'volume.2 > output.tip',
        'volume.1 > output.sleeve',
        'neck.ground > output.sleeve',
        'middle.ground > output.sleeve',
      ],
    });
  const [plain, reverse] = [
    { wind: 'clockwise', polarity: 'north' },
    { wind: 'anticlockwise', polarity: 'south' },
  ];

  it.each([
    ['a middle pickup reverse wound, reverse polarity', plain, reverse, [false, true, false]],
    ['two alike', plain, plain, [false, false, false]],
    ['one of unknown make', plain, {}, [false, undefined, false]],
    ['neither known', {}, {}, [false, undefined, false]],
    [
      'a fifth more wire on one',
      { ...plain, resistance: '6k' },
      { ...reverse, resistance: '7.2k' },
      [false, true, false],
    ],
    [
      'twice the wire',
      { ...plain, resistance: '6k' },
      { ...reverse, resistance: '12k' },
      [false, false, false],
    ],
  ] as const)('%s', (_, neck, middle, expected) => {
    expect(hums(set(neck, middle))).toEqual(expected);
  });

  const phase = (circuit: Circuit) => solveLoads(circuit)[1]?.pickups.map(({ outOfPhase }) => outOfPhase);

  it.each([
    ['reverse wound, reverse polarity: in phase', plain, reverse, false],
    ['reverse wound only: out of phase', plain, { ...reverse, polarity: 'north' }, true],
    ['reverse polarity only: out of phase', plain, { ...plain, polarity: 'south' }, true],
    ['nothing known of one: by its leads', plain, { wind: 'anticlockwise' }, false],
  ] as const)('two single coils, %s', (_, neck, middle, expected) => {
    expect(phase(set(neck, middle))).toEqual(expected ? [['middle'], ['neck']] : [[], []]);
  });

  it('a humbucker whose coils are not opposite in the magnets is against itself', () => {
    const { parts, joints } = ways.series ?? { parts: {}, joints: [] };
    const made = (more: object) =>
      makeCircuit({ parts: { ...parts, bridge: { kind: 'four-lead-humbucker', ...more } }, joints });
    const against = (circuit: Circuit) => first(first(solveLoads(circuit)).pickups).coils?.outOfPhase;
    expect(against(made({ wind: { a: 'clockwise' }, polarity: { b: 'north' } }))).toBe(false);
    expect(against(made({ polarity: { a: 'north', b: 'north' } }))).toBe(true);
    expect(
      against(made({ wind: { a: 'clockwise', b: 'clockwise' }, polarity: { a: 'south', b: 'south' } })),
    ).toBe(false);
    expect(hums(made({ wind: { a: 'clockwise', b: 'clockwise' } }))).toEqual([false]);
  });

  it('one coil of each of two humbuckers cancels hum where they are wound opposite ways', () => {
    const split = (kept: readonly [string, string]): Circuit => {
      const joints = (['neck', 'bridge'] as const).flatMap((name, i) => [
        `${name}.a-start > volume.3`,
        `${name}.a-finish > ${name}.b-finish`,
        `${name}.b-start > volume.case`,
        kept[i] === 'a' ? `${name}.a-finish > volume.case` : `${name}.a-finish > volume.3`,
      ]);
      const make = { kind: 'four-lead-humbucker', wind: { a: 'clockwise' }, polarity: { a: 'north' } };
      return makeCircuit({
        parts: { neck: make, bridge: make, volume: { kind: 'pot', value: '500k' }, output: { kind: 'jack' } },
        joints: [
          ...joints,
          'volume.1 > output.sleeve',
          'volume.case > output.sleeve',
          'volume.2 > output.tip',
        ],
      });
    };
    expect(hums(split(['a', 'b']))).toEqual([true]);
    expect(hums(split(['a', 'a']))).toEqual([false]);
    const { state } = first(solveLoads(split(['a', 'b'])));
    expect(state.sounding.map((name) => voiceName(state, name))).toEqual(['neck coil A', 'bridge coil B']);
  });
});
