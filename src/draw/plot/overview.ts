/** All states in one plot: every line named at its end, every resonance flagged above. */

import type { Plot, PlotMark } from '../../annotate/plot.ts';
import { around, at, type Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { textWidth } from '../../common/text.ts';
import { sayIn } from '../../messages/say.ts';
import type { Pen } from '../pen.ts';
import type { Theme } from '../theme.ts';
import { type Axes, axesOf, drawAxes, TICK_SIZE } from './axes.ts';
import { badgeWidth, drawBadge } from './badge.ts';
import { spread } from './spread.ts';
import { dataOf, type Runs, type Spot, spotsOf, strokeReference, strokeState } from './trace.ts';

/** Room for the figures of the axes. */
export const LEFT = 38;
const BOTTOM = 26;
/** Room for a leader between a line's end and its name. */
const LEADER = 26;
const NAME = 12;
const NAME_STEP = 20;
const FLAG = 11;
const FLAG_HEIGHT = 32;
/** From the flags down to the plot, where their pins turn. */
const PINS = 26;
/** With more states than this, a flag is its number alone; the figures stand on the panels. */
const MOST_FIGURES = 10;

interface Ending {
  readonly badge?: string;
  readonly words: string;
}

const endings = (plot: Plot): readonly Ending[] => [
  ...plot.states.map(({ badge, name }) => ({ badge, words: name })),
  ...plot.references.map(({ words }) => ({ words })),
];

const endingWidth = ({ badge, words }: Ending): number =>
  (badge === undefined ? 0 : badgeWidth(badge, 10) + 6) +
  textWidth(words, NAME, badge === undefined ? 'regular' : 'bold');

/** What the names at the right need. */
export const namesWidth = (plot: Plot): number =>
  Math.ceil(LEADER + Math.max(0, ...endings(plot).map(endingWidth)));

export const overviewHeight = (plot: Plot): number =>
  FLAG_HEIGHT + PINS + Math.max(400, endings(plot).length * NAME_STEP) + BOTTOM;

/** The range of levels that shows every line down to its end, within reason. */
function levelsOf(plot: Plot): { readonly from: number; readonly to: number } {
  const levels = [
    ...plot.states.flatMap(({ trace }) => trace ?? []),
    ...plot.references.map(({ trace }) => trace),
  ];
  const all = levels.flatMap((trace) => trace.levels);
  if (all.length === 0) return { from: -24, to: 9 };
  const top = Math.ceil((highest(all) + 1) / 3) * 3;
  const low = Math.floor((highest(all.map((level) => -level)) * -1) / 6) * 6;
  return { from: Math.max(top - 51, Math.min(low, top - 24)), to: top };
}

/** Written out, since a spread of thousands of arguments is not safe. */
const highest = (levels: readonly number[]): number =>
  levels.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);

/** Least width of the plot beside its names: legible, and the flags side by side. */
export const leastField = (plot: Plot, legible = 620): number => {
  const full = plot.states.length <= MOST_FIGURES;
  const flags = plot.states.map(({ badge, trace }) =>
    trace?.resonance ? flagWidth(badge, trace.resonance, full) : 0,
  );
  return Math.max(
    legible,
    flags.reduce((a, b) => a + b, 0),
  );
};

export function drawOverview(pen: Pen, plot: Plot, box: Rect, theme: Theme): void {
  const names = namesWidth(plot);
  const field = {
    x: box.x + LEFT,
    y: box.y + FLAG_HEIGHT + PINS,
    width: box.width - LEFT - names,
    height: box.height - FLAG_HEIGHT - PINS - BOTTOM,
  };
  const range = { from: plot.frequencies[0] ?? 20, to: plot.frequencies.at(-1) ?? 20_000 };
  const axes = axesOf(field, range, levelsOf(plot));
  drawAxes(pen, `${plot.id}-axes`, axes, theme);
  const unit = { size: TICK_SIZE, fill: theme.quiet } as const;
  pen.text('dB', at(field.x - 8, field.y - 14), { ...unit, anchor: 'end' });
  pen.text('Hz', at(field.x + field.width + LEADER, field.y + field.height + 15), {
    ...unit,
    anchor: 'start',
  });

  const ends: (Ending & { readonly spot: Spot })[] = [];
  const finish = (ending: Ending, runs: Runs): void => {
    const spot = runs.at(-1)?.at(-1);
    if (spot) ends.push({ ...ending, spot });
  };
  plot.states.forEach((state, i) => {
    if (!state.trace) return;
    const runs = spotsOf(plot.frequencies, state.trace, axes);
    strokeState(pen.group({ id: `${plot.id}-line-${i + 1}` }), dataOf(runs), state, theme, 3);
    finish({ badge: state.badge, words: state.name }, runs);
  });
  plot.references.forEach((reference, i) => {
    const runs = spotsOf(plot.frequencies, reference.trace, axes);
    strokeReference(pen.group({ id: `${plot.id}-reference-${i + 1}` }), dataOf(runs), theme, 1.4);
    finish({ words: reference.words }, runs);
  });
  if (ends.length === 0) {
    const middle = at(field.x + field.width / 2, field.y + field.height / 2);
    const nothing = sayIn(plot.language)('plot.nothing');
    pen.rect(around(middle.x, middle.y, textWidth(nothing, NAME) + 8, 16), { fill: theme.paper });
    pen.text(nothing, middle, { size: NAME, fill: theme.quiet });
  }
  drawFlags(pen.group({ id: `${plot.id}-flags` }), plot, axes, theme);
  drawEndings(pen.group({ id: `${plot.id}-names` }), ends, axes, theme);
}

