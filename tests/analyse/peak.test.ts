/**
 * Shapes of curves that have them in closed form: a coil into a load (Zollner's H = 1 / (LC p² + (RC + L/Rq) p + 1 + R/Rq)), and hills
 * on a logarithmic axis, wherever they stand.
 */
import { describe, expect, it } from 'vitest';
import { decibels, type Gain, highestBetween, logGrid, shapeOf } from '../../src/analyse/peak.ts';
import { seeded } from '../../src/common/random.ts';

const random = seeded(31);
const between = (low: number, high: number): number => low * (high / low) ** random();
const db = (gain: number): number => 20 * Math.log10(gain);

describe('decibels and a logarithmic axis', () => {
  it('20 lg of the gain, and −200 for silence', () => {
    for (const [gain, level] of [
      [1, 0],
      [10, 20],
      [0.5, -6.0206],
      [1e-9, -180],
      [1e-11, -200],
      [0, -200],
    ] as const)
      expect(decibels(gain)).toBeCloseTo(level, 4);
  });
  it('from 20 Hz to 20 kHz unless told otherwise; two points are its ends', () => {
    expect(logGrid(2)).toEqual([20, 20_000]);
    expect(logGrid(3)[1]).toBeCloseTo(632.456, 3);
    expect([logGrid(1), logGrid(0, 7)]).toEqual([[20], [7]]);
    // Not so nearly: a factor raised to the power of one may be off by rounding.
    for (let to = 31; to < 60; to++) expect([logGrid(5, 7, to)[0], logGrid(5, 7, to)[4]]).toEqual([7, to]);
  });
});

describe('a coil into a load', () => {
  const cases = Array.from({ length: 200 }, () => ({
    r: between(3e3, 15e3),
    l: between(0.3, 12),
    c: between(80e-12, 30e-9),
    q: between(20e3, 2e6),
  }));
  it('has its peak and its −3 dB point where the closed form does', () => {
    let [peaks, none, cutoffs, beyond] = [0, 0, 0, 0];
    for (const { r, l, c, q } of cases) {
      const [stiff, loss, lc] = [1 + r / q, r * c + l / q, l * c];
      const denominator = (w: number): number => (stiff - lc * w * w) ** 2 + (loss * w) ** 2;
      const gain = (f: number): number => 1 / Math.sqrt(denominator(2 * Math.PI * f));
      const shape = shapeOf(gain);
      expect(shape.plateau).toBeCloseTo(db(gain(100)), 9);
      // The least of the denominator, a parabola in ω².
      const square = stiff / lc - loss ** 2 / (2 * lc ** 2);
      const top = Math.sqrt(Math.max(0, square)) / (2 * Math.PI);
      const height = top > 0 ? db(gain(top) / gain(100)) : 0;
      if (top > 115 && top < 18e3 && height > 0.101) {
        peaks++;
        expect((shape.resonance?.frequency ?? 0) / top).toBeCloseTo(1, 5);
        expect(shape.resonance?.height).toBeCloseTo(height, 8);
        expect(shape.resonance?.level).toBeCloseTo(db(gain(top)), 8);
      } else if (height < 0.099) {
        none++;
        expect(shape.resonance).toBeUndefined();
      }
      // Where the denominator is twice what it is at 100 Hz.
      const [b, rest] = [loss ** 2 - 2 * stiff * lc, stiff ** 2 - 2 * denominator(200 * Math.PI)];
      const end = Math.sqrt((-b + Math.sqrt(b * b - 4 * lc * lc * rest)) / (2 * lc * lc)) / (2 * Math.PI);
      if (end < 19.9e3) {
        cutoffs++;
        expect((shape.cutoff ?? 0) / end).toBeCloseTo(1, 9);
      } else if (end > 20.1e3) {
        beyond++;
        expect(shape.cutoff).toBeUndefined();
      }
    }
    for (const count of [peaks, none, cutoffs, beyond]) expect(count).toBeGreaterThan(3);
  });
});

/** A hill of so many decibels on a level of one volt per volt, an octave or so wide. */
const hill =
  (top: number, height: number, width = 0.5): Gain =>
  (f) =>
    10 ** ((height * Math.exp(-((Math.log(f / top) / width) ** 2))) / 20);

