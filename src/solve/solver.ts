/**
 * Nodal analysis of a flat network seen from one port. A current of 1 A enters at the port and every node's voltage
 * is solved for; the voltage at the port is then the impedance, and by reciprocity the voltage across any winding
 * gives the transfer from its source to the port, so one solution serves all the coils at once.
 *
 * Only what a current through the port can reach is in the equations, and the port's far end is their reference: a
 * pickup that is not selected, or any other island, can neither float the system nor cost time.
 */
import { makeSystem, type System, solveInPlace } from './lu.ts';
import type { Branch, Port, Winding } from './network.ts';

/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

const OUTSIDE = -2;

interface Stamp {
  /** Rows, or −1 for the reference node. */
  readonly i: number;
  readonly j: number;
  readonly branch: Branch;
}

export interface SolverOptions {
  /** Direct current: capacitors carry nothing and frequency is zero. */
  readonly direct?: boolean;
}

export class Solver {
  /** Both ends of the port are one node. */
  readonly shorted: boolean;
  /** No branch leads from one end of the port to the other. */
  readonly open: boolean;
  readonly #system: System;
  readonly #conductance: Float64Array;
  readonly #capacitance: Float64Array;
  readonly #fixed: readonly Stamp[];
  readonly #windings: readonly Stamp[];
  /** Row of each node: −1 for the reference, −2 for a node that the port's current does not reach. */
  readonly #rowOf: Int32Array;
  readonly #from: number;
  #scales: ReadonlyMap<string, number> = new Map();

  constructor(branches: readonly Branch[], port: Port, options: SolverOptions = {}) {
    const live = branches.filter((b) => b.a !== b.b && !(options.direct === true && b.kind === 'capacitor'));
    const { rowOf, size } = rowsFrom(live, port);
    this.#rowOf = rowOf;
    this.shorted = port.from === port.to;
    this.#from = this.#row(port.from);
    this.open = this.#from === OUTSIDE;
    this.#system = makeSystem(size);
    this.#conductance = new Float64Array(size * size);
    this.#capacitance = new Float64Array(size * size);
    const stamps = live.flatMap((branch): Stamp[] => {
      const i = this.#row(branch.a);
      const j = this.#row(branch.b);
      return i === OUTSIDE || j === OUTSIDE ? [] : [{ i, j, branch }];
    });
    this.#fixed = stamps.filter((stamp) => stamp.branch.kind !== 'winding');
    this.#windings = stamps.filter((stamp) => stamp.branch.kind === 'winding');
    this.scale(this.#scales);
  }

  /** Multiplies the elements named (`volume.track`) by factors; a winding's factor goes to its resistance. */
  scale(factors: ReadonlyMap<string, number>): void {
    this.#scales = factors;
    this.#conductance.fill(0);
    this.#capacitance.fill(0);
    for (const { i, j, branch } of this.#fixed) {
      const factor = factors.get(branch.of) ?? 1;
      if (branch.kind === 'resistor')
        stamp(this.#conductance, this.#system.size, i, j, 1 / (branch.ohms * factor));
      else if (branch.kind === 'capacitor')
        stamp(this.#capacitance, this.#system.size, i, j, branch.farads * factor);
    }
  }

  /** Solves at `frequency` hertz; false when the equations are singular (a lossless circuit at its resonance). */
  solve(frequency: number): boolean {
    const { size, re, im, xr, xi } = this.#system;
    const omega = 2 * Math.PI * frequency;
    re.set(this.#conductance);
    for (let k = 0; k < im.length; k++) im[k] = omega * (this.#capacitance[k] ?? 0);
    for (const { i, j, branch } of this.#windings) {
      if (branch.kind !== 'winding') continue;
      const y = this.#admittance(branch, omega);
      stamp(re, size, i, j, y.re);
      stamp(im, size, i, j, y.im);
    }
    xr.fill(0);
    xi.fill(0);
    if (this.#from >= 0) xr[this.#from] = 1;
    return solveInPlace(this.#system);
  }

  /** Impedance of the port after `solve`: zero when shorted; ask `open` first. */
  impedance(): Complex {
    return this.#voltage(this.#from);
  }

  /**
   * Volts at the port per volt induced in the winding, after `solve`. A winding that the
   * port's current does not reach contributes nothing.
   */
  transfer(from: Winding, frequency: number): Complex {
    const i = this.#row(from.a);
    const j = this.#row(from.b);
    if (i === OUTSIDE || j === OUTSIDE) return { re: 0, im: 0 };
    const va = this.#voltage(i);
    const vb = this.#voltage(j);
    const y = this.#admittance(from, 2 * Math.PI * frequency);
    const vr = va.re - vb.re;
    const vi = va.im - vb.im;
    return { re: y.re * vr - y.im * vi, im: y.re * vi + y.im * vr };
  }

  #row(node: number): number {
    return this.#rowOf[node] ?? OUTSIDE;
  }

  #admittance(branch: Winding, omega: number): Complex {
    const r = branch.ohms * (this.#scales.get(branch.of) ?? 1);
    const x = omega * branch.henries;
    const square = r * r + x * x;
    return { re: r / square, im: -x / square };
  }

  #voltage(row: number): Complex {
    return { re: this.#system.xr[row] ?? 0, im: this.#system.xi[row] ?? 0 };
  }
}

function stamp(matrix: Float64Array, n: number, i: number, j: number, y: number): void {
  if (i >= 0) matrix[i * n + i] = (matrix[i * n + i] ?? 0) + y;
  if (j >= 0) matrix[j * n + j] = (matrix[j * n + j] ?? 0) + y;
  if (i >= 0 && j >= 0) {
    matrix[i * n + j] = (matrix[i * n + j] ?? 0) - y;
    matrix[j * n + i] = (matrix[j * n + i] ?? 0) - y;
  }
}

/**
 * Numbers the nodes that a current entering the port can reach before it arrives at the reference. What hangs on the
 * reference alone, such as an unselected pickup, has no voltage then and needs no equation.
 */
function rowsFrom(
  branches: readonly Branch[],
  port: Port,
): { readonly rowOf: Int32Array; readonly size: number } {
  const nodes = branches.reduce((most, { a, b }) => Math.max(most, a, b), Math.max(port.from, port.to)) + 1;
  const neighbours = Array.from({ length: nodes }, (): number[] => []);
  for (const { a, b } of branches) {
    neighbours[a]?.push(b);
    neighbours[b]?.push(a);
  }
  const rowOf = new Int32Array(nodes).fill(OUTSIDE);
  if (port.from === port.to) return { rowOf: rowOf.fill(-1, port.to, port.to + 1), size: 0 };
  rowOf[port.from] = 0;
  let size = 1;
  let arrived = false;
  const queue = [port.from];
  for (let node = queue.shift(); node !== undefined; node = queue.shift())
    for (const other of neighbours[node] ?? []) {
      if (other === port.to) arrived = true;
      else if (rowOf[other] === OUTSIDE) {
        rowOf[other] = size++;
        queue.push(other);
      }
    }
  if (!arrived) return { rowOf: rowOf.fill(OUTSIDE), size: 0 };
  rowOf[port.to] = -1;
  return { rowOf, size };
}
