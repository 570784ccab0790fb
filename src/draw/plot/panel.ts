/** One state by itself, near the resonance: its line against what each of its pickups was made for. */

import { CARD_TYPE } from '../../annotate/card-size.ts';
import type { Plot, PlotMark, PlotState } from '../../annotate/plot.ts';
import { around, at, type Point, type Rect } from '../../common/geometry.ts';
import { textWidth } from '../../common/text.ts';
import type { Language } from '../../messages/language.ts';
import { sayIn } from '../../messages/say.ts';
import type { Pen } from '../pen.ts';
import { ruled, type Theme } from '../theme.ts';
import { type Axes, type AxisRange, axesOf, drawAxes } from './axes.ts';
import { badgeWidth, drawBadge } from './badge.ts';
import {
  dataOf,
  heightAt,
  lastAt,
  type Runs,
  type Spot,
  spotsOf,
  strokeReference,
  strokeState,
} from './trace.ts';

const HEAD = 50;
const FIELD = 196;
const AXIS = 30;
const ROW = 20;
const FOOT = 30;
const PAD = 14;
const LEFT = 26;
/** From a note to the nearest curve. */
const LEADER = 18;
const SIZE = CARD_TYPE.small;
/** Where pickups resonate; hertz. */
const HERTZ: AxisRange = { from: 200, to: 20_000 };

export const panelHeight = (plot: Plot): number =>
  HEAD + FIELD + AXIS + FOOT + ROW * Math.max(1, ...plot.states.map(({ rows }) => rows.length));

export const panelWidth = (plot: Plot): number =>
  Math.ceil(
    Math.max(
      310,
      textWidth(sayIn(plot.language)('plot.compared'), SIZE) + 2 * PAD,
      ...plot.states.flatMap(({ badge, name, rows }) => [
        badgeWidth(badge, CARD_TYPE.title) + 8 + textWidth(name, CARD_TYPE.title, 'bold') + 2 * PAD,
        ...rows.map(
          ({ label, words }) =>
            textWidth(label, CARD_TYPE.row, 'bold') + 16 + textWidth(words, CARD_TYPE.row) + 2 * PAD,
        ),
      ]),
    ),
  );

/** One range for all panels, so that they compare: room over the highest peak, and well below the lowest plateau. */
export function panelLevels(plot: Plot): AxisRange {
  const traces = plot.states.flatMap(({ trace, references }) =>
    trace ? [trace, ...references.map((one) => one.trace)] : [],
  );
  if (traces.length === 0) return { from: -12, to: 9 };
  const tops = traces.map(({ plateau, resonance }) => Math.max(plateau, resonance?.level ?? plateau));
  const top = Math.ceil((Math.max(...tops) + 2.4) / 3) * 3;
  const lowest = Math.min(...traces.map(({ plateau }) => plateau));
  return { from: Math.floor((lowest - 11) / 6) * 6, to: top };
}

export function drawPanel(
  pen: Pen,
  plot: Plot,
  index: number,
  box: Rect,
  levels: AxisRange,
  theme: Theme,
): void {
  const state = plot.states[index];
  if (!state) return;
  const id = `${plot.id}-position-${index + 1}`;
  const { x, y, width } = box;
  pen.rect(box, { rx: 12, fill: theme.plate, ...ruled(theme) });
  const own = badgeWidth(state.badge, CARD_TYPE.title);
  drawBadge(pen, state.badge, at(x + PAD + own / 2, y + 24), CARD_TYPE.title, theme);
  const words = { size: CARD_TYPE.title, weight: 'bold', fill: theme.ink, anchor: 'start' } as const;
  pen.text(state.name, at(x + PAD + own + 8, y + 24), words);
  const field = { x: x + PAD + LEFT, y: y + HEAD, width: width - 2 * PAD - LEFT, height: FIELD };
  pen.rect(field, { fill: theme.paper });
  const axes = axesOf(field, HERTZ, levels);
  drawAxes(pen, `${id}-axes`, axes, theme);
  drawTraces(pen, id, plot, state, axes, theme);
  drawRows(pen, state, plot.language, box, y + HEAD + FIELD + AXIS, theme);
}

function drawTraces(
  pen: Pen,
  id: string,
  { frequencies, language }: Plot,
  state: PlotState,
  axes: Axes,
  theme: Theme,
): void {
  const { box, x, y } = axes;
  const { trace } = state;
  if (!trace) {
    const middle = at(box.x + box.width / 2, box.y + box.height / 2);
    const words = sayIn(language)('level.none');
    clear(pen, middle, textWidth(words, CARD_TYPE.row), theme);
    pen.text(words, middle, { size: CARD_TYPE.row, fill: theme.quiet });
    return;
  }
  const runs = spotsOf(frequencies, trace, axes);
  const references = state.references.map((one) => spotsOf(frequencies, one.trace, axes));
  strokeState(pen.group({ id: `${id}-line` }), dataOf(runs), state, theme, 4);
  references.forEach((one, i) => {
    strokeReference(pen.group({ id: `${id}-reference-${i + 1}` }), dataOf(one), theme, 1.5);
  });
  const marks = pen.group({ id: `${id}-marks` });
  drawNotes(marks, notesOf(state, axes, references, language), axes, [runs, ...references], theme);
  if (trace.resonance) drawPeak(marks, trace.resonance, axes, [runs, ...references], theme);
  if (trace.cutoff)
    marks.circle(at(x(trace.cutoff.frequency), y(trace.cutoff.level)), 3.5, {
      fill: theme.paper,
      stroke: theme.ink,
      'stroke-width': 1.5,
    });
}

