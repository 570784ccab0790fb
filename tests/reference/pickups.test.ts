/** Pickups and resonance against published or closed-form figures. */
import { describe, expect, it } from 'vitest';
import { decibels, type Gain, shapeOf } from '../../src/analyse/peak.ts';
import { gainOf } from '../../src/analyse/response.ts';
import { type Branch, capacitor, resistor, type Winding, winding } from '../../src/solve/network.ts';
import { Solver } from '../../src/solve/solver.ts';
import { trackShare } from '../../src/solve/taper.ts';

/** Gain from the windings to node 1, against node 0. */
const gain = (windings: readonly Winding[], rest: readonly Branch[]): Gain =>
  gainOf({ solver: new Solver([...windings, ...rest], { from: 1, to: 0 }), windings }, windings);
const peak = (g: Gain): number => shapeOf(g).resonance?.frequency ?? NaN;

describe('the fixture with a closed form', () => {
  // H = 1 / (LC p² + (RC + L/Rq) p + 1 + R/Rq). Source: Zollner, Physik der Elektrogitarre; recomputed.
  const [r, l, c, q] = [8e3, 4.4, 100e-12, 250e3];
  const solved = gain([winding(1, 0, r, l)], [capacitor(1, 0, c), resistor(1, 0, q)]);
  const closed = (f: number): number => {
    const w = 2 * Math.PI * f;
    return 1 / Math.hypot(1 + r / q - l * c * w * w, (r * c + l / q) * w);
  };

  it('agrees with the closed form at every frequency', () => {
    for (let f = 20; f <= 20e3; f *= 1.07) expect(Math.abs(solved(f) / closed(f) - 1)).toBeLessThan(1e-11);
  });

  it('peaks at 6104.322 Hz by +1.897 dB, +2.171 dB above its own level at rest', () => {
    const { resonance } = shapeOf(solved);
    expect(resonance?.frequency).toBeCloseTo(6104.322, 2);
    expect(10 ** ((resonance?.level ?? 0) / 20)).toBeCloseTo(1.2441218, 6);
    expect(resonance?.level).toBeCloseTo(1.897, 3);
    expect((resonance?.level ?? 0) - decibels(solved(1e-3))).toBeCloseTo(2.171, 3);
    // The plateau is taken at 100 Hz, where this curve has risen by two thousandths of a decibel.
    expect(resonance?.height).toBeCloseTo(2.171, 2);
  });

  it('falls to half power where the closed form does', () => {
    const { cutoff, plateau } = shapeOf(solved);
    expect(decibels(closed(cutoff ?? 0)) - plateau).toBeCloseTo(20 * Math.log10(Math.SQRT1_2), 6);
  });
});

describe('a measured single coil without metal parts', () => {
  // Source: Zollner, Physik der Elektrogitarre, p. 5-111: R 4420 Ω, L 1.125 H, C 43 pF, and the resonances measured.
  it.each([
    [330e-12, 7.7e3],
    [700e-12, 5.5e3],
    [1030e-12, 4.6e3],
  ])('with %d F added it resonates where it was measured to, within 2 %%', (added, measured) => {
    const frequency = peak(
      gain([winding(1, 0, 4420, 1.125)], [capacitor(1, 0, 43e-12), capacitor(1, 0, added)]),
    );
    expect(Math.abs(frequency / measured - 1)).toBeLessThan(0.02);
  });
});

describe('pairs of equal coils', () => {
  // Source: circuit theory; the two coils uncoupled, the outer capacitance alone.
  const [r, l, c] = [100, 2.2, 400e-12];
  const one = peak(gain([winding(1, 0, r, l)], [capacitor(1, 0, c)]));
  const series = gain([winding(1, 2, r, l), winding(2, 0, r, l)], [capacitor(1, 0, c)]);
  const parallel = gain([winding(1, 0, r, l), winding(1, 0, r, l)], [capacitor(1, 0, c)]);

  it('in series are one winding of twice R and L, at twice the level', () => {
    const whole = gain([winding(1, 0, 2 * r, 2 * l)], [capacitor(1, 0, c)]);
    for (const f of [100, 1000, 5000]) expect(series(f)).toBeCloseTo(2 * whole(f), 9);
  });

  it('side by side are one winding of half R and L, at the same level', () => {
    const whole = gain([winding(1, 0, r / 2, l / 2)], [capacitor(1, 0, c)]);
    for (const f of [100, 1000, 5000]) expect(parallel(f)).toBeCloseTo(whole(f), 9);
  });

  it('double their resonance from series to side by side, and one alone gives √2 times the series', () => {
    expect(peak(parallel) / peak(series)).toBeCloseTo(2, 4);
    expect(one / peak(series)).toBeCloseTo(Math.SQRT2, 4);
  });
});

describe('the law of a track', () => {
  it('log: m = 0.15 gives b = 32.11 and 0.15 at half rotation', () => {
    expect((1 / 0.15 - 1) ** 2).toBeCloseTo(32.11, 2);
    expect(trackShare('log', 0.15, 0.5)).toBeCloseTo(0.15, 12);
    expect(trackShare('log', 0.15, 0.25)).toBeCloseTo((32.11 ** 0.25 - 1) / (32.11 - 1), 4);
  });

  it('reverse log is its mirror; linear is straight; both ends are exact', () => {
    for (const x of [0.1, 0.35, 0.5, 0.9])
      expect(trackShare('reverse-log', 0.2, x)).toBeCloseTo(1 - trackShare('log', 0.2, 1 - x), 12);
    expect(trackShare('linear', 0.15, 0.3)).toBe(0.3);
    expect(trackShare('log', 0.5, 0.3)).toBeCloseTo(0.3, 9);
    for (const taper of ['linear', 'log', 'reverse-log'] as const)
      expect([trackShare(taper, 0.15, 0), trackShare(taper, 0.15, 1)]).toEqual([0, 1]);
  });
});
