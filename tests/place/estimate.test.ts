/** The estimate a search begins with: bends against a search of the empty plane, moves against a fresh estimate. */
import { expect, it } from 'vitest';
import { seeded } from '../../src/common/random.ts';
import { outlineOf } from '../../src/parts/index.ts';
import { annealed } from '../../src/place/anneal.ts';
import { Estimate } from '../../src/place/estimate.ts';
import { Moves } from '../../src/place/moves.ts';
import type { GridPart } from '../../src/place/placement.ts';
import { Move } from '../../src/place/places.ts';
import { leastBends } from '../../src/place/route/bends.ts';
import { sampleCircuit } from '../analyse/kits.ts';

/** Fewest bends from a point to another with the headings given, by trying all ways on a small plane, fewest bends first. */
function bendsByTrying(leaving: number, arriving: number, dx: number, dy: number): number {
  const [across, down] = [
    [1, 0, -1, 0],
    [0, 1, 0, -1],
  ] as const;
  const reach = 6;
  const best = new Map<string, number>();
  const queue: (readonly [number, number, number, number])[] = [[0, 0, leaving, 0]];
  for (let next = queue.shift(); next; next = queue.shift()) {
    const [x, y, heading, bends] = next;
    const key = `${x} ${y} ${heading}`;
    if ((best.get(key) ?? 99) <= bends) continue;
    best.set(key, bends);
    for (let turn = 0; turn < 4; turn++) {
      if (((turn + 2) & 3) === heading) continue;
      const there = [x + (across[turn] ?? 0), y + (down[turn] ?? 0)] as const;
      if (Math.max(Math.abs(there[0]), Math.abs(there[1])) <= reach)
        queue.push([there[0], there[1], turn, bends + (turn === heading ? 0 : 1)]);
    }
    queue.sort((p, q) => p[3] - q[3]);
  }
  // The last bend may be on the very point that it arrives at.
  return Math.min(
    ...[0, 1, 2, 3]
      .filter((heading) => ((heading + 2) & 3) !== arriving)
      .map((heading) => (best.get(`${dx} ${dy} ${heading}`) ?? 99) + (heading === arriving ? 0 : 1)),
  );
}

it('no way has fewer bends than are reckoned, and some way has as many', () => {
  for (let leaving = 0; leaving < 4; leaving++)
    for (let arriving = 0; arriving < 4; arriving++)
      for (const [dx, dy] of [
        [3, 0],
        [-3, 0],
        [0, 3],
        [0, -3],
        [2, 3],
        [-2, 3],
        [2, -3],
        [-2, -3],
      ] as const)
        expect(leastBends(leaving, arriving, dx, dy), `${leaving} ${arriving} ${dx} ${dy}`).toBe(
          bendsByTrying(leaving, arriving, dx, dy),
        );
});

const { kit } = sampleCircuit('kestrel-hss');
const joints = kit.joints.filter(({ from, to }) => from.part !== to.part);
const spreadOut: readonly GridPart[] = kit.parts.map((part, i) => ({
  part,
  outline: outlineOf(part),
  column: 26 * (i % 4),
  row: 20 * Math.floor(i / 4),
  turn: 0,
  mirror: false,
  fixed: i === 3,
  turnable: i !== 3,
}));

it('a move costs what a fresh estimate of the new places says, and taken back it is as if it had not been', () => {
  const random = seeded(7);
  const moves = new Moves(spreadOut, joints);
  const estimate = new Estimate(spreadOut, joints, 3);
  const move = new Move();
  let taken = 0;
  for (let i = 0; i < 600; i++) {
    const [before, places] = [estimate.cost, estimate.gridParts];
    if (!moves.draw(estimate.places, random, move)) continue;
    const cost = estimate.apply(move);
    if (cost === undefined) throw new Error('no limit was given');
    expect(cost).toBe(new Estimate(estimate.gridParts, joints, 3).cost);
    expect(estimate.gridParts.filter((one, k) => one !== places[k]).length).toBeLessThanOrEqual(move.count);
    if (random() < 0.5) {
      estimate.undo();
      expect([estimate.cost, estimate.gridParts]).toEqual([before, places]);
      // The very same parts, by which wires know that they have not moved.
      expect(estimate.gridParts.every((one, k) => one === places[k])).toBe(true);
      // With a limit: refused just below what it costs, and nothing has changed then; taken at that.
      expect(estimate.apply(move, cost - 1)).toBeUndefined();
      expect([estimate.cost, estimate.gridParts]).toEqual([before, places]);
      expect(estimate.apply(move, cost)).toBe(cost);
    }
    taken++;
  }
  expect(taken).toBeGreaterThan(100);
});

it('annealing makes the estimate smaller, moves no fixed part, and is the same for the same seed', () => {
  const go = (seed: number) => annealed(spreadOut, joints, 3, { moves: 2000, seed });
  const [one, again, other] = [go(1), go(1), go(2)];
  expect(one).toEqual(again);
  expect(one).not.toEqual(other);
  expect(one[3]).toBe(spreadOut[3]);
  const cost = (places: readonly GridPart[]): number => new Estimate(places, joints, 3).cost;
  expect(cost(one)).toBeLessThan(0.6 * cost(spreadOut));
});
