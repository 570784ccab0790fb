/** The response of all positions together in type that can be read on paper; what is said of each position by itself stands in the leaflet's table. */
import type { Plot } from '../../annotate/plot.ts';
import { drawOverview, LEFT, leastField, namesWidth, overviewHeight } from '../plot/overview.ts';
import { themes } from '../theme.ts';
import { type Box, type Figure, figureOf, LEAST, POINT, type PrintTheme } from './figure.ts';

/** Size of the figures at its axes and in its badges, the smallest type of an overview, drawing units. */
const SMALLEST = 10;

/** @param box room on the paper, millimetres; where it is too narrow for what stands side by side, type is smaller */
export function responseFigure(
  plot: Plot,
  box: Box,
  { alt, theme: name = 'light' }: { readonly alt: string; readonly theme?: PrintTheme },
): Figure {
  const wanted = (LEAST * POINT) / SMALLEST;
  const units = Math.max(box.width / wanted, LEFT + leastField(plot, 0) + namesWidth(plot));
  const scale = box.width / units;
  const crop = { x: 0, y: 0, width: units, height: Math.min(overviewHeight(plot), box.height / scale) };
  const { id, title, language } = plot;
  const theme = themes[name];
  return figureOf({ id, title, language, alt, crop, scale, type: SMALLEST, theme }, (pen) =>
    drawOverview(pen, plot, crop, theme),
  );
}
