/** The response plot: all states together above, each by itself against its references below. */
import type { Plot } from '../../annotate/plot.ts';
import { textWidth } from '../../common/text.ts';
import { headBlock, NO_CONTENTS } from '../blocks.ts';
import type { Canvas } from '../canvas.ts';
import { CARD_GAP } from '../cards.ts';
import { EDGE, openSheet } from '../head.ts';
import { writeLines } from '../lines.ts';
import { type Theme, themes } from '../theme.ts';
import { drawOverview, LEFT, leastField, namesWidth, overviewHeight } from './overview.ts';
import { drawPanel, panelHeight, panelLevels, panelWidth } from './panel.ts';

const HEAD = 88;
/** Narrow enough that the smallest words are 2 mm high on an A4 page. */
const INNER = 980;

/** Draws the plot into an empty root and sizes it. */
export function drawPlot(root: Canvas, plot: Plot, theme: Theme = themes.light): void {
  const { id, language, title, description, lines, states } = plot;
  const panelW = panelWidth(plot);
  const inner = Math.ceil(
    Math.max(
      INNER,
      panelW,
      LEFT + leastField(plot) + namesWidth(plot),
      textWidth(title, 22, 'bold'),
      ...lines.map((line) => textWidth(line, 12)),
    ),
  );
  const perRow = Math.max(1, Math.floor((inner + CARD_GAP) / (panelW + CARD_GAP)));
  const rows = Math.ceil(states.length / perRow);
  const wide = (inner + CARD_GAP) / perRow - CARD_GAP;
  const tall = panelHeight(plot);
  const overview = { x: EDGE, y: EDGE + HEAD, width: inner, height: overviewHeight(plot) };
  const top = overview.y + overview.height + 20;
  const width = inner + 2 * EDGE;
  const height = Math.ceil(top + rows * (tall + CARD_GAP) - CARD_GAP + EDGE);

  const box = { x: 0, y: 0, width, height };
  const pen = openSheet(root, { id, language, title, description, box, width, height }, theme);
  const head = headBlock({ ...NO_CONTENTS, title, views: lines }, inner + 1).put(EDGE, EDGE).head ?? [];
  writeLines(pen.group({ id: `${id}-head` }), head, theme);
  drawOverview(pen.group({ id: `${id}-all` }), plot, overview, theme);
  const levels = panelLevels(plot);
  states.forEach((_, i) => {
    const box = {
      x: EDGE + (i % perRow) * (wide + CARD_GAP),
      y: top + Math.floor(i / perRow) * (tall + CARD_GAP),
      width: wide,
      height: tall,
    };
    drawPanel(pen.group({ id: `${id}-position-${i + 1}` }), plot, i, box, levels, theme);
  });
}
