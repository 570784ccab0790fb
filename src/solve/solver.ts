/**
 * Nodal analysis of a flat network seen from one port. A current of 1 A enters at the port and every node's voltage
 * is solved for; the voltage at the port is then the impedance, and by reciprocity the voltage across any winding
 * gives the transfer from its source to the port, so one solution serves all the coils at once.
 *
 * Only what a current through the port can reach is in the equations, and the port's far end is their reference: a
 * pickup that is not selected, or any other island, can neither float the system nor cost time.
 */
import { nth } from '../common/must.ts';
import { type Branch, inductanceOf, type Port, type Winding } from './network.ts';
import { makeSystem, type System, solveInPlace } from './system.ts';

/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

const OUTSIDE = -2;

/** A branch with the places of its values in the matrix; less than 0 where one of its ends has no row. */
interface Stamp {
  readonly ii: number;
  readonly jj: number;
  readonly ij: number;
  readonly branch: Branch;
}
type WindingStamp = Stamp & { readonly branch: Winding };

interface SolverOptions {
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
  readonly #stamps: readonly Stamp[];
  readonly #windings: readonly WindingStamp[];
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
    const placed = live.map((branch) => ({ i: this.#row(branch.a), j: this.#row(branch.b), branch }));
    const between = placed.filter(({ i, j }) => i >= 0 && j >= 0);
    this.#system = makeSystem(
      size,
      between.map(({ i, j }) => [i, j] as const),
    );
    const { slot, re } = this.#system;
    this.#conductance = new Float64Array(re.length);
    this.#capacitance = new Float64Array(re.length);
    this.#stamps = placed.map(({ i, j, branch }): Stamp => ({ ii: i, jj: j, ij: slot(i, j), branch }));
    this.#windings = this.#stamps.filter((stamp): stamp is WindingStamp => stamp.branch.kind === 'winding');
    this.scale(this.#scales);
  }

  /** Multiplies the elements named (`volume.track`) by factors; a winding's inductance is named apart. */
  scale(factors: ReadonlyMap<string, number>): void {
    this.#scales = factors;
    this.#conductance.fill(0);
    this.#capacitance.fill(0);
    for (const place of this.#stamps) {
      const { branch } = place;
      const factor = factors.get(branch.of) ?? 1;
      if (branch.kind === 'resistor') stamp(this.#conductance, place, 1 / (branch.ohms * factor));
      else if (branch.kind === 'capacitor') stamp(this.#capacitance, place, branch.farads * factor);
    }
  }

  /** Solves at `frequency` hertz; false when the equations are singular (a lossless circuit at its resonance). */
  solve(frequency: number): boolean {
    const { re, im, xr, xi } = this.#system;
    const omega = 2 * Math.PI * frequency;
    re.set(this.#conductance);
    for (let k = 0; k < im.length; k++) im[k] = omega * (this.#capacitance[k] ?? 0);
    for (const place of this.#windings) {
      const y = this.#admittance(place.branch, omega);
      stamp(re, place, y.re);
      stamp(im, place, y.im);
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
    const x = omega * branch.henries * (this.#scales.get(inductanceOf(branch.of)) ?? 1);
    const square = r * r + x * x;
    return { re: r / square, im: -x / square };
  }

  #voltage(row: number): Complex {
    // The reference has no row and no voltage, nor has a node that the port's current does not reach.
    if (row < 0) return { re: 0, im: 0 };
    return { re: nth(this.#system.xr, row), im: nth(this.#system.xi, row) };
  }
}

function stamp(values: Float64Array, { ii, jj, ij }: Stamp, y: number): void {
  if (ii >= 0) values[ii] = (values[ii] ?? 0) + y;
  if (jj >= 0) values[jj] = (values[jj] ?? 0) + y;
  if (ij >= 0) values[ij] = (values[ij] ?? 0) - y;
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
  if (port.from === port.to) {
    rowOf[port.to] = -1;
    return { rowOf, size: 0 };
  }
  rowOf[port.from] = 0;
  let size = 1;
  let arrived = false;
  const queue = [port.from];
  for (let node = queue.shift(); node !== undefined; node = queue.shift())
    for (const other of nth(neighbours, node)) {
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
