/**
 * How a part's own drawing stands on the sheet. A part is described once, upright and unmirrored; a frame turns it by
 * quarters and mirrors it. Geometry goes through the frame, text only has its place taken through, so letters stay
 * upright in every view.
 */
import type { Point, Rect } from '../common/geometry.ts';
import type { LabelSlot, Outline } from '../parts/outline.ts';

export type Turn = 0 | 1 | 2 | 3;

export interface Frame {
  /** Top left corner of the part's extent on the sheet. */
  readonly x: number;
  readonly y: number;
  /** Extent before turning. */
  readonly width: number;
  readonly height: number;
  /** Quarter turns clockwise, applied after mirroring. */
  readonly turn: Turn;
  /** Left and right exchanged. */
  readonly mirror: boolean;
}

/** Extent on the sheet after turning. */
export const extent = (frame: Frame): { readonly width: number; readonly height: number } =>
  frame.turn % 2 === 0
    ? { width: frame.width, height: frame.height }
    : { width: frame.height, height: frame.width };

/** A point of the part on the sheet. */
export function toSheet(frame: Frame, p: Point): Point {
  const { width, height } = frame;
  const x = frame.mirror ? width - p.x : p.x;
  const y = p.y;
  switch (frame.turn) {
    case 0:
      return { x: frame.x + x, y: frame.y + y };
    case 1:
      return { x: frame.x + height - y, y: frame.y + x };
    case 2:
      return { x: frame.x + width - x, y: frame.y + height - y };
    case 3:
      return { x: frame.x + y, y: frame.y + width - x };
  }
}

/** A point of the sheet as the part has it: what `toSheet` takes back to it. */
function fromSheet(frame: Frame, p: Point): Point {
  const { width, height } = frame;
  const [dx, dy] = [p.x - frame.x, p.y - frame.y];
  const turned = {
    0: { x: dx, y: dy },
    1: { x: dy, y: height - dx },
    2: { x: width - dx, y: height - dy },
    3: { x: width - dy, y: dx },
  }[frame.turn];
  return frame.mirror ? { x: width - turned.x, y: turned.y } : turned;
}

/** A direction of the part on the sheet. */
export function directionToSheet(frame: Frame, d: Point): Point {
  const [o, p] = [toSheet(frame, { x: 0, y: 0 }), toSheet(frame, d)];
  // `+ 0` turns negative zero, which would print as -0, into zero.
  return { x: p.x - o.x + 0, y: p.y - o.y + 0 };
}

/**
 * Labels of a part on the sheet: those of a block one below the other in their order whichever way the part is turned, about the
 * point that the middle of them comes to.
 */
export function labelsToSheet(
  frame: Frame,
  { labels, asideLabels = labels }: Pick<Outline, 'labels' | 'asideLabels'>,
): readonly LabelSlot[] {
  const upright = frame.turn % 2 === 0;
  const own = upright ? labels : asideLabels;
  const middleOf = (block: number): number => {
    const heights = own.flatMap((one) => ((one.block ?? 0) === block ? [one.centre.y] : []));
    return (Math.min(...heights) + Math.max(...heights)) / 2;
  };
  return own.map((label) => {
    const { x, y } = label.centre;
    const middle = middleOf(label.block ?? 0);
    const p = toSheet(frame, { x, y: middle });
    return { ...label, centre: { x: p.x, y: p.y + y - middle } };
  });
}

export const rectToSheet = (frame: Frame, r: Rect): Rect => rectThrough(r, (p) => toSheet(frame, p));

/** A rectangle of the sheet as the part has it. */
export const rectFromSheet = (frame: Frame, r: Rect): Rect => rectThrough(r, (p) => fromSheet(frame, p));

function rectThrough(r: Rect, through: (p: Point) => Point): Rect {
  const [a, b] = [through(r), through({ x: r.x + r.width, y: r.y + r.height })];
  return {
    x: Math.min(a.x, b.x),
    y: Math.min(a.y, b.y),
    width: Math.abs(a.x - b.x),
    height: Math.abs(a.y - b.y),
  };
}
