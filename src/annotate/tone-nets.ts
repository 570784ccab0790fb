/** Which nets belong to tone controls, found from where the signal can go and not from what lies on them. */
import { rolesOf } from '../analyse/index.ts';
import { type Circuit, lugId, netsOf, waysBetweenNets } from '../circuit/circuit.ts';
import { besideAllWays, reachable } from '../common/graph.ts';
import { controlsOf, elementsLike, isPickup, terminalsOf } from '../parts/index.ts';

/**
 * Indices of the nets that can be reached from a tone control without touching a way from a pickup to the jack. A treble bleed
 * lies beside such a way and a capacitor in the signal's path on it: neither makes a net a tone control's.
 */
export function toneNets(circuit: Circuit): ReadonlySet<number> {
  const { parts } = circuit.kit;
  const roles = rolesOf(circuit);
  const netsAt = (part: string, terminals: readonly string[]): readonly number[] =>
    netsOf(
      circuit,
      terminals.map((name) => lugId(part, name)),
    );
  const lugs = parts
    .flatMap(controlsOf)
    .filter(({ id }) => roles.get(id) === 'tone')
    .flatMap(({ part, tracks }) => tracks.flatMap((track) => netsAt(part, terminalsOf(track))));
  if (lugs.length === 0) return new Set();
  const ground = new Set(circuit.nets.filter(({ role }) => role === 'ground').map(({ index }) => index));
  const contacts = circuit.settings.flatMap(({ closedContacts }) => closedContacts);
  const ways = waysBetweenNets(circuit, parts, contacts, (net) => !ground.has(net));
  const coils = parts.flatMap((part) =>
    isPickup(part) ? elementsLike(part, 'coil').flatMap((coil) => netsAt(part.name, terminalsOf(coil))) : [],
  );
  const outputs = circuit.nets.filter(({ role }) => role === 'output').map(({ index }) => index);
  const ends = new Set([...outputs, ...coils.filter((net) => !ground.has(net))]);
  const beside = besideAllWays(ways, ends);
  return reachable(
    lugs.filter((net) => beside.has(net)),
    ways,
    (net) => beside.has(net),
  );
}
