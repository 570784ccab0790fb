/**
 * First places of very many parts: on a lattice, neighbours in the circuit near one another. The layered layout would draw
 * such a kit out to many times the size, and wires across all of that take minutes to lay.
 */

import { PITCH } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import { seeded } from '../common/random.ts';
import type { Joint } from '../describe/kit.ts';
import type { Outlined, Seed } from './seating.ts';

/** Exchanges tried for every part: beyond this the wires become hardly shorter. */
const EXCHANGES = 3000;
/** How much longer an exchange may leave the wires at first, cells; it falls to nothing along the way. */
const WARMTH = 3;

/**
 * Top left corners by part name, drawing units.
 *
 * @param gap grid units kept free between cells, for wires
 */
export function packed(
  parts: readonly Outlined[],
  joints: readonly Joint[],
  gap: number,
): ReadonlyMap<string, Seed> {
  const across = Math.ceil(Math.sqrt(parts.length));
  const cellOf = shortened(byNeighbourhood(parts, joints), joints, across);
  const columns = Array.from({ length: across }, () => 0);
  const rows = Array.from({ length: Math.ceil(parts.length / across) }, () => 0);
  for (const { part, outline } of parts) {
    const cell = cellOf.get(part.name) ?? 0;
    const [x, y] = [cell % across, Math.floor(cell / across)];
    columns[x] = Math.max(columns[x] ?? 0, outline.width);
    rows[y] = Math.max(rows[y] ?? 0, outline.height);
  }
  const [lefts, tops] = [edges(columns, gap), edges(rows, gap)];
  return new Map(
    parts.map(({ part }) => {
      const cell = cellOf.get(part.name) ?? 0;
      return [part.name, { x: nth(lefts, cell % across), y: nth(tops, Math.floor(cell / across)) }];
    }),
  );
}

/** Where each of a row of extents begins, on the grid, `gap` grid units between one and the next. */
function edges(extents: readonly number[], gap: number): readonly number[] {
  let next = 0;
  return extents.map((extent) => {
    const edge = next;
    next += Math.ceil(extent / PITCH + gap) * PITCH;
    return edge;
  });
}

/**
 * A cell for every part: at first one after another, every other row backwards, then parts exchanged by chance, by a
 * seeded generator, where that makes the wires shorter, or in the beginning little longer.
 */
function shortened(
  order: readonly string[],
  joints: readonly Joint[],
  across: number,
): ReadonlyMap<string, number> {
  const number = new Map(order.map((name, i) => [name, i]));
  const beside: number[][] = order.map(() => []);
  for (const { from, to } of joints) {
    const [a, b] = [number.get(from.part) ?? 0, number.get(to.part) ?? 0];
    if (a === b) continue;
    beside[a]?.push(b);
    beside[b]?.push(a);
  }
  const cells = order.length;
  const xOf = Int16Array.from({ length: cells }, (_, i) =>
    Math.floor(i / across) % 2 === 0 ? i % across : across - 1 - (i % across),
  );
  const yOf = Int16Array.from({ length: cells }, (_, i) => Math.floor(i / across));
  const lengthAt = (part: number, x: number, y: number, but: number): number => {
    let sum = 0;
    for (const other of beside[part] ?? [])
      if (other !== but) sum += Math.abs(nth(xOf, other) - x) + Math.abs(nth(yOf, other) - y);
    return sum;
  };
  const random = seeded(cells);
  const tries = EXCHANGES * cells;
  for (let i = 0; i < tries; i++) {
    const a = Math.floor(random() * cells);
    const b = Math.floor(random() * cells);
    if (a === b) continue;
    const [ax, ay, bx, by] = [nth(xOf, a), nth(yOf, a), nth(xOf, b), nth(yOf, b)];
    const longer =
      lengthAt(a, bx, by, b) + lengthAt(b, ax, ay, a) - lengthAt(a, ax, ay, b) - lengthAt(b, bx, by, a);
    if (longer > WARMTH * (1 - i / tries) * random()) continue;
    xOf[a] = bx;
    yOf[a] = by;
    xOf[b] = ax;
    yOf[b] = ay;
  }
  return new Map(order.map((name, i) => [name, nth(yOf, i) * across + nth(xOf, i)]));
}

/** Breadth first from the first part, through joints; what nothing leads to comes last. */
export function byNeighbourhood(parts: readonly Outlined[], joints: readonly Joint[]): readonly string[] {
  const beside = new Map<string, string[]>();
  for (const { from, to } of joints) {
    beside.set(from.part, [...(beside.get(from.part) ?? []), to.part]);
    beside.set(to.part, [...(beside.get(to.part) ?? []), from.part]);
  }
  const names = parts.map(({ part }) => part.name);
  const seen = new Set<string>();
  for (const first of names) {
    if (seen.has(first)) continue;
    seen.add(first);
    const queue = [first];
    for (let name = queue.shift(); name !== undefined; name = queue.shift())
      for (const next of beside.get(name) ?? [])
        if (!seen.has(next)) {
          seen.add(next);
          queue.push(next);
        }
  }
  return [...seen];
}
