/**
 * The live path on harnesses by chance, against physics: every joint, closed contact and element is a resistance of its own size, each
 * coil that sounds has a voltage of its own, and the amplifier is one more resistance. By Kirchhoff's laws a joint then carries current,
 * or carries none; and it is live where it carries some.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { liveJoints } from '../../src/annotate/live.ts';
import { type Circuit, lugIdOf, type State } from '../../src/circuit/circuit.ts';
import { seeded } from '../../src/common/random.ts';
import { makeCircuit, sampleCircuit, sampleNames } from '../analyse/kits.ts';
import { randomHarness } from '../oracle/random-circuit.ts';

interface Branch {
  readonly ends: readonly [string, string];
  readonly siemens: number;
  readonly volts: number;
}

const isPickup = (kind: string): boolean => kind === 'single-coil' || kind === 'humbucker';

/** The joints first, in their order. */
function branchesIn({ kit }: Circuit, state: State, random: () => number): readonly Branch[] {
  const branch = (a: string, b: string, volts = 0): Branch => ({
    ends: [a, b],
    siemens: 0.5 + random(),
    volts,
  });
  const within = kit.parts.flatMap(({ kind, name }): readonly Branch[] => {
    const between = (a: string, b: string, volts = 0): Branch =>
      branch(`${name}.${a}`, `${name}.${b}`, volts);
    // A pot's track runs from lug 1 by its wiper, lug 2, to lug 3.
    if (kind === 'pot') return [between('1', '2'), between('2', '3')];
    if (kind === 'resistor' || kind === 'capacitor') return [between('1', '2')];
    if (kind === 'jack') return [between('tip', 'sleeve')];
    return isPickup(kind) && state.sounding.includes(name) ? [between('hot', 'ground', 1 + random())] : [];
  });
  return [
    ...kit.joints.map(({ from, to }) => branch(lugIdOf(from), lugIdOf(to))),
    ...within,
    ...state.closedContacts.flatMap((group, i) => group.map((lug) => branch(`contact ${i}`, lug))),
  ];
}

/** Current through each branch, by nodal analysis; a little leakage at every node keeps separate pieces solvable. */
function currentsOf(branches: readonly Branch[]): readonly number[] {
  const nodes = [...new Set(branches.flatMap(({ ends }) => ends))];
  const at = new Map(nodes.map((node, i) => [node, i]));
  const index = (node: string): number => at.get(node) ?? -1;
  const rows = nodes.map((_, i) => [...nodes.map((_, k): number => (i === k ? 1e-12 : 0)), 0]);
  const add = (row: number, column: number, value: number): void => {
    const own = rows[row];
    if (own) own[column] = (own[column] ?? 0) + value;
  };
  for (const { ends, siemens, volts } of branches) {
    const [a, b] = ends.map(index) as [number, number];
    for (const [from, to, sign] of [
      [a, b, -1],
      [b, a, 1],
    ] as const) {
      add(from, from, siemens);
      add(from, to, -siemens);
      add(from, nodes.length, -sign * siemens * volts);
    }
  }
  // Gauss and Jordan, the largest first.
  for (let column = 0; column < nodes.length; column++) {
    let best = column;
    for (let row = column; row < nodes.length; row++)
      if (Math.abs(rows[row]?.[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0)) best = row;
    [rows[column], rows[best]] = [rows[best] ?? [], rows[column] ?? []];
    const pivot = rows[column] ?? [];
    rows.forEach((row, i) => {
      const factor = i === column ? 0 : (row[column] ?? 0) / (pivot[column] ?? 1);
      if (factor !== 0)
        for (let k = column; k < row.length; k++) row[k] = (row[k] ?? 0) - factor * (pivot[k] ?? 0);
    });
  }
  const volts = rows.map((row, i) => (row[nodes.length] ?? 0) / (row[i] ?? 1));
  return branches.map(
    ({ ends: [a, b], siemens, volts: own }) =>
      siemens * ((volts[index(a)] ?? 0) - (volts[index(b)] ?? 0) - own),
  );
}

it('a joint is live where current flows in it, on harnesses by chance and in the samples', () => {
  const random = seeded(7);
  const circuits = [
    ...fc.sample(randomHarness, { numRuns: 100, seed: 5 }).map(({ compact }) => makeCircuit(compact)),
    ...sampleNames().map(sampleCircuit),
  ];
  let [dead, alive] = [0, 0];
  for (const circuit of circuits)
    for (const state of circuit.states) {
      const currents = currentsOf(branchesIn(circuit, state, random)).slice(0, circuit.joints.length);
      const carrying = currents.flatMap((amperes, i) => (Math.abs(amperes) > 1e-7 ? [i] : []));
      const found = liveJoints(circuit, state);
      expect(
        [...found].sort((a, b) => a - b),
        JSON.stringify(circuit.kit.joints),
      ).toEqual(carrying);
      alive += found.size;
      dead += circuit.joints.length - found.size;
    }
  expect(dead).toBeGreaterThan(300);
  expect(alive).toBeGreaterThan(300);
});
