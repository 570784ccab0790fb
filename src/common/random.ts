/** Chance that can be repeated: the same seed gives the same draws on every machine. */

/** Draws from 0 (included) to 1 (excluded). */
type Random = () => number;

/**
 * A 32-bit counter stirred by multiplications (the public-domain mixer known as mulberry32). Its period of 2³² is far
 * beyond the draws made here; it is not for secrets.
 */
export function seeded(seed: number): Random {
  let counter = seed >>> 0;
  return () => {
    counter = (counter + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(counter ^ (counter >>> 15), counter | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
