/** Labels in a row: each as near to its wish as the others let it be. */

interface Wish {
  /** Where its middle would like to be. */
  readonly wanted: number;
  readonly size: number;
}

interface Cluster {
  /** Sum of the starts that its members' wishes ask of the whole cluster. */
  asked: number;
  count: number;
  size: number;
}

/**
 * Middles of labels that do not overlap, in the order given, between two ends where they fit there. Labels in each
 * other's way form a cluster, and a cluster stands where its members have least to move.
 */
export function spread(wishes: readonly Wish[], low: number, high: number): readonly number[] {
  const clusters: Cluster[] = [];
  const startOf = ({ asked, count, size }: Cluster): number =>
    Math.max(low, Math.min(asked / count, high - size));
  for (const { wanted, size } of wishes) {
    let last: Cluster = { asked: wanted - size / 2, count: 1, size };
    for (let before = clusters.at(-1); before; before = clusters.at(-1)) {
      if (startOf(before) + before.size <= startOf(last)) break;
      clusters.pop();
      last = {
        asked: before.asked + last.asked - last.count * before.size,
        count: before.count + last.count,
        size: before.size + last.size,
      };
    }
    clusters.push(last);
  }
  let next = 0;
  return clusters.flatMap((cluster) => {
    let edge = startOf(cluster);
    const members = wishes.slice(next, next + cluster.count);
    next += cluster.count;
    return members.map(({ size }) => {
      edge += size;
      return edge - size / 2;
    });
  });
}
