/**
 * Electrical quantities as a workshop writes them. Inside the program everything is SI: ohms, farads,
 * henries, hertz, metres. Two prefixes never meet in one number.
 */

/** The three quantities a part's value can be. */
export type Unit = 'ohm' | 'farad' | 'henry';

/** Where a value came from: written by the user, filled in from a default, or worked out. */
type Origin = 'given' | 'default' | 'computed';

/** A value that remembers where it came from. */
export interface Sourced<T = number> {
  readonly value: T;
  readonly from: Origin;
}

export const given = <T>(value: T): Sourced<T> => ({ value, from: 'given' });

/** The given value, or the default marked as such. */
export const givenOr = <T>(value: T | undefined, fallback: T): Sourced<T> =>
  value === undefined ? { value: fallback, from: 'default' } : { value, from: 'given' };

const PREFIX: Readonly<Record<string, number>> = {
  p: -12,
  n: -9,
  u: -6,
  µ: -6,
  μ: -6,
  m: -3,
  '': 0,
  R: 0,
  r: 0,
  k: 3,
  K: 3,
  M: 6,
  G: 9,
};

const UNIT_NAMES: Readonly<Record<Unit, RegExp>> = {
  ohm: /(?:Ω|Ω|ohms?)$/i,
  farad: /(?:F|farads?)$/,
  henry: /(?:H|henr(?:y|ies))$/,
};

/** Prefixes that make sense for a unit; `m` is milli, `M` mega, and mixing them up is the most common mistake. */
const ALLOWED: Readonly<Record<Unit, string>> = {
  ohm: 'm R r k K M G',
  farad: 'p n u µ μ m',
  henry: 'u µ μ m',
};

/**
 * Reads a quantity: `470k`, `4k7`, `0.022u`, `22n`, `1M`, `2.4H`, `470 kΩ`, `1e3`, or a plain number in SI.
 * The infix form (`4k7`, `R47`) is that of IEC 60062.
 *
 * @returns the value in SI units, or `undefined` when the text is not a quantity of that unit. The sign is
 *   kept, so that the caller can say what is wrong with a negative value.
 */
export function parseQuantity(text: string | number, unit: Unit): number | undefined {
  if (typeof text === 'number') return Number.isFinite(text) ? text : undefined;
  const bare = text.trim().replace(UNIT_NAMES[unit], '').trim();
  const plain = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*([a-zA-Zµμ]?)$/.exec(bare);
  const infix = /^([+-]?\d*)([a-zA-Zµμ])(\d+)$/.exec(bare);
  const [digits, prefix] = plain
    ? [plain[1] ?? '', plain[2] ?? '']
    : infix
      ? [`${infix[1] || '0'}.${infix[3]}`, infix[2] ?? '']
      : ['', '?'];
  const power = PREFIX[prefix];
  if (power === undefined || (prefix !== '' && !ALLOWED[unit].split(' ').includes(prefix))) return undefined;
  // Appending the exponent to the digits keeps 0.022u exactly 2.2e-8, where a multiplication would not.
  const [mantissa, exponent = '0'] = digits.split(/[eE]/);
  const value = Number(`${mantissa}e${Number(exponent) + power}`);
  return Number.isFinite(value) ? value : undefined;
}

/** A quantity as a description writes it, `470k` or `2.2M`: `parseQuantity` reads the very value back. */
export function writeQuantity(value: number, unit: Unit): string {
  for (const prefix of ['G', 'M', 'k', '', 'm', 'u', 'n', 'p']) {
    const digits = Number((value / 10 ** (PREFIX[prefix] ?? 0)).toPrecision(12));
    const text = `${digits}${prefix}`;
    if (Math.abs(digits) >= 1 && parseQuantity(text, unit) === value) return text;
  }
  return String(value);
}

const SYMBOL: Readonly<Record<Unit, string>> = { ohm: 'Ω', farad: 'F', henry: 'H' };
const SCALE: readonly (readonly [number, string])[] = [
  [9, 'G'],
  [6, 'M'],
  [3, 'k'],
  [0, ''],
  [-3, 'm'],
  [-6, 'µ'],
  [-9, 'n'],
  [-12, 'p'],
];

/**
 * Prints a quantity for people: `470 kΩ`, `22 nF`, `2.4 H`, with at most `figures` significant figures and
 * no trailing zeros, a true minus. An infinite resistance reads `open`.
 */
export const formatQuantity = (value: number, unit: Unit, figures = 3): string =>
  printed(value, unit, figures, (figure) => String(Number(figure)));

/** Prints a figure that was solved or measured, with three significant figures, zeros too, so that figures side by side are equally exact. */
export const formatFigure = (value: number, unit: Unit): string =>
  printed(value, unit, 3, (figure) => figure);

function printed(value: number, unit: Unit, figures: number, digits: (figure: string) => string): string {
  if (!Number.isFinite(value)) return 'open';
  if (value === 0) return `0 ${SYMBOL[unit]}`;
  const rounded = Number(value.toPrecision(figures));
  const size = Math.abs(rounded);
  const scales = unit === 'farad' ? SCALE.slice(4) : SCALE;
  const [power, prefix] = scales.find(([p]) => size >= Number(`1e${p}`)) ??
    scales[scales.length - 1] ?? [0, ''];
  const figure = digits((rounded / Number(`1e${power}`)).toPrecision(figures));
  return `${figure.replace('-', '−')} ${prefix}${SYMBOL[unit]}`;
}
