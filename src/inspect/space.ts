/** Plane geometry for the rules. */
import { centreOf, overlaps, type Point, type Rect } from '../common/geometry.ts';

/** A level, upright or slanting line from one point to another. */
export interface Segment {
  readonly a: Point;
  readonly b: Point;
}

/** A filled or outlined area. `radius` rounds the corners of a box; a circle is a box rounded altogether. */
export interface Area extends Rect {
  readonly radius: number;
}

export const grown = (r: Rect, by: number): Rect => ({
  x: r.x - by,
  y: r.y - by,
  width: r.width + 2 * by,
  height: r.height + 2 * by,
});

export const grownArea = (area: Area, by: number): Area => ({
  ...grown(area, by),
  radius: area.radius > 0 ? Math.max(0, area.radius + by) : 0,
});

export const boxOf = (points: readonly Point[]): Rect => {
  // A path may have more points than a call may have arguments.
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  }
  return { x: left, y: top, width: right - left, height: bottom - top };
};

export const boxOfSegment = ({ a, b }: Segment): Rect => ({
  x: Math.min(a.x, b.x),
  y: Math.min(a.y, b.y),
  width: Math.abs(a.x - b.x),
  height: Math.abs(a.y - b.y),
});

export const boundsOf = (boxes: readonly Rect[]): Rect =>
  boxOf(boxes.flatMap((b) => [b, { x: b.x + b.width, y: b.y + b.height }]));

/** Whether a point lies in an area or no further than `slack` outside it. */
export function inArea(area: Area, p: Point, slack = 0): boolean {
  const r = Math.min(area.radius, area.width / 2, area.height / 2);
  const dx = Math.max(area.x + r - p.x, 0, p.x - (area.x + area.width - r));
  const dy = Math.max(area.y + r - p.y, 0, p.y - (area.y + area.height - r));
  return Math.hypot(dx, dy) <= r + slack;
}

/** Whether a box lies wholly in an area. */
export function areaContains(area: Area, box: Rect): boolean {
  const [right, bottom] = [box.x + box.width, box.y + box.height];
  const corners = [box, { x: right, y: box.y }, { x: box.x, y: bottom }, { x: right, y: bottom }];
  return corners.every((corner) => inArea(area, corner, 0.01));
}

/** Whether a box touches an area. */
export function touchesArea(area: Area, box: Rect): boolean {
  if (!overlaps(area, box)) return false;
  const r = Math.min(area.radius, area.width / 2, area.height / 2);
  if (r === 0) return true;
  // The point of the box that is nearest to the area with its corners cut off decides.
  const core = grown(area, -r);
  const near = (lo: number, size: number, from: number, span: number): number =>
    Math.max(lo - (from + span), 0, from - (lo + size));
  const dx = near(core.x, core.width, box.x, box.width);
  const dy = near(core.y, core.height, box.y, box.height);
  return Math.hypot(dx, dy) < r;
}

/** Whether a line comes into a box (Liang and Barsky's clipping). */
export function segmentHitsRect({ a, b }: Segment, box: Rect): boolean {
  let [enter, leave] = [0, 1];
  const clip = (from: number, by: number, lo: number, hi: number): boolean => {
    if (by === 0) return from > lo && from < hi;
    const [t, u] = [(lo - from) / by, (hi - from) / by];
    enter = Math.max(enter, Math.min(t, u));
    leave = Math.min(leave, Math.max(t, u));
    return enter < leave;
  };
  return clip(a.x, b.x - a.x, box.x, box.x + box.width) && clip(a.y, b.y - a.y, box.y, box.y + box.height);
}

/** Whether a stroke's ink comes into a box; a slanting stroke's ends are taken as round. */
export function strokeHitsRect(line: Segment, half: number, cap: number, box: Rect): boolean {
  const { a, b } = line;
  // A stretch without length is painted by its caps alone (SVG 2, 13.5.4; from memory).
  if (cap === 0 && a.x === b.x && a.y === b.y) return false;
  if (a.x !== b.x && a.y !== b.y) return slantInks(line, half, box);
  const [along, across] = a.y === b.y ? [cap, half] : [half, cap];
  const ink = boxOfSegment(line);
  return overlaps(box, {
    x: ink.x - along,
    y: ink.y - across,
    width: ink.width + 2 * along,
    height: ink.height + 2 * across,
  });
}

function slantInks(line: Segment, half: number, box: Rect): boolean {
  const [right, bottom] = [box.x + box.width, box.y + box.height];
  const corners = [box, { x: right, y: box.y }, { x: box.x, y: bottom }, { x: right, y: bottom }];
  return (
    segmentHitsRect(line, box) ||
    corners.some((corner) => distanceToSegment(corner, line) < half) ||
    [line.a, line.b].some((end) => inArea({ ...box, radius: 0 }, end, half))
  );
}

/** Distance of a point from a line. */
export function distanceToSegment(p: Point, { a, b }: Segment): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

/** Whether a line comes nearer to an area than `by`; round areas and those with round ends by their true distance, others by their box grown. */
export const isWithin = (line: Segment, area: Area, by: number): boolean =>
  isRound(area)
    ? distanceToSegment(centreOf(area), line) < area.width / 2 + by
    : hasRoundEnds(area)
      ? distanceBetween(line, coreOf(area)) < Math.min(area.width, area.height) / 2 + by
      : segmentHitsRect(line, grown(area, by));

/** A circle, or a long area with two round ends. */
export const hasRoundEnds = ({ width, height, radius }: Area): boolean =>
  radius > 0 && radius >= Math.min(width, height) / 2;

/** The line between the middles of a long area's two round ends. */
function coreOf({ x, y, width, height }: Area): Segment {
  const r = Math.min(width, height) / 2;
  return { a: { x: x + r, y: y + r }, b: { x: x + width - r, y: y + height - r } };
}

/** Distance between a line and one that is level or upright. */
function distanceBetween(line: Segment, core: Segment): number {
  // Lines that cross have no distance; a box without height or width is the core itself.
  if (segmentHitsRect(line, grown(boxOfSegment(core), 1e-6))) return 0;
  return Math.min(
    ...[core.a, core.b].map((p) => distanceToSegment(p, line)),
    ...[line.a, line.b].map((p) => distanceToSegment(p, core)),
  );
}

export const isRound = (area: Area): boolean => area.width === area.height && area.radius >= area.width / 2;

export const segmentsOf = (points: readonly Point[]): readonly Segment[] =>
  points.slice(1).map((b, i) => ({ a: points[i] ?? b, b }));
