/**
 * Nodal analysis of a flat network seen from one port. A current of 1 A enters at the port and every node's voltage
 * is solved for; the voltage at the port is then the impedance, and by reciprocity the voltage across any winding
 * gives the transfer from its source to the port, so one solution serves all the coils at once.
 *
 * Only what a current through the port can reach is in the equations, and the port's far end is their reference: a
 * pickup that is not selected, or any other island, can neither float the system nor cost time.
 *
 * Two coupled windings are one element with four ends: its admittances are the inverse of their impedances, Zm = jωM beside
 * the diagonal. That matrix is symmetric, so reciprocity holds and elimination stays as it is.
 */
import { nth } from '../common/must.ts';
import { type Branch, inductanceOf, type Port, type Winding } from './network.ts';
import { OUTSIDE, rowsFrom } from './rows.ts';
import { makeSystem, type System, solveInPlace } from './system.ts';

/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** A branch with the places of its values in the matrix; less than 0 where one of its ends has no row. */
interface Stamp {
  readonly ii: number;
  readonly jj: number;
  readonly ij: number;
  readonly branch: Branch;
}
type WindingStamp = Stamp & { readonly branch: Winding };

/** Two coupled windings, and where the product of the one's voltage and the other's current has its places. */
interface Pair {
  readonly one: WindingStamp;
  readonly other: WindingStamp;
  /** Slot, and what the mutual admittance counts there. */
  readonly mutual: readonly (readonly [number, number])[];
}

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
  readonly #pairs: readonly Pair[];
  readonly #pairOf: ReadonlyMap<string, Pair>;
  /** Row of each node: −1 for the reference, −2 for a node that the port's current does not reach. */
  readonly #rowOf: Int32Array;
  readonly #from: number;
  #scales: ReadonlyMap<string, number> = new Map();

  constructor(branches: readonly Branch[], port: Port, options: SolverOptions = {}) {
    const direct = options.direct === true;
    const found = direct ? [] : coupledIn(branches);
    const paired = new Set<Branch>(found.flat());
    const live = branches.filter(
      (b) => (b.a !== b.b || paired.has(b)) && !(direct && b.kind === 'capacitor'),
    );
    const { rowOf, size } = rowsFrom(live, port, found);
    this.#rowOf = rowOf;
    this.shorted = port.from === port.to;
    this.#from = this.#row(port.from);
    this.open = this.#from === OUTSIDE;
    const ends = ({ a, b }: Branch) => [this.#row(a), this.#row(b)] as const;
    const meeting: (readonly [number, number])[] = [];
    const meet = (i: number, j: number): void => {
      if (i >= 0 && j >= 0) meeting.push([i, j]);
    };
    for (const { a, b } of live) meet(this.#row(a), this.#row(b));
    for (const [one, other] of found) for (const i of ends(one)) for (const j of ends(other)) meet(i, j);
    this.#system = makeSystem(size, meeting);
    const { slot, re } = this.#system;
    this.#conductance = new Float64Array(re.length);
    this.#capacitance = new Float64Array(re.length);
    const place = <B extends Branch>(branch: B) => {
      const i = this.#row(branch.a);
      const j = this.#row(branch.b);
      // A shorted winding has no voltage: it counts by what it takes from its partner only.
      return i === j ? { ii: -1, jj: -1, ij: -1, branch } : { ii: i, jj: j, ij: slot(i, j), branch };
    };
    this.#stamps = live.map(place);
    this.#pairs = found.map(([one, other]) => ({
      one: place(one),
      other: place(other),
      mutual: one.a === one.b || other.a === other.b ? [] : mutualPlaces(ends(one), ends(other), slot),
    }));
    this.#pairOf = new Map(
      this.#pairs.flatMap((pair) => [
        [pair.one.branch.of, pair] as const,
        [pair.other.branch.of, pair] as const,
      ]),
    );
    this.#windings = this.#stamps.filter(
      (stamp): stamp is WindingStamp => stamp.branch.kind === 'winding' && !paired.has(stamp.branch),
    );
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
    for (const pair of this.#pairs) {
      const y = this.#pairAdmittances(pair, omega);
      for (const [place, own] of [
        [pair.one, y.one],
        [pair.other, y.other],
      ] as const) {
        stamp(re, place, own.re);
        stamp(im, place, own.im);
      }
      for (const [slot, count] of pair.mutual) {
        re[slot] = (re[slot] ?? 0) + count * y.mutual.re;
        im[slot] = (im[slot] ?? 0) + count * y.mutual.im;
      }
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
    const omega = 2 * Math.PI * frequency;
    const pair = this.#pairOf.get(from.of);
    if (!pair) return product(this.#admittance(from, omega), this.#across(from));
    const y = this.#pairAdmittances(pair, omega);
    const isOne = pair.one.branch.of === from.of;
    const own = product(isOne ? y.one : y.other, this.#across(from));
    const through = product(y.mutual, this.#across((isOne ? pair.other : pair.one).branch));
    return { re: own.re + through.re, im: own.im + through.im };
  }

  #row(node: number): number {
    return this.#rowOf[node] ?? OUTSIDE;
  }

  #across({ a, b }: Winding): Complex {
    const [va, vb] = [this.#voltage(this.#row(a)), this.#voltage(this.#row(b))];
    return { re: va.re - vb.re, im: va.im - vb.im };
  }

  #impedance(branch: Winding, omega: number): Complex {
    if (this.#scales.size === 0) return { re: branch.ohms, im: omega * branch.henries };
    return {
      re: branch.ohms * (this.#scales.get(branch.of) ?? 1),
      im: omega * this.#henries(branch),
    };
  }

  #henries(branch: Winding): number {
    if (this.#scales.size === 0) return branch.henries;
    return branch.henries * (this.#scales.get(inductanceOf(branch.of)) ?? 1);
  }

  #admittance(branch: Winding, omega: number): Complex {
    const { re, im } = this.#impedance(branch, omega);
    const square = re * re + im * im;
    return { re: re / square, im: -im / square };
  }

  /** Of [[Za, jωM], [jωM, Zb]] the inverse. */
  #pairAdmittances({ one, other }: Pair, omega: number) {
    const [za, zb] = [this.#impedance(one.branch, omega), this.#impedance(other.branch, omega)];
    const factor = one.branch.mutual?.factor ?? 0;
    const m = omega * factor * Math.sqrt(this.#henries(one.branch) * this.#henries(other.branch));
    const zz = product(za, zb);
    const determinant = { re: zz.re + m * m, im: zz.im };
    const square = determinant.re ** 2 + determinant.im ** 2;
    const inverse = { re: determinant.re / square, im: -determinant.im / square };
    return {
      one: product(zb, inverse),
      other: product(za, inverse),
      mutual: product({ re: 0, im: -m }, inverse),
    };
  }

  #voltage(row: number): Complex {
    // The reference has no row and no voltage, nor has a node that the port's current does not reach.
    if (row < 0) return { re: 0, im: 0 };
    return { re: nth(this.#system.xr, row), im: nth(this.#system.xi, row) };
  }
}

const product = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});

/** The coupled windings of a network, each pair once; one whose partner is not in it has none. */
function coupledIn(branches: readonly Branch[]): readonly (readonly [Winding, Winding])[] {
  const coils = branches.filter((one): one is Winding => one.kind === 'winding' && one.mutual !== undefined);
  if (coils.length === 0) return [];
  return coils.flatMap((one, i) =>
    coils
      .slice(i + 1)
      .filter(({ of }) => of === one.mutual?.other)
      .map((other) => [one, other] as const),
  );
}

/** A place off the diagonal stands for the two that mirror each other, one on it for both of them. */
const mutualPlaces = (
  one: readonly [number, number],
  other: readonly [number, number],
  slot: (i: number, j: number) => number,
): readonly (readonly [number, number])[] =>
  one.flatMap((i, a) =>
    other.flatMap((j, b) => {
      if (i < 0 || j < 0) return [];
      const sign = a === b ? 1 : -1;
      return [[slot(i, j), i === j ? 2 * sign : sign] as const];
    }),
  );

function stamp(values: Float64Array, { ii, jj, ij }: Stamp, y: number): void {
  if (ii >= 0) values[ii] = (values[ii] ?? 0) + y;
  if (jj >= 0) values[jj] = (values[jj] ?? 0) + y;
  if (ij >= 0) values[ij] = (values[ij] ?? 0) - y;
}