describe('a hill', () => {
  it('is found wherever it stands between 100 Hz and 20 kHz, with its height', () => {
    for (const top of [112, 150, 700, 3000, 9000, 15e3, 17.5e3]) {
      const { resonance, plateau } = shapeOf(hill(top, 6));
      expect((resonance?.frequency ?? 0) / top, `${top} Hz`).toBeCloseTo(1, 5);
      expect(resonance?.level).toBeCloseTo(6, 8);
      expect(resonance?.height).toBeCloseTo(6 - plateau, 8);
    }
  });
  it('is none where the curve still rises at 20 kHz, nor where it has fallen since before 100 Hz', () => {
    expect(shapeOf(hill(40e3, 12, 2)).resonance).toBeUndefined();
    expect(shapeOf(hill(60, 12, 2)).resonance).toBeUndefined();
    expect(shapeOf(() => 1)).toEqual({ plateau: 0 });
  });
  it('is heard from a tenth of a decibel', () => {
    expect(shapeOf(hill(3000, 0.1001)).resonance?.height).toBeCloseTo(0.1001, 8);
    expect(shapeOf(hill(3000, 0.0999)).resonance).toBeUndefined();
  });
  it('of two the higher counts, whichever comes first', () => {
    for (const [low, high] of [
      [4, 6],
      [6, 4],
    ] as const) {
      const two = (f: number): number => hill(400, low, 0.2)(f) * hill(5000, high, 0.2)(f);
      const top = low > high ? 400 : 5000;
      expect((shapeOf(two).resonance?.frequency ?? 0) / top).toBeCloseTo(1, 4);
    }
  });
  it('is the same on a level of any size but silence', () => {
    const loud = shapeOf(hill(3000, 6)).resonance;
    const faint = shapeOf((f) => 1e-9 * hill(3000, 6)(f));
    expect(faint.plateau).toBeCloseTo(-180, 4);
    expect((faint.resonance?.frequency ?? 0) / (loud?.frequency ?? 1)).toBeCloseTo(1, 5);
    expect(faint.resonance?.height).toBeCloseTo(loud?.height ?? 0, 9);
    expect(shapeOf((f) => 1e-11 * hill(3000, 6)(f))).toEqual({ plateau: -200 });
    expect(shapeOf((f) => (f > 2000 && f < 4000 ? 1 : 0))).toEqual({ plateau: -200 });
    expect(shapeOf((f) => (f < 1000 ? 1e-11 : 0))).toEqual({ plateau: -200 });
  });
});

it('asks for a hundred gains of a curve that falls, for sixty of a flat one: a kit has many curves', () => {
  const asked = (curve: Gain): number => {
    let count = 0;
    shapeOf((f) => {
      count++;
      return curve(f);
    });
    return count;
  };
  expect(asked(() => 1)).toBeLessThanOrEqual(61);
  expect(asked((f) => 1 / (1 + f / 2000))).toBeLessThanOrEqual(101);
  // With a peak some thirty more.
  expect(asked((f) => hill(3000, 6)(f) / (1 + (f / 8000) ** 2))).toBeLessThan(140);
});

