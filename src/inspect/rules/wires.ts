/** Wires keep off parts and off one another, cross squarely, and open only where they are crossed. */
import type { Point } from '../../common/geometry.ts';
import {
  type Drawing,
  type DrawnLug,
  type DrawnPart,
  type DrawnWire,
  IS,
  lugWords,
  wireWords,
} from '../drawing.ts';
import { type Finding, finding } from '../finding.ts';
import type { Shape } from '../paint.ts';
import { boxOf, centreOf, distanceTo, grownArea, isRound, near, type Stretch } from '../space.ts';

/** Nearest that two wires may run side by side, and nearest to a lug that is not their own; centre lines, drawing units. */
const GAP = 10;
const CLEARANCE = 6;
/** How far inside a case's edge a wire soldered to it may reach: its solder joint lies on the rim. */
const DEPTH = 12;
/** Less than what drawings are rounded to. */
const TOUCH = 0.5;

export function wireFindings(drawing: Drawing): readonly Finding[] {
  const { wires, parts, shapes } = drawing;
  const fields = shapes.filter(({ is }) => is.includes(IS.field));
  return wires.flatMap((wire, i) => [
    ...wire.stretches.filter(slants).map(({ a }) => finding('askew', a, { wire: wireWords(wire) })),
    ...parts.flatMap((part) => [...lugsNear(wire, part), ...under(wire, part)]),
    ...fields.flatMap((field) => acrossField(wire, field)),
    ...wires.slice(i + 1).flatMap((other) => together(wire, other)),
    ...wires.flatMap((other) => (other === wire ? [] : knocks(wire, other))),
    ...wire.openings
      .filter((p) => !crossedAt(p, wire, wires))
      .map((p) => finding('opening', p, { wire: wireWords(wire) })),
  ]);
}

const slants = ({ a, b }: Stretch): boolean => a.x !== b.x && a.y !== b.y;
const level = ({ a, b }: Stretch): boolean => a.y === b.y;
const middle = ({ a, b }: Stretch): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

const lugsNear = (wire: DrawnWire, { lugs }: DrawnPart): readonly Finding[] =>
  lugs
    .filter(
      (lug) => !wire.ends.includes(lug) && wire.stretches.some((line) => near(line, lug.area, CLEARANCE)),
    )
    .map((lug) =>
      finding('lug-too-near', centreOf(lug.area), {
        wire: wireWords(wire),
        lug: lugWords(lug),
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
      const stub = isRound(area) && ends.some((end) => end?.part === name && end.area === area);
      return near(line, stub ? grownArea(area, -DEPTH) : area, stub ? 0 : wire.half);
    });
    return hit
      .slice(0, 1)
      .map((line) => finding('under-part', middle(line), { wire: wireWords(wire), part: name }));
  });
}

const acrossField = (wire: DrawnWire, { area, groups }: Shape): readonly Finding[] =>
  wire.stretches
    .filter((line) => near(line, area, wire.half))
    .slice(0, 1)
    .map((line) =>
      finding('under-part', middle(line), {
        wire: wireWords(wire),
        part: `the field of ${groups[groups.length - 1]}`,
      }),
    );

/** Two wires side by side, or across one another. */
function together(wire: DrawnWire, other: DrawnWire): readonly Finding[] {
  const names = { wire: wireWords(wire), other: wireWords(other) };
  return wire.stretches.flatMap((s) =>
    other.stretches.flatMap((t): readonly Finding[] => {
      if (slants(s) || slants(t)) return [];
      const [p, q] = [boxOf([s.a, s.b]), boxOf([t.a, t.b])];
      if (level(s) !== level(t)) {
        const [h, v] = level(s) ? [p, q] : [q, p];
        const at = { x: v.x, y: h.y };
        if (!(at.x > h.x && at.x < h.x + h.width && at.y > v.y && at.y < v.y + v.height)) return [];
        const open = [wire, other].filter(({ openings }) => openings.some((o) => same(o, at))).length;
        return open === 1 ? [] : [finding('crossing', at, { ...names, open })];
      }
      const shared = level(s)
        ? Math.min(p.x + p.width, q.x + q.width) - Math.max(p.x, q.x)
        : Math.min(p.y + p.height, q.y + q.height) - Math.max(p.y, q.y);
      const gap = level(s) ? Math.abs(p.y - q.y) : Math.abs(p.x - q.x);
      if (shared <= TOUCH || gap >= GAP) return [];
      return gap < TOUCH
        ? [finding('shared-stretch', middle(s), names)]
        : [finding('parallel-gap', middle(s), { ...names, gap, least: GAP })];
    }),
  );
}

const same = (p: Point, q: Point): boolean => Math.hypot(p.x - q.x, p.y - q.y) < 1;

/** Corners and ends of a wire on another wire: neither a crossing nor a joint, unless both end on one lug there. */
function knocks(wire: DrawnWire, other: DrawnWire): readonly Finding[] {
  const shared = (lug: DrawnLug | undefined): boolean => lug !== undefined && other.ends.includes(lug);
  return wire.points
    .filter((p, i) => {
      const lug = i === 0 ? wire.ends[0] : i === wire.points.length - 1 ? wire.ends[1] : undefined;
      return !shared(lug) && other.stretches.some((line) => distanceTo(p, line) < TOUCH);
    })
    .map((p) => finding('knock', p, { wire: wireWords(wire), other: wireWords(other) }));
}

const crossedAt = (p: Point, wire: DrawnWire, wires: readonly DrawnWire[]): boolean =>
  wires.some((other) => other !== wire && other.stretches.some((line) => distanceTo(p, line) < TOUCH));
