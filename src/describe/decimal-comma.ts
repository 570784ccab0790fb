/**
 * Decimal commas inside braces: `{ kind: pot, value: 5,7k }` reads as the value 5 and a key `7k` without a value, and
 * the word about that key would help nobody.
 */
import { type KeyPath, type Problem, problem } from '../common/problem.ts';

interface DecimalCommas {
  /** By the path of the key that is the number's second half. */
  readonly at: ReadonlyMap<string, Problem>;
  /** Paths of the values that are its first half. */
  readonly halves: ReadonlySet<string>;
}

/** The second half of a number, with its prefix and unit. */
const HALF = /^\d+\s*[a-zA-Zµμ]{0,3}$/;

/** @param unknown paths of the keys that no schema knows, within `value` */
export function decimalCommas(unknown: readonly KeyPath[], value: unknown, base: KeyPath): DecimalCommas {
  const at = new Map<string, Problem>();
  const halves = new Set<string>();
  for (const path of unknown) {
    const inside = path.slice(0, -1);
    const key = String(path.at(-1));
    const map = inside.reduce<unknown>((v, step) => (isMap(v) ? v[String(step)] : undefined), value);
    if (!isMap(map) || !HALF.test(key) || map[key] !== null) continue;
    const before = halfBefore(map, key);
    const number = before === undefined ? undefined : String(map[before]);
    if (before !== undefined) halves.add([...inside, before].join('.'));
    at.set(
      path.join('.'),
      problem(
        'decimal-comma',
        [...base, ...path],
        number === undefined ? { got: key } : { got: `${number},${key}`, meant: `${number}.${key}` },
        'key',
      ),
    );
  }
  return { at, halves };
}

const isMap = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The key before with a whole number; a key of digits alone loses its place, and then the only such value will do. */
function halfBefore(map: Readonly<Record<string, unknown>>, key: string): string | undefined {
  const keys = Object.keys(map);
  const whole = keys.filter((one) => Number.isInteger(map[one]));
  const before = keys[keys.indexOf(key) - 1];
  if (before !== undefined && whole.includes(before)) return before;
  return whole.length === 1 ? whole[0] : undefined;
}
