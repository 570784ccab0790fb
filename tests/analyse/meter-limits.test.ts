import { describe, expect, it } from 'vitest';
import { limitsOf } from '../../src/analyse/extremes.ts';
import {
  analyse,
  readMeter,
  solveLimits,
  solveLoads,
  type ToleranceRange,
  toJson,
} from '../../src/analyse/index.ts';
import { seeded } from '../../src/common/random.ts';
import { given } from '../../src/common/units.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { makeCircuit, mixedSet, sampleCircuit } from './kits.ts';

const par = (...ohms: number[]): number => 1 / ohms.reduce((sum, r) => sum + 1 / r, 0);
const near = (value: number | undefined, expected: number) =>
  expect(Math.abs((value ?? NaN) / expected - 1)).toBeLessThan(1e-9);

describe('meter readings (parallel law: Kuphaldt I, ch. 5)', () => {
  const readings = readMeter(sampleCircuit('kestrel-hss'));

  it('at the jack, volume full: the pots, and with the pickups the pads that are soldered with their leads', () => {
    near(readings[0]?.volumeFull.jack.disconnected, 500e3);
    near(readings[0]?.volumeFull.jack.connected, par(500e3, 8400));
    near(readings[3]?.volumeFull.jack.disconnected, 500e3);
    near(readings[3]?.volumeFull.jack.connected, par(500e3, 470e3, 470e3, 5700, 5900));
  });

  it('at the jack, volume at zero: a short', () => {
    for (const { volumeZero } of readings) expect(volumeZero.jack).toEqual({ disconnected: 0, connected: 0 });
  });

  it('from a lug to ground: an unselected pickup shows itself beside its pad, and neither before both are soldered', () => {
    const lug = (id: string) => readings[0]?.volumeFull.lugs.find((one) => one.lugs.includes(id));
    expect(lug('selector.A3')).toMatchObject({ probe: 'selector.A3', disconnected: Infinity });
    near(lug('selector.A3')?.connected, par(470e3, 5700));
    // Volume at zero leaves the whole track between the switch and the tip, which is now at ground.
    const zero = readings[0]?.volumeZero.lugs.find((one) => one.lugs.includes('volume.3'));
    near(zero?.disconnected, 500e3);
    near(zero?.connected, par(500e3, 8400));
  });

  it('a lug that nothing is joined to is left out, and so is ground', () => {
    const lugs = readings[0]?.volumeFull.lugs.flatMap((one) => one.lugs) ?? [];
    expect(lugs).toContain('selector.A3');
    expect(lugs).not.toContain('tone-1.3');
    expect(lugs).not.toContain('output.sleeve');
  });

  it('a lug behind a capacitor alone reads open', () => {
    const circuit = makeCircuit({
      parts: { a: { kind: 'single-coil' }, cap: { kind: 'capacitor', value: '22n' }, out: { kind: 'jack' } },
      joints: ['a.ground > out.sleeve', 'a.hot > cap.1', 'cap.2 > out.tip'],
    });
    expect(readMeter(circuit)[0]?.volumeFull.jack).toEqual({ disconnected: Infinity, connected: Infinity });
  });
});

