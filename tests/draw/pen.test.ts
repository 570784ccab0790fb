/** Whatever way a part is turned and mirrored: its shapes go with it, its words stay upright. */
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/common/geometry.ts';
import { round2 } from '../../src/common/geometry.ts';
import { textWidth } from '../../src/common/text.ts';
import type { Frame } from '../../src/place/frame.ts';
import { sketch } from './sketch.ts';

const FRAMES = ([0, 1, 2, 3] as const).flatMap((turn) =>
  [false, true].map((mirror): Frame => ({ x: 30, y: 20, width: 40, height: 100, turn, mirror })),
);

/** Mirrored first, then turned clockwise by quarters, then moved so that the extent's corner is where it should be. */
function placed({ x, y, width, height, turn, mirror }: Frame, p: Point): Point {
  let q = { x: (mirror ? width - p.x : p.x) - width / 2, y: p.y - height / 2 };
  for (let i = 0; i < turn; i++) q = { x: -q.y, y: q.x };
  const [w, h] = turn % 2 === 0 ? [width, height] : [height, width];
  return { x: x + w / 2 + q.x, y: y + h / 2 + q.y };
}

/** The middle of the circle an arc runs on (SVG 2, appendix B.2.4). */
function arcCentre(from: Point, to: Point, radius: number, large: boolean, clockwise: boolean): Point {
  const [hx, hy] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
  const off = Math.sqrt(Math.max(0, radius ** 2 / (hx ** 2 + hy ** 2) - 1)) * (large === clockwise ? -1 : 1);
  return { x: off * hy + (from.x + to.x) / 2, y: -off * hx + (from.y + to.y) / 2 };
}

