/** A kit's circuit with its figures: what a drawing's texts are compared with. */
import { type StateLoads, solveLoads } from '../analyse/index.ts';
import type { Circuit } from '../circuit/circuit.ts';
import type { Kit } from '../describe/kit.ts';
import { buildCircuit } from '../solve/build.ts';

export interface Solved {
  readonly circuit: Circuit;
  readonly loads: readonly StateLoads[];
}

export function solve(kit: Kit): Solved {
  const circuit = buildCircuit(kit);
  return { circuit, loads: solveLoads(circuit) };
}