describe('spread', () => {
  const circuit = sampleCircuit('kestrel-hss');
  const spread = solveLimits(circuit);
  const state = (index: number) => spread.states[index];

  it('is exact at the corners for direct loads', () => {
    const load = state(1)?.pickups[0]?.dcLoad;
    expect(load?.method).toBe('corners');
    near(load?.low, par(400e3, 0.95 * 470e3));
    near(load?.high, par(600e3, 1.05 * 470e3));
  });

  it('takes the winding’s tolerance and its temperature into a meter’s reading (IEC 60028: 0.393 % per kelvin)', () => {
    const reading = state(0)?.jack?.volumeFull.connected;
    near(reading?.low, par(400e3, 8400 * 0.9 * (1 - 0.0393)));
    near(reading?.high, par(600e3, 8400 * 1.1 * (1 + 0.0393)));
    expect(spread.temperatures).toEqual({ low: 10, high: 30 });
  });

  it('finds the ends of the signal load among the corners, and no draw lies beyond them', () => {
    const random = seeded(7);
    const between = (low: number, high: number) => low + (high - low) * random();
    const range = state(0)?.pickups[0]?.signalLoad;
    expect(range?.method).toBe('search');
    for (let i = 0; i < 2000; i++) {
      const [v, t, c] = [between(400e3, 600e3), between(400e3, 600e3), between(19.8e-9, 24.2e-9)];
      const x = 1 / (2 * Math.PI * 1000 * c);
      const load = 1 / (1 / v + t / (t * t + x * x));
      expect(load).toBeGreaterThan((range?.low ?? 0) * (1 - 1e-9));
      expect(load).toBeLessThan((range?.high ?? 0) * (1 + 1e-9));
    }
    // 400k ∥ 400k and 600k ∥ 600k, the capacitor nearly a short.
    expect(Math.abs((range?.low ?? 0) / 200e3 - 1)).toBeLessThan(1e-3);
    expect(Math.abs((range?.high ?? 0) / 300e3 - 1)).toBeLessThan(1e-3);
  });

  it('carries seed and samples, and is repeatable; another seed samples others', () => {
    expect(spread).toMatchObject({ seed: 60063, samples: 10_000 });
    const few = solveLimits(circuit, { samples: 300, seed: 1 });
    expect(solveLimits(circuit, { samples: 300, seed: 1 })).toEqual(few);
    expect(solveLimits(circuit, { samples: 300, seed: 2 })).not.toEqual(few);
  });

  it.each([
    { seed: -1 },
    { seed: 2 ** 32 },
    { seed: 1.5 },
    { seed: NaN },
    { samples: 0 },
    { samples: -5 },
    { samples: 2.5 },
    { samples: 100_001 },
    { temperatures: { low: 30, high: 10 } },
    { temperatures: { low: 10, high: 3000 } },
  ])('refuses %j', (options) => expect(() => solveLimits(circuit, options)).toThrow(RangeError));

  it('takes the largest seed', () =>
    expect(solveLimits(circuit, { seed: 2 ** 32 - 1, samples: 1 }).seed).toBe(2 ** 32 - 1));

  it('samples resonances about the nominal one', () => {
    for (const { resonance } of spread.states) {
      const { low, nominal, high } = resonance?.height ?? { low: 0, nominal: 0, high: 0 };
      expect([low, nominal, high]).toEqual([low, nominal, high].sort((x, y) => x - y));
      expect(high - low).toBeGreaterThan(0.5);
      expect(resonance?.without).toBe(0);
    }
  });

  it('has a resonance for each of two that share a position, and another for them together', () => {
    const { pickups, resonance } = spread.states[1] ?? { pickups: [] };
    const heights = [...pickups.map((one) => one.resonance), resonance].map((one) => one?.height.nominal);
    expect(heights).toHaveLength(3);
    expect(new Set(heights).size).toBe(3);
  });

  it('follows a resonance that tolerance takes far away: with L from a fifth to nearly twice, by 1/√L', () => {
    const wide = { kind: 'humbucker', 'inductance-tolerance': '80%', 'capacitance-tolerance': '0.1%' };
    const circuit = makeCircuit({ ...mixedSet, parts: { ...mixedSet.parts, neck: wide } });
    const { frequency } = solveLimits(circuit, { samples: 600 }).states[2]?.pickups[0]?.resonance ?? {};
    // Uniform from 0.2 to 1.8 of L: the fortieths lie at 0.24 and 1.76.
    expect((frequency?.high ?? 0) / (frequency?.nominal ?? 1)).toBeGreaterThan(0.85 / Math.sqrt(0.24));
    expect((frequency?.low ?? 0) / (frequency?.nominal ?? 1)).toBeLessThan(1.1 / Math.sqrt(1.76));
  });

  it('agrees with the figures without spread in the middle', () => {
    const loads = solveLoads(circuit);
    spread.states.forEach((one, i) => {
      one.pickups.forEach((pickup, k) => {
        expect(pickup.dcLoad.nominal).toBe(loads[i]?.pickups[k]?.dcLoad);
        expect(pickup.signalLoad.nominal).toBe(loads[i]?.pickups[k]?.signalLoad);
      });
    });
  });

  it('a largest value just inside either end of a tolerance is found', () => {
    const x = { of: 'x', low: 0.8, high: 1.2 };
    for (const top of [0.801, 0.82, 0.84, 1, 1.16, 1.18, 1.199]) {
      const hill = limitsOf([x], (f) => 5 - ((f.get('x') ?? 1) - top) ** 2);
      expect(hill.high, `${top}`).toBeCloseTo(5, 9);
      const valley = limitsOf([x], (f) => ((f.get('x') ?? 1) - top) ** 2);
      expect(valley.low, `${top}`).toBeCloseTo(0, 9);
    }
  });

  it('finds what lies inside the tolerances, with one value and with two that hang on each other', () => {
    const x = { of: 'x', low: 0.5, high: 1.5 };
    const one = limitsOf([x], (f) => ((f.get('x') ?? 1) - 0.9) ** 2);
    expect(one.low).toBeLessThan(1e-12);
    expect(one.high).toBeCloseTo(0.36, 12);
    // A ridge across the box, highest at (1.2, 0.8), and lowest at a corner.
    const two = limitsOf([x, { of: 'y', low: 0.5, high: 1.5 }], (f) => {
      const [u, v] = [(f.get('x') ?? 1) - 1.2, (f.get('y') ?? 1) - 0.8];
      return -(u * u + v * v + u * v);
    });
    expect(two.high).toBeCloseTo(0, 9);
    expect(two.low).toBeCloseTo(-(0.3 ** 2 + 0.7 ** 2 + 0.3 * 0.7), 9);
  });

  it('of many values that all count finds the corner where all are at an end', () => {
    const many = Array.from({ length: 14 }, (_, i) => ({ of: `v${i}`, low: 0.9, high: 1.1 }));
    const range = limitsOf(many, (f) =>
      many.reduce((sum, { of }, i) => sum + (i % 2 ? -1 : 1) * (f.get(of) ?? 1), 0),
    );
    expect(range.low).toBeCloseTo(-1.4, 12);
    expect(range.high).toBeCloseTo(1.4, 12);
  });
});

