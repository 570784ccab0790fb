/** The end of a joint as it is drawn: a dot of solder, a hook where it is not soldered yet, or a hook about a dot where that is done now. */
import type { Point } from '../../common/geometry.ts';
import { round2 } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import type { Pen } from '../pen.ts';
import type { Theme } from '../theme.ts';
import { pointAt } from './beads.ts';
import { dotAt, type Harness } from './harness.ts';
import type { EndLook, EndName } from './joint-ends.ts';

/** Of ink about a dot's middle, and of paper about all of it, so that it is seen on a black wire too. */
const RING = 2;
const PAPER = { soldered: 2.4, hooked: 2.4, gathered: 1.8 } as const;
/** Of the dot in a hook, by the hook's radius: with enough paper between that they stay two in print. */
const INSIDE = 0.44;
/** How far round a hook is bent: a ring with a gap, as a closed one is a contact of a switch. */
const BENT = (260 / 180) * Math.PI;

/** Draws the dot of an end, its hook, or both. */
export function drawEnd(
  pen: Pen,
  harness: Harness,
  { joint, end, look, id }: { joint: number; end: EndName; look: EndLook; id: string },
): void {
  const { theme, paths } = harness;
  const dot = dotAt(harness, joint, end);
  const paper = PAPER[look];
  pen.circle(dot, dot.radius + paper, { fill: theme.paper });
  if (look === 'soldered') {
    pen.circle(dot, dot.radius, { fill: theme.ink, stroke: theme.ink, 'stroke-width': RING });
    return;
  }
  const path = nth(paths, joint);
  const points = end === 'from' ? path : [...path].reverse();
  const line = pointAt(points, 2 * dot.radius + paper);
  drawHook(pen.group({ id: `${id}-hook-${joint + 1}-${end}` }), dot, line, paper, theme);
  if (look === 'gathered') pen.circle(dot, INSIDE * dot.radius, { fill: theme.ink });
}

/** From the line towards the middle, and round it. */
function drawHook(
  pen: Pen,
  dot: Point & { readonly radius: number },
  line: Point,
  paper: number,
  theme: Theme,
): void {
  const { x, y, radius } = dot;
  const angle = Math.atan2(line.y - y, line.x - x);
  const on = (at: number, r: number): string =>
    `${round2(x + r * Math.cos(at))} ${round2(y + r * Math.sin(at))}`;
  const r = round2(radius);
  pen.stroke(
    `M${on(angle, radius + paper)}L${on(angle, radius)}A${r} ${r} 0 1 1 ${on(angle + BENT, radius)}`,
    {
      fill: 'none',
      stroke: theme.ink,
      'stroke-width': RING + 0.4,
    },
  );
}
