/**
 * Lines as they are drawn: where two cross the lower is open, ground below signal; corners are round; what is not there yet
 * opens nothing. Wires on a random grid, from a fixed seed.
 */
import { describe, expect, it } from 'vitest';
import type { Line } from '../../src/annotate/lines.ts';
import { contrast } from '../../src/common/contrast.ts';
import type { Point } from '../../src/common/geometry.ts';
import { seeded } from '../../src/common/random.ts';
import type { Joint } from '../../src/describe/kit.ts';
import { colours } from '../../src/describe/words.ts';
import { themes } from '../../src/draw/theme.ts';
import { drawMarks, drawWires, type Emphasis, strokeAttributes, strokes } from '../../src/draw/wires.ts';
import type { PlacedWire } from '../../src/place/placement.ts';
import { sketch } from './sketch.ts';

const theme = themes.light;
const random = seeded(60811);
const upTo = (most: number): number => Math.floor(random() * (most + 1));

const wireAlong = (points: readonly Point[], i: number, more: Partial<Joint> = {}): PlacedWire => ({
  joint: {
    kind: 'wire',
    from: { part: `a${i}`, lug: '1' },
    to: { part: `b${i}`, lug: '1' },
    index: i,
    ...more,
  },
  own: [],
  points,
});
const p = (x: number, y: number): Point => ({ x, y });
const lineOf = (look: Line['look'], tint = 'other'): Line => ({ look, tint });
const SIGNAL = lineOf('signal');
const GROUND = lineOf('ground', 'ground');

/** From an end a few steps this way and that, each on lines of its own: level ones at tens, upright ones at tens and five. */
function anyWire(i: number): PlacedWire {
  const points = [p(40 * upTo(9) + 4 * i, 40 * upTo(9) + 4 * i)];
  for (let n = 1 + upTo(3), level = random() < 0.5; n > 0; n--, level = !level) {
    const last = points.at(-1) ?? p(0, 0);
    const far = 40 * (1 + upTo(5)) * (random() < 0.5 ? 1 : -1);
    points.push(level ? p(last.x + far, last.y) : p(last.x, last.y + far));
  }
  return wireAlong(points, i);
}

/** The same on a grid of fourteen, from a few steps long to many. */
function fineWire(i: number): PlacedWire {
  const points = [p(14 * upTo(12), 14 * upTo(12))];
  for (let n = 1 + upTo(3), level = random() < 0.5; n > 0; n--, level = !level) {
    const last = points.at(-1) ?? p(0, 0);
    const far = 14 * (1 + upTo(9)) * (random() < 0.5 ? 1 : -1);
    points.push(level ? p(last.x + far, last.y) : p(last.x, last.y + far));
  }
  return wireAlong(points, i);
}

/** As many as find room: a corner or an end takes its node, a straight stretch one direction of it, and itself it never meets. */
function fineWires(wanted: number): readonly PlacedWire[] {
  const taken = new Set<string>();
  const wires: PlacedWire[] = [];
  for (let tries = 0; wires.length < wanted && tries < 300; tries++) {
    const { points } = fineWire(0);
    const slots = points.slice(1).flatMap((b, n) => {
      const a = points[n] ?? b;
      const far = Math.abs(b.x - a.x) + Math.abs(b.y - a.y);
      return Array.from({ length: far / 14 + 1 }, (_, k) => {
        const [x, y] = [a.x + Math.sign(b.x - a.x) * 14 * k, a.y + Math.sign(b.y - a.y) * 14 * k];
        return k === 0 || k === far / 14
          ? [`${x} ${y} 0`, `${x} ${y} 1`]
          : [`${x} ${y} ${a.y === b.y ? 0 : 1}`];
      }).flat();
    });
    const own = new Set(slots);
    // A corner is met by both of its stretches.
    if (slots.length - own.size !== 2 * (points.length - 2) || slots.some((slot) => taken.has(slot)))
      continue;
    for (const slot of own) taken.add(slot);
    wires.push(wireAlong(points, wires.length));
  }
  return wires;
}

interface Straight {
  readonly a: Point;
  readonly b: Point;
}
const straights = ({ points }: PlacedWire): readonly Straight[] =>
  points.slice(1).map((b, i) => ({ a: points[i] ?? b, b }));
const inside = (v: number, a: number, b: number): boolean => v > Math.min(a, b) && v < Math.max(a, b);