describe('the whole analysis', () => {
  it('is JSON with open circuits in words, and the same twice', () => {
    const text = toJson(analyse(makeCircuit(mixedSet), { samples: 100 }));
    expect(toJson(analyse(makeCircuit(mixedSet), { samples: 100 }))).toBe(text);
    expect(text).not.toContain('null');
    expect(text).toContain('"open"');
    const range: ToleranceRange = JSON.parse(text).limits.states[0].pickups[0].dcLoad;
    expect(range.low).toBeLessThan(range.high);
  });
});

describe('which figures have limits', () => {
  const circuit = makeCircuit(mixedSet);
  it('every net of two lugs or more that is not ground, in every state', () => {
    const nets = circuit.nets.filter(({ role, lugs }) => role !== 'ground' && lugs.length >= 2);
    expect(nets.some(({ lugs }) => lugs.length === 2)).toBe(true);
    for (const { lugs } of solveLimits(circuit, { samples: 1 }).states)
      expect(lugs.map(({ net }) => net)).toEqual(nets.map(({ index }) => index));
  });
  it('a fortieth of the samples lies below the range and a fortieth above: of a figure nearly linear, of its whole range', () => {
    const heightAt = (volume: number, tolerance: string, samples: number) => {
      const parts = Object.fromEntries(
        Object.entries(mixedSet.parts).map(([name, part]) => {
          if (/lever|jack|point/.test(part.kind)) return [name, part];
          const tight = { ...part, tolerance: name === 'volume' ? tolerance : '0.001%' };
          return /single|humbucker/.test(part.kind)
            ? [name, { ...tight, 'inductance-tolerance': '0.001%', 'capacitance-tolerance': '0.001%' }]
            : [name, name === 'volume' ? { ...tight, value: volume } : tight];
        }),
      );
      const circuit = makeCircuit({ ...mixedSet, parts });
      const { kit } = circuit;
      const still = { ...kit, outputLoad: { ...kit.outputLoad, cableTolerance: given(1e-6) } };
      const [state] = solveLimits(buildCircuit(still), {
        samples,
        temperatures: { low: 20, high: 20 },
      }).states;
      const height = state?.pickups[0]?.resonance?.height;
      if (!height) throw new Error('no resonance');
      return height;
    };
    const [least, most] = [490e3, 510e3].map((volume) => heightAt(volume, '0.001%', 1).nominal);
    const height = heightAt(500e3, '2%', 4000);
    const share = (value: number): number => (value - (least ?? 0)) / ((most ?? 0) - (least ?? 0));
    expect(Math.abs(share(height.low) - 0.025)).toBeLessThan(0.008);
    expect(Math.abs(share(height.high) - 0.975)).toBeLessThan(0.008);
  });
});
