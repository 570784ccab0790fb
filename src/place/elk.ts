/**
 * The layered layout of the component graph: the only file that imports elkjs. Parts are nodes, every wire end is a
 * port of its own at the place it has on the outline, so that the layout reckons with every wire alone and leaves
 * room for each.
 */

import type ELKBundled from 'elkjs/lib/elk.bundled.js';
import type { ElkNode, ElkPort } from 'elkjs/lib/elk-api.js';
import { lugIdOf } from '../circuit/circuit.ts';
import { PITCH } from '../common/geometry.ts';
import type { Joint } from '../describe/kit.ts';
import type { Outline, Port } from '../parts/outline.ts';

type Engine = InstanceType<typeof ELKBundled.default>;
let engine: Engine | undefined;

/** Reads the package only now: it is more than half of the program's text, and only a kit that is placed needs it. */
async function startEngine(): Promise<Engine> {
  const { default: bundled } = await import('elkjs/lib/elk.bundled.js');
  // The package is CommonJS with a default export that TypeScript's node resolution wraps once more.
  const ELK = bundled as unknown as typeof bundled.default;
  return new ELK();
}

interface ElkPart {
  readonly name: string;
  readonly outline: Outline;
  /** Column of layers to stand in, where the arrangement says so. */
  readonly partition?: number;
}

/**
 * Places are all that is wanted, since the wires are laid by `route/` and the search goes on from here: little care, and
 * lines that cost elkjs least. The finished drawings are none the worse for it, in half the time.
 */
const OPTIONS = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.edgeRouting': 'POLYLINE',
  'elk.layered.thoroughness': '1',
  'elk.layered.nodePlacement.strategy': 'BRANDES_KOEPF',
  'elk.layered.crossingMinimization.greedySwitch.type': 'OFF',
  'elk.layered.considerModelOrder.strategy': 'PREFER_NODES',
  'elk.randomSeed': '1',
  'elk.spacing.nodeNode': String(2 * PITCH),
  'elk.spacing.edgeEdge': String(PITCH),
  'elk.spacing.edgeNode': String(PITCH),
  'elk.layered.spacing.nodeNodeBetweenLayers': String(2 * PITCH),
  'elk.layered.spacing.edgeEdgeBetweenLayers': String(PITCH),
  'elk.layered.spacing.edgeNodeBetweenLayers': String(PITCH),
  'elk.separateConnectedComponents': 'false',
} as const;

const SIDES = { '1,0': 'WEST', '-1,0': 'EAST', '0,1': 'NORTH', '0,-1': 'SOUTH' } as const;

/** The graph as elkjs takes it; exported for the bench, which lays out the same graph with elkjs alone. */
export function elkGraph(parts: readonly ElkPart[], joints: readonly Joint[]): ElkNode {
  const ends = new Map<string, number>();
  const ports = new Map<string, ElkPort[]>(parts.map((part) => [part.name, []]));
  const outlines = new Map(parts.map((part) => [part.name, part.outline]));
  const portOf = (end: Joint['from']): string => {
    const lug = lugIdOf(end);
    const nth = ends.get(lug) ?? 0;
    ends.set(lug, nth + 1);
    const outline = outlines.get(end.part);
    const choices = outline?.lugs.find((l) => l.lug === end.lug)?.ports ?? [];
    const port = choices[nth % Math.max(1, choices.length)];
    const id = `${lug}#${nth}`;
    if (outline && port) ports.get(end.part)?.push(elkPort(id, outline, port));
    return id;
  };
  const edges = joints
    .filter((joint) => joint.from.part !== joint.to.part)
    .map((joint, i) => ({ id: `joint-${i}`, sources: [portOf(joint.from)], targets: [portOf(joint.to)] }));
  return {
    id: 'kit',
    layoutOptions: OPTIONS,
    children: parts.map((part) => ({
      id: part.name,
      width: part.outline.width,
      height: part.outline.height,
      layoutOptions: { 'elk.portConstraints': 'FIXED_POS' },
      ports: ports.get(part.name) ?? [],
    })),
    edges,
  };
}

/** A port on the node's border, on the side the wire comes from; elk takes no port inside a node. */
function elkPort(id: string, outline: Outline, port: Port): ElkPort {
  const side = SIDES[`${port.inward.x},${port.inward.y}` as keyof typeof SIDES];
  const x = side === 'WEST' ? 0 : side === 'EAST' ? outline.width : port.node.x;
  const y = side === 'NORTH' ? 0 : side === 'SOUTH' ? outline.height : port.node.y;
  return { id, x, y, width: 0, height: 0, layoutOptions: { 'elk.port.side': side } };
}

type Corners = ReadonlyMap<string, { readonly x: number; readonly y: number }>;

/** The graph laid out last, as text, and its corners: a kit drawn in several arrangements, or for both hands, has one graph. */
let last: { readonly graph: string; readonly corners: Corners } | undefined;

/** Top left corners by part name, drawing units. */
export async function layOut(graph: ElkNode): Promise<Corners> {
  const text = JSON.stringify(graph);
  if (last?.graph === text) return last.corners;
  engine ??= await startEngine();
  const laid = await engine.layout(graph);
  const corners = new Map((laid.children ?? []).map(({ id, x = 0, y = 0 }) => [id, { x, y }]));
  last = { graph: text, corners };
  return corners;
}