/** Where two wires cross squarely, both running on. */
const crossings = (one: PlacedWire, other: PlacedWire): readonly Point[] =>
  straights(one).flatMap(({ a, b }) =>
    straights(other).flatMap(({ a: c, b: d }) => {
      if (a.y === b.y && c.x === d.x && inside(c.x, a.x, b.x) && inside(a.y, c.y, d.y)) return [p(c.x, a.y)];
      if (a.x === b.x && c.y === d.y && inside(a.x, c.x, d.x) && inside(c.y, a.y, b.y)) return [p(a.x, c.y)];
      return [];
    }),
  );

const drawn = (wires: readonly PlacedWire[], lines: readonly Line[], emphasis: readonly Emphasis[] = []) =>
  sketch((pen) => drawWires(pen, 'k', wires, lines, theme, emphasis));
const byText = (a: Point, b: Point): number => a.x - b.x || a.y - b.y;

describe('where wires cross', () => {
  /** Whether an opening there would come too near to the wire's end or corner, sixteen and twelve units, or to another opening. */
  const spoils = ({ points }: PlacedWire, at: Point, gaps: readonly Point[]): boolean => {
    const far = (q: Point): number => Math.abs(q.x - at.x) + Math.abs(q.y - at.y);
    const i = points.findIndex((a, n) => {
      const b = points[n + 1];
      return (
        b && (a.x === b.x ? at.x === a.x && inside(at.y, a.y, b.y) : at.y === a.y && inside(at.x, a.x, b.x))
      );
    });
    const [a, b] = [points[i], points[i + 1]];
    if (!a || !b) throw new Error('not on the wire');
    const least = (n: number): number => (n === 0 || n === points.length - 1 ? 22 : 18);
    const on = (q: Point): boolean => (a.x === b.x ? q.x === a.x : q.y === a.y);
    return far(a) < least(i) || far(b) < least(i + 1) || gaps.some((q) => far(q) > 0 && far(q) < 24 && on(q));
  };
  it('just one is open, for six units either way: the lower, unless that would spoil it; ground lower than signal', () => {
    let [open, other] = [0, 0];
    for (let run = 0; run < 150; run++) {
      // Every third on a grid as fine as the router's, where much comes near to much.
      const fine = run % 3 === 0;
      const wires = fine ? fineWires(9) : Array.from({ length: 5 }, (_, i) => anyWire(i));
      const lines = wires.map(() => (random() < 0.4 ? GROUND : SIGNAL));
      const emphasis = wires.map((): Emphasis => (random() < 0.2 ? 'absent' : 'plain'));
      const { paths } = drawn(wires, lines, emphasis);
      const there = [...wires.keys()].filter((i) => emphasis[i] !== 'absent');
      const gapsOf = wires.map((wire, i): readonly Point[] => {
        const own = paths.filter(({ group }) => group === `k-joint-${i + 1}`);
        if (emphasis[i] === 'absent') {
          expect(own).toEqual([]);
          return [];
        }
        const pieces = own[0]?.pieces ?? [];
        expect([pieces[0]?.[0], pieces.at(-1)?.at(-1)]).toEqual([wire.points[0], wire.points.at(-1)]);
        return pieces.slice(1).map((piece, n) => {
          const [from, to] = [pieces[n]?.at(-1), piece[0]];
          if (!from || !to) throw new Error('no gap');
          expect(Math.abs(from.x - to.x) + Math.abs(from.y - to.y)).toBeCloseTo(12, 6);
          return p((from.x + to.x) / 2, (from.y + to.y) / 2);
        });
      });
      const isBelow = (i: number, k: number): boolean =>
        (lines[i] === lines[k] && i < k) || (lines[i] === GROUND && lines[k] === SIGNAL);
      const left = gapsOf.map((gaps) => [...gaps].sort(byText));
      for (const i of there)
        for (const k of there) {
          const [lower, upper] = [wires[i], wires[k]];
          if (!lower || !upper || i === k || !isBelow(i, k)) continue;
          for (const at of crossings(lower, upper)) {
            const has = (n: number): boolean =>
              left[n]?.some((q) => Math.hypot(q.x - at.x, q.y - at.y) < 0.01) ?? false;
            expect([has(i), has(k)].filter(Boolean), JSON.stringify(at)).toHaveLength(1);
            const by = has(i) ? i : k;
            left[by] = (left[by] ?? []).filter((q) => Math.hypot(q.x - at.x, q.y - at.y) >= 0.01);
            open++;
            if (by === i) continue;
            other++;
            expect(spoils(lower, at, gapsOf[i] ?? []), 'the upper is open for a reason').toBe(true);
          }
        }
      expect(left.flat()).toEqual([]);
    }
    expect(open).toBeGreaterThan(100);
    expect(other).toBeGreaterThan(5);
  });

  it('a wire’s end, its corner and a stub are spared where the other wire can be open', () => {
    const across = (x: number, i: number): PlacedWire => wireAlong([p(x, -80), p(x, 80)], i);
    const gaps = (wires: readonly PlacedWire[]): readonly number[] =>
      wires.map((_, i) => {
        const { paths } = drawn(
          wires,
          wires.map(() => SIGNAL),
        );
        return (paths.find(({ group }) => group === `k-joint-${i + 1}`)?.pieces.length ?? 0) - 1;
      });
    const level = wireAlong([p(0, 0), p(200, 0)], 0);
    // Sixteen units of it must be seen beyond the six of the opening.
    expect(gaps([level, across(22, 1)])).toEqual([1, 0]);
    expect(gaps([level, across(21, 1)])).toEqual([0, 1]);
    const bent = wireAlong([p(0, -100), p(0, 0), p(200, 0)], 0);
    expect(gaps([bent, across(18, 1)])).toEqual([1, 0]);
    expect(gaps([bent, across(17, 1)])).toEqual([0, 1]);
    expect(gaps([level, across(100, 1), across(124, 2)])).toEqual([2, 0, 0]);
    const [along, ...others] = gaps([level, across(100, 1), across(123, 2)]);
    expect([along, ...others.sort()]).toEqual([1, 0, 1]);
    // Where both would be spoilt, that is worse which hides an end.
    const short = wireAlong([p(10, -20), p(10, 80)], 1);
    expect(gaps([wireAlong([p(-100, 50), p(0, 50), p(0, 0), p(200, 0)], 0), short])).toEqual([1, 0]);
  });

  it('a wire is not open where another ends on it or lies along it, nor where it crosses itself', () => {
    for (const wires of [
      [wireAlong([p(0, 0), p(100, 0)], 0), wireAlong([p(50, 0), p(50, 80)], 1)],
      [wireAlong([p(0, 0), p(100, 0)], 0), wireAlong([p(0, -50), p(0, 80)], 1)],
      [wireAlong([p(0, 0), p(100, 0)], 0), wireAlong([p(20, 0), p(80, 0)], 1)],
      [wireAlong([p(0, 0), p(100, 0), p(100, 60), p(50, 60), p(50, -60)], 0)],
    ]) {
      const { paths } = drawn(
        wires,
        wires.map(() => SIGNAL),
      );
      for (const { pieces } of paths) expect(pieces).toHaveLength(1);
    }
  });

  it('several openings on one stretch come in the order of the way, in either direction', () => {
    for (const points of [
      [p(0, 0), p(200, 0)],
      [p(200, 0), p(0, 0)],
      [p(0, 0), p(0, 200)],
      [p(0, 200), p(0, 0)],
    ]) {
      const across = [150, 50, 100].map((at, i) =>
        wireAlong(points[0]?.y === points[1]?.y ? [p(at, -40), p(at, 40)] : [p(-40, at), p(40, at)], i + 1),
      );
      const wires = [wireAlong(points, 0), ...across];
      const { paths } = drawn(wires, [GROUND, SIGNAL, SIGNAL, SIGNAL]);
      const pieces = paths.find(({ group }) => group === 'k-joint-1')?.pieces ?? [];
      expect(pieces).toHaveLength(4);
      const along = pieces.flat().map(({ x, y }) => (points[0]?.y === points[1]?.y ? x : y));
      const sign = Math.sign((along.at(-1) ?? 0) - (along[0] ?? 0));
      expect(along.slice(1).every((at, i) => (at - (along[i] ?? 0)) * sign > 0)).toBe(true);
    }
  });
});

