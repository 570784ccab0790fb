/** Curves of a path as the chords they are read as: on the curve by its own definition (SVG 2, 9.3; Bézier's polynomials). */
import { expect, it } from 'vitest';
import { courseOf, runsOf } from '../../src/inspect/path.ts';

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

it('a cubic curve that leans to one side passes where its polynomial says', () => {
  const [points = []] = runsOf('M4 7C8 2 4 6 10 10') ?? [];
  points.forEach(({ x, y }, i) => {
    const t = i / (points.length - 1);
    const u = 1 - t;
    expect(x).toBeCloseTo(u ** 3 * 4 + 3 * u * u * t * 8 + 3 * u * t * t * 4 + t ** 3 * 10, 6);
    expect(y).toBeCloseTo(u ** 3 * 7 + 3 * u * u * t * 2 + 3 * u * t * t * 6 + t ** 3 * 10, 6);
  });
});

it('half a circle lies on it, also where the radius given is too small for its ends (SVG 2, B.2.5; from memory)', () => {
  for (const d of ['M0 0A10 10 0 0 1 20 0', 'M0 0A7 7 0 0 1 20 0', 'M0 0A10 10 0 1 0 20 0']) {
    const [points = []] = runsOf(d) ?? [];
    expect(points.length).toBeGreaterThan(5);
    for (const { x, y } of points) expect(Math.hypot(x - 10, y)).toBeCloseTo(10, 6);
  }
});

it('an arc from a point to itself, or of an ellipse, is not read', () => {
  expect(runsOf('M5 5A10 10 0 0 1 5 5')).toBeUndefined();
  expect(runsOf('M0 0A10 12 0 0 1 5 5')).toBeUndefined();
});

it('a wire is made of lines and rounded bends; anything else breaks it', () => {
  expect(courseOf('M0 0L10 0Q20 0 20 10L20 30').broken).toBe(false);
  for (const d of ['M0 0H10', 'M0 0L10 0V10', 'M0 0C1 1 2 2 3 3', 'M0 0A5 5 0 0 1 10 0', 'M0 0L9 9Z'])
    expect(courseOf(d).broken, d).toBe(true);
});
