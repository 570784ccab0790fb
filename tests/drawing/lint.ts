/** Rules on wires, read from a drawing's geometry. Each finding is a sentence. */
import { type Box, type Drawn, type DrawnWire, type Spot, type Stretch, within } from './read-svg.ts';

/** Nearest that two wires may run side by side, drawing units. */
const GAP = 10;
/** How far inside a case's edge a wire soldered to it may reach. */
const DEPTH = 12;

const level = (s: Stretch): boolean => s.y1 === s.y2;
const lo = (s: Stretch): number => (level(s) ? Math.min(s.x1, s.x2) : Math.min(s.y1, s.y2));
const hi = (s: Stretch): number => (level(s) ? Math.max(s.x1, s.x2) : Math.max(s.y1, s.y2));
const line = (s: Stretch): number => (level(s) ? s.y1 : s.x1);
const boxOf = (s: Stretch): Box => ({
  x: Math.min(s.x1, s.x2),
  y: Math.min(s.y1, s.y2),
  width: Math.abs(s.x1 - s.x2),
  height: Math.abs(s.y1 - s.y2),
});
const holds = (s: Stretch, [x, y]: Spot): boolean => within(boxOf(s), x, y, 0.5);

export function lintWires(drawn: Drawn): readonly string[] {
  const { stretches, bodies, lugs, wires } = drawn;
  const found: string[] = [];
  const wireOf = (s: Stretch): DrawnWire | undefined => wires.find((one) => one.wire === s.wire);
  for (const s of stretches) if (s.x1 !== s.x2 && s.y1 !== s.y2) found.push(`wire ${s.wire} runs askew`);
  stretches.forEach((s, i) => {
    for (const t of stretches.slice(i + 1)) if (s.wire !== t.wire) found.push(...pair(s, t, wires));
    for (const body of bodies)
      if (under(s, body, wireOf(s))) found.push(`wire ${s.wire} runs under ${body.part}`);
    for (const lug of lugs)
      if (!lug.round && !wireOf(s)?.ends.includes(lug.name) && cuts(s, lug))
        found.push(`wire ${s.wire} runs over ${lug.name}`);
  });
  for (const wire of wires) found.push(...knocks(wire, drawn));
  return found;
}

/** Two wires side by side, or across one another. */
function pair(s: Stretch, t: Stretch, wires: readonly DrawnWire[]): readonly string[] {
  if (level(s) !== level(t)) {
    const [h, v] = level(s) ? [s, t] : [t, s];
    const at: Spot = [line(v), line(h)];
    const across = at[0] > lo(h) && at[0] < hi(h) && at[1] > lo(v) && at[1] < hi(v);
    const open = wires.filter(
      ({ wire, openings }) =>
        (wire === s.wire || wire === t.wire) &&
        openings.some(([x, y]) => Math.hypot(x - at[0], y - at[1]) < 1),
    );
    return across && open.length !== 1
      ? [`wires ${s.wire} and ${t.wire} cross with ${open.length} of them open`]
      : [];
  }
  const shared = Math.min(hi(s), hi(t)) - Math.max(lo(s), lo(t));
  const apart = Math.abs(line(s) - line(t));
  if (shared <= 0.5 || apart >= GAP) return [];
  return [
    apart < 0.5
      ? `wires ${s.wire} and ${t.wire} share a stretch`
      : `wires ${s.wire} and ${t.wire} run ${apart} apart`,
  ];
}

/** Whether a stretch runs through a rectangle, its outermost unit not counted. */
const cuts = (s: Stretch, box: Box): boolean =>
  Math.min(s.x1, s.x2) < box.x + box.width - 1 &&
  Math.max(s.x1, s.x2) > box.x + 1 &&
  Math.min(s.y1, s.y2) < box.y + box.height - 1 &&
  Math.max(s.y1, s.y2) > box.y + 1;

/** Only a wire soldered to a case may reach over its edge, with the stretch that ends there and no deeper than need be. */
function under(s: Stretch, body: Drawn['bodies'][number], wire: DrawnWire | undefined): boolean {
  if (!body.round) return cuts(s, body);
  const box = boxOf(s);
  const [cx, cy] = [body.x + body.width / 2, body.y + body.height / 2];
  const near = Math.hypot(
    Math.max(box.x - cx, 0, cx - box.x - box.width),
    Math.max(box.y - cy, 0, cy - box.y - box.height),
  );
  const ends = [wire?.points[0], wire?.points[wire.points.length - 1]];
  const stub = ends.some((p, i) => p && wire?.ends[i] === `${body.part}.case` && holds(s, p));
  return near < body.width / 2 - (stub ? DEPTH : 1);
}

/** Corners and ends of a wire that touch another wire: neither a crossing nor a joint. */
function knocks({ wire, points, ends }: DrawnWire, { stretches, wires }: Drawn): readonly string[] {
  const found: string[] = [];
  points.forEach((p, i) => {
    const lug = i === 0 ? ends[0] : i === points.length - 1 ? ends[1] : undefined;
    for (const s of stretches) {
      if (s.wire === wire || !holds(s, p)) continue;
      const other = wires.find((one) => one.wire === s.wire);
      if (lug === undefined || !other?.ends.includes(lug))
        found.push(`wire ${wire} knocks against wire ${s.wire}`);
    }
  });
  return found;
}
