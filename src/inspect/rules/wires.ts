/** Wires keep off parts and off one another, cross squarely, and open only where they are crossed. */

import { centreOf, type Point, type Rect } from '../../common/geometry.ts';
import { CLASS } from '../../draw/classes.ts';
import {
  type Drawing,
  type DrawnLug,
  type DrawnPart,
  type DrawnWire,
  lugText,
  wireText,
} from '../drawing.ts';
import { type Finding, finding } from '../finding.ts';
import { SpatialIndex } from '../near.ts';
import type { AreaMark } from '../paint.ts';
import {
  boundsOf,
  boxOfSegment,
  distanceToSegment,
  grown,
  grownArea,
  hasRoundEnds,
  isWithin,
  type Segment,
} from '../space.ts';

/** Nearest that two wires may run side by side, and nearest to a lug that is not their own; centre lines, drawing units. */
const GAP = 10;
const CLEARANCE = 6;
/** How far inside a case's edge a wire soldered to it may reach: its solder joint lies on the rim. */
const DEPTH = 12;
/** Least of a wire to be seen between a gap and its end, a corner, another gap; half of a gap. */
const SEEN = { end: 16, corner: 12, stub: 12 } as const;
const HALF_GAP = 6;
/** Less than what drawings are rounded to. */
const TOUCH = 0.5;

/** A stretch of a wire and which wire it is of, by its place in the drawing. */
interface Run {
  readonly line: Segment;
  readonly box: Rect;
  readonly of: number;
}

/** A stretch of one wire and one of another near it. */
interface Pair {
  readonly run: Run;
  readonly to: Run;
}

export function wireFindings(drawing: Drawing): readonly Finding[] {
  const { wires, shapes } = drawing;
  const highlights = shapes.filter(({ is }) => is.includes(CLASS.highlight));
  const parts = new SpatialIndex(drawing.parts, ({ lugs, bodies }) =>
    boundsOf([...lugs, ...bodies].map(({ area }) => area)),
  );
  const runs = wires.map(({ stretches }, of) =>
    stretches.map((line): Run => ({ line, box: boxOfSegment(line), of })),
  );
  const all = new SpatialIndex(runs.flat(), ({ box }) => box);
  return wires.flatMap((wire, i) => {
    const own = runs[i] ?? [];
    const reach = grown(boundsOf(own.map(({ box }) => box)), Math.max(CLEARANCE, wire.half));
    const beside = new Map<number, Pair[]>();
    for (const run of own)
      for (const to of all.query(grown(run.box, GAP)))
        if (to.of !== i) beside.set(to.of, [...(beside.get(to.of) ?? []), { run, to }]);
    // In the drawing's order, and so are the findings.
    const others = [...beside].sort(([a], [b]) => a - b);
    return [
      ...wire.stretches.filter(slants).map(({ a }) => finding('diagonal-wire', a, { wire: wireText(wire) })),
      ...parts.query(reach).flatMap((part) => [...lugsNear(wire, part), ...under(wire, part)]),
      ...highlights.flatMap((highlight) => acrossHighlight(wire, highlight)),
      ...others.flatMap(([of, pairs]) => {
        const other = wires[of];
        return other && of > i ? pairs.flatMap(({ run, to }) => together(wire, run, other, to)) : [];
      }),
      ...others.flatMap(([of, pairs]) => {
        const other = wires[of];
        return other
          ? touchesOf(
              wire,
              other,
              pairs.map(({ to }) => to.line),
            )
          : [];
      }),
      ...wire.openings
        .filter(
          (p) => !others.some(([, pairs]) => pairs.some(({ to }) => distanceToSegment(p, to.line) < TOUCH)),
        )
        .map((p) => finding('unexpected-gap', p, { wire: wireText(wire) })),
      ...seenBetween(wire),
    ];
  });
}

/** How much of a wire is seen between its gaps and its ends, its corners and one another. */
function seenBetween(wire: DrawnWire): readonly Finding[] {
  const { stretches, openings } = wire;
  const last = stretches.length - 1;
  const say = (
    rule: 'gap-at-end' | 'gap-at-corner' | 'short-stub',
    at: Point,
    seen: number,
    least: number,
  ) =>
    // Coordinates are rounded to hundredths.
    seen < least - 0.02 ? [finding(rule, at, { wire: wireText(wire), seen, least })] : [];
  return stretches.flatMap((line, i) => {
    const own = openings.filter((p) => distanceToSegment(p, line) < TOUCH);
    const along = (p: Point): number => Math.hypot(p.x - line.a.x, p.y - line.a.y);
    const far = along(line.b);
    const sorted = own.map((at) => ({ at, from: along(at) })).sort((p, q) => p.from - q.from);
    return sorted.flatMap(({ at, from }, k) => {
      const before = sorted[k - 1];
      const [head, tail] = [from - HALF_GAP, far - from - HALF_GAP];
      return [
        ...(i === 0 ? say('gap-at-end', at, head, SEEN.end) : say('gap-at-corner', at, head, SEEN.corner)),
        ...(i === last ? say('gap-at-end', at, tail, SEEN.end) : say('gap-at-corner', at, tail, SEEN.corner)),
        ...(before ? say('short-stub', at, from - before.from - 2 * HALF_GAP, SEEN.stub) : []),
      ];
    });
  });
}

