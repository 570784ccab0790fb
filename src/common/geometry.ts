/** Points and rectangles. Drawing units are those of the SVG's view box; y grows downwards. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Rect extends Point {
  readonly width: number;
  readonly height: number;
}

/** The pitch of the grid that parts and wires stand on, drawing units. Parallel wires are at least this far apart. */
export const PITCH = 16;

export const at = (x: number, y: number): Point => ({ x, y });

/** A rectangle about a centre. */
export const around = (x: number, y: number, width: number, height: number): Rect => ({
  x: x - width / 2,
  y: y - height / 2,
  width,
  height,
});

/** Whether two rectangles have a piece in common; edges that only touch are none. */
export const overlaps = (r: Rect, s: Rect): boolean =>
  r.x < s.x + s.width && s.x < r.x + r.width && r.y < s.y + s.height && s.y < r.y + r.height;

/** Whether the first lies wholly in the second. */
export const inside = (r: Rect, s: Rect): boolean =>
  r.x >= s.x && r.y >= s.y && r.x + r.width <= s.x + s.width && r.y + r.height <= s.y + s.height;

export const centreOf = (r: Rect): Point => ({ x: r.x + r.width / 2, y: r.y + r.height / 2 });

/** The least rectangle about all of these; there must be one. */
export function rectAbout(rects: readonly Rect[]): Rect {
  const [x, y] = [Math.min(...rects.map((r) => r.x)), Math.min(...rects.map((r) => r.y))];
  return {
    x,
    y,
    width: Math.max(...rects.map((r) => r.x + r.width)) - x,
    height: Math.max(...rects.map((r) => r.y + r.height)) - y,
  };
}

/** To hundredths, as drawings are written; never −0. */
/** For a factor: over the largest sheet it moves nothing by a hundredth. */
export const fine = (n: number): number => Math.round(n * 1e6) / 1e6;

export const round2 = (n: number): number => Math.round(n * 100) / 100 + 0;

export const sameBox = (a: Rect, b: Rect): boolean =>
  a.x === b.x && a.y === b.y && a.width === b.width && a.height === b.height;
