/** From the kit to the circuit: its graph, and what sounds in every setting of its switches. */
import { buildGraph } from '../circuit/build.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { remembered } from '../common/remembered.ts';
import type { Kit } from '../describe/kit.ts';
import { solveSounding } from './sounding.ts';

/**
 * The circuit of a kit.
 *
 * @throws RangeError when a joint names a part or lug that does not exist: a kit that the reader gave has none
 */
export const buildCircuit: (kit: Kit) => Circuit = remembered((kit) => {
  const graph = buildGraph(kit);
  return {
    ...graph,
    states: graph.settings.map((setting) => ({ ...setting, ...solveSounding(graph, setting) })),
  };
});
