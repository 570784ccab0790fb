/** Better places for what is there already: a resistor that loads the wrong pickup, a tone control that misses one. */
import { type Circuit, type LugId, lugAt, lugId } from '../circuit/circuit.ts';
import { must } from '../common/must.ts';
import { type AvailableValues, nearestAvailable } from '../common/series.ts';
import { type Kit, partNamed } from '../describe/kit.ts';
import { contactsOf, isPickup, lugsWith, resistorOf } from '../parts/index.ts';
import { buildCircuit } from '../solve/build.ts';
import { makeNetlist } from '../solve/netlist.ts';
import { rolesOf } from './controls.ts';
import {
  groundLug,
  groundNet,
  lugFor,
  padName,
  placeOfPad,
  signalLug,
  withJumper,
  withMoved,
  withoutPart,
  withResistor,
} from './kit-changes.ts';
import { chainOf, type StateLoads } from './loads.ts';
import { type Alternative, type Asked, ifBetter, type Placed, touches } from './pad-alternatives.ts';
import { judgedIn, loadsIn, loadsOfKit, percentOff } from './pad-effects.ts';

/**
 * For each resistor straight across a pickup whose load is too heavy: the same one, where it acts on its own pickup alone, or
 * out of the kit.
 *
 * @param series what others are chosen from, where several pickups want one
 * @param near a load this near its reference wants no resistor; a fraction
 */
export function movesOf(asked: Asked, near: number, series: AvailableValues): readonly Alternative[] {
  const now = buildCircuit(asked.kit);
  return resistorsAcross(now, asked).flatMap((part) => {
    const bare = withoutPart(asked.kit, part);
    return [
      ...movesTo(asked, part, now, wanting(bare, asked, near), series),
      ...ifBetter(asked, { kind: 'remove', part }, bare),
    ];
  });
}

/** Resistors with one leg on the pickup's signal node and the other on ground, in the judged state. */
function resistorsAcross(circuit: Circuit, { index, lug }: Asked): readonly string[] {
  const { nodeOf } = makeNetlist(circuit, must(circuit.states[index], `state ${index}`));
  const ground = groundLug(circuit);
  const ends = [lug.id, ground].map((id) => (id === undefined ? undefined : nodeOf.get(id)));
  return circuit.kit.parts.flatMap((part) => {
    if (!resistorOf(part)) return [];
    const legs = lugsWith(part, 'leg').map((leg) => nodeOf.get(lugId(part.name, leg)));
    return ends.every((end) => end !== undefined && legs.includes(end)) ? [part.name] : [];
  });
}

/** Pickups whose load is too light without the resistor, each with the lug where one acts on it and not on the asked one. */
function wanting(kit: Kit, asked: Asked, near: number): readonly (readonly [string, LugId])[] {
  const circuit = buildCircuit(kit);
  const loads = loadsOfKit(kit);
  return kit.parts.filter(isPickup).flatMap(({ name }) => {
    const index = judgedIn(loads, name)?.index;
    const own = index === undefined ? undefined : loadsIn(loads, index, name);
    if (index === undefined || !own || !(percentOff(asked.match, own) > near * 100)) return [];
    const net = netOfPickup(circuit, loads, name);
    const lug =
      net === undefined || net === lugAt(circuit, asked.lug.id).net ? undefined : lugFor(circuit, net);
    return lug === undefined ? [] : [[name, lug] as const];
  });
}

/** The net on which a pickup's signal leaves, in the state it is judged in. */
export function netOfPickup(
  circuit: Circuit,
  loads: readonly StateLoads[],
  pickup: string,
): number | undefined {
  const judged = judgedIn(loads, pickup);
  if (!judged) return undefined;
  const state = must(circuit.states[judged.index], `state ${judged.index}`);
  return signalLug(circuit, state, pickup, chainOf(circuit, state, pickup))?.net;
}

/** The resistor to all pickups that want one; where that is no better, to one of them. */
function movesTo(
  asked: Asked,
  part: string,
  now: Circuit,
  places: readonly (readonly [string, LugId])[],
  series: AvailableValues,
): readonly Alternative[] {
  const ohms = resistorOf(partNamed(now.kit, part))?.ohms.value;
  const to = groundOf(now, part);
  if (ohms === undefined || to === undefined || places.length === 0) return [];
  const sets = places.length === 1 ? [places] : [places, ...places.map((place) => [place])];
  // Where no available one is better, another of the same.
  for (const more of [nearestAvailable(ohms, series)?.value ?? ohms, ohms])
    for (const set of sets) {
      const pads = set.map(
        ([pickup, from], i): Placed => ({
          part: i === 0 ? part : padName(asked.kit, pickup),
          pickup,
          ohms: i === 0 ? ohms : more,
          from,
          to,
        }),
      );
      const [moved, ...added] = pads;
      const after = added.reduce(withResistor, withMoved(asked.kit, must(moved, 'resistor to move')));
      const [better] = ifBetter(asked, { kind: 'move', part, pads }, after);
      if (better) return [better];
    }
  return [];
}

/** The lug at which a resistor is grounded. */
function groundOf(circuit: Circuit, part: string): LugId | undefined {
  const ground = groundNet(circuit);
  const place = ground === undefined ? undefined : placeOfPad(circuit, part, ground);
  return place?.[0] ?? groundLug(circuit);
}

/** Jumpers from a throw that is free, where the pickup is judged, to a throw of the same pole with a tone control on it. */
export function toneJumpers(asked: Asked): readonly Alternative[] {
  const circuit = buildCircuit(asked.kit);
  const state = must(circuit.states[asked.index], `state ${asked.index}`);
  const roles = rolesOf(circuit);
  const lugs = [...circuit.lugs.values()];
  const tonesOn = (net: number): readonly string[] => [
    ...new Set(lugs.flatMap((lug) => (lug.net === net && roles.get(lug.part) === 'tone' ? [lug.part] : []))),
  ];
  const switches = new Set(
    circuit.kit.parts.flatMap((part) => (contactsOf(part).length > 0 ? [part.name] : [])),
  );
  const throws = lugs.filter((lug) => lug.role === 'throw' && switches.has(lug.part));
  const found = throws.flatMap((from) => {
    const common = lugs.find(
      (lug) => lug.part === from.part && lug.pole === from.pole && lug.role === 'common',
    );
    const free = circuit.nets[from.net]?.lugs.length === 1;
    if (!free || !common || !touches(state, common.id, from.id)) return [];
    return throws
      .filter((to) => to.part === from.part && to.pole === from.pole && tonesOn(to.net).length > 0)
      .flatMap((to) =>
        ifBetter(
          asked,
          { kind: 'tone-jumper', from: from.id, to: to.id, tones: tonesOn(to.net) },
          withJumper(asked.kit, from.id, to.id),
        ),
      );
  });
  return found.slice(0, 1);
}
