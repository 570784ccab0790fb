/** Walks on graphs whose nodes are anything that a map takes for a key. */

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
