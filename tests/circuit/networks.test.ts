/**
 * Networks drawn by chance, with islands, loose ends, branches side by side and branches shorted upon themselves, solved a second time
 * by `dense.ts`: what a port shows, what each winding gives there, and the loads that are read off it.
 */
import { describe, expect, it } from 'vitest';
import { seeded } from '../../src/common/random.ts';
import { directResistance, impedanceOf, loadsOf, parallelResistanceOf } from '../../src/solve/measure.ts';
import {
  type Branch,
  capacitor,
  inductanceOf,
  joinNodes,
  resistor,
  winding,
  withoutPickups,
} from '../../src/solve/network.ts';
import { Solver } from '../../src/solve/solver.ts';
import { makeSystem, solveInPlace } from '../../src/solve/system.ts';
import { type Complex, impedance, transfer } from './dense.ts';

const random = seeded(20);
const below = (n: number): number => Math.floor(random() * n);
/** Evenly on a logarithmic axis. */
const between = (low: number, high: number): number => low * (high / low) ** random();

function network(nodes: number, count: number): readonly Branch[] {
  return Array.from({ length: count }, (_, i): Branch => {
    const [a, b] = [below(nodes), below(nodes)];
    if (random() < 0.4) return resistor(a, b, between(1e3, 1e6), `r${i}`);
    if (random() < 0.5) return capacitor(a, b, between(1e-10, 1e-7), `c${i}`);
    return winding(a, b, between(1e3, 2e4), between(0.5, 10), `l${i}`);
  });
}

const cases = Array.from({ length: 150 }, (_, i) => {
  const nodes = 2 + below(i % 3 === 0 ? 12 : 5);
  return {
    branches: network(nodes, 1 + below(2 * nodes)),
    port: { from: below(nodes), to: below(nodes) },
    frequency: between(20, 20e3),
  };
});

const near = (found: Complex, wanted: Complex, scale = Math.hypot(wanted.re, wanted.im)): void => {
  expect(Math.hypot(found.re - wanted.re, found.im - wanted.im)).toBeLessThanOrEqual(1e-8 * scale);
};

describe('networks by chance', () => {
  it('are open, shorted and neither', () => {
    const kinds = cases.map(({ branches, port }) => {
      const { open, shorted } = new Solver(branches, port);
      return open ? 'open' : shorted ? 'shorted' : 'neither';
    });
    for (const [kind, least] of [
      ['open', 10],
      ['shorted', 10],
      ['neither', 60],
    ] as const)
      expect(kinds.filter((one) => one === kind).length, kind).toBeGreaterThan(least);
  });

  it.each(cases.map((one, i) => [i, one] as const))('%i', (_, { branches, port, frequency }) => {
    const solver = new Solver(branches, port);
    const found = impedanceOf(branches, port, frequency);
    const windings = branches.flatMap((branch) => (branch.kind === 'winding' ? [branch] : []));
    const direct = branches.filter(({ kind }) => kind !== 'capacitor');
    expect(solver.shorted).toBe(port.from === port.to);
    if (port.from === port.to) {
      expect(solver.open).toBe(false);
      expect(found).toEqual({ re: 0, im: 0 });
      expect(loadsOf(branches, port, frequency)).toEqual({ dcLoad: 0, signalLoad: 0 });
      return;
    }
    const wanted = impedance(branches, port, frequency);
    expect(solver.open).toBe(wanted === undefined);
    const still = impedance(direct, port, 0);
    expect(directResistance(branches, port) === Infinity).toBe(still === undefined);
    if (still) near({ re: directResistance(branches, port), im: 0 }, still);
    if (!wanted) {
      expect(found).toEqual({ re: Infinity, im: 0 });
      expect(loadsOf(branches, port, frequency).signalLoad).toBe(Infinity);
      return;
    }
    near(found, wanted);
    expect(solver.solve(frequency)).toBe(true);
    near(solver.impedance(), wanted);
    for (const one of windings)
      near(solver.transfer(one, frequency), transfer(branches, port, frequency, one), 1);
    const { signalLoad, dcLoad } = loadsOf(branches, port, frequency);
    expect(dcLoad).toBe(directResistance(branches, port));
    if (wanted.re > 1e-6 * Math.abs(wanted.im))
      near({ re: signalLoad, im: 0 }, { re: (wanted.re ** 2 + wanted.im ** 2) / wanted.re, im: 0 });
  });

  it('with factors on their values are the networks of those values, and without again what they were', () => {
    for (const { branches, port, frequency } of cases) {
      const solver = new Solver(branches, port);
      if (solver.open || solver.shorted) continue;
      const first = solver.solve(frequency) && solver.impedance();
      const factors = new Map<string, number>();
      const factor = (of: string): number => {
        const chosen = random() < 0.3 ? 1 : between(0.5, 2);
        if (chosen !== 1) factors.set(of, chosen);
        return chosen;
      };
      const scaled = branches.map((branch): Branch => {
        if (branch.kind === 'resistor') return { ...branch, ohms: branch.ohms * factor(branch.of) };
        if (branch.kind === 'capacitor') return { ...branch, farads: branch.farads * factor(branch.of) };
        const { of, ohms, henries } = branch;
        return { ...branch, ohms: ohms * factor(of), henries: henries * factor(inductanceOf(of)) };
      });
      solver.scale(factors);
      solver.solve(frequency);
      near(solver.impedance(), impedance(scaled, port, frequency) ?? { re: NaN, im: NaN });
      for (const [i, one] of branches.entries())
        if (one.kind === 'winding' && scaled[i])
          near(solver.transfer(one, frequency), transfer(scaled, port, frequency, scaled[i]), 1);
      solver.scale(new Map());
      solver.solve(frequency);
      expect(solver.impedance()).toEqual(first);
    }
  });

  it('with two nodes made one hold the branches that still lead somewhere, and without a pickup the others', () => {
    for (const { branches, port, frequency } of cases) {
      const [kept, gone] = [port.to, 0];
      const moved = joinNodes(branches, kept, gone);
      expect(moved.every(({ a, b }) => a !== b && (a !== gone || gone === kept))).toBe(true);
      if (port.from === gone || port.from === kept || gone === kept) continue;
      // A branch of no resistance to speak of does the same.
      const tied = impedance([...branches, resistor(kept, gone, 1e-6)], port, frequency);
      const found = impedanceOf(moved, port, frequency);
      if (tied) expect(Math.hypot(found.re - tied.re, found.im - tied.im)).toBeLessThan(1e-2);
      else expect(found.re).toBe(Infinity);
    }
    const two = [
      resistor(0, 1, 1),
      { ...resistor(1, 2, 2), pickup: 'p' },
      { ...resistor(1, 2, 3), pickup: 'q' },
    ];
    expect(withoutPickups(two, (name) => name === 'p')).toEqual([two[0], two[2]]);
    expect(withoutPickups(two, () => true)).toEqual([two[0]]);
  });
});

