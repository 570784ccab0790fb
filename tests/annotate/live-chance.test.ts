/**
 * The live path on harnesses by chance, against a slow second way: a connection is dead when, itself taken out, there is on one side of
 * it neither an end of the signal nor a ring. The ends are ground, the tip, and the hot leads of the pickups that sound.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { liveJoints } from '../../src/annotate/live.ts';
import { type Circuit, lugIdOf, type State } from '../../src/circuit/circuit.ts';
import { makeCircuit, sampleCircuit, sampleNames } from '../analyse/kits.ts';
import { randomHarness } from '../oracle/random-circuit.ts';

type Edge = readonly [number, number];
const isPickup = (kind: string): boolean => kind === 'single-coil' || kind === 'humbucker';

/** What ties nets together in a state: closed contacts, and parts that pass a signal, each from its first lug to the others. */
function edgesIn({ kit, lugs }: Circuit, state: State): readonly Edge[] {
  const groups = kit.parts.flatMap(({ kind, name }): (readonly string[])[] => {
    if (kind === 'pot') return [['1', '2', '3'].map((lug) => `${name}.${lug}`)];
    if (kind === 'resistor' || kind === 'capacitor') return [[`${name}.1`, `${name}.2`]];
    return isPickup(kind) && state.sounding.includes(name) ? [[`${name}.hot`, `${name}.ground`]] : [];
  });
  return [...groups, ...state.joins].flatMap((group) => {
    const [first = -1, ...others] = new Set(group.map((lug) => lugs.get(lug)?.net ?? -1));
    return others.map((other): Edge => [first, other]);
  });
}

/** The nets that edges lead to from one, not past some. */
function from(start: number, edges: readonly Edge[], past: (net: number) => boolean): ReadonlySet<number> {
  const found = new Set([start]);
  for (let before = 0; before < found.size; ) {
    before = found.size;
    for (const [a, b] of edges) {
      if (found.has(a) && past(a)) found.add(b);
      if (found.has(b) && past(b)) found.add(a);
    }
  }
  return found;
}

function liveBySlowWay(circuit: Circuit, state: State): ReadonlySet<number> {
  const edges = edgesIn(circuit, state);
  const ground = circuit.nets.filter(({ role }) => role === 'ground').map(({ index }) => index);
  const ends = new Set([
    ...ground,
    ...circuit.nets.filter(({ role }) => role === 'output').map(({ index }) => index),
    ...state.sounding.flatMap((name) => circuit.lugs.get(`${name}.hot`)?.net ?? []),
  ]);
  const goesOn = (net: number, others: readonly Edge[]): boolean => {
    const side = from(net, others, () => true);
    if ([...side].some((one) => ends.has(one))) return true;
    // As many edges as nets, or more: there is a ring.
    return others.filter(([a]) => side.has(a)).length >= side.size;
  };
  const kept = edges.filter(([a, b], i) => {
    const others = edges.filter((_, k) => k !== i);
    return goesOn(a, others) && goesOn(b, others);
  });
  const live = new Set(
    [...ends]
      .filter((net) => !ground.includes(net))
      .flatMap((net) => [...from(net, kept, (one) => !ground.includes(one))]),
  );
  const silent = circuit.kit.parts.flatMap(({ kind, name }) =>
    isPickup(kind) && !state.sounding.includes(name) ? [name] : [],
  );
  return new Set(
    circuit.joints.flatMap((joint, i) => {
      const net = circuit.lugs.get(lugIdOf(joint.from))?.net ?? -1;
      const off = silent.includes(joint.from.part) || silent.includes(joint.to.part);
      return (ground.includes(net) ? !off : live.has(net)) ? [i] : [];
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
