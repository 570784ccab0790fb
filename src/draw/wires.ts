/** Wires: rounded bends, a real opening in the wire that runs below at every crossing, and a look for every kind of joint. */

import type { Line } from '../annotate/lines.ts';
import { type Point, round2 } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import type { Joint } from '../describe/kit.ts';
import { between, OPENING, openingsOf } from '../place/openings.ts';
import type { PlacedWire } from '../place/placement.ts';
import { CLASS } from './classes.ts';
import type { Hooks } from './hooks.ts';
import type { Pen } from './pen.ts';
import { kept, LINE, type Theme } from './theme.ts';

/** Ground runs below signal; among equals, what is written later runs above. */
export const heightOf = (lines: readonly Line[], wire: number): number =>
  wire + (lines[wire]?.look === 'ground' ? 0 : 1e6);

/** The `d` of a wire: rounded corners, broken at the openings, which reach so far either way. */
export function wirePath(
  points: readonly Point[],
  gaps: readonly Point[],
  half: number = OPENING.half,
): string {
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
      d += `L${round2(gap.x - ux * half)} ${round2(gap.y - uy * half)}M${round2(gap.x + ux * half)} ${round2(gap.y + uy * half)}`;
    if (!after) {
      d += `L${round2(p.x)} ${round2(p.y)}`;
      return;
    }
    // No rounder than leaves an opening close by its room.
    const open = gaps.filter((gap) => between(before, p, gap) || between(p, after, gap));
    const radius = Math.min(
      LINE.bendRadius,
      length(before, p) / 2,
      length(p, after) / 2,
      ...open.map((gap) => length(gap, p) - half),
    );
    const [vx, vy] = unit(p, after);
    d += `L${round2(p.x - ux * radius)} ${round2(p.y - uy * radius)}`;
    d += `Q${round2(p.x)} ${round2(p.y)} ${round2(p.x + vx * radius)} ${round2(p.y + vy * radius)}`;
  });
  return d;
}

const length = (a: Point, b: Point): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
const unit = (a: Point, b: Point): readonly [number, number] => [Math.sign(b.x - a.x), Math.sign(b.y - a.y)];

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

/** Inks of a wire's insulation, of one colour or two; none where the kit does not say or the theme has no colour. */
export const insulationOf = ({ colour = '' }: Line, { insulation }: Theme): readonly string[] =>
  (colour.match(/../g) ?? []).flatMap((code) => insulation[code] ?? []);

/** A line of that width in the colours of its insulation, between edges in ink; the second colour in stripes. */
function insulated([first, second]: readonly string[], width: number, theme: Theme): readonly Stroke[] {
  if (first === undefined || first === theme.ink) return [{ stroke: theme.ink, width }];
  // Edges of ink about a white line would be the two rails of ground.
  const edge = first === theme.insulation.WH ? theme.outline : theme.ink;
  return [
    { stroke: edge, width: width + 2 * LINE.edge },
    { stroke: first, width },
    ...(second === undefined ? [] : [{ stroke: second, width, dash: `${LINE.stripe} ${LINE.stripe}` }]),
  ];
}

/** Width of a component's leg. */
export const legWidth = ({ monochrome }: Theme): number => (monochrome ? LINE.hairline : LINE.leg);

/** Strokes laid over one another to make a look, bottom first. */
export function strokes(line: Line, theme: Theme): readonly Stroke[] {
  const colours = insulationOf(line, theme);
  const tint = theme.tints[line.tint] ?? theme.ink;
  switch (line.look) {
    case 'signal':
      if (theme.monochrome) return [{ stroke: theme.ink, width: LINE.copiedSignal }];
      return insulated(colours.length > 0 ? colours : [tint], LINE.signal, theme);
    case 'ground': {
      if (theme.monochrome)
        return [
          { stroke: theme.ink, width: LINE.copiedGround },
          { stroke: theme.paper, width: LINE.copiedCore },
        ];
      // Two rails with what lies between them standing out from both.
      const core = theme.cores[line.colour?.slice(0, 2) ?? ''] ?? theme.paper;
      const width = colours.length > 0 ? LINE.insulatedCore : LINE.groundCore;
      return [...insulated(colours, LINE.ground, theme), { stroke: core, width }];
    }
    case 'braid':
      // Cross-hatched along its length, as the weave looks; the bare screen must not be taken for an insulated wire.
      return [
        { stroke: theme.ink, width: LINE.braid },
        { stroke: theme.paper, width: LINE.braid - 3 },
        { stroke: theme.ink, width: LINE.braid - 3, dash: '1.6 2.6' },
      ];
    case 'leg':
      return [{ stroke: theme.leg, width: legWidth(theme) }];
    case 'sleeved':
      return [
        { stroke: theme.outline, width: LINE.sleeving },
        { stroke: theme.sleeving, width: LINE.sleeving - 2 * kept(theme, 1) },
        { stroke: theme.leg, width: legWidth(theme) },
      ];
    case 'jumper':
      return [
        { stroke: theme.outline, width: LINE.jumper + 2 },
        {
          stroke: theme.jumper,
          width: LINE.jumper + 2 - 2 * kept(theme, 1),
          // Links of a chain: a hollow line would be taken for ground.
          ...(theme.monochrome ? { dash: LINE.links } : {}),
        },
      ];
    case 'bend':
      return [
        { stroke: theme.outline, width: LINE.bend + 2 },
        { stroke: theme.lug, width: LINE.bend + 2 - 2 * kept(theme, 1) },
      ];
  }
}

