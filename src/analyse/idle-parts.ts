/**
 * Resistors and capacitors that no current of the signal passes in any state, and switches that change nothing. Told from
 * the network alone, so that it costs next to nothing: the signal's current passes just those branches that lie on a
 * ring with the jack, which are those of its block in the graph's sense.
 */
import type { Circuit, State } from '../circuit/circuit.ts';
import { contactsOf, controlsOf, is } from '../parts/index.ts';
import { makeNetlist } from '../solve/netlist.ts';
import { AMPLIFIER, type Branch, partOf } from '../solve/network.ts';
import { withOutputLoad } from '../solve/output.ts';
import { gains } from './controls.ts';
import type { StateLoads } from './loads.ts';

/** Names of the resistors and capacitors in circuit in no state, wherever the controls stand. */
export function idleComponents(circuit: Circuit): readonly string[] {
  const { parts, outputLoad } = circuit.kit;
  const components = parts.filter((part) => is(part, 'component'));
  if (components.length === 0) return [];
  // Between its ends no wiper shorts what lies beside its track.
  const midway = Object.fromEntries(parts.flatMap(controlsOf).map(({ id }) => [id, 0.5]));
  const used = new Set<string>();
  for (const state of circuit.states) {
    const netlist = makeNetlist(circuit, state, midway);
    const branches = withOutputLoad(netlist, outputLoad);
    for (const branch of blockOf(branches, AMPLIFIER)) used.add(partOf(branch));
    if (components.every(({ name }) => used.has(name))) return [];
  }
  const guards = guarding(circuit);
  return components.flatMap(({ name }) => (used.has(name) || guards.has(name) ? [] : [name]));
}

/** Parts that stand between the strings and ground, against shocks: no signal is to pass them. */
const guarding = ({ nets, lugs }: Circuit): ReadonlySet<string> =>
  new Set(
    nets
      .filter(({ role, lugs: on }) => role !== 'ground' && on.some((lug) => lugs.get(lug)?.role === 'point'))
      .flatMap(({ lugs: on }) => on.map((lug) => lugs.get(lug)?.part ?? '')),
  );

/** The branches that lie on a ring with a branch of that element, such branches included (Hopcroft and Tarjan's blocks). */
function blockOf(branches: readonly Branch[], element: string): readonly Branch[] {
  const at = new Map<number, Branch[]>();
  for (const branch of branches) {
    if (branch.a === branch.b) continue;
    for (const node of [branch.a, branch.b]) at.set(node, [...(at.get(node) ?? []), branch]);
  }
  const wanted = branches.filter(({ of }) => of === element);
  const found = new Map<number, number>();
  const trail: Branch[] = [];
  const block: Branch[] = [];
  /** Numbers a node and all behind it; answers the lowest number that a way from there leads back to. */
  const visit = (node: number, through: Branch | undefined): number => {
    const own = found.size;
    found.set(node, own);
    let low = own;
    for (const branch of at.get(node) ?? []) {
      if (branch === through) continue;
      const next = branch.a === node ? branch.b : branch.a;
      const seen = found.get(next);
      if (seen !== undefined) {
        // From the later end it was on the trail already.
        if (seen < own) trail.push(branch);
        low = Math.min(low, seen);
        continue;
      }
      const start = trail.push(branch) - 1;
      const back = visit(next, branch);
      low = Math.min(low, back);
      if (back < own) continue;
      const ring = trail.splice(start);
      if (wanted.some((one) => ring.includes(one))) block.push(...ring);
    }
    return low;
  };
  for (const { a } of wanted) if (!found.has(a)) visit(a, undefined);
  return block;
}

/**
 * Names of the switches that change nothing: wherever the others stand, all their positions sound the same, with the controls at
 * full and half way. What a switch does may show only with a control turned down, as a treble bleed does.
 */
export function idleSwitches(circuit: Circuit, loads: readonly StateLoads[]): readonly string[] {
  const { parts } = circuit.kit;
  const names = parts.filter((part) => contactsOf(part).length > 0).map(({ name }) => name);
  const atFull = names.filter((name) =>
    isSameInAll(
      name,
      loads.map((one) => ({ ...one, sound: soundOf(one) })),
    ),
  );
  if (atFull.length === 0) return [];
  const rows = gains(circuit, Object.fromEntries(parts.flatMap(controlsOf).map(({ id }) => [id, 0.5])));
  const each = rows.length / circuit.states.length;
  const halfWay = circuit.states.map((state, i) => ({
    state,
    sound: rows
      .slice(i * each, (i + 1) * each)
      .map((row) => row.map((gain) => gain.toFixed(7)).join(' '))
      .join('; '),
  }));
  return atFull.filter((name) => isSameInAll(name, halfWay));
}

/** Whether a switch's positions all sound the same, wherever the others stand. */
function isSameInAll(
  name: string,
  heard: readonly { readonly state: Pick<State, 'positions'>; readonly sound: string }[],
): boolean {
  const sounds = new Map<string, string>();
  return heard.every(({ state, sound }) => {
    const others = JSON.stringify({ ...state.positions, [name]: undefined });
    const first = sounds.get(others) ?? sound;
    sounds.set(others, first);
    return sound === first;
  });
}

/** What sounds, how loud, into which loads; rounded to what solving twice may differ by. */
const soundOf = ({ state, pickups, output }: StateLoads): string =>
  [
    output.toFixed(6),
    JSON.stringify(state.coils ?? {}),
    ...pickups.map(({ pickup, dcLoad, signalLoad, level, outOfPhase }) =>
      [pickup, dcLoad.toPrecision(9), signalLoad.toPrecision(9), level.toFixed(6), outOfPhase].join(' '),
    ),
  ].join('; ');