describe('what is no load', () => {
  /** 1 pF at 1 kHz has 159 MΩ. */
  const load = (ohms: number): number =>
    parallelResistanceOf(
      new Solver([capacitor(0, 1, 1e-12), resistor(1, 2, ohms)], { from: 0, to: 2 }),
      1000,
    );
  const reactance = 1 / (2 * Math.PI * 1000 * 1e-12);
  it('two capacitors, of which rounding leaves less than a part in 10¹³', () => {
    expect(load(0.8e-13 * reactance)).toBe(Infinity);
    const pure = [capacitor(0, 1, 3e-9), capacitor(1, 2, 7e-10), capacitor(0, 2, 1e-10)];
    expect(loadsOf(pure, { from: 0, to: 2 }, 1000)).toEqual({ dcLoad: Infinity, signalLoad: Infinity });
  });
  it('a resistor of a little more behind a capacitor is one: X²/R', () => {
    for (const share of [1.2e-13, 1e-12, 1e-6])
      expect(load(share * reactance) / (reactance / share)).toBeCloseTo(1, 2);
  });
});

describe('the equations', () => {
  /** One row: a conductance and a susceptance. */
  const single = (re: number, im: number) => {
    const system = makeSystem(1, []);
    system.re[0] = re;
    system.im[0] = im;
    system.xr[0] = 1;
    return { solved: solveInPlace(system), system };
  };
  it('of one row are solved, however small it is', () => {
    const { solved, system } = single(3e-9, 4e-9);
    expect(solved).toBe(true);
    expect((system.xr[0] ?? 0) / 1.2e8).toBeCloseTo(1, 12);
    expect((system.xi[0] ?? 0) / -1.6e8).toBeCloseTo(1, 12);
  });
  it.each([
    [0, 0],
    [NaN, 0],
    [0, Infinity],
  ])('of a pivot of %d + j%d are called singular', (re, im) => expect(single(re, im).solved).toBe(false));

  it('a lossless coil and capacitor at their resonance have none', () => {
    // 1 H and 1 F at 1 rad/s, of which the susceptances are 1 and −1.
    const tank = [winding(0, 1, 0, 1), capacitor(0, 1, 1)];
    const solver = new Solver(tank, { from: 0, to: 1 });
    expect(solver.solve(1 / (2 * Math.PI))).toBe(false);
    expect(impedanceOf(tank, { from: 0, to: 1 }, 1 / (2 * Math.PI))).toEqual({ re: Infinity, im: 0 });
    expect(parallelResistanceOf(solver, 1 / (2 * Math.PI))).toBe(Infinity);
  });

  it('of a tree fill in nothing: each row but the last has one other', () => {
    for (let size = 1; size < 40; size++) {
      // Each row hangs on one that comes before it in an order by chance.
      const names = Array.from({ length: size }, (_, i) => i).sort(() => random() - 0.5);
      const pairs = names.slice(1).map((name, i) => [name, names[below(i + 1)] ?? 0] as const);
      const { re, im, plan } = makeSystem(size, [...pairs, ...pairs.map(([a, b]) => [b, a] as const)]);
      expect([re.length, im.length, plan.rows.length]).toEqual([2 * size - 1, 2 * size - 1, size - 1]);
      expect([...plan.order].sort((a, b) => a - b)).toEqual([...names].sort((a, b) => a - b));
    }
  });

  it('give each row and each pair of the pattern a place of its own, whichever is named first', () => {
    const system = makeSystem(5, [
      [0, 3],
      [3, 4],
      [4, 0],
      [1, 4],
      [2, 1],
    ]);
    const places = [0, 1, 2, 3, 4].map((i) => system.slot(i, i));
    expect(places).toEqual([0, 1, 2, 3, 4]);
    for (const [i, j] of [
      [0, 3],
      [3, 4],
      [4, 0],
      [1, 4],
      [2, 1],
    ] as const) {
      expect(system.slot(i, j)).toBe(system.slot(j, i));
      expect(places).not.toContain(system.slot(i, j));
      expect(system.slot(i, j)).toBeLessThan(system.re.length);
      places.push(system.slot(i, j));
    }
  });
});
