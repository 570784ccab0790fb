/**
 * Textbook circuits. Source of every figure: T. Kuphaldt, Lessons in Electric Circuits (Design Science License),
 * volume and chapter beside each; the book prints four digits, so everything is compared to 1e-3.
 */
import { describe, expect, it } from 'vitest';
import { impedanceOf } from '../../src/solve/measure.ts';
import { type Branch, capacitor, resistor, winding } from '../../src/solve/network.ts';
import type { Complex } from '../../src/solve/solver.ts';

const near = (value: number, expected: number) => expect(Math.abs(value / expected - 1)).toBeLessThan(1e-3);
const size = (z: Complex): number => Math.hypot(z.re, z.im);
const degrees = (z: Complex): number => (Math.atan2(z.im, z.re) * 180) / Math.PI;
/** Impedance from node 0 to node `to`. */
const z = (branches: readonly Branch[], frequency = 0, from = 0, to = 1): Complex =>
  impedanceOf(branches, { from, to }, frequency);

/** Voltage of `inner` to `ground` when `volts` stand from `top` to `ground`, by the network's impedances. */
function divided(
  branches: readonly Branch[],
  top: number,
  inner: number,
  ground: number,
  volts: number,
  f = 0,
) {
  // A source holds `top`: reciprocity gives V(inner)/I(top); three port impedances are enough to find it.
  const [zt, zi, zti] = [
    z(branches, f, top, ground),
    z(branches, f, inner, ground),
    z(branches, f, top, inner),
  ];
  const mutual = { re: (zt.re + zi.re - zti.re) / 2, im: (zt.im + zi.im - zti.im) / 2 };
  return (volts * size(mutual)) / size(zt);
}

describe('Lessons in Electric Circuits', () => {
  it('1 · I (DC) ch. 5: 9 V across 10k, 2k and 1k side by side', () => {
    near(z([resistor(0, 1, 10e3), resistor(0, 1, 2e3), resistor(0, 1, 1e3)]).re, 625);
    for (const [ohms, amperes] of [
      [10e3, 0.9e-3],
      [2e3, 4.5e-3],
      [1e3, 9e-3],
    ] as const)
      near(9 / z([resistor(0, 1, ohms)]).re, amperes);
  });

  it('2 · I (DC) ch. 7: series of two pairs', () => {
    const first = [resistor(0, 1, 100), resistor(0, 1, 250)];
    const second = [resistor(1, 2, 350), resistor(1, 2, 200)];
    near(z(first).re, 71.429);
    near(z(second, 0, 1, 2).re, 127.27);
    const all = [...first, ...second];
    near(z(all, 0, 0, 2).re, 198.7);
    near(24 / z(all, 0, 0, 2).re, 120.78e-3);
    near(24 - divided(all, 0, 1, 2, 24), 8.627);
    near(divided(all, 0, 1, 2, 24), 15.37);
  });

  it('3 · I (DC) ch. 8: a 10 MΩ meter loads a 250 MΩ divider', () => {
    const lower = [resistor(1, 2, 250e6), resistor(1, 2, 10e6)];
    near(z(lower, 0, 1, 2).re, 9.615e6);
    near(divided([resistor(0, 1, 250e6), ...lower], 0, 1, 2, 24), 0.8889);
  });

  const parts = { r: 250, l: 0.65, c: 1.5e-6 };

  it('4 · II (AC) ch. 5: R, L and C in series at 60 Hz', () => {
    const series = [resistor(0, 1, parts.r), winding(1, 2, 0, parts.l), capacitor(2, 3, parts.c)];
    const current = 120 / size(z(series, 60, 0, 3));
    near(current, 77.73e-3);
    near(current * size(z(series.slice(0, 1), 60, 0, 1)), 19.43);
    near(current * size(z(series.slice(1, 2), 60, 1, 2)), 19.05);
    near(current * size(z(series.slice(2), 60, 2, 3)), 137.5);
  });

  it('5 · II (AC) ch. 5: the same side by side', () => {
    const parallel = z([resistor(0, 1, parts.r), winding(0, 1, 0, parts.l), capacitor(0, 1, parts.c)], 60);
    near(120 / size(parallel), 0.639);
    near(-degrees(parallel), -41.31);
  });

  it('6 · II (AC) ch. 5: series and parallel mixed', () => {
    const mixed = z(
      [capacitor(0, 1, 4.7e-6), resistor(1, 3, 470), winding(1, 2, 0, 0.65), capacitor(2, 3, 1.5e-6)],
      60,
      0,
      3,
    );
    near(size(mixed), 818.34);
    near(degrees(mixed), -58.371);
  });

  it('7 · II (AC) ch. 6: 10 µF and 100 mH resonate', () => {
    // The reactance of the series pair changes sign at its resonance.
    const reactance = (f: number) => z([capacitor(0, 1, 10e-6), winding(1, 2, 0, 0.1)], f, 0, 2).im;
    let [low, high] = [10, 1000];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (reactance(middle) < 0) low = middle;
      else high = middle;
    }
    near(low, 159.155);
  });

  it('8 · II (AC) ch. 6: parallel tank with a resistive coil', () => {
    const tank = [capacitor(0, 1, 10e-6), winding(0, 1, 100, 0.1)];
    near(1 / size(z(tank, 100)), 7.387e-3);
    near(1 / size(z(tank, 136.84)), 6.813e-3);
    near(1 / size(z(tank, 200)), 8.616e-3);
  });

  const lowPass = [resistor(0, 1, 500), capacitor(1, 2, 7e-6)];

  it('9 · II (AC) ch. 8: corner of an RC low-pass', () => {
    let [low, high] = [1, 1000];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (divided(lowPass, 0, 1, 2, 1, middle) > Math.SQRT1_2) low = middle;
      else high = middle;
    }
    near(low, 45.473);
  });

  it('10 · II (AC) ch. 8: the same with a load', () => {
    const loaded = [...lowPass, resistor(1, 2, 1000)];
    near(divided(loaded, 0, 1, 2, 1, 30), 0.6102);
    near(divided(loaded, 0, 1, 2, 1, 80.53), 0.4309);
    near(divided(loaded, 0, 1, 2, 1, 150), 0.276);
  });
});
