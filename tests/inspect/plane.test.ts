/**
 * The check's plane geometry against definitions of its own: a box is the points in it, a rounded box is two bars and four
 * discs, and what meets is found by looking at points. On whole coordinates, so that touching at an edge happens often.
 */

import { describe, expect, it } from 'vitest';
import type { Point, Rect } from '../../src/common/geometry.ts';
import { centreOf, overlaps } from '../../src/common/geometry.ts';
import { seeded } from '../../src/common/random.ts';
import {
  type Area,
  areaContains,
  boundsOf,
  boxOf,
  boxOfSegment,
  distanceToSegment,
  grown,
  grownArea,
  inArea,
  isRound,
  isWithin,
  type Segment,
  segmentHitsRect,
  segmentsOf,
  strokeHitsRect,
  touchesArea,
} from '../../src/inspect/space.ts';

const random = seeded(4711);
const whole = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
const point = (): Point => ({ x: whole(-9, 9), y: whole(-9, 9) });
const box = (least = 1): Rect => ({ ...point(), width: whole(least, 9), height: whole(least, 9) });
const rounded = (): Area => ({ ...box(2), radius: random() < 0.3 ? 0 : whole(1, 6) });
const line = (): Segment => {
  const [a, b] = [point(), point()];
  const way = whole(0, 4);
  return { a, b: way === 0 ? { x: a.x, y: b.y } : way === 1 ? { x: b.x, y: a.y } : way === 2 ? a : b };
};
/** Draws many cases and gives those, written out, for which the answer is not the one wanted. */
function wrong<Case>(times: number, draw: () => Case, fits: (one: Case) => boolean): readonly string[] {
  return Array.from({ length: times }, draw)
    .filter((one) => !fits(one))
    .map((one) => JSON.stringify(one));
}
/** So that an answer which is hardly ever yes, or no, is not taken for a test. */
const share = (times: number, one: () => boolean): number =>
  Array.from({ length: times }, one).filter((yes) => yes).length / times;

/** Strictly inside. */
const inside = (r: Rect, p: Point): boolean =>
  p.x > r.x && p.x < r.x + r.width && p.y > r.y && p.y < r.y + r.height;
