/**
 * Loads by a solver of the tests' own: a nodal matrix of complex numbers, eliminated by hand. It shares no code with the
 * program's solver, and its network comes from `oracle/own-netlist.ts`.
 */
import type { Circuit } from '../../src/circuit/circuit.ts';
import { type Line, ownNetlist } from '../oracle/own-netlist.ts';

interface Complex {
  readonly re: number;
  readonly im: number;
}
const minus = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
const times = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
const over = (a: Complex, b: Complex): Complex => {
  const size = b.re ** 2 + b.im ** 2;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
};
const ZERO: Complex = { re: 0, im: 0 };

/** Admittance of a part at a frequency, hertz; at none, direct current. */
function admittance(line: Line, frequency: number): Complex {
  const omega = 2 * Math.PI * frequency;
  if (line.kind === 'coil') return over({ re: 1, im: 0 }, { re: line.ohms, im: omega * line.henries });
  return line.kind === 'R' ? { re: 1 / line.value, im: 0 } : { re: 0, im: omega * line.value };
}

/** Re(Y) between two nodes, siemens, of a network of which every node is tied to the second by 10⁻¹⁵ S. */
export function conductance(lines: readonly Line[], from: string, to: string, frequency: number): number {
  const names = [...new Set([from, ...lines.flatMap(({ a, b }) => [a, b])])].filter((name) => name !== to);
  const at = (name: string): number => names.indexOf(name);
  const rows = names.map((_, i) => names.map((__, j): Complex => (i === j ? { re: 1e-15, im: 0 } : ZERO)));
  const add = (i: number, j: number, y: Complex): void => {
    const row = rows[i];
    if (row && j >= 0) row[j] = minus(row[j] ?? ZERO, y);
  };
  for (const line of lines) {
    const y = admittance(line, frequency);
    const [i, j] = [at(line.a), at(line.b)];
    const self = times(y, { re: -1, im: 0 });
    if (i >= 0) add(i, i, self);
    if (j >= 0) add(j, j, self);
    if (i >= 0 && j >= 0) {
      add(i, j, y);
      add(j, i, y);
    }
  }
  const current = names.map((name): Complex => (name === from ? { re: 1, im: 0 } : ZERO));
  // The node asked for comes last, so that its voltage is the first to be known.
  const order = [...names.keys()].sort((a, b) => Number(names[a] === from) - Number(names[b] === from));
  for (const [k, p] of order.entries())
    for (const r of order.slice(k + 1)) {
      const factor = over(rows[r]?.[p] ?? ZERO, rows[p]?.[p] ?? ZERO);
      if (factor.re === 0 && factor.im === 0) continue;
      for (const c of order.slice(k)) {
        const row = rows[r];
        if (row) row[c] = minus(row[c] ?? ZERO, times(factor, rows[p]?.[c] ?? ZERO));
      }
      current[r] = minus(current[r] ?? ZERO, times(factor, current[p] ?? ZERO));
    }
  const last = at(from);
  return over(rows[last]?.[last] ?? ZERO, current[last] ?? ZERO).re;
}

export interface OwnLoad {
  readonly index: number;
  readonly pickup: string;
  readonly dc: number;
  readonly signal: number;
}

/** Both loads of every sounding pickup in every state; of circuits without pickups in series. */
export const ownLoads = (circuit: Circuit): readonly OwnLoad[] =>
  circuit.states.flatMap((state, index) => {
    const own = ownNetlist(circuit, state, {});
    const lines = own.lines.filter((line) => line.pickup === undefined);
    return state.sounding.map((pickup) => {
      const [from, to] = [own.node(`${pickup}.hot`), own.node(`${pickup}.ground`)];
      const resistors = lines.filter(({ kind }) => kind === 'R');
      return {
        index,
        pickup,
        dc: 1 / conductance(resistors, from, to, 0),
        signal: 1 / conductance(lines, from, to, 1000),
      };
    });
  });
