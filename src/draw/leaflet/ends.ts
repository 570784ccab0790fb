/** The end of a joint as it is drawn: a dot of solder, or a hook where it is not soldered yet. */
import type { Point } from '../../common/geometry.ts';
import { round2 } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import type { Pen } from '../pen.ts';
import type { Theme } from '../theme.ts';
import { pointAt } from './beads.ts';
import { dotAt, type Harness } from './harness.ts';
import type { EndName } from './joint-ends.ts';

/** Of ink about a dot's middle, and of paper about all of it, so that it is seen on a black wire too. */
const RING = 2;
const PAPER = 2.4;
/** How far round a hook is bent: a ring with a gap, as a closed one is a contact of a switch. */
const BENT = (260 / 180) * Math.PI;

/** Draws the dot of an end, or its hook. */
export function drawEnd(
  pen: Pen,
  harness: Harness,
  { joint, end, hooked, id }: { joint: number; end: EndName; hooked: boolean; id: string },
): void {
  const { theme, paths } = harness;
  const dot = dotAt(harness, joint, end);
  pen.circle(dot, dot.radius + PAPER, { fill: theme.paper });
  if (hooked) {
    const path = nth(paths, joint);
    const points = end === 'from' ? path : [...path].reverse();
    drawHook(
      pen.group({ id: `${id}-hook-${joint + 1}-${end}` }),
      dot,
      pointAt(points, 2 * dot.radius + PAPER),
      theme,
    );
  } else pen.circle(dot, dot.radius, { fill: theme.ink, stroke: theme.ink, 'stroke-width': RING });
}

/** From the line towards the middle, and round it. */
function drawHook(pen: Pen, dot: Point & { readonly radius: number }, line: Point, theme: Theme): void {
  const { x, y, radius } = dot;
  const angle = Math.atan2(line.y - y, line.x - x);
  const on = (at: number, r: number): string =>
    `${round2(x + r * Math.cos(at))} ${round2(y + r * Math.sin(at))}`;
  const r = round2(radius);
  pen.stroke(
    `M${on(angle, radius + PAPER)}L${on(angle, radius)}A${r} ${r} 0 1 1 ${on(angle + BENT, radius)}`,
    {
      fill: 'none',
      stroke: theme.ink,
      'stroke-width': RING + 0.4,
    },
  );
}
