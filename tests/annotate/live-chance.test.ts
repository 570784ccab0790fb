/**
 * The live path on harnesses by chance, against a slow second way: a net is live when two ways lead from it to two ends that have no
 * net in common but itself. The ends are ground, the tip, and the hot leads of the pickups that sound.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { liveJoints } from '../../src/annotate/live.ts';
import { type Circuit, lugIdOf, type State } from '../../src/circuit/circuit.ts';
import { makeCircuit, sampleCircuit, sampleNames } from '../analyse/kits.ts';
import { randomHarness } from '../oracle/random-circuit.ts';

type Edge = readonly [string, string];
const isPickup = (kind: string): boolean => kind === 'single-coil' || kind === 'humbucker';

/** What ties nodes together in a state: a net each, and one for each group of closed contacts. */
function edgesIn({ kit, lugs }: Circuit, state: State): readonly Edge[] {
  const netOf = (lug: string): string => `net ${lugs.get(lug)?.net}`;
  const within = kit.parts.flatMap(({ kind, name }): readonly Edge[] => {
    const between = (a: string, b: string): Edge => [netOf(`${name}.${a}`), netOf(`${name}.${b}`)];
    // A pot's track runs from lug 1 by its wiper, lug 2, to lug 3.
    if (kind === 'pot') return [between('1', '2'), between('2', '3')];
    if (kind === 'resistor' || kind === 'capacitor') return [between('1', '2')];
    return isPickup(kind) && state.sounding.includes(name) ? [between('hot', 'ground')] : [];
  });
  return [
    ...within,
    ...state.closedContacts.flatMap((group, i) => group.map((lug): Edge => [`group ${i}`, netOf(lug)])),
  ];
}

/** Every way from a node to an end that passes no node twice and no other end. */
function waysTo(
  ends: ReadonlySet<string>,
  edges: readonly Edge[],
  way: readonly string[],
): readonly (readonly string[])[] {
  const last = way.at(-1) ?? '';
  if (way.length > 1 && ends.has(last)) return [way];
  const next = edges.flatMap(([a, b]) => (a === last ? [b] : b === last ? [a] : []));
  return [...new Set(next)]
    .filter((node) => !way.includes(node))
    .flatMap((node) => waysTo(ends, edges, [...way, node]));
}

function liveBySlowWay(circuit: Circuit, state: State): ReadonlySet<number> {
  const edges = edgesIn(circuit, state);
  const named = (role: string): readonly string[] =>
    circuit.nets.filter((net) => net.role === role).map(({ index }) => `net ${index}`);
  const ground = new Set(named('ground'));
  const hots = state.sounding.map((name) => `net ${circuit.lugs.get(`${name}.hot`)?.net}`);
  const ends = new Set([...ground, ...named('output'), ...hots]);
  const isLive = (node: string): boolean => {
    if (ends.has(node)) return true;
    const ways = waysTo(ends, edges, [node]).map((way) => new Set(way.slice(1)));
    return ways.some((one, i) =>
      ways.slice(i + 1).some((other) => ![...one].some((each) => other.has(each))),
    );
  };
  const nodes = [...new Set(edges.flat())].filter((node) => !ground.has(node) && isLive(node));
  // In touch with the signal, and not by way of ground.
  const live = new Set([...ends].filter((node) => !ground.has(node)));
  for (const node of live)
    for (const [a, b] of edges)
      for (const [one, other] of [
        [a, b],
        [b, a],
      ] as const)
        if (one === node && nodes.includes(other)) live.add(other);
  const silent = circuit.kit.parts.flatMap(({ kind, name }) =>
    isPickup(kind) && !state.sounding.includes(name) ? [name] : [],
  );
  return new Set(
    circuit.joints.flatMap((joint, i) => {
      const net = `net ${circuit.lugs.get(lugIdOf(joint.from))?.net}`;
      const off = silent.includes(joint.from.part) || silent.includes(joint.to.part);
      return (ground.has(net) ? !off : live.has(net)) ? [i] : [];
    }),
  );
}

it('is the same either way, on harnesses by chance and in the samples', () => {
  const circuits = [
    ...fc.sample(randomHarness, { numRuns: 100, seed: 5 }).map(({ compact }) => makeCircuit(compact)),
    ...sampleNames().map(sampleCircuit),
  ];
  let dead = 0;
  for (const circuit of circuits)
    for (const state of circuit.states) {
      const found = liveJoints(circuit, state);
      expect([...found].sort(), JSON.stringify(circuit.kit.joints)).toEqual(
        [...liveBySlowWay(circuit, state)].sort(),
      );
      dead += circuit.joints.length - found.size;
    }
  expect(dead).toBeGreaterThan(300);
});
