/** Wires: rounded bends, a real opening in the wire that runs below at every crossing, and a look for every kind of joint. */

import type { Line } from '../annotate/lines.ts';
import { type Point, round2 } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import type { Joint } from '../describe/kit.ts';
import type { PlacedWire } from '../place/placement.ts';
import { CLASS } from './classes.ts';
import type { Pen } from './pen.ts';
import { LINE, type Theme } from './theme.ts';

interface Segment {
  readonly wire: number;
  readonly a: Point;
  readonly b: Point;
}

const segmentsOf = (wires: readonly PlacedWire[]): readonly Segment[] =>
  wires.flatMap(({ points }, wire) => points.slice(1).map((b, i) => ({ wire, a: points[i] ?? b, b })));

/** Ground runs below signal; among equals, what is written later runs above. */
const heightOf = (lines: readonly Line[], wire: number): number =>
  wire + (lines[wire]?.look === 'ground' ? 0 : 1e6);

/** Where each wire is crossed from above. */
function openings(
  wires: readonly PlacedWire[],
  lines: readonly Line[],
  there: ReadonlySet<number>,
): readonly (readonly Point[])[] {
  const segments = segmentsOf(wires).filter(({ wire }) => there.has(wire));
  const level = segments.filter(({ a, b }) => a.y === b.y);
  const upright = segments.filter(({ a, b }) => a.x === b.x);
  const found: Point[][] = wires.map(() => []);
  for (const h of level)
    for (const v of upright) {
      if (h.wire === v.wire) continue;
      const { x } = v.a;
      const { y } = h.a;
      if ((x - h.a.x) * (x - h.b.x) >= 0 || (y - v.a.y) * (y - v.b.y) >= 0) continue;
      const below = heightOf(lines, h.wire) < heightOf(lines, v.wire) ? h.wire : v.wire;
      found[below]?.push({ x, y });
    }
  return found;
}

/** The `d` of a wire: rounded corners, broken at the openings. */
function wirePath(points: readonly Point[], gaps: readonly Point[]): string {
  let d = '';
  points.forEach((p, i) => {
    const before = points[i - 1];
    const after = points[i + 1];
    if (!before) {
      d += `M${round2(p.x)} ${round2(p.y)}`;
      return;
    }
    const [ux, uy] = unit(before, p);
    const on = gaps
      .filter((gap) => between(before, p, gap))
      .sort((s, t) => (s.x - t.x) * ux + (s.y - t.y) * uy);
    for (const gap of on)
      d += `L${round2(gap.x - ux * LINE.gap)} ${round2(gap.y - uy * LINE.gap)}M${round2(gap.x + ux * LINE.gap)} ${round2(gap.y + uy * LINE.gap)}`;
    if (!after) {
      d += `L${round2(p.x)} ${round2(p.y)}`;
      return;
    }
    const radius = Math.min(LINE.bendRadius, length(before, p) / 2, length(p, after) / 2);
    const [vx, vy] = unit(p, after);
    d += `L${round2(p.x - ux * radius)} ${round2(p.y - uy * radius)}`;
    d += `Q${round2(p.x)} ${round2(p.y)} ${round2(p.x + vx * radius)} ${round2(p.y + vy * radius)}`;
  });
  return d;
}

const length = (a: Point, b: Point): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
const unit = (a: Point, b: Point): readonly [number, number] => [Math.sign(b.x - a.x), Math.sign(b.y - a.y)];
const between = (a: Point, b: Point, p: Point): boolean =>
  a.x === b.x ? p.x === a.x && (p.y - a.y) * (p.y - b.y) < 0 : p.y === a.y && (p.x - a.x) * (p.x - b.x) < 0;

interface Stroke {
  readonly stroke: string;
  readonly width: number;
  readonly dash?: string;
}

/** A stroke as SVG has it. */
export const strokeAttributes = ({ stroke, width, dash }: Stroke) => ({
  stroke,
  'stroke-width': width,
  ...(dash === undefined ? {} : { 'stroke-dasharray': dash }),
});

