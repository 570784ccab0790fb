/**
 * Draws with svg.js in a part's own coordinates: shapes go through the part's frame, text keeps upright. Numbers are
 * printed with at most two decimals, so that the same drawing is the same bytes.
 */
import { type Point, type Rect, round2 } from '../common/geometry.ts';
import { CAP_HEIGHT, textWidth, type Weight } from '../common/text.ts';
import type { PathStep } from '../parts/shape.ts';
import { type Frame, rectToSheet, toSheet } from '../place/frame.ts';
import type { Attributes, Canvas } from './canvas.ts';

interface TextStyle {
  readonly size: number;
  readonly fill: string;
  readonly weight?: Weight;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** How far above its place it stands, upright whichever way the part is turned. */
  readonly lift?: number;
}

const STILL: Frame = { x: 0, y: 0, width: 0, height: 0, turn: 0, mirror: false };

export class Pen {
  readonly into: Canvas;
  readonly #frame: Frame;

  constructor(into: Canvas, frame: Frame = STILL) {
    this.into = into;
    this.#frame = frame;
  }

  /** A pen in the same frame drawing into a group of its own. */
  group(attributes: Attributes = {}): Pen {
    return new Pen(this.into.group(attributes), this.#frame);
  }

  /** A pen into the same group for what is alike either way round, so that it is read from the left, or from the top. */
  reading(): Pen {
    return new Pen(this.into, { ...this.#frame, mirror: this.#frame.turn >= 2 });
  }

  /** A pen into the same group, in the coordinates of the sheet. */
  still(): Pen {
    return new Pen(this.into);
  }

  rect(rect: Rect, attributes: Attributes): void {
    const r = rectToSheet(this.#frame, rect);
    this.into.element('rect', {
      x: round2(r.x),
      y: round2(r.y),
      width: round2(r.width),
      height: round2(r.height),
      ...attributes,
    });
  }

  circle(centre: Point, radius: number, attributes: Attributes): void {
    const c = toSheet(this.#frame, centre);
    this.into.element('circle', { cx: round2(c.x), cy: round2(c.y), r: round2(radius), ...attributes });
  }

  /** Strokes from point to point, straight or along circles; several runs make one element. */
  path(runs: readonly (readonly PathStep[])[], attributes: Attributes): void {
    const flip = this.#frame.mirror;
    const d = runs
      .map((steps) =>
        steps
          .map((step, i) => {
            const p = toSheet(this.#frame, step.to);
            const end = `${round2(p.x)} ${round2(p.y)}`;
            if (i === 0) return `M${end}`;
            if (step.radius === undefined) return `L${end}`;
            const sweep = (step.clockwise ?? false) !== flip ? 1 : 0;
            return `A${round2(step.radius)} ${round2(step.radius)} 0 ${step.large ? 1 : 0} ${sweep} ${end}`;
          })
          .join(''),
      )
      .join('');
    this.stroke(d, { fill: 'none', ...attributes });
  }

  /** A path already written as SVG path data, in the coordinates of the sheet. */
  stroke(d: string, attributes: Attributes): void {
    this.into.element('path', { d, ...attributes });
  }

  line(points: readonly Point[], attributes: Attributes): void {
    this.path([points.map((to) => ({ to }))], attributes);
  }

  /** Text whose capitals are centred on the height of `centre`; `textLength` holds it to the measured width. */
  text(words: string, centre: Point, style: TextStyle): void {
    const p = toSheet(this.#frame, centre);
    const width = textWidth(words, style.size, style.weight);
    const attributes = {
      x: round2(p.x),
      y: round2(p.y - (style.lift ?? 0) + (CAP_HEIGHT * style.size) / 2),
      'font-size': style.size,
      ...(style.weight === 'bold' ? { 'font-weight': 700 } : {}),
      // The root centres text, since most of it is.
      ...(style.anchor === undefined || style.anchor === 'middle' ? {} : { 'text-anchor': style.anchor }),
      fill: style.fill,
      textLength: round2(width),
      lengthAdjust: 'spacingAndGlyphs',
    };
    this.into.element('text', attributes, words);
  }
}
