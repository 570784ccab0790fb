/**
 * The straight lines that a search draws in place of wires, one a joint, what each wire costs at least, and which of them cross. Which
 * cross is kept by pair, so that a step has only the lines that it moves to compare.
 */
import { nth } from '../common/must.ts';

/** Of a joint: the straight line from way to way, its box, and what its wire costs at least. */
const [X1, Y1, X2, Y2, LEFT, TOP, RIGHT, BOTTOM, COST] = [0, 1, 2, 3, 4, 5, 6, 7, 8] as const;
const LINE = 9;

export class Lines {
  readonly #figures: Int32Array;
  /** Those of the moved lines before. */
  readonly #saved: Int32Array;
  /** By line, those that it may cross. */
  readonly #others: readonly Int32Array[];
  /** By line and line: 1 where they cross; and as it will be once a move counts. */
  readonly #crossed: Uint8Array;
  readonly #crossedNext: Uint8Array;

  /** @param others by line, those that it may cross */
  constructor(others: readonly Int32Array[]) {
    this.#others = others;
    this.#figures = new Int32Array(others.length * LINE);
    this.#saved = new Int32Array(others.length * LINE);
    this.#crossed = new Uint8Array(others.length ** 2);
    this.#crossedNext = new Uint8Array(others.length ** 2);
  }

  cost(k: number): number {
    return this.#figures[k * LINE + COST] ?? 0;
  }

  /** Draws a line; what it was is remembered until it is drawn again. */
  draw(k: number, x1: number, y1: number, x2: number, y2: number, cost: number): void {
    const [lines, saved, at] = [this.#figures, this.#saved, k * LINE];
    for (let field = at; field < at + LINE; field++) saved[field] = lines[field] ?? 0;
    lines[at + X1] = x1;
    lines[at + Y1] = y1;
    lines[at + X2] = x2;
    lines[at + Y2] = y2;
    lines[at + LEFT] = Math.min(x1, x2);
    lines[at + RIGHT] = Math.max(x1, x2);
    lines[at + TOP] = Math.min(y1, y2);
    lines[at + BOTTOM] = Math.max(y1, y2);
    lines[at + COST] = cost;
  }

  /** Puts back a line as it was before it was last drawn. */
  putBack(k: number): void {
    for (let field = k * LINE; field < (k + 1) * LINE; field++)
      this.#figures[field] = this.#saved[field] ?? 0;
  }

  /** Crossings of some lines with all lines, each once, as far as they are known. */
  crossingsAmong(some: readonly number[]): number {
    const crossed = this.#crossed;
    const count = this.#others.length;
    let twice = 0;
    for (let n = 0; n < some.length; n++) {
      const at = (some[n] ?? 0) * count;
      for (let m = 0; m < count; m++) twice += 2 * (crossed[at + m] ?? 0);
      // A pair of which both are among them has been met from both.
      for (let o = 0; o < some.length; o++) twice -= crossed[at + (some[o] ?? 0)] ?? 0;
    }
    return twice / 2;
  }

  /** Counts the crossings of the nth of the moved lines anew, but for those with moved ones before it, which have been counted. */
  recount(moved: readonly number[], n: number): number {
    const count = this.#others.length;
    const k = moved[n] ?? 0;
    const [next, others] = [this.#crossedNext, nth(this.#others, k)];
    next.fill(0, k * count, (k + 1) * count);
    let found = 0;
    for (let o = 0; o < others.length; o++) {
      const m = others[o] ?? 0;
      if (!this.#cross(k, m)) continue;
      next[k * count + m] = 1;
      found++;
    }
    for (let o = 0; o < n; o++) found -= next[k * count + (moved[o] ?? 0)] ?? 0;
    return found;
  }

  /** Whether two straight lines cross, their ends left out. */
  #cross(k: number, m: number): boolean {
    const [lines, a, b] = [this.#figures, k * LINE, m * LINE];
    if ((lines[a + RIGHT] ?? 0) < (lines[b + LEFT] ?? 0)) return false;
    if ((lines[a + LEFT] ?? 0) > (lines[b + RIGHT] ?? 0)) return false;
    if ((lines[a + BOTTOM] ?? 0) < (lines[b + TOP] ?? 0)) return false;
    if ((lines[a + TOP] ?? 0) > (lines[b + BOTTOM] ?? 0)) return false;
    const ax1 = lines[a] ?? 0;
    const ay1 = lines[a + Y1] ?? 0;
    const ax2 = lines[a + X2] ?? 0;
    const ay2 = lines[a + Y2] ?? 0;
    const bx1 = lines[b] ?? 0;
    const by1 = lines[b + Y1] ?? 0;
    const bx2 = lines[b + X2] ?? 0;
    const by2 = lines[b + Y2] ?? 0;
    const [dx, dy, ex, ey] = [ax2 - ax1, ay2 - ay1, bx2 - bx1, by2 - by1];
    const p = dx * (by1 - ay1) - dy * (bx1 - ax1);
    const q = dx * (by2 - ay1) - dy * (bx2 - ax1);
    if ((p >= 0 && q >= 0) || (p <= 0 && q <= 0)) return false;
    const r = ex * (ay1 - by1) - ey * (ax1 - bx1);
    const t = ex * (ay2 - by1) - ey * (ax2 - bx1);
    return (r > 0 && t < 0) || (r < 0 && t > 0);
  }

  /** How many of the lines go across a height, their ends left out. */
  passing(y: number): number {
    const lines = this.#figures;
    let count = 0;
    for (let at = 0; at < lines.length; at += LINE)
      if ((lines[at + TOP] ?? 0) < y && (lines[at + BOTTOM] ?? 0) > y) count++;
    return count;
  }

  /** What was counted anew about some lines counts from now on. */
  settle(moved: readonly number[]): void {
    const count = this.#others.length;
    for (const k of moved)
      for (let m = 0; m < count; m++) {
        const crosses = this.#crossedNext[k * count + m] ?? 0;
        this.#crossed[k * count + m] = crosses;
        this.#crossed[m * count + k] = crosses;
      }
  }
}
