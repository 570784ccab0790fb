/** The name that was probably meant: the nearest by Damerau–Levenshtein distance, if any is near enough. */
import { nth } from './must.ts';

/** Names longer than this are not compared: nobody misspells by distance at that length. */
const LONGEST = 60;
/** In a longer list than this only the first names are compared, so that a huge file stays quick to report. */
const MOST = 200;

/**
 * Edits from `a` to `b`: letters put in, left out, changed or swapped with their neighbour (optimal string
 * alignment). The case of a letter does not count. Beyond `limit` the count stops, and is at least that.
 */
export function editDistance(a: string, b: string, limit = Number.POSITIVE_INFINITY): number {
  const [s, t] = [a.toLowerCase(), b.toLowerCase()];
  let older: number[] = [];
  let last = Array.from({ length: t.length + 1 }, (_, j) => j);
  for (let i = 1; i <= s.length; i++) {
    const row = [i];
    for (let j = 1; j <= t.length; j++) {
      const same = s[i - 1] === t[j - 1];
      const swapped = s[i - 1] === t[j - 2] && s[i - 2] === t[j - 1];
      row.push(
        Math.min(
          nth(last, j) + 1,
          nth(row, j - 1) + 1,
          nth(last, j - 1) + (same ? 0 : 1),
          swapped ? nth(older, j - 2) + 1 : Number.POSITIVE_INFINITY,
        ),
      );
    }
    if (Math.min(...row) >= limit) return limit;
    older = last;
    last = row;
  }
  return nth(last, t.length);
}

/** The nearest of `names` within a third of the word's length, or `undefined`; the first wins a tie. */
export function closestName(word: string, names: readonly string[]): string | undefined {
  if (word.length > LONGEST) return undefined;
  const reach = Math.max(1, Math.floor(word.length / 3));
  let best: string | undefined;
  let least = reach + 1;
  for (const name of names.slice(0, MOST)) {
    if (Math.abs(name.length - word.length) >= least) continue;
    const edits = editDistance(word, name, least);
    // Another single letter or digit is not a misspelling of it.
    if (edits < least && edits < Math.max(word.length, name.length)) {
      best = name;
      least = edits;
    }
  }
  return best;
}