describe.each(FRAMES)('turned by $turn quarters, mirrored: $mirror', (frame) => {
  const near = (a: Point, b: Point): void => {
    expect(a.x).toBeCloseTo(b.x, 6);
    expect(a.y).toBeCloseTo(b.y, 6);
  };

  it('rectangles, circles and lines', () => {
    const { rects, circles, paths } = sketch((pen) => {
      pen.rect({ x: 4, y: 10, width: 6, height: 20 }, { fill: 'none' });
      pen.group({ id: 'within' }).circle({ x: 7, y: 90 }, 3, { fill: 'none' });
      pen.line(
        [
          { x: 1, y: 2 },
          { x: 1, y: 30 },
          { x: 9, y: 30 },
        ],
        { stroke: '#000' },
      );
    }, frame);
    const [rect] = rects;
    const [a, b] = [placed(frame, { x: 4, y: 10 }), placed(frame, { x: 10, y: 30 })];
    expect([rect?.x, rect?.y, rect?.w, rect?.h]).toEqual([
      Math.min(a.x, b.x),
      Math.min(a.y, b.y),
      Math.abs(a.x - b.x),
      Math.abs(a.y - b.y),
    ]);
    const [circle] = circles;
    near(circle ?? { x: 0, y: 0 }, placed(frame, { x: 7, y: 90 }));
    expect([circle?.r, circle?.group]).toEqual([3, 'within']);
    expect(paths[0]?.pieces).toEqual([
      [
        { x: 1, y: 2 },
        { x: 1, y: 30 },
        { x: 9, y: 30 },
      ].map((p) => placed(frame, p)),
    ]);
    expect(paths[0]?.fill).toBe('none');
  });

  it('an arc runs round the same middle of the part, however it is seen', () => {
    for (const large of [false, true])
      for (const clockwise of [undefined, false, true]) {
        const [from, to, radius] = [{ x: 5, y: 40 }, { x: 25, y: 44 }, 18];
        const { paths } = sketch(
          (pen) =>
            pen.path(
              [[{ to: from }, { to, radius, large, ...(clockwise === undefined ? {} : { clockwise }) }]],
              {},
            ),
          frame,
        );
        const [, x0, y0, r, ry, turned, l, c, x1, y1] = (
          /^M([-\d.]+) ([-\d.]+)A([-\d.]+) ([-\d.]+) (\d) (\d) (\d) ([-\d.]+) ([-\d.]+)$/.exec(
            paths[0]?.d ?? '',
          ) ?? []
        ).map(Number);
        expect([r, ry, turned, l]).toEqual([radius, radius, 0, large ? 1 : 0]);
        const drawn = arcCentre(
          { x: x0 ?? 0, y: y0 ?? 0 },
          { x: x1 ?? 0, y: y1 ?? 0 },
          radius,
          l === 1,
          c === 1,
        );
        const meant = placed(frame, arcCentre(from, to, radius, large, clockwise ?? false));
        expect(Math.hypot(drawn.x - meant.x, drawn.y - meant.y)).toBeLessThan(0.05);
      }
  });

  it('several runs are one path', () => {
    const { paths } = sketch(
      (pen) =>
        pen.path(
          [
            [{ to: { x: 0, y: 0 } }, { to: { x: 8, y: 0 } }],
            [{ to: { x: 0, y: 9 } }, { to: { x: 8, y: 9 } }],
          ],
          {},
        ),
      frame,
    );
    expect(paths).toHaveLength(1);
    expect(paths[0]?.pieces).toHaveLength(2);
  });

  it('words are centred where they belong, upright, with the height of capitals about it', () => {
    const { texts, svg } = sketch((pen) => {
      pen.text('Volume', { x: 20, y: 50 }, { size: 14, weight: 'bold', fill: '#123456' });
      pen.text('Volume', { x: 20, y: 50 }, { size: 14, fill: '#123456', lift: 2 });
    }, frame);
    const at = placed(frame, { x: 20, y: 50 });
    const [bold, regular] = texts;
    expect([bold?.words, bold?.size, bold?.fill]).toEqual(['Volume', 14, '#123456']);
    expect(bold?.x).toBeCloseTo(at.x, 6);
    // Capitals of this font are 0.727 of its size high (the font's own table).
    expect((bold?.y ?? 0) - at.y).toBeCloseTo((14 * 0.7275) / 2, 1);
    // Lifted up on the sheet, not along the part.
    expect((regular?.y ?? 0) - (bold?.y ?? 0)).toBeCloseTo(-2, 6);
    expect(bold?.wide).toBeCloseTo(textWidth('Volume', 14, 'bold'), 1);
    expect(regular?.wide).toBeCloseTo(textWidth('Volume', 14), 1);
    expect(svg.match(/font-weight="700"/g)).toHaveLength(1);
    expect(svg).not.toContain('text-anchor');
  });
});

it('words may begin or end at a place, and are centred where nothing is said', () => {
  const { svg } = sketch((pen) => {
    for (const anchor of ['start', 'middle', 'end'] as const)
      pen.text(anchor, { x: 20, y: 50 }, { size: 12, fill: '#000', anchor });
  });
  expect(
    [...svg.matchAll(/text-anchor="(\w+)"[^>]*>(\w+)</g)].map(([, anchor, words]) => [anchor, words]),
  ).toEqual([
    ['start', 'start'],
    ['end', 'end'],
  ]);
});

it('a pen without a frame draws where it is told', () => {
  const { rects, circles } = sketch((pen) => {
    pen.rect({ x: 4, y: 10, width: 6, height: 20 }, {});
    pen.circle({ x: 7, y: 90 }, 3, {});
  });
  expect(rects[0]).toMatchObject({ x: 4, y: 10, w: 6, h: 20 });
  expect(circles[0]).toMatchObject({ x: 7, y: 90 });
});

it('a number has two decimals at most, and zero no sign', () => {
  expect([1.005, 1 / 3, -1 / 3, 12, 0.004].map(round2)).toEqual([1, 0.33, -0.33, 12, 0]);
  expect(Object.is(round2(-0.001), 0)).toBe(true);
});
