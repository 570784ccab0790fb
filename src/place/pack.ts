/**
 * First places of very many parts: on a lattice, neighbours in the circuit near one another. The layered layout would draw
 * such a kit out to many times the size, and wires across all of that take minutes to lay.
 */
import { PITCH } from '../common/geometry.ts';
import type { Joint } from '../describe/kit.ts';
import type { Outlined, Seed } from './seating.ts';

/**
 * Top left corners by part name, drawing units; parts in the order in which joints lead to them from the first.
 *
 * @param gap grid units kept free between cells, for wires
 */
export function packed(
  parts: readonly Outlined[],
  joints: readonly Joint[],
  gap: number,
): ReadonlyMap<string, Seed> {
  const order = byNeighbourhood(parts, joints);
  const width = Math.max(...parts.map(({ outline }) => outline.width));
  const cell = { width: Math.min(width, typical(parts)) + gap * PITCH };
  const across = Math.ceil(Math.sqrt(parts.length));
  const outlines = new Map(parts.map(({ part, outline }) => [part.name, outline]));
  const seeds = new Map<string, Seed>();
  let y = 0;
  for (let row = 0; row * across < order.length; row++) {
    const names = order.slice(row * across, (row + 1) * across);
    // Every other row runs back, so that what follows one another stays near.
    const line = row % 2 === 0 ? names : [...names].reverse();
    let x = 0;
    let tallest = 0;
    for (const name of line) {
      const outline = outlines.get(name);
      if (!outline) continue;
      seeds.set(name, { x: Math.round(x / PITCH) * PITCH, y });
      x += Math.max(cell.width, outline.width + gap * PITCH);
      tallest = Math.max(tallest, outline.height);
    }
    y += tallest + gap * PITCH;
  }
  return seeds;
}

/** Width that half of the parts do not exceed. */
const typical = (parts: readonly Outlined[]): number =>
  parts.map(({ outline }) => outline.width).sort((a, b) => a - b)[parts.length >> 1] ?? 0;

/** Breadth first from the first part, through joints; what nothing leads to comes last. */
function byNeighbourhood(parts: readonly Outlined[], joints: readonly Joint[]): readonly string[] {
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
