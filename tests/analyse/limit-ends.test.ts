/**
 * The ends of every direct figure: a harness with all resistances at their low ends shows the low limit, one with all at their high
 * ends the high one, of every load and every reading in every state; the one as written shows what lies between.
 */
import { describe, expect, it } from 'vitest';
import { readMeter, solveLimits, solveLoads, solveResponse } from '../../src/analyse/index.ts';
import { given } from '../../src/common/units.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { atEnd, type Compact, makeCircuit, mixedSet, sampleCircuit } from './kits.ts';

/** A blend before the volume, with a pickup that is never at its full level and a resistor across another. */
const blended: Compact = {
  parts: {
    neck: { kind: 'single-coil', tolerance: '15%' },
    bridge: { kind: 'humbucker', 'core-loss': '300k' },
    blend: { kind: 'pot', value: '250k', tolerance: '30%' },
    volume: { kind: 'pot', value: '500k', taper: 'linear' },
    selector: { kind: 'lever-3' },
    load: { kind: 'resistor', value: '330k', tolerance: '1%' },
    out: { kind: 'jack' },
  },
  joints: [
    'neck.hot > blend.1',
    'bridge.hot > blend.3',
    'blend.2 > selector.A0',
    'selector.A1 > volume.3',
    'selector.A2 > load.1',
    'load.2 > volume.3',
    'selector.A3 > bridge.hot',
    'volume.2 > out.tip',
    'volume.1 > out.sleeve',
    'neck.ground > out.sleeve',
    'bridge.ground > out.sleeve',
  ],
};

const near = (value: number, wanted: number, what: string): void => {
  if (wanted === Infinity || wanted === 0) expect(value, what).toBe(wanted);
  else expect(Math.abs(value / wanted - 1), what).toBeLessThan(1e-9);
};

describe.each([
  ['kestrel-hss', sampleCircuit('kestrel-hss')],
  ['wren-sh', sampleCircuit('wren-sh')],
  ['blended', makeCircuit(blended)],
] as const)('%s', (_, circuit) => {
  const limits = solveLimits(circuit, { samples: 1 });
  const ends = (['low', 'nominal', 'high'] as const).map((end) => {
    const kit = end === 'nominal' ? circuit.kit : atEnd(circuit.kit, end === 'low' ? -1 : 1);
    const turned = buildCircuit(kit);
    return { end, loads: solveLoads(turned), readings: readMeter(turned) };
  });

  it('meter readings, at the jack with the volume at full and at zero, and at every lug', () => {
    for (const { end, readings } of ends) {
      expect(limits.states.map(({ index }) => index)).toEqual(readings.map(({ index }) => index));
      for (const [i, { volumeFull, volumeZero }] of readings.entries()) {
        const { jack, lugs } = limits.states[i] ?? { lugs: [] };
        for (const which of ['connected', 'disconnected'] as const) {
          near(jack?.volumeFull[which][end] ?? NaN, volumeFull.jack[which], `full, ${which}, ${end}`);
          near(jack?.volumeZero[which][end] ?? NaN, volumeZero.jack[which], `zero, ${which}, ${end}`);
          expect(lugs.map(({ lug }) => lug)).toEqual(volumeFull.lugs.map(({ probe }) => probe));
          for (const [k, lug] of lugs.entries())
            near(lug[which][end], volumeFull.lugs[k]?.[which] ?? NaN, `${lug.lug}, ${which}, ${end}`);
        }
      }
    }
  });

  it('DC loads, a pickup’s own and in total', () => {
    for (const { end, loads } of ends)
      for (const [i, one] of loads.entries()) {
        const { pickups } = limits.states[i] ?? { pickups: [] };
        expect(pickups.map(({ pickup }) => pickup)).toEqual(one.pickups.map(({ pickup }) => pickup));
        for (const [k, load] of one.pickups.entries()) {
          near(pickups[k]?.dcLoad[end] ?? NaN, load.dcLoad, `${load.pickup}, ${end}`);
          near(pickups[k]?.total.dcLoad[end] ?? NaN, load.total.dcLoad, `${load.pickup} in total, ${end}`);
          if (end !== 'nominal') continue;
          near(pickups[k]?.signalLoad.nominal ?? NaN, load.signalLoad, load.pickup);
          near(pickups[k]?.total.signalLoad.nominal ?? NaN, load.total.signalLoad, load.pickup);
        }
      }
  });

  it('resonances lie about those of the response', () => {
    for (const [i, { pickups, together }] of solveResponse(circuit, { points: 1 }).states.entries()) {
      const own = limits.states[i];
      const pairs = [
        [own?.resonance, together?.shape.resonance] as const,
        ...pickups.map(({ shape }, k) => [own?.pickups[k]?.resonance, shape.resonance] as const),
      ];
      for (const [found, wanted] of pairs) {
        expect(found === undefined).toBe(wanted === undefined);
        if (!found || !wanted) continue;
        expect(found.frequency.nominal / wanted.frequency).toBeCloseTo(1, 7);
        expect(found.height.nominal).toBeCloseTo(wanted.height, 7);
      }
    }
  });
});

