/** Where lines begin in a text, so that an offset becomes line and column. */
import { nth } from '../common/must.ts';

interface Spot {
  readonly line: number;
  readonly column: number;
  /** The whole line, without its end. */
  readonly excerpt: string;
}

/** Finds line and column of an offset; both one-based, columns counted as editors do, in UTF-16 units. */
export function lineFinder(text: string): (offset: number) => Spot {
  const starts = [0];
  const ends: number[] = [];
  for (const end of text.matchAll(/\r\n|\r|\n/g)) {
    ends.push(end.index);
    starts.push(end.index + end[0].length);
  }
  ends.push(text.length);
  return (offset) => {
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (nth(starts, middle) <= offset) low = middle;
      else high = middle - 1;
    }
    const start = nth(starts, low);
    return { line: low + 1, column: offset - start + 1, excerpt: text.slice(start, ends[low]) };
  };
}
