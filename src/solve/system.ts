/**
 * Complex symmetric equations, sparse: LDLᵀ elimination in an order of least degree, the pattern worked out once and the
 * numbers in one pass for each frequency. A harness is nearly a tree, so that hardly anything fills in and the time grows
 * with the number of its parts. No row is exchanged for a larger pivot: a network of passive parts has a matrix whose real
 * part is positive definite, and there elimination is stable in any order (Golub and Van Loan, Matrix Computations, 4.2;
 * from memory).
 */
import { nth } from '../common/must.ts';

/** Room for one system, used again for every frequency. */
export interface System {
  readonly size: number;
  /** Values of the matrix: the diagonal by row, then what lies beside it, at the places that `slot` gives. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Right-hand side before `solveInPlace`, solution after it; by row. */
  readonly xr: Float64Array;
  readonly xi: Float64Array;
  /** Where the value of rows `i` and `j` stands: a pair of the pattern, or one row; −1 where there is no such row. */
  readonly slot: (i: number, j: number) => number;
  readonly plan: Plan;
}

/** The order of elimination and its pattern. */
interface Plan {
  /** Row eliminated at each step. */
  readonly order: Int32Array;
  /** Of each step, where its entries begin; the rows still to come that they stand for. */
  readonly start: Int32Array;
  readonly rows: Int32Array;
  /** Slots that the products of each step's entries are taken from, pair by pair. */
  readonly targets: Int32Array;
}

/** A system of `size` equations whose matrix has values where `pairs` of rows meet, and on its diagonal. */
export function makeSystem(size: number, pairs: Iterable<readonly [number, number]>): System {
  // Few rows have more than a handful of neighbours, and to look through a short list is faster than to ask a set.
  const beside = Array.from({ length: size }, (): number[] => []);
  for (const [i, j] of pairs) if (i !== j) addBoth(beside, i, j);
  const { order, patterns } = eliminate(beside);
  const stepOf = new Int32Array(size);
  const rows: number[] = [];
  const start = [0];
  order.forEach((row, k) => {
    stepOf[row] = k;
    rows.push(...nth(patterns, k));
    start.push(rows.length);
  });
  const slot = (i: number, j: number): number => {
    if (i < 0 || j < 0 || i >= size || j >= size) return -1;
    if (i === j) return i;
    // It stands with the one that is eliminated first.
    const [step, other] = at(stepOf, i) < at(stepOf, j) ? [at(stepOf, i), j] : [at(stepOf, j), i];
    const found = nth(patterns, step).indexOf(other);
    return found < 0 ? -1 : size + nth(start, step) + found;
  };
  const targets: number[] = [];
  for (const pattern of patterns)
    for (const [k, i] of pattern.entries())
      for (let l = k; l < pattern.length; l++) targets.push(slot(i, nth(pattern, l)));
  return {
    size,
    re: new Float64Array(size + rows.length),
    im: new Float64Array(size + rows.length),
    xr: new Float64Array(size),
    xi: new Float64Array(size),
    slot,
    plan: {
      order: Int32Array.from(order),
      start: Int32Array.from(start),
      rows: Int32Array.from(rows),
      targets: Int32Array.from(targets),
    },
  };
}

function addBoth(beside: readonly number[][], i: number, j: number): void {
  const [own, others] = [nth(beside, i), nth(beside, j)];
  if (own.includes(j)) return;
  own.push(j);
  others.push(i);
}

/** The row with the fewest neighbours goes first, and its neighbours become neighbours of one another. */
function eliminate(beside: readonly number[][]) {
  const size = beside.length;
  const gone = new Uint8Array(size);
  const order: number[] = [];
  const patterns: (readonly number[])[] = [];
  for (let first = 0; order.length < size; ) {
    while (at(gone, first) === 1) first++;
    let next = first;
    let least = Infinity;
    for (let row = first; row < size; row++) {
      if (at(gone, row) === 1) continue;
      const degree = nth(beside, row).length;
      if (degree < least) [next, least] = [row, degree];
      if (degree < 2) break;
    }
    gone[next] = 1;
    const pattern = nth(beside, next);
    for (const row of pattern) {
      const own = nth(beside, row);
      own.splice(own.indexOf(next), 1);
    }
    for (const row of pattern)
      for (const other of pattern) {
        const own = nth(beside, row);
        if (other !== row && !own.includes(other)) own.push(other);
      }
    order.push(next);
    patterns.push(pattern);
  }
  return { order, patterns };
}

/** Reads an element the caller knows to exist; the fallback satisfies the type and is never taken. */
const at = (a: Float64Array | Int32Array | Uint8Array, i: number): number => a[i] ?? 0;

/** Solves the system in place; the matrix is overwritten by its factors. Returns false when it is singular. */
export function solveInPlace(system: System): boolean {
  if (!factorInPlace(system)) return false;
  solveFactored(system);
  return true;
}

/** Factors the matrix, so that `solveFactored` may be called for several right-hand sides. */
function factorInPlace({ size, re, im, plan }: System): boolean {
  const { order, start, targets } = plan;
  let t = 0;
  for (let k = 0; k < size; k++) {
    const row = at(order, k);
    const pr = at(re, row);
    const pi = at(im, row);
    const square = pr * pr + pi * pi;
    if (!(square > 0 && square < Infinity)) return false;
    const ir = pr / square;
    const ii = -pi / square;
    const end = size + at(start, k + 1);
    for (let e = size + at(start, k); e < end; e++) {
      const fr = at(re, e) * ir - at(im, e) * ii;
      const fi = at(re, e) * ii + at(im, e) * ir;
      for (let f = e; f < end; f++) {
        const target = at(targets, t++);
        const br = at(re, f);
        const bi = at(im, f);
        re[target] = at(re, target) - (fr * br - fi * bi);
        im[target] = at(im, target) - (fr * bi + fi * br);
      }
      re[e] = fr;
      im[e] = fi;
    }
  }
  return true;
}

/** Solves for the right-hand side in `xr` and `xi`, with the matrix already factored. */
function solveFactored({ size, re, im, xr, xi, plan }: System): void {
  const { order, start, rows } = plan;
  for (let k = 0; k < size; k++) {
    const row = at(order, k);
    const yr = at(xr, row);
    const yi = at(xi, row);
    if (yr === 0 && yi === 0) continue;
    for (let e = at(start, k); e < at(start, k + 1); e++) {
      const other = at(rows, e);
      const fr = at(re, size + e);
      const fi = at(im, size + e);
      xr[other] = at(xr, other) - (fr * yr - fi * yi);
      xi[other] = at(xi, other) - (fr * yi + fi * yr);
    }
  }
  for (let k = size - 1; k >= 0; k--) {
    const row = at(order, k);
    const pr = at(re, row);
    const pi = at(im, row);
    const square = pr * pr + pi * pi;
    let sr = (at(xr, row) * pr + at(xi, row) * pi) / square;
    let si = (at(xi, row) * pr - at(xr, row) * pi) / square;
    for (let e = at(start, k); e < at(start, k + 1); e++) {
      const other = at(rows, e);
      const fr = at(re, size + e);
      const fi = at(im, size + e);
      sr -= fr * at(xr, other) - fi * at(xi, other);
      si -= fr * at(xi, other) + fi * at(xr, other);
    }
    xr[row] = sr;
    xi[row] = si;
  }
}