describe('a line', () => {
  it('has corners as round as ten units, less where its stretches are short', () => {
    for (const [points, radius] of [
      [[p(0, 0), p(100, 0), p(100, 80)], 10],
      [[p(0, 0), p(100, 0), p(100, 12)], 6],
      [[p(0, 0), p(8, 0), p(8, 90)], 4],
      [[p(100, 80), p(100, 0), p(0, 0)], 10],
    ] as const) {
      const { paths } = drawn([wireAlong(points, 0)], [SIGNAL]);
      const corner = points[1];
      const [piece = []] = paths[0]?.pieces ?? [];
      expect(piece).toHaveLength(5);
      expect(piece[2]).toEqual(corner);
      for (const end of [piece[1], piece[3]])
        expect(Math.abs((end?.x ?? 0) - corner.x) + Math.abs((end?.y ?? 0) - corner.y)).toBe(radius);
      // In line with what comes before and what follows.
      expect([piece[0], piece[4]]).toEqual([points[0], points[2]]);
      expect(piece[1]?.x === corner.x || piece[1]?.y === corner.y).toBe(true);
    }
  });

  it('is drawn in its own group, those below first, the widest stroke of each lowest', () => {
    const wires = [0, 1, 2].map((i) => wireAlong([p(0, 30 * i), p(90, 30 * i)], i));
    const { paths } = drawn(wires, [SIGNAL, GROUND, lineOf('jumper')]);
    expect([...new Set(paths.map(({ group }) => group))]).toEqual(['k-joint-2', 'k-joint-1', 'k-joint-3']);
    for (const group of ['k-joint-1', 'k-joint-2', 'k-joint-3']) {
      const widths = paths.filter((one) => one.group === group).map(({ width }) => width);
      expect(widths).toEqual([...widths].sort((a, b) => b - a));
    }
  });

  it('looks like what it is made of: no two alike, dashes only on a braid', () => {
    const looks = (['signal', 'ground', 'leg', 'sleeved', 'jumper', 'bend', 'braid'] as const).map((look) => {
      const all = strokes(lineOf(look), theme).map(strokeAttributes);
      expect(all.some((one) => 'stroke-dasharray' in one)).toBe(look === 'braid');
      return JSON.stringify(all);
    });
    expect(new Set(looks).size).toBe(7);
  });

  it('that does not count is pale, and so are its ends; one that does is in its own ink', () => {
    const wires = [0, 1].map((i) => wireAlong([p(0, 30 * i), p(90, 30 * i)], i));
    const lines = [lineOf('signal', 'tone'), lineOf('signal', 'tone')];
    const { paths, circles } = drawn(wires, lines, ['plain', 'pale']);
    expect(paths.map(({ stroke }) => stroke)).toEqual([theme.ink, theme.tints.tone, theme.pale]);
    expect(circles.map(({ stroke, fill }) => [stroke, fill])).toEqual([
      [theme.outline, theme.solder],
      [theme.outline, theme.solder],
      [theme.pale, theme.paper],
      [theme.pale, theme.paper],
    ]);
  });

  it('in a wire’s colour has it between edges in ink, a second one in stripes, and ground a core that stands out', () => {
    const widths = (line: Line, inks = theme) =>
      strokes(line, inks).map(({ stroke, width, dash }) => [stroke, width, dash !== undefined]);
    for (const inks of [themes.light, themes.dark]) {
      const { RD = '', YE = '', BK = '', GN = '', WH = '' } = inks.insulation;
      const signal = (colour: string): Line => ({ look: 'signal', tint: 'tone', colour });
      const ground = (colour: string): Line => ({ look: 'ground', tint: 'ground', colour });
      const edge = [inks.ink, 5.6, false];
      expect(widths(signal('RD'), inks)).toEqual([edge, [RD, 4, false]]);
      expect(widths(signal('GNYE'), inks)).toEqual([edge, [GN, 4, false], [YE, 4, true]]);
      expect(widths(ground('YE'), inks).slice(0, 2)).toEqual([
        [inks.ink, 7.6, false],
        [YE, 6, false],
      ]);
      for (const [code, ink] of [
        ['BK', BK],
        ['WH', WH],
        ['YE', YE],
      ] as const) {
        const core = strokes(ground(code), inks).at(-1);
        expect(core?.width, code).toBe(1.6);
        expect(contrast(core?.stroke ?? '', ink), code).toBeGreaterThan(4);
      }
    }
    // A printer without colour has none; nor has what does not count.
    expect(widths({ look: 'signal', tint: 'tone', colour: 'RD' }, themes.print)).toEqual([
      ['#000000', 5, false],
    ]);
    // A code that is in no table is drawn as if it were not given.
    expect(widths({ look: 'signal', tint: 'tone', colour: 'XX' })).toEqual(
      widths({ look: 'signal', tint: 'tone' }),
    );
  });

  it.each(Object.entries(themes))('stands out from the paper by 3:1, its edge or its body: %s', (_, inks) => {
    const looks = ['signal', 'ground', 'leg', 'sleeved', 'jumper', 'bend', 'braid'] as const;
    const lines: readonly Line[] = [
      ...looks.flatMap((look) => Object.keys(inks.tints).map((tint) => ({ look, tint }))),
      ...colours.flatMap((colour) =>
        (['signal', 'ground'] as const).map((look) => ({ look, tint: 'ground', colour })),
      ),
    ];
    for (const line of lines)
      expect(
        Math.max(...strokes(line, inks).map(({ stroke }) => contrast(stroke, inks.paper))),
        JSON.stringify(line),
      ).toBeGreaterThan(3);
  });

  it('white is not hollow, as ground is: it is darker than paper, and between grey edges', () => {
    for (const inks of [themes.light, themes.dark]) {
      const [edge, body, ...more] = strokes({ look: 'signal', tint: 'tone', colour: 'WH' }, inks);
      expect(more).toEqual([]);
      expect(edge?.stroke).toBe(inks.outline);
      // Of white alone no ink is far from paper's: 1.2 is seen (by eye, no source).
      expect(contrast(body?.stroke ?? '', '#ffffff')).toBeGreaterThan(1.2);
      const rails = strokes({ look: 'ground', tint: 'ground', colour: 'BK' }, inks);
      expect(rails.map(({ stroke }) => stroke)).not.toContain(inks.outline);
    }
    // Without colour: solid, where ground is double.
    expect(strokes({ look: 'signal', tint: 'tone', colour: 'WH' }, themes.print)).toHaveLength(1);
    expect(strokes({ look: 'ground', tint: 'ground', colour: 'BK' }, themes.print)).toHaveLength(2);
  });

  it('has an ink for every colour there is, and no two alike', () => {
    for (const { insulation } of [themes.light, themes.dark]) {
      expect(Object.keys(insulation).sort()).toEqual(colours.filter((code) => code.length === 2).sort());
      expect(new Set(Object.values(insulation)).size).toBe(Object.keys(insulation).length);
    }
  });

  it('that is new has a broad mark under it, unbroken, and no other has', () => {
    const wires = [0, 1, 2].map((i) => wireAlong([p(0, 30 * i), p(90, 30 * i), p(90, 200)], i));
    const { paths } = sketch((pen) => drawMarks(pen, wires, theme, ['plain', 'new', 'absent']));
    expect(paths).toHaveLength(1);
    expect(paths[0]).toMatchObject({ stroke: theme.mark, width: 16, fill: 'none' });
    expect(paths[0]?.pieces).toHaveLength(1);
    expect(paths[0]?.pieces[0]?.[0]).toEqual(p(0, 30));
  });
});

