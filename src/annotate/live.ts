/** Which joints carry a state's signal: those between the sounding pickups and the jack, and those that load them. */
import { type Circuit, lugId, lugIdOf, type State, soundingCoils } from '../circuit/circuit.ts';
import { blocksOf } from '../common/graph.ts';
import { elementsOf, isPickup, type Part, terminalsOf } from '../parts/index.ts';
import type { Terminal } from '../parts/kind.ts';

type Edge = readonly [string, string];

/**
 * Indices of the joints that are live in a state: those on a ring through a coil that sounds, on which its current goes out and comes
 * back, by the jack or by what loads it. What hangs on the signal by one end only carries no current and is not live: neither lead of a
 * silent pickup, nor a screen, nor the string ground.
 */
export function liveJoints(circuit: Circuit, state: State): ReadonlySet<number> {
  const { kit, joints } = circuit;
  const made = joints.map(({ from, to }): Edge => [lugIdOf(from), lugIdOf(to)]);
  const coils = kit.parts
    .filter(isPickup)
    .flatMap((part) => soundingCoils(state, part).flatMap((coil) => chained(part, terminalsOf(coil))));
  const others = kit.parts
    .filter((part) => !isPickup(part))
    .flatMap((part) => elementsOf(part).flatMap((element) => chained(part, terminalsOf(element))));
  const contacts = state.closedContacts.flatMap((lugs, i) => lugs.map((lug): Edge => [`contact ${i}`, lug]));
  const blocks = blocksOf([...made, ...coils, ...others, ...contacts, ...outputLoads(circuit)]);
  const live = new Set(blocks.slice(made.length, made.length + coils.length));
  return new Set(made.flatMap((_, i) => (live.has(blocks[i] ?? -1) ? [i] : [])));
}

/** From each terminal of an element to the next. */
const chained = ({ name }: Part, terminals: readonly Terminal[]): readonly Edge[] =>
  terminals
    .slice(1)
    .map((terminal, i): Edge => [lugId(name, terminals[i] ?? terminal), lugId(name, terminal)]);

/** The amplifier, from each output to the sleeve. */
const outputLoads = ({ lugs }: Circuit): readonly Edge[] => {
  const all = [...lugs.values()];
  return all
    .filter(({ role }) => role === 'sleeve')
    .flatMap((sleeve) =>
      all.flatMap(({ role, part, id }): Edge[] =>
        role === 'output' && part === sleeve.part ? [[id, sleeve.id]] : [],
      ),
    );
};
