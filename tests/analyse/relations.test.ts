/**
 * How pickups are joined, at the border between series and parallel: a value is turned until the answer changes, and there the short of
 * the one pickup must let as much of the other pass as the gap does, by a full matrix of the sizes of all impedances at 1 kHz.
 */
import { describe, expect, it } from 'vitest';
import { solveLoads } from '../../src/analyse/index.ts';
import type { Branch } from '../../src/solve/network.ts';
import { capacitor, resistor, winding } from '../../src/solve/network.ts';
import { transfer } from '../circuit/dense.ts';
import { border } from './border.ts';
import { type Compact, makeCircuit } from './kits.ts';

const OMEGA = 2 * Math.PI * 1000;
const A = { r: 6000, l: 3, c: 200e-12, loss: 300e3 };

/**
 * Pickup `a` at n, 300 kΩ from n to the tip; `b` from n to m, with 20 kΩ from m to the tip and a part from m to the sleeve. A short of
 * `b` passes more of `a` to the tip the larger that part is.
 */
const kit = (part: Compact['parts'][string]): Compact => ({
  parts: {
    a: { kind: 'single-coil', resistance: A.r, inductance: A.l, capacitance: A.c, 'core-loss': A.loss },
    b: { kind: 'single-coil' },
    over: { kind: 'resistor', value: '300k' },
    up: { kind: 'resistor', value: '20k' },
    part,
    out: { kind: 'jack' },
  },
  joints: [
    'a.ground > out.sleeve',
    'a.hot > over.1',
    'over.2 > out.tip',
    'a.hot > b.hot',
    'b.ground > up.1',
    'up.2 > out.tip',
    'b.ground > part.1',
    'part.2 > out.sleeve',
  ],
});
const isInSeries = (part: Compact['parts'][string]): boolean =>
  solveLoads(makeCircuit(kit(part)))[0]
    ?.pickups.find(({ pickup }) => pickup === 'a')
    ?.series.includes('b') ?? false;

/** What of `a` arrives at the tip (1) from the sleeve (0), with n 2 and m 3 or the same. */
function passed(down: number, shorted: boolean): number {
  const m = shorted ? 2 : 3;
  const source = winding(2, 0, Math.hypot(A.r, OMEGA * A.l), 0);
  const branches: readonly Branch[] = [
    source,
    resistor(2, 0, 1 / (OMEGA * A.c)),
    resistor(2, 0, A.loss),
    resistor(2, 1, 300e3),
    resistor(m, 1, 20e3),
    resistor(m, 0, down),
    resistor(1, 0, 1 / (OMEGA * 300e-12)),
    resistor(1, 0, 1e6),
  ];
  return Math.abs(transfer(branches, { from: 1, to: 0 }, 1000, source).re);
}

describe('in series while a short passes more than a gap', () => {
  it.each([
    ['a resistor', 1e3, 1e6, (value: number) => ({ kind: 'resistor', value }), (value: number) => value],
    [
      'a capacitor, by its size at 1 kHz',
      1e-10,
      1e-6,
      (value: number) => ({ kind: 'capacitor', value }),
      (value: number) => 1 / (OMEGA * value),
    ],
  ] as const)('%s', (_, least, most, part, size) => {
    const [low] = border(least, most, (value) => isInSeries(part(value)));
    expect(passed(size(low), true) / passed(size(low), false)).toBeCloseTo(1, 6);
  });
});