describe('solder', () => {
  const dotsOf = (wires: readonly PlacedWire[]): readonly Point[] =>
    drawn(
      wires,
      wires.map(() => SIGNAL),
    ).circles.map(({ x, y }) => p(x, y));
  const resistor = (joint: Partial<Joint>, points: readonly Point[], i: number, own = ['r']): PlacedWire => ({
    ...wireAlong(points, i, joint),
    own,
  });
  const leg = (lug: string, other: string) => ({
    kind: 'leg' as const,
    from: { part: 'r', lug },
    to: { part: other, lug: '1' },
  });

  it('is at both ends of a wire', () =>
    expect(dotsOf([wireAlong([p(0, 0), p(90, 0)], 0)])).toEqual([p(0, 0), p(90, 0)]));

  it('is not where a component’s leg goes on, from either end of the joint', () => {
    expect(dotsOf([resistor(leg('1', 'a'), [p(0, 0), p(90, 0)], 0)])).toEqual([p(90, 0)]);
    const { from, to } = leg('1', 'a');
    expect(dotsOf([resistor({ kind: 'leg', from: to, to: from }, [p(0, 0), p(90, 0)], 0)])).toEqual([
      p(0, 0),
    ]);
  });

  it('is where a second joint meets the leg, and on a wire to a leg', () => {
    const one = resistor(leg('1', 'a'), [p(0, 0), p(90, 0)], 0);
    const two = wireAlong([p(0, 0), p(0, 90)], 1, {
      from: { part: 'r', lug: '1' },
      to: { part: 'c', lug: '1' },
    });
    expect(dotsOf([one, two])).toEqual([p(0, 0), p(90, 0), p(0, 0), p(0, 90)]);
    // One at the other leg, or at the same leg of another part, is no matter.
    const other = wireAlong([p(50, 0), p(50, 90)], 1, {
      from: { part: 'r', lug: '2' },
      to: { part: 'q', lug: '1' },
    });
    expect(dotsOf([one, other])).toEqual([p(90, 0), p(50, 0), p(50, 90)]);
    const wire = { ...resistor(leg('1', 'a'), [p(0, 0), p(90, 0)], 0) };
    expect(dotsOf([{ ...wire, joint: { ...wire.joint, kind: 'wire' } }])).toHaveLength(2);
    expect(dotsOf([{ ...wire, own: [] }])).toHaveLength(2);
  });
});
