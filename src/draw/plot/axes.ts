/** The axes of a plot: frequency on a logarithmic scale, decibels on a linear one. */
import { type ScaleLinear, type ScaleLogarithmic, scaleLinear, scaleLog } from 'd3-scale';
import { at, type Rect } from '../../common/geometry.ts';
import type { Pen } from '../pen.ts';
import type { Theme } from '../theme.ts';

export interface Axes {
  readonly box: Rect;
  readonly x: ScaleLogarithmic<number, number>;
  readonly y: ScaleLinear<number, number>;
}

export interface AxisRange {
  readonly from: number;
  readonly to: number;
}

/** Size of the figures along an axis. */
export const TICK_SIZE = 11;

export const axesOf = (box: Rect, hertz: AxisRange, decibels: AxisRange): Axes => ({
  box,
  x: scaleLog([hertz.from, hertz.to], [box.x, box.x + box.width]),
  y: scaleLinear([decibels.from, decibels.to], [box.y + box.height, box.y]),
});

/** Whole multiples of a power of ten within the range. */
const decadeLines = ({ x }: Axes, factors: readonly number[]): readonly number[] => {
  const [from = 1, to = 1] = x.domain();
  return [1, 10, 100, 1000, 10_000]
    .flatMap((decade) => factors.map((factor) => factor * decade))
    .filter((f) => f >= from * 0.999 && f <= to * 1.001);
};

const multiples = ({ y }: Axes, step: number): readonly number[] => {
  const [from = 0, to = 0] = y.domain();
  const first = Math.ceil(from / step);
  return Array.from({ length: Math.floor(to / step) - first + 1 }, (_, i) => (first + i) * step);
};

const hertz = (f: number): string => (f >= 1000 ? `${f / 1000}k` : `${f}`);
const level = (dB: number): string => (dB < 0 ? `−${-dB}` : dB > 0 ? `+${dB}` : '0');

/** Grid, figures along both axes, and the frame's floor. `id` names the group. */
export function drawAxes(pen: Pen, id: string, axes: Axes, theme: Theme): void {
  const { box, x, y } = axes;
  const [right, floor] = [box.x + box.width, box.y + box.height];
  const grid = pen.group({ id, fill: 'none' });
  const rule = (from: [number, number], to: [number, number], stroke: string, width: number): void =>
    grid.line([at(...from), at(...to)], { stroke, 'stroke-width': width });
  for (const f of decadeLines(axes, [3, 4, 6, 7, 8, 9]))
    rule([x(f), box.y], [x(f), floor], theme.inside, 0.5);
  for (const dB of multiples(axes, 3))
    if (dB % 6 !== 0) rule([box.x, y(dB)], [right, y(dB)], theme.inside, 0.5);

  const across = grid.group({ id: `${id}-hertz` });
  for (const f of decadeLines(axes, [1, 2, 5])) {
    rule([x(f), box.y], [x(f), floor + 4], theme.inside, 1);
    across.text(hertz(f), at(x(f), floor + 15), { size: TICK_SIZE, fill: theme.quiet });
  }
  const up = grid.group({ id: `${id}-decibels` });
  for (const dB of multiples(axes, 6)) {
    rule([box.x - 4, y(dB)], [right, y(dB)], dB === 0 ? theme.outline : theme.inside, 1);
    up.text(level(dB), at(box.x - 8, y(dB)), { size: TICK_SIZE, fill: theme.quiet, anchor: 'end' });
  }
  rule([box.x, floor], [right, floor], theme.outline, 1);
}
