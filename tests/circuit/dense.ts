/**
 * A second solver for flat networks: a full matrix, eliminated with exchange of rows, for the nodes that hang together with the
 * port. It shares no code with the program's, and asks for no reciprocity: a winding's source is put in where it is.
 */
import type { Branch, Port } from '../../src/solve/network.ts';

export interface Complex {
  readonly re: number;
  readonly im: number;
}
const times = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
const over = (a: Complex, b: Complex): Complex => {
  const size = b.re ** 2 + b.im ** 2;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
};
const plus = (a: Complex, b: Complex, share = 1): Complex => ({
  re: a.re + share * b.re,
  im: a.im + share * b.im,
});
const ZERO: Complex = { re: 0, im: 0 };

function admittance(branch: Branch, frequency: number): Complex {
  const omega = 2 * Math.PI * frequency;
  if (branch.kind === 'resistor') return { re: 1 / branch.ohms, im: 0 };
  if (branch.kind === 'capacitor') return { re: 0, im: omega * branch.farads };
  return over({ re: 1, im: 0 }, { re: branch.ohms, im: omega * branch.henries });
}

/** The nodes that branches tie to one. */
function together(branches: readonly Branch[], first: number): readonly number[] {
  const found = new Set([first]);
  for (let before = 0; before < found.size; ) {
    before = found.size;
    for (const { a, b } of branches) if (found.has(a) || found.has(b)) found.add(a).add(b);
  }
  return [...found];
}

/** Volts at the port for a current that enters some nodes and leaves others; `undefined` where the port is open. */
function volts(
  branches: readonly Branch[],
  port: Port,
  frequency: number,
  current: (node: number) => Complex,
): Complex | undefined {
  const nodes = together(branches, port.from);
  if (!nodes.includes(port.to)) return undefined;
  const unknown = nodes.filter((node) => node !== port.to);
  const rows = unknown.map((node) => [...unknown.map((): Complex => ZERO), current(node)]);
  const add = (i: number, j: number, y: Complex, share: number): void => {
    const row = rows[i];
    if (row && j >= 0) row[j] = plus(row[j] ?? ZERO, y, share);
  };
  for (const branch of branches) {
    if (branch.a === branch.b || !nodes.includes(branch.a)) continue;
    const y = admittance(branch, frequency);
    const [i, j] = [unknown.indexOf(branch.a), unknown.indexOf(branch.b)];
    add(i, i, y, 1);
    add(j, j, y, 1);
    add(i, j, y, -1);
    add(j, i, y, -1);
  }
  const size = ({ re, im }: Complex): number => Math.hypot(re, im);
  for (const k of unknown.keys()) {
    const pivot = rows
      .slice(k)
      .reduce((best, row) => (size(row[k] ?? ZERO) > size(best[k] ?? ZERO) ? row : best));
    const own = rows[k] ?? [];
    rows[rows.indexOf(pivot)] = own;
    rows[k] = pivot;
    for (const [r, row] of rows.entries()) {
      if (r === k) continue;
      const factor = over(row[k] ?? ZERO, pivot[k] ?? ZERO);
      for (const c of pivot.keys()) row[c] = plus(row[c] ?? ZERO, times(factor, pivot[c] ?? ZERO), -1);
    }
  }
  const at = unknown.indexOf(port.from);
  return over(rows[at]?.at(-1) ?? ZERO, rows[at]?.[at] ?? ZERO);
}

/** Impedance of a port whose ends are two nodes. */
export const impedance = (branches: readonly Branch[], port: Port, frequency: number): Complex | undefined =>
  volts(branches, port, frequency, (node) => (node === port.from ? { re: 1, im: 0 } : ZERO));

/** Volts at a port for one volt in a winding, its positive side towards `a`. */
export function transfer(
  branches: readonly Branch[],
  port: Port,
  frequency: number,
  winding: Branch,
): Complex {
  const y = admittance(winding, frequency);
  const current = (node: number): Complex =>
    plus(node === winding.a ? y : ZERO, node === winding.b ? y : ZERO, -1);
  return volts(branches, port, frequency, current) ?? ZERO;
}
