/** Which nets belong to tone controls, found from where the signal can go and not from what lies on them. */
import { rolesOf } from '../analyse/index.ts';
import { type Circuit, lugId } from '../circuit/circuit.ts';
import { elementsLike, elementsOf, isPickup, type Part, terminalsOf } from '../parts/index.ts';

type Ways = ReadonlyMap<number, ReadonlySet<number>>;

/**
 * Indices of the nets that can be reached from a tone control without touching a way from a pickup to the jack. A treble bleed
 * lies beside such a way and a capacitor in the signal's path on it: neither makes a net a tone control's.
 */
export function toneNets(circuit: Circuit): ReadonlySet<number> {
  const { parts } = circuit.kit;
  const roles = rolesOf(circuit);
  const lugs = parts
    .filter(({ name }) => roles.get(name) === 'tone')
    .flatMap((pot) =>
      elementsLike(pot, 'track').flatMap((track) => netsAt(circuit, pot, terminalsOf(track))),
    );
  if (lugs.length === 0) return new Set();
  const ways = waysOf(circuit);
  const ends = new Set(circuit.nets.filter(({ role }) => role === 'output').map(({ index }) => index));
  for (const part of parts)
    if (isPickup(part))
      for (const coil of elementsLike(part, 'coil'))
        for (const net of netsAt(circuit, part, terminalsOf(coil))) if (ways.has(net)) ends.add(net);
  const aside = asideOf(ways, ends);
  return reachedFrom(
    lugs.filter((net) => aside.has(net)),
    ways,
    (net) => aside.has(net),
  );
}

const netsAt = (circuit: Circuit, part: Part, terminals: readonly string[]): readonly number[] =>
  terminals.flatMap((name) => circuit.lugs.get(lugId(part.name, name))?.net ?? []);

/** From net to net, but never by way of ground: through every element, and every contact that closes in some setting. */
function waysOf(circuit: Circuit): Ways {
  const ways = new Map<number, Set<number>>();
  for (const { index, role } of circuit.nets) if (role !== 'ground') ways.set(index, new Set());
  const join = (nets: readonly number[]): void => {
    for (const a of nets) for (const b of nets) if (a !== b && ways.has(b)) ways.get(a)?.add(b);
  };
  for (const part of circuit.kit.parts)
    for (const element of elementsOf(part)) join(netsAt(circuit, part, terminalsOf(element)));
  for (const { joins } of circuit.settings)
    for (const lugs of joins) join(lugs.flatMap((id) => circuit.lugs.get(id)?.net ?? []));
  return ways;
}

/** Nets that one net alone cuts off from pickups and jack: no way from a pickup to the jack leads through them and on. */
function asideOf(ways: Ways, ends: ReadonlySet<number>): ReadonlySet<number> {
  const aside = new Set<number>();
  for (const cut of ways.keys()) {
    const reached = reachedFrom(
      [...ends].filter((net) => net !== cut),
      ways,
      (net) => net !== cut,
    );
    for (const net of ways.keys()) if (net !== cut && !reached.has(net)) aside.add(net);
  }
  return aside;
}

function reachedFrom(
  starts: readonly number[],
  ways: Ways,
  open: (net: number) => boolean,
): ReadonlySet<number> {
  const reached = new Set(starts);
  // A set may grow while it is walked.
  for (const net of reached) for (const next of ways.get(net) ?? []) if (open(next)) reached.add(next);
  return reached;
}