it('a kit without a jack has no reading, and nothing sounds in it', () => {
  const { output: _, ...parts } = mixedSet.parts;
  const joints = mixedSet.joints.filter((joint) => !String(joint).includes('output'));
  const circuit = makeCircuit({ parts, joints });
  const [state] = solveLimits(circuit, { samples: 1 }).states;
  expect([state?.jack, state?.lugs, state?.pickups, state?.resonance]).toEqual([
    undefined,
    [],
    [],
    undefined,
  ]);
  expect(readMeter(circuit)).toEqual([]);
  expect(solveLoads(circuit).flatMap(({ pickups }) => pickups)).toEqual([]);
});

describe('what may be asked', () => {
  const circuit = makeCircuit(mixedSet);
  const limits = (low: number, high: number) =>
    solveLimits(circuit, { samples: 1, temperatures: { low, high } }).states[0]?.jack?.volumeFull.connected;
  it('temperatures from −50 to 100 °C, and one alone', () => {
    const wide = limits(-50, 100);
    expect(wide?.low).toBeLessThan(limits(10, 30)?.low ?? 0);
    expect(wide?.high).toBeGreaterThan(limits(10, 30)?.high ?? Infinity);
    expect(limits(20, 20)?.low).toBeGreaterThan(limits(10, 30)?.low ?? Infinity);
    for (const [low, high] of [
      [-50.1, 20],
      [20, 100.1],
      [20.1, 20],
      [NaN, 20],
      [20, NaN],
    ] as const)
      expect(() => limits(low, high)).toThrow(RangeError);
  });
  it('a seed of 0, and one sample', () => {
    const one = solveLimits(circuit, { samples: 1, seed: 0 });
    expect([one.seed, one.samples]).toEqual([0, 1]);
    const { low, high } = one.states[0]?.resonance?.frequency ?? { low: 0, high: 1 };
    expect(low).toBe(high);
  });
});

describe('samples', () => {
  /** One single coil into a volume and the cable; all but the volume as good as exact. */
  const lone = (volume: number, tolerance: string) => {
    const exact = '0.0001%';
    const circuit = makeCircuit({
      parts: {
        only: {
          kind: 'single-coil',
          tolerance: exact,
          'inductance-tolerance': exact,
          'capacitance-tolerance': exact,
        },
        volume: { kind: 'pot', value: volume, tolerance },
        out: { kind: 'jack' },
      },
      joints: [
        'only.hot > volume.3',
        'volume.2 > out.tip',
        'volume.1 > out.sleeve',
        'only.ground > out.sleeve',
      ],
    });
    const { kit } = circuit;
    return buildCircuit({
      ...kit,
      outputLoad: { ...kit.outputLoad, cableTolerance: given(1e-6) },
    });
  };
  const limitsOfLone = (volume: number, tolerance: string, samples: number) =>
    solveLimits(lone(volume, tolerance), { samples, temperatures: { low: 20, high: 20 } }).states[0]
      ?.resonance;

  it('lie anywhere in the tolerance with equal chance, and no further', () => {
    // With two values only the fortieths are the ends; a resonance is the higher the larger the volume.
    const found = limitsOfLone(300e3, '20%', 3000);
    const [least, most] = [240e3, 360e3].map((volume) => limitsOfLone(volume, '0.0001%', 1)?.height.nominal);
    const at = (share: number) => limitsOfLone(240e3 + share * 120e3, '0.0001%', 1)?.height.nominal ?? NaN;
    expect(found?.height.low).toBeGreaterThan(least ?? NaN);
    expect(found?.height.high).toBeLessThan(most ?? NaN);
    for (const [value, share] of [
      [found?.height.low, 0.025],
      [found?.height.high, 0.975],
    ] as const) {
      expect(value).toBeGreaterThan(at(share - 0.008));
      expect(value).toBeLessThan(at(share + 0.008));
    }
  });

  it('that have no peak are counted, and left out of the range', () => {
    /** The least volume at which the plain response has a peak. */
    let [low, high] = [20e3, 300e3];
    const hasPeak = (volume: number): boolean =>
      solveResponse(lone(volume, '1%'), { points: 1 }).states[0]?.together?.shape.resonance !== undefined;
    for (let i = 0; i < 30; i++) {
      const middle = (low + high) / 2;
      if (hasPeak(middle)) high = middle;
      else low = middle;
    }
    const none = limitsOfLone(low, '10%', 200);
    expect(none).toBeUndefined();
    const found = limitsOfLone(1.05 * high, '30%', 400);
    expect(found?.without).toBeGreaterThan(60);
    expect(found?.without).toBeLessThan(200);
    expect(found?.frequency.low).toBeGreaterThan(100);
    expect(limitsOfLone(2 * high, '30%', 50)?.without).toBe(0);
  });
});
