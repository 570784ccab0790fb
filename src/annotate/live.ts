/** Which joints carry a state's signal: those between the sounding pickups and the jack, and those that load them. */
import {
  type Circuit,
  lugId,
  lugIdOf,
  type Net,
  netAt,
  netsOf,
  type State,
  soundingCoils,
  waysBetweenNets,
} from '../circuit/circuit.ts';
import { besideAllWays, reachable } from '../common/graph.ts';
import { isPickup, type Part } from '../parts/index.ts';

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

/** Nets on a way from a sounding pickup's hot end to the jack or to ground. */
function liveNets(circuit: Circuit, state: State): ReadonlySet<number> {
  const sounds = (part: Part): boolean => isPickup(part) && state.sounding.includes(part.name);
  const parts = circuit.kit.parts.filter((part) => !isPickup(part) || sounds(part));
  const ways = waysBetweenNets(circuit, parts, state.closedContacts);
  const hots = parts.filter(sounds).flatMap((part) =>
    netsOf(
      circuit,
      soundingCoils(state, part).map((coil) => lugId(part.name, coil.hot)),
    ),
  );
  const withRole = (role: Net['role']): readonly number[] =>
    circuit.nets.filter((net) => net.role === role).map(({ index }) => index);
  const ground = new Set(withRole('ground'));
  const ends = new Set([...ground, ...withRole('output'), ...hots]);
  const beside = besideAllWays(ways, ends);
  // In touch with the signal otherwise than by ground.
  const signal = [...ends].filter((net) => !ground.has(net));
  return reachable(signal, ways, (net) => !ground.has(net) && !beside.has(net));
}