const slants = ({ a, b }: Segment): boolean => a.x !== b.x && a.y !== b.y;
const level = ({ a, b }: Segment): boolean => a.y === b.y;
const middle = ({ a, b }: Segment): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

const lugsNear = (wire: DrawnWire, { lugs }: DrawnPart): readonly Finding[] =>
  lugs
    .filter(
      (lug) => !wire.ends.includes(lug) && wire.stretches.some((line) => isWithin(line, lug.area, CLEARANCE)),
    )
    .map((lug) =>
      finding('lug-too-near', centreOf(lug.area), {
        wire: wireText(wire),
        lug: lugText(lug),
        least: CLEARANCE,
      }),
    );

/** Only a wire soldered to a case may reach over its edge, with the stretch that ends there and no deeper than need be. */
function under(wire: DrawnWire, { name, bodies }: DrawnPart): readonly Finding[] {
  return bodies.flatMap(({ area }) => {
    const hit = wire.stretches.filter((line, i) => {
      const ends = [
        i === 0 ? wire.ends[0] : undefined,
        i === wire.stretches.length - 1 ? wire.ends[1] : undefined,
      ];
      const stub = hasRoundEnds(area) && ends.some((end) => end?.part === name && end.area === area);
      return isWithin(line, stub ? grownArea(area, -DEPTH) : area, stub ? 0 : wire.half);
    });
    return hit
      .slice(0, 1)
      .map((line) => finding('under-part', middle(line), { wire: wireText(wire), part: name }));
  });
}

const acrossHighlight = (wire: DrawnWire, { area, groups }: AreaMark): readonly Finding[] =>
  wire.stretches
    .filter((line) => isWithin(line, area, wire.half))
    .slice(0, 1)
    .map((line) =>
      finding('under-part', middle(line), {
        wire: wireText(wire),
        part: `the highlight of ${groups[groups.length - 1]}`,
      }),
    );

/** Two wires side by side, or across one another, by a stretch of each. */
function together(
  wire: DrawnWire,
  { line: s, box: p }: Run,
  other: DrawnWire,
  { line: t, box: q }: Run,
): readonly Finding[] {
  if (slants(s) || slants(t)) return [];
  const names = (): { readonly wire: string; readonly other: string } => ({
    wire: wireText(wire),
    other: wireText(other),
  });
  if (level(s) !== level(t)) {
    const [h, v] = level(s) ? [p, q] : [q, p];
    const at = { x: v.x, y: h.y };
    if (!(at.x > h.x && at.x < h.x + h.width && at.y > v.y && at.y < v.y + v.height)) return [];
    const open = [wire, other].filter(({ openings }) => openings.some((o) => same(o, at))).length;
    return open === 1 ? [] : [finding('crossing', at, { ...names(), open })];
  }
  const shared = level(s)
    ? Math.min(p.x + p.width, q.x + q.width) - Math.max(p.x, q.x)
    : Math.min(p.y + p.height, q.y + q.height) - Math.max(p.y, q.y);
  const gap = level(s) ? Math.abs(p.y - q.y) : Math.abs(p.x - q.x);
  if (shared <= TOUCH || gap >= GAP) return [];
  return gap < TOUCH
    ? [finding('wires-overlap', middle(s), names())]
    : [finding('parallel-gap', middle(s), { ...names(), gap, least: GAP })];
}

const same = (p: Point, q: Point): boolean => Math.hypot(p.x - q.x, p.y - q.y) < 1;

/** Corners and ends of a wire on a stretch of another: neither a crossing nor a joint, unless both end on one lug there. */
function touchesOf(wire: DrawnWire, other: DrawnWire, stretches: readonly Segment[]): readonly Finding[] {
  const shared = (lug: DrawnLug | undefined): boolean => lug !== undefined && other.ends.includes(lug);
  return wire.points
    .filter((p, i) => {
      const lug = i === 0 ? wire.ends[0] : i === wire.points.length - 1 ? wire.ends[1] : undefined;
      return !shared(lug) && stretches.some((line) => distanceToSegment(p, line) < TOUCH);
    })
    .map((p) => finding('wire-on-wire', p, { wire: wireText(wire), other: wireText(other) }));
}