/** Points of a box, its corners among them when `edge` is 0. */
function pointsIn(r: Rect, edge = 0, side = 24): readonly Point[] {
  const steps = Array.from({ length: side + 1 }, (_, i) => edge + (i / side) * (1 - 2 * edge));
  return steps.flatMap((u) => steps.map((v) => ({ x: r.x + u * r.width, y: r.y + v * r.height })));
}
const on = ({ a, b }: Segment, t: number): Point => ({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
/** Whether some whole unit square lies in both. */
function shareSquare(r: Rect, s: Rect): boolean {
  for (let x = -14; x < 23; x++)
    for (let y = -14; y < 23; y++) {
      const middle = { x: x + 0.5, y: y + 0.5 };
      if (inside(r, middle) && inside(s, middle)) return true;
    }
  return false;
}
/** Distance of a point from a closed box. */
const fromBox = (r: Rect, p: Point): number => {
  const [x, y] = [Math.min(Math.max(p.x, r.x), r.x + r.width), Math.min(Math.max(p.y, r.y), r.y + r.height)];
  return Math.hypot(p.x - x, p.y - y);
};

/** A rounded box by definition: a level bar, an upright bar, and a disc in each corner. */
function inRounded({ x, y, width, height, radius }: Area, p: Point, slack: number): boolean {
  const r = Math.min(radius, width / 2, height / 2);
  const [right, bottom] = [x + width, y + height];
  const between = (n: number, lo: number, hi: number): boolean => n >= lo && n <= hi;
  return (
    (between(p.x, x - slack, right + slack) && between(p.y, y + r, bottom - r)) ||
    (between(p.x, x + r, right - r) && between(p.y, y - slack, bottom + slack)) ||
    [x + r, right - r].some((cx) =>
      [y + r, bottom - r].some((cy) => Math.hypot(p.x - cx, p.y - cy) <= r + slack),
    )
  );
}

describe('boxes', () => {
  it('two overlap where a whole unit square lies in both', () => {
    const draw = () => ({ r: box(), s: box() });
    expect(wrong(600, draw, ({ r, s }) => overlaps(r, s) === shareSquare(r, s))).toEqual([]);
  });
  it('the box of points holds each, and has one on every side', () => {
    const draw = () => Array.from({ length: whole(1, 5) }, point);
    const tight = (points: readonly Point[]): boolean => {
      const { x, y, width, height } = boxOf(points);
      const [right, bottom] = [x + width, y + height];
      return (
        points.every((p) => p.x >= x && p.x <= right && p.y >= y && p.y <= bottom) &&
        [points.some((p) => p.x === x), points.some((p) => p.x === right)].every(Boolean) &&
        [points.some((p) => p.y === y), points.some((p) => p.y === bottom)].every(Boolean)
      );
    };
    expect(wrong(500, draw, tight)).toEqual([]);
  });
  it('the box of a line is that of its ends, and of boxes that of all their corners', () => {
    for (let i = 0; i < 60; i++) {
      const one = line();
      expect(boxOfSegment(one)).toEqual(boxOf([one.a, one.b]));
      const boxes = [box(), box(), box()];
      expect(boundsOf(boxes)).toEqual(boxOf(boxes.flatMap((b) => pointsIn(b, 0, 1))));
    }
  });
  it('grown by so much, every side moves out by that and the middle stays', () => {
    for (let i = 0; i < 40; i++) {
      const [r, by] = [box(), whole(-2, 5)];
      const g = grown(r, by);
      expect([r.x - g.x, r.y - g.y]).toEqual([by, by]);
      expect([g.x + g.width - r.x - r.width, g.y + g.height - r.y - r.height]).toEqual([by, by]);
      expect(centreOf(g)).toEqual(centreOf(r));
      expect(centreOf(r)).toEqual({ x: (r.x + r.x + r.width) / 2, y: (r.y + r.y + r.height) / 2 });
    }
  });
  it('round corners grow with their area, are never less than sharp, and sharp ones stay sharp', () => {
    const area = { x: 0, y: 0, width: 20, height: 30, radius: 4 };
    expect(grownArea(area, 3)).toEqual({ x: -3, y: -3, width: 26, height: 36, radius: 7 });
    expect(grownArea(area, -3).radius).toBe(1);
    expect(grownArea(area, -6).radius).toBe(0);
    expect(grownArea({ ...area, radius: 0 }, 3).radius).toBe(0);
    expect(grownArea({ ...area, radius: 1 }, 3).radius).toBe(4);
  });
});

describe('areas with round corners', () => {
  it('a point is in one as it is in its bars and corner discs, or no further off than the slack', () => {
    const draw = () => ({
      area: rounded(),
      slack: random() < 0.5 ? 0 : 1,
      p: { x: whole(-24, 40) / 2, y: whole(-24, 40) / 2 },
    });
    expect(
      wrong(3000, draw, ({ area, slack, p }) => inArea(area, p, slack) === inRounded(area, p, slack)),
    ).toEqual([]);
  });
  it('a box is held where each of its points is in', () => {
    const draw = () => {
      const area = rounded();
      const at = { x: area.x + whole(-1, area.width), y: area.y + whole(-1, area.height) };
      return { area, r: { ...at, width: whole(1, 3), height: whole(1, 3) } };
    };
    const held = ({ area, r }: ReturnType<typeof draw>): boolean =>
      pointsIn(r, 0, 4).every((p) => inRounded(area, p, 0.01));
    expect(wrong(1500, draw, (one) => areaContains(one.area, one.r) === held(one))).toEqual([]);
    expect(share(1000, () => held(draw()))).toBeGreaterThan(0.1);
  });
  it('a box touches where one of its inner points is in, an edge or a corner alone does not', () => {
    const draw = () => ({ area: rounded(), r: box() });
    const some = (area: Area, r: Rect): boolean => pointsIn(r, 1e-6).some((p) => inRounded(area, p, 0));
    const fits = ({ area, r }: ReturnType<typeof draw>): boolean => {
      const shrunk = { ...area, ...grown(area, -1e-7) };
      // Points are looked at in a raster: what barely reaches into a round corner may fall between.
      return touchesArea(area, r) ? some(area, grown(r, 0.3)) : !some(shrunk, r);
    };
    expect(wrong(500, draw, fits)).toEqual([]);
    expect(share(500, () => touchesArea(rounded(), box()))).toBeGreaterThan(0.1);
  });
  it('boxes that only share an edge with a sharp area do not touch it', () => {
    const area = { x: 0, y: 0, width: 10, height: 10, radius: 0 };
    for (const [x, y] of [
      [10, 0],
      [-10, 0],
      [0, 10],
      [0, -10],
    ] as const) {
      expect(touchesArea(area, { x, y, width: 10, height: 10 })).toBe(false);
      const toward = { x: x - Math.sign(x), y: y - Math.sign(y), width: 10, height: 10 };
      expect(touchesArea(area, toward)).toBe(true);
    }
  });
  it.each([
    { width: 40, height: 20, radius: 8 },
    { width: 40, height: 20, radius: 99 },
    { width: 20, height: 40, radius: 99 },
    { width: 20, height: 20, radius: 10 },
  ])(
    'a box by a round corner of %o touches where its nearest corner is within the radius',
    ({ radius, ...size }) => {
      const area = { x: 3, y: -7, ...size, radius };
      const r = Math.min(radius, size.width / 2, size.height / 2);
      // The corner discs' middles lie as far in as they reach; a square of 1 whose near corner is (d, d) away from such a middle.
      for (const [cx, sx] of [
        [3 + r, -1],
        [3 + size.width - r, 1],
      ] as const)
        for (const [cy, sy] of [
          [-7 + r, -1],
          [-7 + size.height - r, 1],
        ] as const)
          for (const d of [0.98 * r * Math.SQRT1_2, 1.02 * r * Math.SQRT1_2]) {
            const [nx, ny] = [cx + sx * d, cy + sy * d];
            const square = { x: Math.min(nx, nx + sx), y: Math.min(ny, ny + sy), width: 1, height: 1 };
            expect(touchesArea(area, square), JSON.stringify(square)).toBe(d * Math.SQRT2 < r);
            expect(inArea(area, { x: nx, y: ny })).toBe(d * Math.SQRT2 < r);
          }
    },
  );
});

describe('lines', () => {
  it('the distance of a point is that of the nearest point on it', () => {
    const draw = () => ({ one: line(), p: point() });
    const fits = ({ one, p }: ReturnType<typeof draw>): boolean => {
      const least = Math.min(
        ...Array.from({ length: 401 }, (_, i) => on(one, i / 400)).map((q) =>
          Math.hypot(p.x - q.x, p.y - q.y),
        ),
      );
      const found = distanceToSegment(p, one);
      // The raster is at most 0.064 wide.
      return found <= least + 1e-9 && found > least - 0.04;
    };
    expect(wrong(800, draw, fits)).toEqual([]);
  });
  it('one crosses a box where a point of it lies inside, its edge not counted', () => {
    const draw = () => ({ one: line(), r: box() });
    // Between the places where it passes a side's line, it is either wholly inside or not at all.
    const inIt = ({ one, r }: ReturnType<typeof draw>): boolean => {
      const { a, b } = one;
      const cuts = [
        ...[r.x, r.x + r.width].map((x) => (x - a.x) / (b.x - a.x)),
        ...[r.y, r.y + r.height].map((y) => (y - a.y) / (b.y - a.y)),
      ].filter((t) => t > 0 && t < 1);
      const ts = [0, ...cuts.sort((s, t) => s - t), 1];
      return ts
        .slice(1)
        .some((t, i) => t - (ts[i] ?? 0) > 1e-9 && inside(grown(r, -1e-9), on(one, ((ts[i] ?? 0) + t) / 2)));
    };
    expect(wrong(5000, draw, (one) => segmentHitsRect(one.one, one.r) === inIt(one))).toEqual([]);
    expect(share(1000, () => inIt(draw()))).toBeGreaterThan(0.08);
  });
  it('a level or upright stroke inks half its width to either side, and its cap beyond either end', () => {
    const draw = () => ({
      a: point(),
      length: whole(-9, 9),
      level: random() < 0.5,
      half: whole(1, 4),
      cap: whole(0, 3),
      r: box(),
    });
    const fits = ({ a, length, level, half, cap, r }: ReturnType<typeof draw>): boolean => {
      const b = level ? { x: a.x + length, y: a.y } : { x: a.x, y: a.y + length };
      const [from, long] = [Math.min(0, length) - cap, Math.abs(length) + 2 * cap];
      // A stretch without length lies level as well as upright: then its cap reaches across.
      const ink =
        level || length === 0
          ? { x: a.x + from, y: a.y - half, width: long, height: 2 * half }
          : { x: a.x - half, y: a.y + from, width: 2 * half, height: long };
      return strokeHitsRect({ a, b }, half, cap, r) === shareSquare(ink, r);
    };
    expect(wrong(1200, draw, fits)).toEqual([]);
  });
  it('a slanting stroke inks what is nearer to it than half its width', () => {
    const slant = (): number => whole(1, 9) * (random() < 0.5 ? -1 : 1);
    const draw = () => {
      const a = point();
      return { one: { a, b: { x: a.x + slant(), y: a.y + slant() } }, r: box(), half: whole(1, 3) };
    };
    const fits = ({ one, r, half }: ReturnType<typeof draw>): boolean => {
      const least = Math.min(...Array.from({ length: 201 }, (_, i) => fromBox(r, on(one, i / 200))));
      return Math.abs(least - half) < 0.05 || strokeHitsRect(one, half, 0, r) === least < half;
    };
    expect(wrong(800, draw, fits)).toEqual([]);
  });
  it('one is near a circle by the distance from its middle, near a box when it comes into the box grown', () => {
    const draw = () => ({ one: line(), by: whole(0, 4), radius: whole(1, 5), at: point(), r: box() });
    const fits = ({ one, by, radius, at, r }: ReturnType<typeof draw>): boolean => {
      const middle = { x: at.x + radius, y: at.y + radius };
      const round = { ...at, width: 2 * radius, height: 2 * radius, radius };
      return (
        isWithin(one, round, by) === distanceToSegment(middle, one) < radius + by &&
        isWithin(one, { ...r, radius: 0 }, by) === segmentHitsRect(one, grown(r, by))
      );
    };
    expect(wrong(1500, draw, fits)).toEqual([]);
  });
  it('only what is as wide as high, with corners rounded altogether, is a circle', () => {
    const round = { x: 0, y: 0, width: 10, height: 10, radius: 5 };
    expect(isRound(round)).toBe(true);
    expect(isRound({ ...round, radius: 6 })).toBe(true);
    expect(isRound({ ...round, radius: 4.9 })).toBe(false);
    expect(isRound({ ...round, height: 11, radius: 9 })).toBe(false);
  });
  it('a run of points is as many lines as it has steps, each from where the one before ends', () => {
    const points = [point(), point(), point(), point()];
    const lines = segmentsOf(points);
    expect(lines.map(({ a }) => a)).toEqual(points.slice(0, 3));
    expect(lines.map(({ b }) => b)).toEqual(points.slice(1));
    expect(segmentsOf([point()])).toEqual([]);
  });
});
