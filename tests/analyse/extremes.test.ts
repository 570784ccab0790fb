/** The ends of a figure over a box of factors: exact where they are at corners, found where they lie inside, and in few steps. */
import { describe, expect, it } from 'vitest';
import { limitsOf } from '../../src/analyse/extremes.ts';
import { seeded } from '../../src/common/random.ts';

const random = seeded(12);
const between = (low: number, high: number): number => low + (high - low) * random();
type Figure = (factors: ReadonlyMap<string, number>) => number;

const box = (count: number) =>
  Array.from({ length: count }, (_, i) => ({
    of: `v${i}`,
    low: between(0.5, 0.95),
    high: between(1.05, 1.5),
  }));

/** The figure, which must never be asked outside the box; and how often it is asked. */
function watched(variables: ReturnType<typeof box>, figure: Figure) {
  const seen = { count: 0 };
  const asked: Figure = (factors) => {
    seen.count++;
    for (const { of, low, high } of variables) {
      const factor = factors.get(of) ?? 1;
      if (!(factor >= low && factor <= high)) throw new Error(`${of} at ${factor}`);
    }
    return figure(factors);
  };
  return { asked, seen };
}

/** Every corner, by counting. */
function corners(variables: ReturnType<typeof box>, figure: Figure): readonly number[] {
  return Array.from({ length: 2 ** variables.length }, (_, number) =>
    figure(
      new Map(
        variables.map(({ of, low, high }, i) => [of, Math.floor(number / 2 ** i) % 2 === 0 ? low : high]),
      ),
    ),
  );
}

it('of a figure that each value moves straight, whatever the others: the corner that is furthest out', () => {
  for (let i = 0; i < 80; i++) {
    const variables = box(1 + (i % 7));
    const terms = Array.from({ length: 12 }, () => ({
      factor: between(-1, 1),
      of: variables.filter(() => random() < 0.4).map(({ of }) => of),
    }));
    const figure: Figure = (factors) =>
      terms.reduce(
        (sum, { factor, of }) => sum + of.reduce((all, name) => all * (factors.get(name) ?? 1), factor),
        0,
      );
    const { asked } = watched(variables, figure);
    const { low, nominal, high, method } = limitsOf(variables, asked);
    const all = corners(variables, figure);
    expect(low).toBeCloseTo(Math.min(...all), 12);
    expect(high).toBeCloseTo(Math.max(...all), 12);
    expect([nominal, method]).toEqual([figure(new Map()), 'search']);
  }
});

describe('of one value', () => {
  const [of, low, high] = ['v0', 0.6, 1.4];
  const one = (curve: (x: number) => number) => {
    const { asked } = watched([{ of, low, high }], (factors) => curve(factors.get(of) ?? 1));
    return limitsOf([{ of, low, high }], asked);
  };
  it.each([0.22, 0.25, 0.3, 0.45, 0.5, 0.55, 0.7, 0.75, 0.8])(
    'a narrow top, and a narrow bottom, at %d of its range',
    (share) => {
      const at = low + share * (high - low);
      const bump = (x: number): number => Math.exp(-(((x - at) / 0.06) ** 2));
      expect(one((x) => 0.1 * x + bump(x)).high).toBeCloseTo(1 + 0.1 * at, 2);
      expect(one((x) => bump(x) + 1e-3 * x).high).toBeGreaterThan(1);
      expect(one((x) => 5 - bump(x) - 1e-3 * x).low).toBeLessThan(4);
      expect(one((x) => -((x - at) ** 2)).high).toBeCloseTo(0, 12);
      expect(one((x) => (x - at) ** 2).low).toBeCloseTo(0, 12);
    },
  );
  it('one that counts to one side only', () => {
    expect(one((x) => Math.max(0, x - 1))).toMatchObject({ low: 0, nominal: 0 });
    expect(one((x) => Math.max(0, x - 1)).high).toBeCloseTo(0.4, 12);
    expect(one((x) => Math.min(0, x - 1)).low).toBeCloseTo(-0.4, 12);
  });
  it('one that does not count, or a figure that is open or shorted whatever it is', () => {
    for (const value of [3, 0, Infinity])
      expect(one(() => value)).toEqual({ low: value, nominal: value, high: value, method: 'search' });
    expect(limitsOf([], () => 7)).toEqual({ low: 7, nominal: 7, high: 7, method: 'search' });
  });
});

it('of two that hang on each other finds the top of a ridge, from the middle or from a corner', () => {
  const variables = [
    { of: 'x', low: 0.5, high: 1.5 },
    { of: 'y', low: 0.5, high: 1.5 },
  ];
  for (let i = 0; i < 30; i++) {
    const [a, b, slope] = [between(0.9, 1.1), between(0.9, 1.1), between(-0.5, 0.5)];
    const { asked } = watched(variables, (factors) => {
      const [u, v] = [(factors.get('x') ?? 1) - a, (factors.get('y') ?? 1) - b];
      return -(u * u + v * v + slope * u * v);
    });
    expect(limitsOf(variables, asked).high).toBeCloseTo(0, 8);
  }
});

it('of many values asks some thousand times, where every corner of all would be sixteen thousand', () => {
  const variables = box(14);
  const { asked, seen } = watched(variables, (factors) =>
    variables.reduce((product, { of }, i) => product * (factors.get(of) ?? 1) ** (i % 2 ? -1 : 1), 1),
  );
  const { low, high } = limitsOf(variables, asked);
  const ends = variables.map(({ low: least, high: most }, i) =>
    i % 2 ? [1 / most, 1 / least] : [least, most],
  );
  expect(low).toBeCloseTo(
    ends.reduce((product, [least = 1]) => product * least, 1),
    12,
  );
  expect(high).toBeCloseTo(
    ends.reduce((product, [, most = 1]) => product * most, 1),
    12,
  );
  expect(seen.count).toBeLessThan(2500);
});