/** Strokes laid over one another to make a look, bottom first. */
export function strokes(line: Line, theme: Theme): readonly Stroke[] {
  const tint = theme.tints[line.tint] ?? theme.ink;
  switch (line.look) {
    case 'signal':
      return [{ stroke: tint, width: LINE.signal }];
    case 'ground':
      return [
        { stroke: theme.ink, width: LINE.ground },
        { stroke: theme.paper, width: LINE.groundCore },
      ];
    case 'braid':
      // Cross-hatched along its length, as the weave looks; the bare screen must not be taken for an insulated wire.
      return [
        { stroke: theme.ink, width: LINE.braid },
        { stroke: theme.paper, width: LINE.braid - 3 },
        { stroke: theme.ink, width: LINE.braid - 3, dash: '1.6 2.6' },
      ];
    case 'leg':
      return [{ stroke: theme.leg, width: LINE.leg }];
    case 'sleeved':
      return [
        { stroke: theme.outline, width: LINE.sleeving },
        { stroke: theme.sleeving, width: LINE.sleeving - 2 },
        { stroke: theme.leg, width: LINE.leg },
      ];
    case 'jumper':
      return [
        { stroke: theme.outline, width: LINE.jumper + 2 },
        { stroke: theme.jumper, width: LINE.jumper },
      ];
    case 'bend':
      return [
        { stroke: theme.outline, width: LINE.bend + 2 },
        { stroke: theme.lug, width: LINE.bend },
      ];
  }
}

/** How a wire stands out: not at all, from the pale rest, as the rest, as what is new; or it is not there yet. */
export type Emphasis = 'plain' | 'pale' | 'new' | 'absent';

/** A theme in which every line is pale, for what does not count. */
const paled = (theme: Theme): Theme => ({
  ...theme,
  ink: theme.pale,
  outline: theme.pale,
  leg: theme.pale,
  lug: theme.paper,
  solder: theme.paper,
  jumper: theme.pale,
  sleeving: theme.paper,
  tints: {},
});

/** Radius of a solder dot: covers the widest line's end, and no more, for a lug's name stands close by. */
const SOLDER = 3;

/** Whether a leg's line only goes on there from its own component, with nothing else joined to it. */
const ownLeg = (wires: readonly PlacedWire[], { joint, own }: PlacedWire, end: Joint['from']): boolean =>
  joint.kind === 'leg' &&
  own.includes(end.part) &&
  wires.filter(({ joint: { from, to } }) =>
    [from, to].some(({ part, lug }) => part === end.part && lug === end.lug),
  ).length === 1;

/** A broad pale line under every wire that is new: to be drawn before parts and wires, which lie on it. */
export function drawMarks(
  pen: Pen,
  wires: readonly PlacedWire[],
  theme: Theme,
  emphasis: readonly Emphasis[],
): void {
  wires.forEach(({ points }, i) => {
    if (emphasis[i] === 'new')
      pen.stroke(wirePath(points, []), {
        class: CLASS.mark,
        fill: 'none',
        stroke: theme.mark,
        'stroke-width': LINE.mark,
        'stroke-linecap': 'round',
        'stroke-linejoin': 'round',
      });
  });
}

/** Draws every wire, those that run below first; one group a joint. */
export function drawWires(
  pen: Pen,
  prefix: string,
  wires: readonly PlacedWire[],
  lines: readonly Line[],
  theme: Theme,
  emphasis: readonly Emphasis[] = [],
): void {
  const there = wires.map((_, i) => i).filter((i) => emphasis[i] !== 'absent');
  const gaps = openings(wires, lines, new Set(there));
  const order = there.sort((a, b) => heightOf(lines, a) - heightOf(lines, b));
  for (const i of order) {
    const [wire, line] = [wires[i], lines[i]];
    if (!wire || !line) continue;
    const d = wirePath(wire.points, nth(gaps, i));
    const group = pen.group({ id: `${prefix}-joint-${i + 1}`, fill: 'none', 'stroke-linejoin': 'round' });
    const inks = emphasis[i] === 'pale' ? paled(theme) : theme;
    for (const one of strokes(line, inks)) group.stroke(d, strokeAttributes(one));
    const { from, to } = wire.joint;
    const ends = [
      [wire.points[0], from],
      [wire.points[wire.points.length - 1], to],
    ] as const;
    for (const [end, lug] of ends)
      if (end && !ownLeg(wires, wire, lug))
        group.circle(end, SOLDER, {
          fill: inks.solder,
          stroke: inks.outline,
          'stroke-width': 1,
        });
  }
}