describe('levels and phases', () => {
  const two = (joints: readonly string[], parts: Compact['parts'] = {}): Compact => ({
    parts: { a: { kind: 'single-coil' }, b: { kind: 'single-coil' }, out: { kind: 'jack' }, ...parts },
    joints,
  });
  const loads = (compact: Compact) => solveLoads(makeCircuit(compact))[0];
  const parallel = ['a.hot > out.tip', 'b.hot > out.tip', 'a.ground > out.sleeve', 'b.ground > out.sleeve'];
  const turned = ['a.hot > out.tip', 'b.ground > out.tip', 'a.ground > out.sleeve', 'b.hot > out.sleeve'];
  const series = ['a.hot > out.tip', 'a.ground > b.hot', 'b.ground > out.sleeve'];
  const opposed = ['a.hot > out.tip', 'a.ground > b.ground', 'b.hot > out.sleeve'];

  it.each([
    ['side by side', parallel, [], ['b'], false],
    ['side by side, one turned', turned, [], ['b'], true],
    ['end to end', series, ['b'], [], false],
    ['end to end, one turned', opposed, ['b'], [], true],
  ] as const)('%s', (_, joints, inSeries, inParallel, against) => {
    const found = loads(two(joints));
    const [a, b] = found?.pickups ?? [];
    expect(a).toMatchObject({ series: inSeries, parallel: inParallel, outOfPhase: against ? ['b'] : [] });
    expect(b?.outOfPhase).toEqual(against ? ['a'] : []);
    expect([a?.reversed, b?.reversed]).toEqual([false, against]);
    expect([a?.level, b?.level]).toEqual([0, 0]);
    // Two alike, one against the other, leave nothing.
    expect(found?.silentTogether).toBe(against);
  });

  it('two against each other of which one is twice the other in size are heard', () => {
    const parts = { b: { kind: 'single-coil', resistance: '12k', inductance: '6H' } };
    expect(loads(two(turned, parts))?.silentTogether).toBe(false);
  });

  it('are heard as soon as more than a hundredth of the louder is left', () => {
    // Side by side into next to nothing each gives in inverse proportion to its impedance.
    const left = (share: number) =>
      loads(
        two(turned, {
          a: { kind: 'single-coil', resistance: 6000, inductance: 3, capacitance: '0.1p' },
          b: { kind: 'single-coil', resistance: 6000 * share, inductance: 3 * share, capacitance: '0.1p' },
        }),
      )?.silentTogether;
    for (const [share, silent] of [
      [1, true],
      [1.0095, true],
      [1 / 1.0095, true],
      [1.0106, false],
      [1 / 1.0106, false],
    ] as const)
      expect(left(share), `${share}`).toBe(silent);
  });

  it('the level of each is what it gives beside the loudest; of one alone, beside its reference harness', () => {
    const coil = { r: 6000, l: 2.4, c: 120e-12 };
    const own = { kind: 'single-coil', resistance: coil.r, inductance: coil.l, capacitance: coil.c };
    const source = (hot: number) => winding(hot, 0, coil.r, coil.l);
    const plugged = [capacitor(1, 0, 300e-12), resistor(1, 0, 1e6)];
    const size = (branches: readonly Branch[], from: Branch): number => {
      const { re, im } = transfer([...branches, ...plugged], { from: 1, to: 0 }, 1000, from);
      return Math.hypot(re, im);
    };
    // `a` at the tip (1), `b` at 2 behind 100 kΩ.
    const [a, b] = [source(1), source(2)];
    const both = [a, capacitor(1, 0, coil.c), b, capacitor(2, 0, coil.c), resistor(2, 1, 100e3)];
    const joints = [
      ...parallel.filter((joint) => !joint.startsWith('b.hot')),
      'b.hot > drop.1',
      'drop.2 > out.tip',
    ];
    const found = loads(two(joints, { a: own, b: own, drop: { kind: 'resistor', value: '100k' } }));
    expect(found?.pickups[0]?.level).toBe(0);
    expect(found?.pickups[1]?.level).toBeCloseTo(20 * Math.log10(size(both, b) / size(both, a)), 9);

    // Alone behind 1 MΩ; in its reference harness 250 kΩ, and 250 kΩ behind 22 nF.
    const far = [b, capacitor(2, 0, coil.c), resistor(2, 1, 1e6)];
    const plain = [
      a,
      capacitor(1, 0, coil.c),
      resistor(1, 0, 250e3),
      resistor(1, 3, 250e3),
      capacitor(3, 0, 22e-9),
    ];
    const alone = loads({
      parts: { a: own, out: { kind: 'jack' }, drop: { kind: 'resistor', value: '1M' } },
      joints: ['a.hot > drop.1', 'drop.2 > out.tip', 'a.ground > out.sleeve'],
    });
    expect(alone?.output).toBeCloseTo(20 * Math.log10(size(far, b) / size(plain, a)), 9);
    expect(alone?.pickups[0]?.level).toBe(alone?.output);
    expect(alone?.silentTogether).toBe(false);
    // The output of two is that of the one that loses least, the other taken out; no more than all of it.
    expect(found?.output).toBe(0);
  });

  it('nothing sounding is no loss', () => {
    expect(loads(two(['a.hot > out.tip']))).toMatchObject({ output: 0, pickups: [], silentTogether: false });
  });
});
