/** A colour code lies on just one wire, the one it speaks of, or beside it with a leader; and on nothing else. */
import { centreOf, overlaps } from '../../common/geometry.ts';
import { CLASS } from '../../draw/classes.ts';
import type { Chip, Drawing, DrawnWire } from '../drawing.ts';
import { type Finding, finding } from '../finding.ts';
import { distanceToSegment, grown, segmentHitsRect } from '../space.ts';

/** How far from a chip's middle its wire may run, drawing units: coordinates are rounded to whole ones. */
const ASTRAY = 1;

export function chipFindings({ chips, wires, parts, shapes }: Drawing): readonly Finding[] {
  const highlights = shapes.filter(({ is }) => is.includes(CLASS.highlight));
  const solids = parts.flatMap(({ lugs, bodies }) => [
    ...lugs.map(({ area }) => area),
    ...bodies.map(({ area }) => area),
  ]);
  return chips.flatMap((chip, i) => {
    const { shape, code } = chip;
    const say = (what: string): Finding => finding('chip-place', centreOf(shape.area), { code, what });
    const own = wireOf(chip, wires);
    const under = wires.filter(({ stretches, half }) =>
      stretches.some((line) => segmentHitsRect(line, grown(shape.outer, half))),
    );
    return [
      ...(own ? [] : [say('lies on no wire, or on several')]),
      ...(own && under.some((wire) => wire !== own) ? [say('touches another wire')] : []),
      ...(solids.some((solid) => overlaps(solid, shape.outer)) ? [say('touches a part')] : []),
      ...(highlights.some(({ outer }) => overlaps(outer, shape.outer)) ? [say('touches a highlight')] : []),
      ...(chips.slice(i + 1).some((other) => overlaps(other.shape.outer, shape.outer))
        ? [say('touches another')]
        : []),
    ];
  });
}

/** The one wire that runs through a chip's middle, or that its leader begins on. */
export function wireOf({ at }: Chip, wires: readonly DrawnWire[]): DrawnWire | undefined {
  const through = wires.filter(({ stretches }) =>
    stretches.some((line) => distanceToSegment(at, line) <= ASTRAY),
  );
  return through.length === 1 ? through[0] : undefined;
}
