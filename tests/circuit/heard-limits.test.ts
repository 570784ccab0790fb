/**
 * Where a pickup ceases to be heard: at a hundredth of the loudest, or at a ten-thousandth of its own voltage, at whichever frequency
 * from 100 Hz to 5 kHz most of it arrives; the network worked out by a full matrix.
 */
import { describe, expect, it } from 'vitest';
import { type Branch, capacitor, resistor, winding } from '../../src/solve/network.ts';
import { LISTENED, transfersOf } from '../../src/solve/sounding.ts';
import { border } from '../analyse/border.ts';
import { type Compact, makeCircuit } from '../analyse/kits.ts';
import { transfer } from './dense.ts';

const coil = { kind: 'single-coil', resistance: 6000, inductance: 2.4, capacitance: 120e-12 };
const sounding = (compact: Compact): readonly string[] => makeCircuit(compact).states[0]?.sounding ?? [];
/** Third-octaves from 100 Hz to 5 kHz, base ten (IEC 61260-1). */
const bands = Array.from({ length: 18 }, (_, k) => 100 * 10 ** (k / 10));
const plugged = [capacitor(1, 0, 300e-12), resistor(1, 0, 1e6)];
const sizes = (branches: readonly Branch[], source: Branch): readonly number[] =>
  bands.map((frequency) => {
    const { re, im } = transfer([...branches, ...plugged], { from: 1, to: 0 }, frequency, source);
    return Math.hypot(re, im);
  });

it('is listened to in third-octaves from 100 Hz to 5 kHz', () => {
  expect(LISTENED).toHaveLength(18);
  for (const [k, hertz] of bands.entries()) expect((LISTENED[k] ?? 0) / hertz).toBeCloseTo(1, 12);
});

describe('a pickup is heard', () => {
  it('with more than a hundredth of the loudest, somewhere', () => {
    const two = (ohms: number): Compact => ({
      parts: { a: coil, b: coil, far: { kind: 'resistor', value: ohms }, out: { kind: 'jack' } },
      joints: [
        'a.hot > out.tip',
        'a.ground > out.sleeve',
        'b.hot > far.1',
        'far.2 > out.tip',
        'b.ground > out.sleeve',
      ],
    });
    const [heard, not] = border(1e3, 1e9, (ohms) => sounding(two(ohms)).includes('b'));
    const [a, b] = [winding(1, 0, 6000, 2.4), winding(2, 0, 6000, 2.4)];
    const branches = [a, b, capacitor(1, 0, 120e-12), capacitor(2, 0, 120e-12), resistor(2, 1, heard)];
    const [loud, quiet] = [sizes(branches, a), sizes(branches, b)];
    expect(Math.max(...quiet.map((size, k) => size / (loud[k] ?? NaN)))).toBeCloseTo(0.01, 8);
    expect(sounding(two(not))).toEqual(['a']);
  });

  it('alone with more than a ten-thousandth of what is induced, somewhere', () => {
    const one = (ohms: number): Compact => ({
      parts: {
        a: coil,
        far: { kind: 'resistor', value: '100M' },
        short: { kind: 'resistor', value: ohms },
        out: { kind: 'jack' },
      },
      joints: [
        'a.hot > far.1',
        'far.2 > out.tip',
        'a.ground > out.sleeve',
        'short.1 > out.tip',
        'short.2 > out.sleeve',
      ],
    });
    const [silent, heard] = border(100, 1e8, (ohms) => sounding(one(ohms)).length > 0);
    const source = winding(2, 0, 6000, 2.4);
    const branches = [source, capacitor(2, 0, 120e-12), resistor(2, 1, 100e6), resistor(1, 0, heard)];
    expect(Math.max(...sizes(branches, source)) / 1e-4).toBeCloseTo(1, 6);
    expect(sounding(one(silent))).toEqual([]);
  });
});

it('volts at the jack are those of all coils of a pickup together, in the order they are asked for', () => {
  const own = (a: number, b: number, pickup: string): Branch => ({ ...winding(a, b, 6000, 2.4), pickup });
  const branches = [
    own(1, 2, 'p'),
    own(2, 0, 'p'),
    own(0, 1, 'q'),
    winding(1, 0, 5000, 2),
    resistor(1, 0, 2e5),
  ];
  const found = transfersOf(branches, { from: 1, to: 0 }, [3000, 200]);
  expect([...found.keys()]).toEqual(['p', 'q']);
  for (const [i, frequency] of [3000, 200].entries()) {
    const each = branches.slice(0, 3).map((one) => transfer(branches, { from: 1, to: 0 }, frequency, one));
    const [first, second, turned] = each;
    expect(found.get('p')?.[i]?.re).toBeCloseTo((first?.re ?? NaN) + (second?.re ?? NaN), 10);
    expect(found.get('p')?.[i]?.im).toBeCloseTo((first?.im ?? NaN) + (second?.im ?? NaN), 10);
    expect(found.get('q')?.[i]?.re).toBeCloseTo(turned?.re ?? NaN, 10);
  }
  expect(transfersOf(branches, undefined).size + transfersOf(branches, { from: 1, to: 1 }).size).toBe(0);
  // At the resonance of a lossless circuit there is no answer, and none is given.
  const tank = [{ ...winding(0, 1, 0, 1), pickup: 'p' }, capacitor(0, 1, 1)];
  expect(transfersOf(tank, { from: 0, to: 1 }, [1 / (2 * Math.PI)]).get('p')).toEqual([{ re: 0, im: 0 }]);
});
