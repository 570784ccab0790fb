/** What an instrument would read between two nodes of a network: direct resistance, and the load at a frequency. */
import type { Branch, Port } from './network.ts';
import { type Complex, Solver } from './solver.ts';

/** The two figures of a load, in ohms: infinite when open, zero when shorted. */
export interface Loads {
  /** Direct current, capacitors open. */
  readonly dcLoad: number;
  /** 1 / Re(Y) at the signal frequency, capacitors in. */
  readonly signalLoad: number;
}

/** Reads a direct resistance off a solver that was made with `direct`. */
export function resistanceOf(solver: Solver): number {
  if (solver.open || !solver.solve(0)) return Infinity;
  return solver.impedance().re;
}

/**
 * Reads 1 / Re(Y) off a solver. A conductance that is nothing but rounding beside the admittance's size is taken
 * for none: two pure capacitors make no load.
 */
export function parallelResistanceOf(solver: Solver, frequency: number): number {
  if (solver.shorted) return 0;
  if (solver.open || !solver.solve(frequency)) return Infinity;
  const z = solver.impedance();
  return z.re <= 1e-13 * Math.hypot(z.re, z.im) ? Infinity : (z.re * z.re + z.im * z.im) / z.re;
}

/** Direct resistance between the ends of a port, ohms. */
export const directResistance = (branches: readonly Branch[], port: Port): number =>
  resistanceOf(new Solver(branches, port, { direct: true }));

/** Both loads of a port. */
export const loadsOf = (branches: readonly Branch[], port: Port, frequency: number): Loads => ({
  dcLoad: directResistance(branches, port),
  signalLoad: parallelResistanceOf(new Solver(branches, port), frequency),
});

/** Impedance of a port; infinite in its real part when open. */
export function impedanceOf(branches: readonly Branch[], port: Port, frequency: number): Complex {
  const solver = new Solver(branches, port);
  return solver.open || !solver.solve(frequency) ? { re: Infinity, im: 0 } : solver.impedance();
}
