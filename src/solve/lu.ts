/**
 * Complex linear equations, dense and small: LU elimination with partial pivoting on split real and imaginary
 * parts, in place. A harness has some three to twelve nodes once ideal joins are merged, where dense beats sparse.
 */

/** Room for one system of `size` equations, used again for every frequency. Matrices are row by row. */
export interface System {
  readonly size: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Right-hand side before `solveInPlace`, solution after it. */
  readonly xr: Float64Array;
  readonly xi: Float64Array;
}

export const makeSystem = (size: number): System => ({
  size,
  re: new Float64Array(size * size),
  im: new Float64Array(size * size),
  xr: new Float64Array(size),
  xi: new Float64Array(size),
});

/** Reads an element the caller knows to exist; the fallback satisfies the type and is never taken. */
const at = (a: Float64Array, i: number): number => a[i] ?? 0;

/** Solves the system in place; the matrix is overwritten. Returns false when it is singular. */
export function solveInPlace(system: System): boolean {
  const { size: n, re, im, xr, xi } = system;
  for (let k = 0; k < n; k++) {
    const pivot = largestBelow(system, k);
    if (pivot < 0) return false;
    if (pivot !== k) swapRows(system, k, pivot);
    const kk = k * n + k;
    const pr = at(re, kk);
    const pi = at(im, kk);
    const scale = 1 / (pr * pr + pi * pi);
    const ir = pr * scale;
    const ii = -pi * scale;
    for (let i = k + 1; i < n; i++) {
      const ik = i * n + k;
      const ar = at(re, ik);
      const ai = at(im, ik);
      if (ar === 0 && ai === 0) continue;
      const fr = ar * ir - ai * ii;
      const fi = ar * ii + ai * ir;
      for (let j = k + 1; j < n; j++) {
        const br = at(re, k * n + j);
        const bi = at(im, k * n + j);
        re[i * n + j] = at(re, i * n + j) - (fr * br - fi * bi);
        im[i * n + j] = at(im, i * n + j) - (fr * bi + fi * br);
      }
      const yr = at(xr, k);
      const yi = at(xi, k);
      xr[i] = at(xr, i) - (fr * yr - fi * yi);
      xi[i] = at(xi, i) - (fr * yi + fi * yr);
    }
  }
  backSubstitute(system);
  return true;
}

/** Row at or below `k` with the largest element in column `k`, or −1 when the column is empty. */
function largestBelow({ size: n, re, im }: System, k: number): number {
  let best = -1;
  let most = 0;
  for (let i = k; i < n; i++) {
    const r = at(re, i * n + k);
    const m = at(im, i * n + k);
    const size = r * r + m * m;
    if (size > most) {
      most = size;
      best = i;
    }
  }
  return best;
}

function swapRows({ size: n, re, im, xr, xi }: System, k: number, p: number): void {
  for (let j = k; j < n; j++) {
    const a = k * n + j;
    const b = p * n + j;
    const r = at(re, a);
    const m = at(im, a);
    re[a] = at(re, b);
    im[a] = at(im, b);
    re[b] = r;
    im[b] = m;
  }
  const r = at(xr, k);
  const m = at(xi, k);
  xr[k] = at(xr, p);
  xi[k] = at(xi, p);
  xr[p] = r;
  xi[p] = m;
}

function backSubstitute({ size: n, re, im, xr, xi }: System): void {
  for (let i = n - 1; i >= 0; i--) {
    let sr = at(xr, i);
    let si = at(xi, i);
    for (let j = i + 1; j < n; j++) {
      const ar = at(re, i * n + j);
      const ai = at(im, i * n + j);
      sr -= ar * at(xr, j) - ai * at(xi, j);
      si -= ar * at(xi, j) + ai * at(xr, j);
    }
    const pr = at(re, i * n + i);
    const pi = at(im, i * n + i);
    const scale = 1 / (pr * pr + pi * pi);
    xr[i] = (sr * pr + si * pi) * scale;
    xi[i] = (si * pr - sr * pi) * scale;
  }
}
