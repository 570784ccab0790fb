/**
 * The yardstick: elkjs drawing the wiring by itself. It gets the pipeline's own graph, a port for every wire end, but
 * with its usual care and square wires, since its lines would be the drawing; the pipeline asks it for places alone.
 */
import type { ElkNode } from 'elkjs/lib/elk-api.js';
import type { Kit } from '../../src/describe/kit.ts';
import { outlineOf } from '../../src/parts/index.ts';
import { elkGraph } from '../../src/place/elk.ts';

export function elkDrawing(kit: Kit): ElkNode {
  const graph = elkPlaces(kit);
  return {
    ...graph,
    layoutOptions: {
      ...graph.layoutOptions,
      'elk.edgeRouting': 'ORTHOGONAL',
      'elk.layered.nodePlacement.strategy': 'NETWORK_SIMPLEX',
      // elkjs's defaults.
      'elk.layered.thoroughness': '7',
      'elk.layered.crossingMinimization.greedySwitch.type': 'TWO_SIDED',
    },
  };
}

/** The graph as the pipeline has it. */
export const elkPlaces = (kit: Kit): ElkNode =>
  elkGraph(
    kit.parts.map((part) => ({ name: part.name, outline: outlineOf(part) })),
    kit.joints,
  );
