/** From the kit to the circuit: its graph, where its controls are at full, and what sounds in every setting of its switches and blends. */
import { buildGraph } from '../circuit/build.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { remembered } from '../common/remembered.ts';
import type { Kit } from '../describe/kit.ts';
import { solveFull, withBlends } from './full.ts';
import { solveSounding } from './sounding.ts';

/**
 * The circuit of a kit.
 *
 * @throws RangeError when a joint names a part or lug that does not exist: a kit that the reader gave has none
 */
export const buildCircuit: (kit: Kit) => Circuit = remembered((kit) => {
  const described = buildGraph(kit);
  const turnable = { ...described, fullAt: solveFull(described) };
  const graph = { ...turnable, settings: withBlends(turnable) };
  return {
    ...graph,
    states: graph.settings.map((setting) => ({ ...setting, ...solveSounding(graph, setting) })),
  };
});
