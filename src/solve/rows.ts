/** Which nodes of a network need an equation, seen from a port, and the row of each. */
import { nth } from '../common/must.ts';
import type { Branch, Port, Winding } from './network.ts';

/** Row of a node that no current of the port's moves; and of the reference, whose voltage is zero. */
export const OUTSIDE = -2;
const REFERENCE = -1;

interface Rows {
  readonly rowOf: Int32Array;
  readonly size: number;
}

/**
 * Numbers the nodes that a current entering the port can reach before it arrives at the reference. What hangs on the
 * reference alone, such as an unselected pickup, has no voltage then and needs no equation; but what a coupled winding
 * belongs to has one, wherever it hangs, when its partner carries current. Where that is an island, with no way to the
 * reference, one of its nodes becomes its own: no current flows between islands.
 */
export function rowsFrom(
  branches: readonly Branch[],
  port: Port,
  coupled: readonly (readonly [Winding, Winding])[],
): Rows {
  const nodes = branches.reduce((most, { a, b }) => Math.max(most, a, b), Math.max(port.from, port.to)) + 1;
  const neighbours = Array.from({ length: nodes }, (): number[] => []);
  for (const { a, b } of branches) {
    neighbours[a]?.push(b);
    neighbours[b]?.push(a);
  }
  const rowOf = new Int32Array(nodes).fill(OUTSIDE);
  if (port.from === port.to) {
    rowOf[port.to] = REFERENCE;
    return { rowOf, size: 0 };
  }
  const first = reachedFrom(port.from, port.to, neighbours);
  if (!first.arrived) return { rowOf, size: 0 };
  rowOf[port.to] = REFERENCE;
  let size = 0;
  const number = (some: readonly number[]): void => {
    for (const node of some) rowOf[node] = size++;
  };
  number(first.nodes);
  const pairs = coupled.flatMap(([one, other]) => [[one, other] as const, [other, one] as const]);
  const moved = ({ a, b }: Winding): boolean => nth(rowOf, a) >= 0 || nth(rowOf, b) >= 0;
  for (let before = -1; before < size; ) {
    before = size;
    for (const [one, { a, b }] of pairs) {
      if (a === b || !moved(one)) continue;
      const start = [a, b].find((node) => rowOf[node] === OUTSIDE);
      if (start === undefined) continue;
      const { nodes: more, arrived } = reachedFrom(start, port.to, neighbours);
      if (!arrived) rowOf[start] = REFERENCE;
      number(arrived ? more : more.slice(1));
    }
  }
  return { rowOf, size };
}

/** Nodes reached from one without passing the reference, itself first, and whether the reference is among their neighbours. */
function reachedFrom(start: number, reference: number, neighbours: readonly (readonly number[])[]) {
  const nodes = [start];
  const seen = new Uint8Array(neighbours.length);
  seen[start] = 1;
  let arrived = false;
  for (let k = 0; k < nodes.length; k++)
    for (const other of nth(neighbours, nth(nodes, k))) {
      if (other === reference) arrived = true;
      else if (seen[other] === 0) {
        seen[other] = 1;
        nodes.push(other);
      }
    }
  return { nodes, arrived };
}
