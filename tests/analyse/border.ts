/** Where an answer changes: the way to a limit that a program holds, from outside. */
import { expect } from 'vitest';

/** The two values, next to one another, between which the answer changes, that of the lower first. */
export function border(
  low: number,
  high: number,
  answer: (value: number) => boolean,
): readonly [number, number] {
  const first = answer(low);
  expect(answer(high)).toBe(!first);
  let [a, b] = [low, high];
  for (let i = 0; i < 40; i++) {
    const middle = Math.sqrt(a * b);
    if (answer(middle) === first) a = middle;
    else b = middle;
  }
  return [a, b];
}
