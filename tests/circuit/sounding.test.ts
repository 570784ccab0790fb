/** What sounds in each position of every sample, and which coils a path takes. Common practice, no source. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { buildCircuit } from '../../src/circuit/build.ts';
import { type CoilEdge, signalPaths } from '../../src/circuit/paths.ts';
import { readKit } from '../../src/describe/read.ts';

const folder = new URL('../../samples/', import.meta.url);

const THREE_WAY = [['bridge'], ['neck', 'bridge'], ['neck']];
const FIVE_WAY = [['bridge'], ['middle', 'bridge'], ['middle'], ['neck', 'middle'], ['neck']];

const tables: Readonly<Record<string, readonly (readonly string[])[]>> = {
  'heron-ss.yaml': THREE_WAY,
  'kestrel-hss.yaml': FIVE_WAY,
  'osprey-hsh.yaml': FIVE_WAY,
  'plover-sss.yaml': FIVE_WAY,
  'wren-hs.yaml': THREE_WAY,
  'wren-sh.yaml': THREE_WAY,
};

test('every sample has its table', () => {
  expect(
    readdirSync(folder)
      .filter((file) => file.endsWith('.yaml'))
      .sort(),
  ).toEqual(Object.keys(tables).sort());
});

test.each(Object.entries(tables))('%s', (file, table) => {
  const { kit } = readKit(readFileSync(new URL(file, folder), 'utf8'), file);
  if (!kit) throw new Error(`${file} gave no kit`);
  const { states, nets } = buildCircuit(kit);
  expect(states.map((state) => state.settings)).toEqual(table.map((_, i) => ({ selector: i + 1 })));
  expect(states.map((state) => state.sounding)).toEqual(table);
  expect(states.some((state) => state.shorted)).toBe(false);
  // Every pot's case, the strings and the jack's sleeve are one net.
  const ground = nets.find((net) => net.role === 'ground')?.lugs ?? [];
  for (const part of kit.parts) {
    if (part.kind === 'pot') expect(ground).toContain(`${part.name}.case`);
    if (part.kind === 'ground-point') expect(ground).toContain(`${part.name}.1`);
    if (part.kind === 'single-coil' || part.kind === 'humbucker')
      expect(ground).toContain(`${part.name}.ground`);
  }
});

describe('signal paths', () => {
  const heard = (...coils: readonly (readonly [string, string, string])[]): readonly string[] => {
    const edges = coils.map(([pickup, a, b]): CoilEdge => ({ pickup, a, b }));
    return [...signalPaths(edges, 'tip', 'sleeve')].sort();
  };
  test('side by side, all sound', () => {
    expect(heard(['a', 'tip', 'sleeve'], ['b', 'tip', 'sleeve'], ['c', 'sleeve', 'tip'])).toEqual([
      'a',
      'b',
      'c',
    ]);
  });
  test('end to end, all sound', () => {
    expect(heard(['a', 'tip', 'x'], ['b', 'x', 'y'], ['c', 'sleeve', 'y'])).toEqual(['a', 'b', 'c']);
  });
  test('two in series beside a third', () => {
    expect(heard(['a', 'tip', 'x'], ['b', 'x', 'sleeve'], ['c', 'tip', 'sleeve'])).toEqual(['a', 'b', 'c']);
  });
  test('a coil that hangs by one end, or is joined to nothing, is out of circuit', () => {
    expect(heard(['a', 'tip', 'sleeve'], ['b', 'tip', 'x'], ['c', 'sleeve', 'y'], ['d', 'v', 'w'])).toEqual([
      'a',
    ]);
  });
  test('a coil whose ends are joined is silent', () => {
    expect(heard(['a', 'tip', 'tip'], ['b', 'sleeve', 'sleeve'], ['c', 'tip', 'sleeve'])).toEqual(['c']);
  });
  test('a loop that hangs by one node is out of circuit', () => {
    expect(heard(['a', 'tip', 'sleeve'], ['b', 'tip', 'x'], ['c', 'x', 'y'], ['d', 'y', 'x'])).toEqual(['a']);
  });
  test('a broken series path is silent', () => {
    expect(heard(['a', 'tip', 'x'], ['b', 'y', 'sleeve'])).toEqual([]);
  });
  test('a tip tied to the sleeve hears nothing', () => {
    expect([...signalPaths([{ pickup: 'a', a: 'g', b: 'h' }], 'g', 'g')]).toEqual([]);
  });
});
