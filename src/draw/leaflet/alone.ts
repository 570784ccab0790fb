/** Some of a harness: one part with the beginnings of its joints, and the lines at one lug. */
import { lugIdOf } from '../../circuit/circuit.ts';
import type { Point, Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { type Harness, wordsOf } from './harness.ts';
import type { EndName } from './joint-ends.ts';

/** Parts by themselves, with the beginnings of their joints as far as a window shows them. */
export function alone(harness: Harness, names: ReadonlySet<string>, window: Rect): Harness {
  const wires = harness.sheet.placement.wires.map(({ joint }) => joint);
  const at = (i: number, end: EndName): boolean => names.has(nth(wires, i)[end].part);
  const parts = harness.parts.filter(({ part }) => names.has(part.name));
  return {
    ...harness,
    parts,
    words: parts.flatMap((placed) => wordsOf(harness, placed)),
    made: harness.made.map((made, i) => (at(i, 'from') || at(i, 'to') ? made : 'absent')),
    paths: harness.paths.map((path, i) => {
      if (at(i, 'from')) return at(i, 'to') ? path : within(path, window);
      return at(i, 'to') ? [...within([...path].reverse(), window)].reverse() : path;
    }),
  };
}

/** The lines from one of the parts to one of them, which are shown whole. */
export const pathsBetween = (
  { sheet, made, paths }: Harness,
  names: ReadonlySet<string>,
): readonly (readonly Point[])[] =>
  paths.filter((_, i) => {
    const { from, to } = nth(sheet.placement.wires, i).joint;
    return made[i] !== 'absent' && names.has(from.part) && names.has(to.part);
  });

/** The lines that end at a lug, as far as they are made. */
export const pathsAt = ({ sheet, made, paths }: Harness, lug: string): readonly (readonly Point[])[] =>
  paths.filter((_, i) => {
    const { from, to } = nth(sheet.placement.wires, i).joint;
    return made[i] !== 'absent' && [lugIdOf(from), lugIdOf(to)].includes(lug);
  });

/** A path from its beginning to where it leaves a rectangle. */
function within(path: readonly Point[], { x, y, width, height }: Rect): readonly Point[] {
  const held = ({ x: px, y: py }: Point): Point => ({
    x: Math.min(Math.max(px, x), x + width),
    y: Math.min(Math.max(py, y), y + height),
  });
  const out = path.findIndex((p) => held(p).x !== p.x || held(p).y !== p.y);
  return out === -1 ? path : [...path.slice(0, out), held(nth(path, out))];
}