describe('the −3 dB point', () => {
  /** Falls by so many decibels at one frequency, at once. */
  const step =
    (at: number, by: number): Gain =>
    (f) =>
      f < at ? 1 : 10 ** (-by / 20);
  it('is where the curve has fallen to half the power, and not before', () => {
    for (const at of [101, 130, 1000, 12_345, 19_900]) {
      expect((shapeOf(step(at, 3.02)).cutoff ?? 0) / at).toBeCloseTo(1, 6);
      expect(shapeOf(step(at, 3)).cutoff).toBeUndefined();
    }
  });
  it('lies beyond the peak: a dip below it is none', () => {
    const dip = (f: number): number => hill(500, -12, 0.4)(f) * hill(4000, 6, 0.4)(f) * step(8000, 12)(f);
    expect((shapeOf(dip).cutoff ?? 0) / 8000).toBeCloseTo(1, 6);
    // Without a peak it is the first of several places.
    const twice = (f: number): number => (f > 900 && f < 1200 ? 0.5 : f > 5000 ? 0.3 : 1 - f / 1e6);
    expect((shapeOf(twice).cutoff ?? 0) / 900).toBeCloseTo(1, 6);
  });
  it('of a peak that falls steeply is beyond its top, not at the last frequency looked at before it', () => {
    const cliff = (f: number): number => (f < 3000 ? 2 : 0.1) * hill(2990, 6, 0.02)(f);
    const { resonance, cutoff } = shapeOf(cliff);
    expect(cutoff).toBeGreaterThanOrEqual(resonance?.frequency ?? Infinity);
    expect((cutoff ?? 0) / 3000).toBeCloseTo(1, 2);
    // Narrower than the steps that are looked at first, the curve 6 dB down on either side.
    for (let top = 3000; top < 3300; top += 7) {
      const spike = (f: number): number => (f < 200 ? 1 : 0.5) * hill(top, 9, 0.025)(f);
      const found = shapeOf(spike);
      if (!found.resonance) continue;
      expect((found.resonance.frequency ?? 0) / top).toBeCloseTo(1, 4);
      expect(found.cutoff, `${top} Hz`).toBeGreaterThan(found.resonance.frequency);
      expect(spike(found.cutoff ?? 0)).toBeCloseTo(Math.SQRT1_2, 6);
    }
  });
});

describe('the search for the highest point (Brent: Algorithms for Minimization without Derivatives, ch. 5)', () => {
  /**
   * Tops at 0 over the logarithm of frequency, of every sharpness, as deep on either side or not; and how many gains it may
   * look at, on average: by sections alone it would be 43 for a tolerance of 10⁻⁹, and 22 for one of 2·10⁻⁵.
   */
  const shapes: Readonly<
    Record<string, readonly [curve: (x: number) => number, fine: number, coarse: number]>
  > = {
    parabola: [(x) => -x * x, 44, 22],
    bell: [(x) => Math.exp(-8 * x * x), 12, 19],
    resonance: [(x) => 1 / Math.hypot(1 - Math.exp(2 * x), 0.2 * Math.exp(x)), 18, 20],
    lopsided: [(x) => x - Math.expm1(x), 27, 18],
    'lopsided the other way': [(x) => -x - Math.expm1(-x), 27, 17],
    cliff: [(x) => (x < 0 ? x : -300 * x), 45, 24],
    'cliff the other way': [(x) => (x > 0 ? -x : 300 * x), 45, 24],
    tent: [(x) => -Math.abs(x), 32, 18],
    spike: [(x) => -Math.sqrt(Math.abs(x)), 35, 19],
    flat: [(x) => -(x ** 4), 28, 19],
  };
  const places = Array.from({ length: 25 }, () => 1000 * 2.25 ** random());
  /** Where a curve is flat at its top, what lies nearer is lost in rounding. */
  const lost = (name: string): number => (name === 'flat' ? 3e-4 : /cliff|tent|spike/.test(name) ? 0 : 1e-7);

  it.each(Object.entries(shapes))('%s: finds the top, in few steps', (name, [curve, fine, coarse]) => {
    for (const [tolerance, most] of [
      [1e-9, fine],
      [2e-5, coarse],
    ] as const) {
      let count = 0;
      for (const top of places) {
        const at = name === 'resonance' ? top / Math.sqrt(1 - 0.02) : top;
        const gain = (f: number): number => {
          count++;
          expect(f > 899.99 && f < 2500.01).toBe(true);
          return curve(Math.log(f / at));
        };
        const found = highestBetween(gain, 900, 2500, tolerance);
        expect(Math.abs(Math.log(found / top)), `${top}`).toBeLessThan(3 * tolerance + lost(name));
      }
      expect(count / places.length).toBeLessThan(most);
    }
  });

  it('of a curve that only rises or falls, is at its end', () => {
    for (const sign of [1, -1]) {
      const found = highestBetween((f) => 5 + sign * Math.log(f), 900, 2500, 1e-6);
      expect(found / (sign > 0 ? 2500 : 900)).toBeCloseTo(1, 4);
    }
  });
});