/** How a wire stands out: not at all, from the pale rest, as the rest, as what is new; or it is not there yet. */
export type Emphasis = 'plain' | 'pale' | 'new' | 'absent';

/** A theme in which every line is pale, for what does not count. */
export const paled = (theme: Theme): Theme => ({
  ...theme,
  ink: theme.pale,
  outline: theme.pale,
  leg: theme.pale,
  lug: theme.paper,
  solder: theme.paper,
  jumper: theme.pale,
  sleeving: theme.paper,
  tints: {},
  insulation: {},
  cores: {},
});

/** What does not count, where there is no grey: a thin broken line, whatever it is. */
const dashed = ({ pale }: Theme): Stroke => ({ stroke: pale, width: LINE.hairline, dash: LINE.broken });

/** Radius of a solder dot: covers the widest line's end, and no more, for a lug's name stands close by. */
const SOLDER = 3;

export const drawSolder = (pen: Pen, at: Point, theme: Theme): void =>
  pen.circle(at, SOLDER, { fill: theme.solder, stroke: theme.outline, 'stroke-width': kept(theme, 1) });

/** Whether a leg's line only goes on there from its own component, with nothing else joined to it. */
export const leavesBody = (
  wires: readonly PlacedWire[],
  { joint, own }: PlacedWire,
  end: Joint['from'],
): boolean =>
  joint.kind === 'leg' &&
  own.includes(end.part) &&
  wires.filter(({ joint: { from, to } }) =>
    [from, to].some(({ part, lug }) => part === end.part && lug === end.lug),
  ).length === 1;

/** A broad pale line, or dots along both sides, under every wire that is new: to be drawn before parts and wires, which lie on it. */
export function drawMarks(
  pen: Pen,
  wires: readonly PlacedWire[],
  theme: Theme,
  emphasis: readonly Emphasis[],
): void {
  const edges: readonly Stroke[] = [
    { stroke: theme.mark, width: LINE.mark, ...(theme.monochrome ? { dash: LINE.dots } : {}) },
    ...(theme.monochrome ? [{ stroke: theme.paper, width: LINE.mark - 2 * LINE.hairline }] : []),
  ];
  // All edges first, so that none lies across another's inside.
  for (const one of edges)
    wires.forEach(({ points }, i) => {
      if (emphasis[i] === 'new')
        pen.stroke(wirePath(points, []), {
          class: CLASS.mark,
          fill: 'none',
          ...strokeAttributes(one),
          ...(theme.monochrome ? {} : { 'stroke-linecap': 'round' }),
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
  hooks?: Hooks,
): void {
  const there = wires.map((_, i) => i).filter((i) => emphasis[i] !== 'absent');
  const { of: gaps } = openingsOf(wires, (wire) => heightOf(lines, wire), new Set(there));
  const order = there.sort((a, b) => heightOf(lines, a) - heightOf(lines, b));
  for (const i of order) {
    const [wire, line] = [wires[i], lines[i]];
    if (!wire || !line) continue;
    const d = wirePath(wire.points, nth(gaps, i));
    const group = pen.group({
      id: `${prefix}-joint-${i + 1}`,
      ...hooks?.joints[i],
      fill: 'none',
      'stroke-linejoin': 'round',
    });
    if (hooks) group.stroke(d, { class: CLASS.halo, stroke: 'none', 'stroke-width': LINE.mark });
    const pale = emphasis[i] === 'pale';
    const inks = pale ? paled(theme) : theme;
    const look = pale && theme.monochrome ? [dashed(theme)] : strokes(line, inks);
    for (const one of look) group.stroke(d, strokeAttributes(one));
    const { from, to } = wire.joint;
    const ends = [
      [wire.points[0], from],
      [wire.points[wire.points.length - 1], to],
    ] as const;
    for (const [end, lug] of ends) if (end && !leavesBody(wires, wire, lug)) drawSolder(group, end, inks);
  }
}
