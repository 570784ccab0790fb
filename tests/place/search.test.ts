/**
 * The search for one wire's way, against a plain relaxation over every node and heading, written apart from it: the rules
 * of what a way costs are told here once more. The fields are random, from a fixed seed.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AccessPoint, type Direction, Grid, type RouteRequest } from '../../src/place/route/grid.ts';
import { BucketQueue } from '../../src/place/route/queue.ts';
import { PathSearch, type RoutingCosts } from '../../src/place/route/search.ts';

const SEED = 60757;
const [COLUMNS, ROWS] = [9, 8];
const inner = fc.nat({ max: (COLUMNS - 2) * (ROWS - 2) - 1 });
const nodeOf = (n: number): number => (Math.floor(n / (COLUMNS - 2)) + 1) * COLUMNS + (n % (COLUMNS - 2)) + 1;
const gate = fc
  .record({
    node: inner.map(nodeOf),
    inward: fc.constantFrom<Direction>(0, 1, 2, 3),
    cost: fc.nat({ max: 9 }),
  })
  .map((one): AccessPoint => one);
const scene = fc.record({
  blocked: fc.array(inner.map(nodeOf), { maxLength: 12 }),
  used: fc.array(fc.record({ node: inner.map(nodeOf), axis: fc.nat({ max: 1 }) }), { maxLength: 16 }),
  extraCost: fc.array(inner.map(nodeOf), { maxLength: 4 }),
  from: fc.array(gate, { minLength: 1, maxLength: 3 }),
  to: fc.array(gate, { minLength: 1, maxLength: 3 }),
  weight: fc.constantFrom(1, 3),
});
type Scene = typeof scene extends fc.Arbitrary<infer T> ? T : never;

const BASE = { step: 2, bend: 7, crossing: 44, closeCrossing: 24, hook: 10, conflict: 12, overestimate: 0 };
const pricesOf = (task: RouteRequest): RoutingCosts => ({ ...BASE, step: BASE.step * task.weight });

function set({ blocked, used, extraCost, from, to, weight }: Scene): { grid: Grid; task: RouteRequest } {
  const grid = new Grid(COLUMNS, ROWS);
  for (const node of blocked) if (!grid.blocked[node]) grid.close(node, 1);
  for (const { node, axis } of used) grid.used[node * 2 + axis] = 1;
  for (const node of extraCost) grid.charge(node, 60);
  return { grid, task: { from, to, weight } };
}

/** Least cost of all ways, by relaxing every state until nothing falls any more. */
function plainly(grid: Grid, { from, to }: RouteRequest, prices: RoutingCosts): number {
  const STEPS = [1, COLUMNS, -1, -COLUMNS];
  const own = new Set(to.map(({ node }) => node));
  const taken = (node: number, axis: number): boolean => (grid.used[node * 2 + axis] ?? 0) > 0;
  const shared = (node: number, axis: number): number => (taken(node, axis) ? prices.conflict : 0);
  const least = new Map<string, number>();
  for (const { node, inward, cost } of from) {
    if (grid.blocked[node]) continue;
    const state = `${node} ${(inward + 2) % 4}`;
    least.set(state, Math.min(least.get(state) ?? Infinity, cost + shared(node, inward % 2)));
  }
  for (let fell = true; fell; ) {
    fell = false;
    for (const [state, cost] of [...least]) {
      const [node = 0, heading = 0] = state.split(' ').map(Number);
      for (let next = 0; next < 4; next++) {
        const there = node + (STEPS[next] ?? 0);
        if (next === (heading + 2) % 4 || grid.blocked[there]) continue;
        const turns = next !== heading;
        const before = node - (STEPS[heading] ?? 0);
        const crosses = taken(there, 1 - (next % 2));
        const sum =
          cost +
          prices.step +
          shared(there, next % 2) +
          (own.has(there) ? 0 : (grid.extraCost[there] ?? 0)) +
          (turns ? prices.bend + shared(node, next % 2) + (taken(before, next % 2) ? prices.hook : 0) : 0) +
          (crosses ? prices.crossing : 0) +
          (crosses && turns ? prices.hook : 0) +
          (crosses && !turns && taken(node, 1 - (next % 2)) ? prices.closeCrossing : 0);
        const key = `${there} ${next}`;
        if (sum >= (least.get(key) ?? Infinity)) continue;
        least.set(key, sum);
        fell = true;
      }
    }
  }
  let best = Infinity;
  for (const { node, inward, cost: own } of to)
    for (let heading = 0; heading < 4; heading++) {
      const cost = least.get(`${node} ${heading}`);
      if (cost === undefined || heading === (inward + 2) % 4) continue;
      best = Math.min(best, own + cost + (heading === inward ? 0 : prices.bend + shared(node, inward % 2)));
    }
  return best;
}

