/** Curves of a path as the chords they are read as: on the curve by its own definition (SVG 2, 9.3; Bézier's polynomials). */
import { expect, it } from 'vitest';
import { runsOf } from '../../src/inspect/path.ts';

it('a cubic and a quadratic curve pass where their polynomials say', () => {
  const [cubic = []] = runsOf('M0 0C0 10 20 10 20 0') ?? [];
  const [quadratic = []] = runsOf('M0 0Q10 20 20 0') ?? [];
  for (const [points, at] of [
    // With the middle control points at height h, t from 0 to 1: 3h·t(1 − t), and 2h·t(1 − t).
    [cubic, (t: number) => [20 * (3 * t * t - 2 * t ** 3), 30 * t * (1 - t)]],
    [quadratic, (t: number) => [20 * t, 40 * t * (1 - t)]],
  ] as const) {
    expect(points.length).toBeGreaterThan(3);
    points.forEach(({ x, y }, i) => {
      const [wantX = 0, wantY = 0] = at(i / (points.length - 1));
      expect(x).toBeCloseTo(wantX, 6);
      expect(y).toBeCloseTo(wantY, 6);
    });
  }
});
