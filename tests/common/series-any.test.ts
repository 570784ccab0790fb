/** The nearest preferred value to any wanted one, against a search through every decade (IEC 60063). */
import { describe, expect, it } from 'vitest';
import { seeded } from '../../src/common/random.ts';
import { nearestAvailable, series, seriesNames } from '../../src/common/series.ts';

const random = seeded(60063);
/** Over all the sizes that parts have, from picofarads to gigaohms, as likely in one decade as in the next. */
const anyValue = (): number => 10 ** (random() * 20 - 11);

function bySearch(wanted: number, values: readonly number[]) {
  const off = values.map((value) => Math.abs(Math.log10(value) - Math.log10(wanted)));
  const i = off.indexOf(Math.min(...off));
  const [value, below, above] = [values[i], values[i - 1], values[i + 1]];
  return {
    value,
    ...(below === undefined ? {} : { below }),
    ...(above === undefined ? {} : { above }),
  };
}

describe.each(seriesNames)('%s', (name) => {
  const digits = series[name];
  const all = Array.from({ length: 26 }, (_, i) => digits.map((d) => Number(`${d}e${i - 15}`))).flat();

  it('has the nearest, with its neighbours, for any value', () => {
    for (let i = 0; i < 100; i++) {
      const wanted = anyValue();
      expect(nearestAvailable(wanted, name), String(wanted)).toEqual(bySearch(wanted, all));
    }
  });

  it('has each of its own values exactly, in every decade', () => {
    const wrong = all.filter((value, i) => {
      if (i % 3 > 0) return false;
      const found = nearestAvailable(value, name);
      const inside = i > 0 && i < all.length - 1;
      return inside && !(found?.value === value && found.below === all[i - 1] && found.above === all[i + 1]);
    });
    expect(wrong).toEqual([]);
  });
});

it('of a stock in any order, each value once', () => {
  for (let i = 0; i < 300; i++) {
    const stock = Array.from({ length: 1 + Math.floor(random() * 6) }, anyValue);
    const wanted = anyValue();
    const found = nearestAvailable(wanted, { stock: [...stock, ...stock] });
    expect(found).toEqual(
      bySearch(
        wanted,
        [...stock].sort((a, b) => a - b),
      ),
    );
  }
});

it('takes the larger of two equally near, whichever was named first', () => {
  for (const stock of [
    [100, 400],
    [400, 100],
  ])
    expect(nearestAvailable(200, { stock })).toEqual({ value: 400, below: 100 });
});

it('a stock with values below one is a stock like any other', () => {
  expect(nearestAvailable(0.5, { stock: [0.47, 0.22] })).toEqual({ value: 0.47, below: 0.22 });
  expect(nearestAvailable(-5, 'E12')).toBeUndefined();
  expect(nearestAvailable(Number.NaN, 'E12')).toBeUndefined();
  expect(() => nearestAvailable(1, { stock: [0.5, 0] })).toThrow('the stock holds 0');
  expect(() => nearestAvailable(1, { stock: [0.5, Number.POSITIVE_INFINITY] })).toThrow(
    'the stock holds Infinity',
  );
});
