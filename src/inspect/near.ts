/** What lies near a box, found without looking at everything: a sheet with a hundred cards has thousands of marks. */
import type { Rect } from '../common/geometry.ts';

/** Side of a square of the index, drawing units: about that of a card's row. */
const SIDE = 96;

export class SpatialIndex<T> {
  readonly #items: readonly T[];
  readonly #squares = new Map<number, number[]>();

  /** @param boxOf what of an item is to be found; items keep their order */
  constructor(items: readonly T[], boxOf: (item: T) => Rect) {
    this.#items = items;
    items.forEach((item, i) => {
      for (const key of squaresOf(boxOf(item))) {
        const square = this.#squares.get(key);
        if (square) square.push(i);
        else this.#squares.set(key, [i]);
      }
    });
  }

  /** Items whose boxes may touch this one, in their order. */
  query(box: Rect): readonly T[] {
    const found = new Set<number>();
    for (const key of squaresOf(box)) for (const i of this.#squares.get(key) ?? []) found.add(i);
    return [...found].sort((a, b) => a - b).flatMap((i) => this.#items[i] ?? []);
  }
}

/** Boxes beyond this many squares across or down are of drawings that no sheet can hold. */
const MOST = 2000;

function* squaresOf({ x, y, width, height }: Rect): Generator<number> {
  const clamped = (n: number): number => Math.max(-MOST, Math.min(MOST, Math.floor(n / SIDE)));
  for (let row = clamped(y); row <= clamped(y + height); row++)
    for (let column = clamped(x); column <= clamped(x + width); column++) yield row * 2 * (MOST + 1) + column;
}
