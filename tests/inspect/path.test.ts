/** Curves of a path as the chords they are read as: on the curve by its own definition (SVG 2, 9.3; Bézier's polynomials). */
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/common/geometry.ts';
import { seeded } from '../../src/common/random.ts';
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

const random = seeded(2718);
const whole = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
const write = ({ x, y }: Point): string => `${x} ${y}`;
const somewhere = (): Point => ({ x: whole(-50, 50), y: whole(-50, 50) });

/** A point of a curve by halving its control polygon again and again (de Casteljau). */
const casteljau = (points: readonly Point[], t: number): Point => {
  const [first = { x: 0, y: 0 }, ...rest] = points;
  if (rest.length === 0) return first;
  const between = (p: Point, q: Point): Point => ({ x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) });
  return casteljau(
    points.slice(1).map((q, i) => between(points[i] ?? q, q)),
    t,
  );
};
const close = (found: readonly Point[], wanted: readonly Point[], words: string): void => {
  expect(found.length, words).toBe(wanted.length);
  found.forEach(({ x, y }, i) => {
    expect(Math.hypot(x - (wanted[i]?.x ?? 0), y - (wanted[i]?.y ?? 0)), `${words}, point ${i}`).toBeLessThan(
      1e-6,
    );
  });
};

it('any succession of commands is a run for each M, each command going on from where the last ended', () => {
  for (let i = 0; i < 300; i++) {
    let d = '';
    const wanted: Point[][] = [];
    for (let k = whole(1, 3); k > 0; k--) {
      const start = somewhere();
      const run = [start];
      wanted.push(run);
      d += `M${write(start)}`;
      for (let j = whole(0, 5); j > 0; j--) {
        const from = run[run.length - 1] ?? start;
        const [one, two, end] = [somewhere(), somewhere(), somewhere()];
        const curve = (...points: Point[]): Point[] =>
          Array.from({ length: 8 }, (_, n) => casteljau([from, ...points], (n + 1) / 8));
        const [text, points] = [
          [`L${write(end)}`, [end]] as const,
          [`H${end.x}`, [{ x: end.x, y: from.y }]] as const,
          [`V${end.y}`, [{ x: from.x, y: end.y }]] as const,
          [`Q${write(one)} ${write(end)}`, curve(one, end)] as const,
          [`C${write(one)} ${write(two)} ${write(end)}`, curve(one, two, end)] as const,
          ['Z', [start]] as const,
        ][whole(0, 5)] ?? ['', []];
        d += text;
        run.push(...points);
      }
    }
    const found = runsOf(d) ?? [];
    expect(found.length, d).toBe(wanted.length);
    found.forEach((run, k) => {
      close(run, wanted[k] ?? [], d);
    });
  }
});

it('an arc runs round its circle the way and as far as its flags say, in even chords that keep close to it', () => {
  for (let i = 0; i < 400; i++) {
    const [centre, r, start] = [somewhere(), whole(2, 60), random() * 2 * Math.PI];
    // By less or by more than half a turn, clockwise on the sheet (y grows downwards) or against it.
    const turn = (0.02 + random() * 6.2) * (random() < 0.5 ? -1 : 1);
    const onCircle = (angle: number): Point => ({
      x: centre.x + r * Math.cos(angle),
      y: centre.y + r * Math.sin(angle),
    });
    const [from, end] = [onCircle(start), onCircle(start + turn)];
    const large = Number(Math.abs(turn) > Math.PI);
    if (Math.abs(Math.abs(turn) - Math.PI) < 0.05) continue;
    const d = `M${write(from)}A${r} ${r} 0 ${large} ${Number(turn > 0)} ${write(end)}`.replaceAll(
      /e-\d+/g,
      '',
    );
    const [[, ...points] = []] = runsOf(d) ?? [];
    expect(points.length, d).toBeGreaterThanOrEqual(2);
    points.forEach((p, k) => {
      const want = onCircle(start + (turn * (k + 1)) / points.length);
      expect(Math.hypot(p.x - want.x, p.y - want.y), `${d}, point ${k}`).toBeLessThan(1e-4 * r);
    });
    // How far a chord's middle is from its circle: three thousandths of the radius at most.
    expect(r * (1 - Math.cos(turn / points.length / 2)), d).toBeLessThan(0.003 * r);
    // And no more chords than that needs, but two.
    expect(points.length, d).toBeLessThanOrEqual(Math.max(2, Math.abs(turn) / 0.15 + 1.001));
  }
});