interface Flag {
  readonly badge: string;
  readonly mark: PlotMark;
  readonly width: number;
}

/** A pin from each resonance up to its flag; the flags stand in the order of their frequencies. */
function drawFlags(pen: Pen, plot: Plot, axes: Axes, theme: Theme): void {
  const { box, x, y } = axes;
  const full = plot.states.length <= MOST_FIGURES;
  const flags = plot.states
    .flatMap(({ badge, trace }): Flag[] =>
      trace?.resonance
        ? [{ badge, mark: trace.resonance, width: flagWidth(badge, trace.resonance, full) }]
        : [],
    )
    .sort((a, b) => a.mark.frequency - b.mark.frequency);
  const middles = spread(
    flags.map(({ mark, width }) => ({ wanted: x(mark.frequency), size: width })),
    box.x,
    box.x + box.width,
  );
  flags.forEach(({ mark }, i) => {
    const [middle, foot] = [nth(middles, i), x(mark.frequency)];
    const turn = box.y - 3;
    pen.line([at(middle, box.y - PINS), at(foot, turn), at(foot, y(mark.level))], {
      stroke: theme.outline,
      'stroke-width': 1,
      fill: 'none',
    });
  });
  flags.forEach(({ badge, mark, width }, i) => {
    const middle = nth(middles, i);
    pen.circle(at(x(mark.frequency), y(mark.level)), 3.5, {
      fill: theme.ink,
      stroke: theme.paper,
      'stroke-width': 1,
    });
    const centre = box.y - PINS - FLAG_HEIGHT / 2;
    const own = badgeWidth(badge, 10);
    const left = full ? middle - (width - 12) / 2 : middle - own / 2;
    drawBadge(pen, badge, at(left + own / 2, centre), 10, theme);
    (full ? mark.words : []).forEach((words, line) => {
      pen.text(words, at(left + own + 5, centre - 7 + line * 14), {
        size: FLAG,
        ...(line === 0 ? { weight: 'bold' as const } : {}),
        fill: theme.ink,
        anchor: 'start',
      });
    });
  });
}

const flagWidth = (badge: string, mark: PlotMark, full: boolean): number =>
  badgeWidth(badge, 10) +
  (full ? 5 + Math.max(...mark.words.map((words) => textWidth(words, FLAG, 'bold'))) + 12 : 4);

/** Names at the right, from the line that ends highest down; a leader where a name had to make room. */
function drawEndings(
  pen: Pen,
  ends: readonly (Ending & { readonly spot: Spot })[],
  { box }: Axes,
  theme: Theme,
): void {
  // Of two that end on the floor, the one that gets there later is the higher one.
  const sorted = [...ends].sort((a, b) => a.spot[1] - b.spot[1] || b.spot[0] - a.spot[0]);
  const middles = spread(
    sorted.map(({ spot }) => ({ wanted: spot[1], size: NAME_STEP })),
    box.y,
    box.y + box.height,
  );
  const left = box.x + box.width + LEADER;
  sorted.forEach(({ badge, words, spot }, i) => {
    const y = nth(middles, i);
    pen.line([at(...spot), at(left - 8, y), at(left - 4, y)], {
      stroke: theme.outline,
      'stroke-width': 1,
    });
    const own = badge === undefined ? 0 : badgeWidth(badge, 10) + 6;
    if (badge !== undefined) drawBadge(pen, badge, at(left + (own - 6) / 2, y), 10, theme);
    pen.text(words, at(left + own, y), {
      size: NAME,
      ...(badge === undefined ? {} : { weight: 'bold' as const }),
      fill: badge === undefined ? theme.quiet : theme.ink,
      anchor: 'start',
    });
  });
}
