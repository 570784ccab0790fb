/** Path data as runs of points, curves as short chords; for wires also their corners and the openings in them. */
import type { Point } from '../common/geometry.ts';

/** Widest opening that still reads as one wire passing below another, drawing units. */
const WIDEST_OPENING = 14;
/** Chords to a curve. */
const CHORDS = 8;
/** Numbers each command takes. */
const ARITY: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, Q: 4, C: 6, A: 7, Z: 0 };

interface Step {
  readonly command: string;
  readonly n: readonly number[];
}

/** The commands, or `undefined` for anything but absolute ones with their full numbers. */
function stepsOf(d: string): readonly Step[] | undefined {
  if (!/^\s*M/.test(d) || /[^MLHVQCAZ\d\s,.eE+-]/.test(d)) return undefined;
  const steps = [...d.matchAll(/([MLHVQCAZ])([^MLHVQCAZ]*)/g)].map(([, command = '', text = '']): Step => {
    const numbers = text.match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g) ?? [];
    return { command, n: numbers.map(Number) };
  });
  const whole = steps.every(({ command, n }) => n.length === ARITY[command] && n.every(Number.isFinite));
  return whole ? steps : undefined;
}

/** Every run of a path as a line of points, or `undefined` for a path that cannot be read. */
export function runsOf(d: string): readonly (readonly Point[])[] | undefined {
  const steps = stepsOf(d);
  if (!steps) return undefined;
  const runs: Point[][] = [];
  let run: Point[] = [];
  for (const { command, n } of steps) {
    const from = run[run.length - 1] ?? { x: 0, y: 0 };
    const end = { x: n[n.length - 2] ?? 0, y: n[n.length - 1] ?? 0 };
    if (command === 'M') {
      run = [end];
      runs.push(run);
    } else if (command === 'L') run.push(end);
    else if (command === 'H') run.push({ x: n[0] ?? 0, y: from.y });
    else if (command === 'V') run.push({ x: from.x, y: n[0] ?? 0 });
    else if (command === 'Z') run.push(run[0] ?? from);
    else if (command === 'A') {
      const arc = arcOf(from, n, end);
      if (!arc) return undefined;
      run.push(...arc);
    } else run.push(...curveOf(from, n, end));
  }
  return runs;
}

/** A quadratic or cubic curve. */
function curveOf(from: Point, n: readonly number[], end: Point): readonly Point[] {
  const one = { x: n[0] ?? 0, y: n[1] ?? 0 };
  const two = n.length === 6 ? { x: n[2] ?? 0, y: n[3] ?? 0 } : undefined;
  return Array.from({ length: CHORDS }, (_, i) => {
    const t = (i + 1) / CHORDS;
    const u = 1 - t;
    const on = (a: number, b: number, c: number | undefined, d: number): number =>
      c === undefined
        ? u * u * a + 2 * u * t * b + t * t * d
        : u ** 3 * a + 3 * u * u * t * b + 3 * u * t * t * c + t ** 3 * d;
    return { x: on(from.x, one.x, two?.x, end.x), y: on(from.y, one.y, two?.y, end.y) };
  });
}

/** An arc of a circle; one of an ellipse is not read. */
function arcOf(from: Point, n: readonly number[], end: Point): readonly Point[] | undefined {
  const [rx = 0, ry = 0, , large = 0, sweep = 0] = n;
  const [dx, dy] = [end.x - from.x, end.y - from.y];
  const chord = Math.hypot(dx, dy);
  if (rx !== ry || chord === 0) return undefined;
  const r = Math.max(rx, chord / 2);
  const side = large === sweep ? -1 : 1;
  const off = (side * Math.sqrt(Math.max(0, r * r - (chord * chord) / 4))) / chord;
  const centre = { x: (from.x + end.x) / 2 - off * dy, y: (from.y + end.y) / 2 + off * dx };
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  let turn = Math.atan2(end.y - centre.y, end.x - centre.x) - start;
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;
  const chords = Math.max(2, Math.ceil(Math.abs(turn) / 0.15));
  return Array.from({ length: chords }, (_, i) => {
    const angle = start + (turn * (i + 1)) / chords;
    return { x: centre.x + r * Math.cos(angle), y: centre.y + r * Math.sin(angle) };
  });
}

/** A wire's course: its corners, a rounded bend's control point being one; the middles of its openings. */
interface Course {
  readonly points: readonly Point[];
  readonly openings: readonly Point[];
  /** Broken by more than a short, straight opening, or drawn with other than lines and rounded bends. */
  readonly broken: boolean;
}

export function courseOf(d: string): Course {
  const steps = stepsOf(d);
  const points: Point[] = [];
  const openings: Point[] = [];
  let broken = steps === undefined;
  for (const { command, n } of steps ?? []) {
    const end = { x: n[n.length - 2] ?? 0, y: n[n.length - 1] ?? 0 };
    const last = points[points.length - 1];
    if (!/[MLQ]/.test(command)) broken = true;
    if (command === 'M' && last) {
      const [dx, dy] = [Math.abs(end.x - last.x), Math.abs(end.y - last.y)];
      if ((dx > 0.01 && dy > 0.01) || dx + dy > WIDEST_OPENING) broken = true;
      openings.push({ x: (end.x + last.x) / 2, y: (end.y + last.y) / 2 });
    }
    if (command === 'Q') points.push({ x: n[0] ?? 0, y: n[1] ?? 0 });
    points.push(end);
  }
  const corners = points.filter((p, i) => {
    const [a, b] = [points[i - 1], points[i + 1]];
    return !a || !b || !((a.x === p.x && p.x === b.x) || (a.y === p.y && p.y === b.y));
  });
  return { points: corners, openings, broken };
}
