/** Distance of names and the nearest of them, against the recursive definition (optimal string alignment). */
import { describe, expect, it } from 'vitest';
import { closestName, editDistance } from '../../src/common/nearest.ts';
import { seeded } from '../../src/common/random.ts';

/** By the definition, letter by letter from the end: put in, left out, changed, or swapped with its neighbour. */
function edits(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length;
  const [x, y] = [a.slice(0, -1), b.slice(0, -1)];
  const swapped = a.length > 1 && b.length > 1 && a.at(-1) === b.at(-2) && a.at(-2) === b.at(-1);
  return Math.min(
    edits(x, b) + 1,
    edits(a, y) + 1,
    edits(x, y) + (a.at(-1) === b.at(-1) ? 0 : 1),
    swapped ? edits(a.slice(0, -2), b.slice(0, -2)) + 1 : 99,
  );
}

const random = seeded(60501);
const word = (letters: string, most: number): string =>
  Array.from(
    { length: Math.floor(random() * (most + 1)) },
    () => letters[Math.floor(random() * letters.length)],
  ).join('');

describe('distance', () => {
  it('is the least number of edits, the case of letters left aside', () => {
    for (let i = 0; i < 600; i++) {
      const [a, b] = [word('abc', 5), word('abc', 5)];
      expect(editDistance(a, b), `${a} ${b}`).toBe(edits(a, b));
      expect(editDistance(a.toUpperCase(), b), `${a} ${b}`).toBe(edits(a, b));
    }
  });

  it('counts no further than it is asked to, and is exact below that', () => {
    for (let i = 0; i < 600; i++) {
      const [a, b, limit] = [word('ab', 5), word('ab', 5), 1 + Math.floor(random() * 4)];
      const least = edits(a, b);
      if (least < limit) expect(editDistance(a, b, limit), `${a} ${b} ${limit}`).toBe(least);
      else expect(editDistance(a, b, limit), `${a} ${b} ${limit}`).toBeGreaterThanOrEqual(limit);
    }
    expect(editDistance('aaaaaaaa', 'bbbbbbbb', 2)).toBe(2);
  });
});

describe('the nearest name', () => {
  it('is the first of those with fewest edits, within a third of the word and never all of it', () => {
    let found = 0;
    for (let i = 0; i < 600; i++) {
      const given = word('abc', 6);
      const names = Array.from({ length: 1 + Math.floor(random() * 5) }, () => word('abc', 6));
      const reach = Math.max(1, Math.floor(given.length / 3));
      const ranked = names
        .map((name) => ({ name, by: edits(given, name) }))
        .filter(({ name, by }) => by <= reach && by < Math.max(given.length, name.length))
        .sort((p, q) => p.by - q.by);
      expect(closestName(given, names), `${given}: ${names.join(' ')}`).toBe(ranked[0]?.name);
      if (ranked.length > 0) found++;
    }
    expect(found).toBeGreaterThan(100);
  });

  it('is looked for among 200 names, for a word of 60 letters at most', () => {
    const others = (count: number): readonly string[] => Array.from({ length: count }, (_, i) => `xxxx${i}`);
    expect(closestName('volum', [...others(199), 'volume'])).toBe('volume');
    expect(closestName('volum', [...others(200), 'volume'])).toBeUndefined();
    expect(closestName('v'.repeat(60), ['v'.repeat(61)])).toBe('v'.repeat(61));
    expect(closestName('v'.repeat(61), ['v'.repeat(60)])).toBeUndefined();
  });
});