/** The grid stops short of words. */
const clear = (pen: Pen, centre: Point, width: number, theme: Theme): void =>
  pen.rect(around(centre.x, centre.y, width + 4, 14), { fill: theme.paper });

/** The resonance's figure, over everything that passes beneath it. */
function drawPeak(pen: Pen, mark: PlotMark, { box, x, y }: Axes, all: readonly Runs[], theme: Theme): void {
  const words = mark.words.join(', ');
  const half = textWidth(words, CARD_TYPE.row, 'bold') / 2;
  const [px, py] = [x(mark.frequency), y(mark.level)];
  const middle = Math.max(box.x + half + 2, Math.min(px, box.x + box.width - half - 2));
  const under = Array.from({ length: 21 }, (_, i) => middle - half + (i / 10) * half);
  const tops = all.flatMap((runs) => under.flatMap((one) => heightAt(runs, one) ?? []));
  const height = Math.max(box.y + 8, Math.min(py, ...tops) - 13);
  if (py - height > 20)
    pen.line([at(px, height + 7), at(px, py)], { stroke: theme.outline, 'stroke-width': 1 });
  pen.circle(at(px, py), 3.5, { fill: theme.ink, stroke: theme.paper, 'stroke-width': 1 });
  clear(pen, at(middle, height), 2 * half, theme);
  pen.text(words, at(middle, height), { size: CARD_TYPE.row, weight: 'bold', fill: theme.ink });
}

interface Note {
  readonly words: string;
  readonly spot: Spot;
  /** The −3 dB point has a ring of its own. */
  readonly cutoff: boolean;
}

/** From the −3 dB point down to the first reference's name, and from name to name. */
const NOTE_DROP = 20;
const NOTE_STEP = 18;

/** What is to be named below the plateau: the −3 dB point, then each reference at a height of its own. */
function notesOf(
  state: PlotState,
  { x, y }: Axes,
  references: readonly Runs[],
  language: Language,
): readonly Note[] {
  const { trace } = state;
  if (!trace) return [];
  const first = y(trace.plateau - 3);
  const named = references.flatMap((runs, i): Note[] => {
    const spot = lastAt(runs, first + NOTE_DROP + i * NOTE_STEP);
    const words =
      references.length === 1 ? sayIn(language)('plot.reference') : (state.references[i]?.words ?? '');
    return spot ? [{ words, spot, cutoff: false }] : [];
  });
  const { cutoff } = trace;
  if (!cutoff) return named;
  const ring: Spot = [x(cutoff.frequency), y(cutoff.level)];
  return [{ words: cutoff.words.join(' '), spot: ring, cutoff: true }, ...named];
}

/** The notes stand in the free corner below the curves, or beyond them where that is too narrow; a leader to each. */
function drawNotes(
  pen: Pen,
  notes: readonly Note[],
  axes: Axes,
  curves: readonly Runs[],
  theme: Theme,
): void {
  const flanks = notes.flatMap(({ spot }) => curves.flatMap((one) => lastAt(one, spot[1])?.[0] ?? []));
  const widest = Math.max(0, ...notes.map(({ words }) => textWidth(words, SIZE)));
  const before = Math.min(...flanks) - LEADER;
  const left = before - widest - 2 > axes.box.x;
  const edge = left ? before : Math.max(...flanks) + LEADER;
  for (const { words, spot, cutoff } of notes) {
    const ink = cutoff ? theme.ink : theme.quiet;
    pen.line([at(edge + (left ? 4 : -4), spot[1]), at(...spot)], {
      stroke: theme.outline,
      'stroke-width': 1,
    });
    if (!cutoff) pen.circle(at(...spot), 2, { fill: ink });
    const width = textWidth(words, SIZE);
    clear(pen, at(edge + (left ? -width : width) / 2, spot[1]), width, theme);
    pen.text(words, at(edge, spot[1]), { size: SIZE, fill: ink, anchor: left ? 'end' : 'start' });
  }
}

function drawRows(
  pen: Pen,
  state: PlotState,
  language: Language,
  { x, width }: Rect,
  top: number,
  theme: Theme,
): void {
  const right = x + width - PAD;
  pen.line([at(x + PAD, top), at(right, top)], ruled(theme));
  pen.text(sayIn(language)('plot.compared'), at(x + PAD, top + 13), {
    size: SIZE,
    fill: theme.quiet,
    anchor: 'start',
  });
  state.rows.forEach(({ label, words }, i) => {
    const y = top + 32 + i * ROW;
    pen.text(label, at(x + PAD, y), {
      size: CARD_TYPE.row,
      weight: 'bold',
      fill: theme.ink,
      anchor: 'start',
    });
    pen.text(words, at(right, y), { size: CARD_TYPE.row, fill: theme.ink, anchor: 'end' });
  });
}