describe('the search for a way', () => {
  const check = (holds: (scene: Scene) => void) =>
    fc.assert(fc.property(scene, holds), { seed: SEED, numRuns: 600 });

  it('finds the cheapest, or that there is none, as long as what a gate leads into is closed', () => {
    let ways = 0;
    check((one) => {
      const { grid, task } = set(one);
      for (const { node, inward } of [...task.from, ...task.to]) {
        const lug = node + ([1, COLUMNS, -1, -COLUMNS][inward] ?? 0);
        if (!grid.blocked[lug]) grid.close(lug, 1);
      }
      const prices = pricesOf(task);
      const found = new PathSearch(grid).findPath(task, prices);
      expect(found?.cost ?? Infinity).toBe(plainly(grid, task, prices));
      if (found) ways++;
    });
    expect(ways).toBeGreaterThan(300);
  });

  it('prices a way as it prices it when looking', () =>
    check((one) => {
      const { grid, task } = set(one);
      const search = new PathSearch(grid);
      const found = search.findPath(task, pricesOf(task));
      if (found) expect(search.costOf(task, found.path, pricesOf(task))).toBe(found.cost);
    }));

  it('answers nothing dearer than it may cost, and what costs just that', () =>
    check((one) => {
      const { grid, task } = set(one);
      const search = new PathSearch(grid);
      const found = search.findPath(task, pricesOf(task));
      if (!found) return;
      expect(search.findPath(task, pricesOf(task), found.cost)?.cost).toBe(found.cost);
      expect(search.findPath(task, pricesOf(task), found.cost - 1)).toBeUndefined();
    }));

  it('in overestimate finds a way wherever there is one, and never one cheaper than the cheapest', () =>
    check((one) => {
      const { grid, task } = set(one);
      const search = new PathSearch(grid);
      const best = search.findPath(task, pricesOf(task));
      const hasty = search.findPath(task, { ...pricesOf(task), overestimate: 4 });
      expect(hasty === undefined).toBe(best === undefined);
      if (best && hasty) expect(hasty.cost).toBeGreaterThanOrEqual(best.cost);
    }));
});

it('the queue gives the lowest key first, and the newest of equals', () =>
  fc.assert(
    fc.property(
      fc.array(fc.record({ push: fc.boolean(), key: fc.nat({ max: 5000 }) }), { maxLength: 200 }),
      (orders) => {
        const queue = new BucketQueue();
        const waiting: { key: number; state: number }[] = [];
        let lowest = 0;
        orders.forEach(({ push, key }, state) => {
          if (push) {
            queue.push(state, key);
            waiting.push({ key: Math.max(key, lowest), state });
            return;
          }
          const least = Math.min(...waiting.map((one) => one.key));
          const at = waiting.findLastIndex((one) => one.key === least);
          const [next] = at < 0 ? [] : waiting.splice(at, 1);
          if (next) lowest = next.key;
          expect(queue.pop(Number.MAX_SAFE_INTEGER)).toBe(next?.state ?? -1);
        });
      },
    ),
    { seed: SEED, numRuns: 300 },
  ));
