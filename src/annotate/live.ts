/** Which joints carry a state's signal: those between the sounding pickups and the jack, and those that load them. */
import { type Circuit, lugId, lugIdOf, netAt, type State } from '../circuit/circuit.ts';
import { elementsOf, isPickup, lugsWith, terminalsOf } from '../parts/index.ts';

/**
 * Indices of the joints that are live in a state: on a net from which the signal can go on, through closed contacts,
 * pots, resistors and capacitors, to the jack's tip or to ground. What hangs on the signal by one end only carries no
 * current and is not live, nor is the ground of a pickup that is silent.
 */
export function liveJoints(circuit: Circuit, state: State): ReadonlySet<number> {
  const live = liveNets(circuit, state);
  const silent = new Set(
    circuit.kit.parts
      .filter((part) => isPickup(part) && !state.sounding.includes(part.name))
      .map((p) => p.name),
  );
  return new Set(
    circuit.joints.flatMap(({ from, to }, i) => {
      const net = netAt(circuit, lugIdOf(from));
      const on = net.role === 'ground' ? !silent.has(from.part) && !silent.has(to.part) : live.has(net.index);
      return on ? [i] : [];
    }),
  );
}

interface Edge {
  readonly a: number;
  readonly b: number;
}

function liveNets(circuit: Circuit, state: State): ReadonlySet<number> {
  const netOf = (id: string): number | undefined => circuit.lugs.get(id)?.net;
  const edges: Edge[] = [];
  const join = (ids: readonly string[]): void => {
    const nets = [...new Set(ids.flatMap((id) => netOf(id) ?? []))];
    const [first, ...others] = nets;
    if (first !== undefined) for (const b of others) edges.push({ a: first, b });
  };
  for (const group of state.joins) join(group);
  for (const part of circuit.kit.parts)
    if (!isPickup(part) || state.sounding.includes(part.name))
      for (const element of elementsOf(part))
        join(terminalsOf(element).map((name) => lugId(part.name, name)));
  // What is reached by a single edge is a dead end, unless it is where the signal begins or ends.
  const ends = new Set(
    circuit.nets.filter(({ role }) => role === 'ground' || role === 'output').map((n) => n.index),
  );
  for (const part of circuit.kit.parts)
    if (isPickup(part) && state.sounding.includes(part.name))
      for (const name of lugsWith(part, 'hot')) {
        const hot = netOf(lugId(part.name, name));
        if (hot !== undefined) ends.add(hot);
      }
  let kept: readonly Edge[] = edges;
  for (;;) {
    const count = new Map<number, number>();
    for (const { a, b } of kept) {
      count.set(a, (count.get(a) ?? 0) + 1);
      count.set(b, (count.get(b) ?? 0) + 1);
    }
    const dead = (net: number): boolean => !ends.has(net) && (count.get(net) ?? 0) < 2;
    const next = kept.filter(({ a, b }) => !dead(a) && !dead(b));
    if (next.length === kept.length) break;
    kept = next;
  }
  return reached(kept, ends, circuit);
}

/** Nets in touch with a sounding pickup without going through ground. */
function reached(edges: readonly Edge[], ends: ReadonlySet<number>, circuit: Circuit): ReadonlySet<number> {
  const ground = new Set(circuit.nets.filter(({ role }) => role === 'ground').map((net) => net.index));
  const seen = new Set([...ends].filter((net) => !ground.has(net)));
  const queue = [...seen];
  for (let net = queue.pop(); net !== undefined; net = queue.pop())
    for (const { a, b } of edges) {
      const other = a === net ? b : b === net ? a : undefined;
      if (other === undefined || ground.has(other) || seen.has(other)) continue;
      seen.add(other);
      queue.push(other);
    }
  return seen;
}
