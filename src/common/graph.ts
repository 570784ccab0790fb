/** Walks on graphs whose nodes are anything that a map takes for a key. */
import { nth } from './must.ts';

/** The neighbours of each node. */
type Neighbours<T> = ReadonlyMap<T, ReadonlySet<T>>;

/** All that can be reached, the starts included, over nodes that are open. */
export function reachable<T>(
  starts: Iterable<T>,
  neighbours: Neighbours<T>,
  open: (node: T) => boolean = () => true,
): ReadonlySet<T> {
  const reached = new Set(starts);
  // A set may grow while it is walked.
  for (const node of reached)
    for (const next of neighbours.get(node) ?? []) if (open(next)) reached.add(next);
  return reached;
}

/** Nodes on no way between two ends: some one node cuts them off from all ends. An end itself is never one of them. */
export function besideAllWays<T>(neighbours: Neighbours<T>, ends: ReadonlySet<T>): ReadonlySet<T> {
  const beside = new Set<T>();
  for (const cut of neighbours.keys()) {
    const open = (node: T): boolean => node !== cut;
    const reached = reachable([...ends].filter(open), neighbours, open);
    for (const node of neighbours.keys()) if (open(node) && !reached.has(node)) beside.add(node);
  }
  return beside;
}

/**
 * The block that each edge of a graph belongs to, by a number: two edges have one block where some ring of edges, which passes no node
 * twice, goes through both (Hopcroft and Tarjan, Algorithm 447, 1973; from memory). Several edges may join the same two nodes; an edge
 * from a node to itself has a block of its own.
 */
export function blocksOf<T>(edges: readonly (readonly [T, T])[]): readonly number[] {
  const at = new Map<T, number[]>();
  edges.forEach((edge, i) => {
    for (const node of edge) at.set(node, [...(at.get(node) ?? []), i]);
  });
  const blocks = edges.map(() => -1);
  const reached = new Map<T, number>();
  const open: number[] = [];
  let block = 0;
  /** The earliest node that can be reached from this one and what comes after it. */
  const visit = (node: T, by: number): number => {
    const now = reached.size;
    reached.set(node, now);
    let least = now;
    for (const i of at.get(node) ?? []) {
      if (i === by || blocks[i] !== -1 || open.includes(i)) continue;
      const [a, b] = nth(edges, i);
      const next = a === node ? b : a;
      open.push(i);
      const known = reached.get(next);
      const low = known ?? visit(next, i);
      least = Math.min(least, low);
      // Nothing behind it leads back past this node.
      if ((known === undefined && low >= now) || next === node) {
        for (const one of open.splice(open.indexOf(i))) blocks[one] = block;
        block++;
      }
    }
    return least;
  };
  for (const [node] of edges) if (!reached.has(node)) visit(node, -1);
  return blocks;
}
