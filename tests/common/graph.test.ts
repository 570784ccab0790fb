/** Walks on graphs, against all ways of small graphs written out. */
import { expect, it } from 'vitest';
import { besideAllWays, blocksOf, reachable } from '../../src/common/graph.ts';
import { seeded } from '../../src/common/random.ts';

const NODES = 7;

/** Every node on a way between two of the ends that passes no node twice, found by going all of them. */
function onWays(
  neighbours: ReadonlyMap<number, ReadonlySet<number>>,
  ends: ReadonlySet<number>,
): ReadonlySet<number> {
  const found = new Set(ends);
  const go = (way: readonly number[]): void => {
    const last = way.at(-1) ?? -1;
    if (way.length > 1 && ends.has(last)) for (const node of way) found.add(node);
    for (const next of neighbours.get(last) ?? []) if (!way.includes(next)) go([...way, next]);
  };
  for (const end of ends) go([end]);
  return found;
}

it('what lies beside all ways between the ends is what no such way passes', () => {
  const random = seeded(5);
  let beside = 0;
  for (let round = 0; round < 300; round++) {
    const share = 0.15 + 0.3 * random();
    const neighbours = new Map(Array.from({ length: NODES }, (_, i) => [i, new Set<number>()]));
    for (let a = 0; a < NODES; a++)
      for (let b = 0; b < a; b++)
        if (random() < share) {
          neighbours.get(a)?.add(b);
          neighbours.get(b)?.add(a);
        }
    const ends = new Set([0, 1, 2].slice(0, 1 + (round % 3)));
    const found = besideAllWays(neighbours, ends);
    const passed = onWays(neighbours, ends);
    for (const node of neighbours.keys()) expect(found.has(node), `${round} ${node}`).toBe(!passed.has(node));
    beside += found.size;
  }
  expect(beside).toBeGreaterThan(300);
});

it('what can be reached goes no further than a node that is closed', () => {
  const chain = new Map(
    [0, 1, 2, 3, 4].map((i) => [i, new Set([i - 1, i + 1].filter((n) => n >= 0 && n < 5))]),
  );
  expect([...reachable([2], chain)].sort()).toEqual([0, 1, 2, 3, 4]);
  expect([...reachable([2], chain, (node) => node !== 3)].sort()).toEqual([0, 1, 2]);
  expect([...reachable([], chain)]).toEqual([]);
});

it('two edges have one block where some ring goes through both, found by going every ring', () => {
  const random = seeded(11);
  let [same, apart] = [0, 0];
  for (let round = 0; round < 150; round++) {
    const node = (): number => Math.floor(random() * 6);
    const edges = Array.from({ length: 4 + (round % 6) }, (): readonly [number, number] => [node(), node()]);
    const together = new Set<string>();
    // Every way on from an edge that passes no node twice, until it is back at its beginning.
    const go = (start: number, at: number, passed: readonly number[], way: readonly number[]): void => {
      if (at === start && way.length > 0) {
        for (const a of way) for (const b of way) together.add(`${a} ${b}`);
        return;
      }
      edges.forEach(([a, b], i) => {
        const next = a === at ? b : b === at ? a : undefined;
        if (next === undefined || way.includes(i) || (passed.includes(next) && next !== start)) return;
        go(start, next, [...passed, next], [...way, i]);
      });
    };
    for (let start = 0; start < 6; start++) go(start, start, [start], []);
    const blocks = blocksOf(edges);
    for (let a = 0; a < edges.length; a++)
      for (let b = 0; b < a; b++) {
        const wanted = together.has(`${a} ${b}`);
        expect(blocks[a] === blocks[b], JSON.stringify([edges, a, b])).toBe(wanted);
        if (wanted) same++;
        else apart++;
      }
  }
  expect(same).toBeGreaterThan(300);
  expect(apart).toBeGreaterThan(300);
});