it('an arc whose radius is too small for its ends is half a circle between them, whatever the rounding', () => {
  for (let i = 0; i < 300; i++) {
    const [from, end] = [somewhere(), somewhere()];
    const across = Math.hypot(end.x - from.x, end.y - from.y);
    if (across === 0) continue;
    const middle = { x: (from.x + end.x) / 2, y: (from.y + end.y) / 2 };
    const r = across / (random() < 0.5 ? 2 : 3);
    const [[, ...points] = []] = runsOf(`M${write(from)}A${r} ${r} 0 0 1 ${write(end)}`) ?? [];
    for (const p of points)
      expect(Math.abs(Math.hypot(p.x - middle.x, p.y - middle.y) - across / 2)).toBeLessThan(1e-3);
    expect(points.length).toBeGreaterThan(8);
  }
});

it('a command with a number too many or too few, or with one that is none, is not read', () => {
  for (const [command, numbers] of [
    ['M', 2],
    ['L', 2],
    ['H', 1],
    ['V', 1],
    ['Q', 4],
    ['C', 6],
    ['A', 7],
    ['Z', 0],
  ] as const) {
    const with_ = (count: number): string =>
      `M0 0L3 4${command}${Array.from({ length: count }, (_, i) => (command === 'A' && i < 2 ? 9 : i < 5 ? 1 : 7 + i)).join(' ')}`;
    expect(runsOf(with_(numbers)), with_(numbers)).toBeDefined();
    expect(runsOf(with_(numbers + 1)), with_(numbers + 1)).toBeUndefined();
    expect(runsOf(with_(2 * numbers + 2)), with_(2 * numbers + 2)).toBeUndefined();
    if (numbers > 0) expect(runsOf(with_(numbers - 1)), with_(numbers - 1)).toBeUndefined();
  }
  expect(runsOf('M0 0L1e999 1')).toBeUndefined();
});

describe('the course of a wire', () => {
  it('has its corners where the line turns, a rounded bend’s control point being one', () => {
    expect(courseOf('M0 0L10 0L20 0L20 10L20 30L5 30').points).toEqual([
      { x: 0, y: 0 },
      { x: 20, y: 0 },
      { x: 20, y: 30 },
      { x: 5, y: 30 },
    ]);
    expect(courseOf('M0 0L10 0Q16 0 16 6L16 40').points).toEqual([
      { x: 0, y: 0 },
      { x: 16, y: 0 },
      { x: 16, y: 40 },
    ]);
    // On a slant no point is dropped.
    expect(courseOf('M0 0L10 10L20 20').points).toHaveLength(3);
  });
  it('any course is read back from the path that is written of it, with the openings in it', () => {
    for (let i = 0; i < 200; i++) {
      const points = [somewhere()];
      const openings: Point[] = [];
      let d = `M${write(points[0] ?? somewhere())}`;
      let level = random() < 0.5;
      for (let k = whole(1, 6); k > 0; k--) {
        const from = points[points.length - 1] ?? { x: 0, y: 0 };
        const way = whole(30, 60) * (random() < 0.5 ? -1 : 1);
        const along = (by: number): Point =>
          level ? { x: from.x + by, y: from.y } : { x: from.x, y: from.y + by };
        if (random() < 0.5) {
          const half = whole(1, 7) * Math.sign(way);
          d += `L${write(along(way / 2 - half))}M${write(along(way / 2 + half))}`;
          openings.push(along(way / 2));
        }
        d += `L${write(along(way))}`;
        points.push(along(way));
        level = !level;
      }
      expect(courseOf(d), d).toEqual({ points, openings, broken: false });
    }
  });
  it('may be open by 14 units, straight on; by more, or to the side, it is broken', () => {
    const open = (x: number, y: number): boolean => courseOf(`M0 0L20 0M${20 + x} ${y}L90 ${y}`).broken;
    const upright = (x: number, y: number): boolean => courseOf(`M0 0L0 20M${x} ${20 + y}L${x} 90`).broken;
    for (const broken of [open, upright]) expect(broken(1, 1)).toBe(true);
    expect(open(14, 0)).toBe(false);
    expect(open(-14, 0)).toBe(false);
    expect(open(14.1, 0)).toBe(true);
    expect(open(27, 0)).toBe(true);
    expect(open(14, 0.005)).toBe(true);
    expect(open(12, 0.005)).toBe(false);
    expect(open(12, 0.02)).toBe(true);
    expect(upright(0, 14)).toBe(false);
    expect(upright(0, 14.1)).toBe(true);
    expect(upright(0.005, 12)).toBe(false);
    expect(upright(0.02, 12)).toBe(true);
  });
  it('that cannot be read is broken and goes nowhere', () =>
    expect(courseOf('nonsense')).toEqual({ points: [], openings: [], broken: true }));
});
