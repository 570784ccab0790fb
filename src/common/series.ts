/** Preferred numbers of IEC 60063:2015, and the nearest of them to a wanted value. */

export const seriesNames = ['E3', 'E6', 'E12', 'E24', 'E48', 'E96'] as const;
export type SeriesName = (typeof seriesNames)[number];

/** Written out because eight of its values differ from the rounded geometric steps. */
const E24: readonly number[] = [
  10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
];

/** E48 and E96 follow round(100 · 10^(i/n)) without exception. */
const E96: readonly number[] = Array.from({ length: 96 }, (_, i) => Math.round(100 * 10 ** (i / 96)));

const everyNth = (values: readonly number[], n: number): readonly number[] =>
  values.filter((_, i) => i % n === 0);

/** One decade of a series, as two or three significant digits. */
export const series: Readonly<Record<SeriesName, readonly number[]>> = {
  E3: everyNth(E24, 8),
  E6: everyNth(E24, 4),
  E12: everyNth(E24, 2),
  E24,
  E48: everyNth(E96, 2),
  E96,
};

/** A series, or the values a workshop has in stock. */
export type AvailableValues = SeriesName | { readonly stock: readonly number[] };

/** A value with the next smaller and the next larger of the same choice; a short stock may lack either. */
interface Nearest {
  readonly value: number;
  readonly below?: number;
  readonly above?: number;
}

/**
 * The value nearest to `wanted` by ratio: a part of 250k is as far from 500k as one of 1M. Of two equally near, the
 * larger, as it loads less. `undefined` when there is nothing to be near to.
 *
 * @throws RangeError when the stock is empty or holds something other than a value: it is never ignored silently
 */
export function nearestAvailable(wanted: number, choice: AvailableValues): Nearest | undefined {
  const stock = typeof choice === 'string' ? undefined : inOrder(choice.stock);
  if (!(wanted > 0) || !Number.isFinite(wanted)) return undefined;
  const values = typeof choice === 'string' ? around(wanted, series[choice]) : (stock ?? []);
  const distance = (value: number) => Math.abs(Math.log(value / wanted));
  let best = 0;
  for (const [i, value] of values.entries()) if (distance(value) <= distance(values[best] ?? value)) best = i;
  const value = values[best];
  if (value === undefined) return undefined;
  const [below, above] = [values[best - 1], values[best + 1]];
  return { value, ...(below === undefined ? {} : { below }), ...(above === undefined ? {} : { above }) };
}

/** Three decades of a series about a value, in order. */
function around(wanted: number, decade: readonly number[]): readonly number[] {
  const first = decade[0] ?? 1;
  const power = Math.floor(Math.log10(wanted / first));
  return [power - 1, power, power + 1].flatMap((p) =>
    // Text keeps 470 · 10³ and 22 · 10⁻⁹ exact.
    decade.map((digits) => Number(`${digits}e${p}`)),
  );
}

function inOrder(stock: readonly number[]): readonly number[] {
  if (stock.length === 0) throw new RangeError('the stock is empty: give at least one value');
  const wrong = stock.find((value) => !(value > 0 && Number.isFinite(value)));
  if (wrong !== undefined) throw new RangeError(`the stock holds ${wrong}: values are more than zero`);
  return [...new Set(stock)].sort((a, b) => a - b);
}
