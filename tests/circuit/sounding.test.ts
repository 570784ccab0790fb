/** What sounds in each position of every sample, and in nets of coils. Common practice, no source. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { seeded } from '../../src/common/random.ts';
import { readKit } from '../../src/describe/read.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { makeCircuit } from '../analyse/kits.ts';
import { type CoilEdge, signalPaths } from './paths.ts';

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
  expect(states.map((state) => state.positions)).toEqual(table.map((_, i) => ({ selector: i + 1 })));
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

/** The pickups heard in a net of coils between named nodes, of which `tip` and `sleeve` are the jack's. */
function solved(edges: readonly CoilEdge[], ohms: (i: number) => number = () => 6000): readonly string[] {
  const at = new Map<string, string[]>([
    ['tip', ['j.tip']],
    ['sleeve', ['j.sleeve']],
  ]);
  const put = (node: string, lug: string) => at.set(node, [...(at.get(node) ?? []), lug]);
  for (const { pickup, a, b } of edges) {
    put(a, `${pickup}.hot`);
    put(b, `${pickup}.ground`);
  }
  const { states } = makeCircuit({
    parts: {
      ...Object.fromEntries(
        edges.map(({ pickup }, i) => [pickup, { kind: 'single-coil', resistance: ohms(i) }]),
      ),
      j: { kind: 'jack' },
    },
    joints: [...at.values()].flatMap((lugs) => lugs.slice(1).map((lug, i) => `${lugs[i]} > ${lug}`)),
  });
  return [...(states[0]?.sounding ?? [])].sort();
}

describe('nets of coils', () => {
  const heard = (...coils: readonly (readonly [string, string, string])[]): readonly string[] =>
    solved(coils.map(([pickup, a, b]): CoilEdge => ({ pickup, a, b })));
  test('side by side, all sound', () => {
    expect(heard(['a', 'tip', 'sleeve'], ['b', 'tip', 'sleeve'], ['c', 'tip', 'sleeve'])).toEqual([
      'a',
      'b',
      'c',
    ]);
  });
  test('end to end, all sound, whichever way round', () => {
    expect(heard(['a', 'tip', 'x'], ['b', 'x', 'y'], ['c', 'sleeve', 'y'])).toEqual(['a', 'b', 'c']);
  });
  test('two in series beside a third', () => {
    expect(heard(['a', 'tip', 'x'], ['b', 'x', 'sleeve'], ['c', 'tip', 'sleeve'])).toEqual(['a', 'b', 'c']);
  });
  test('a coil that hangs by one end, or is not connected, is out of circuit', () => {
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
    expect(heard(['a', 'tip', 'sleeve'], ['b', 'sleeve', 'sleeve'], ['c', 'tip', 'tip'])).not.toContain('b');
    const { states } = makeCircuit({
      parts: { a: { kind: 'single-coil' }, j: { kind: 'jack' } },
      joints: ['a.hot > j.tip', 'a.ground > j.sleeve', 'j.tip > j.sleeve'],
    });
    expect(states[0]).toMatchObject({ sounding: [], shorted: true });
  });

  test('are heard as paths from tip to sleeve say, in 400 nets by chance', () => {
    const random = seeded(7);
    const nodes = ['tip', 'sleeve', 'x', 'y', 'z'];
    const pick = () => nodes[Math.floor(random() * nodes.length)] ?? 'tip';
    for (let net = 0; net < 400; net++) {
      const edges = Array.from({ length: 1 + Math.floor(random() * 6) }, (_, i): CoilEdge => {
        return { pickup: `p${i}`, a: pick(), b: pick() };
      });
      // No two alike, so that no bridge of coils is in balance.
      const ohms = (i: number) => 4000 + 1300 * i;
      expect([...signalPaths(edges, 'tip', 'sleeve')].sort(), JSON.stringify(edges)).toEqual(
        solved(edges, ohms),
      );
    }
  });
});
