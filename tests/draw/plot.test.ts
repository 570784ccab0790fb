/** What a response plot is made of, drawn from curves of a known shape: a resonance, and nothing else. */
import { describe, expect, it } from 'vitest';
import type { Plot, PlotState, Trace } from '../../src/annotate/plot.ts';
import { seeded } from '../../src/common/random.ts';
import { textWidth } from '../../src/common/text.ts';
import { axesOf, drawAxes } from '../../src/draw/plot/axes.ts';
import { badgeWidth } from '../../src/draw/plot/badge.ts';
import { leastField, namesWidth, overviewHeight } from '../../src/draw/plot/overview.ts';
import { panelHeight, panelLevels, panelWidth } from '../../src/draw/plot/panel.ts';
import { drawPlot } from '../../src/draw/plot/plot.ts';
import {
  dataOf,
  heightAt,
  lastAt,
  type Runs,
  spotsOf,
  strokeReference,
  strokeState,
} from '../../src/draw/plot/trace.ts';
import { themes } from '../../src/draw/theme.ts';
import type { Drawing, Mark } from '../truth/reader.ts';
import { sketch } from './sketch.ts';

const theme = themes.light;
const FREQUENCIES = Array.from({ length: 301 }, (_, i) => 20 * 1000 ** (i / 300));

/** A second-order low pass: flat below, `q` at its resonance, falling above. */
const levelAt = (f: number, f0: number, q: number, plateau: number): number =>
  plateau - 10 * Math.log10((1 - (f / f0) ** 2) ** 2 + (f / f0 / q) ** 2);
const traceOf = (f0: number, q: number, plateau = -1): Trace => ({
  levels: FREQUENCIES.map((f) => levelAt(f, f0, q, plateau)),
  plateau,
  resonance: { frequency: f0, level: levelAt(f0, f0, q, plateau), words: [`${f0} Hz`, `+${q} dB`] },
  cutoff: { frequency: 1.5 * f0, level: plateau - 3, words: ['−3 dB at', `${1.5 * f0} Hz`] },
});
const stateOf = (i: number, more: Partial<PlotState> = {}): PlotState => ({
  badge: `${i}`,
  name: `State ${i}`,
  tints: ['pickup-1'],
  variant: 0,
  trace: traceOf(2000 + 700 * i, 2 + 0.3 * i),
  references: [{ words: `made for ${i}`, trace: traceOf(3000 + 500 * i, 1.5) }],
  rows: [{ label: `Neck ${i}`, words: `as designed ${i}` }],
  ...more,
});
const silent = (i: number): PlotState => {
  const { trace: _, ...rest } = stateOf(i);
  return { ...rest, references: [], rows: [] };
};
const plotOf = (states: readonly PlotState[], more: Partial<Plot> = {}): Plot => ({
  language: 'en',
  id: 'k',
  title: 'A kit',
  lines: ['Volume on 10'],
  description: 'Its response',
  frequencies: FREQUENCIES,
  states,
  references: [{ words: 'reference of all', trace: traceOf(4800, 1.8) }],
  ...more,
});
const drawn = (plot: Plot) => sketch((pen) => drawPlot(pen.into, plot, theme));
const of = <T extends Mark>(marks: readonly T[], group: string): readonly T[] =>
  marks.filter((mark) => mark.group === group);
const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.02;
const one = <T>(found: readonly T[], what: string): T => {
  const [first, ...more] = found;
  if (first === undefined || more.length > 0) throw new Error(`${what}: ${found.length}`);
  return first;
};
const textIn = (drawing: Drawing, words: string, group?: string) =>
  one(
    drawing.texts.filter((text) => text.words === words && (group === undefined || text.group === group)),
    words,
  );

describe('axes', () => {
  const box = { x: 40, y: 10, width: 600, height: 300 };
  it.each([
    [20, 20_000, ['20', '50', '100', '200', '500', '1k', '2k', '5k', '10k', '20k']],
    [200, 20_000, ['200', '500', '1k', '2k', '5k', '10k', '20k']],
    [100, 5000, ['100', '200', '500', '1k', '2k', '5k']],
  ] as const)(
    'from %d to %d Hz: figures at 1, 2 and 5 of a decade, lighter lines at the rest',
    (from, to, figures) => {
      const axes = axesOf(box, { from, to }, { from: -24, to: 9 });
      const { texts, paths } = sketch((pen) => drawAxes(pen, 'a', axes, theme));
      const across = of(texts, 'a-hertz');
      expect(across.map(({ words }) => words)).toEqual(figures);
      const x = (f: number): number => box.x + (box.width * Math.log(f / from)) / Math.log(to / from);
      const upright = paths.filter(({ pieces }) => pieces[0]?.[0]?.x === pieces[0]?.[1]?.x);
      for (const text of across) {
        const f = Number(text.words.replace('k', '000'));
        expect(near(text.middle, x(f))).toBe(true);
        expect(text.y).toBeGreaterThan(box.y + box.height);
      }
      // 3, 4, 6, 7, 8 and 9 of each decade that is within.
      const fine = [10, 100, 1000, 10_000]
        .flatMap((d) => [3, 4, 6, 7, 8, 9].map((n) => n * d))
        .filter((f) => f >= from && f <= to);
      expect(upright.filter(({ width }) => width === 0.5).map(({ pieces }) => pieces[0]?.[0]?.x)).toEqual(
        fine.map((f) => expect.closeTo(x(f), 1)),
      );
      const main = upright.filter(({ width }) => width === 1);
      expect(main).toHaveLength(figures.length);
      // They reach a little below the floor, to their figures.
      for (const { pieces } of main)
        expect(Math.max(...(pieces[0] ?? []).map(({ y }) => y))).toBe(box.y + box.height + 4);
    },
  );

  it('in decibels: figures with their sign at multiples of 6, lighter lines between, nothing stronger than 0', () => {
    const axes = axesOf(box, { from: 20, to: 20_000 }, { from: -24, to: 9 });
    const { texts, paths } = sketch((pen) => drawAxes(pen, 'a', axes, theme));
    expect(of(texts, 'a-decibels').map(({ words }) => words)).toEqual(['−24', '−18', '−12', '−6', '0', '+6']);
    const y = (dB: number): number => box.y + (box.height * (9 - dB)) / 33;
    const level = paths.filter(({ pieces }) => pieces[0]?.[0]?.y === pieces[0]?.[1]?.y);
    const at = (dB: number) => level.filter(({ pieces }) => near(pieces[0]?.[0]?.y ?? 0, y(dB)));
    for (const dB of [-21, -15, -9, -3, 3, 9])
      expect(at(dB).map(({ width, stroke }) => [width, stroke])).toEqual([[0.5, theme.inside]]);
    for (const dB of [-18, -12, -6, 6])
      expect(at(dB).map(({ width, stroke }) => [width, stroke])).toEqual([[1, theme.inside]]);
    expect(at(0).map(({ stroke }) => stroke)).toEqual([theme.outline]);
    // The floor is the frame, whatever level it is at.
    expect(at(-24).map(({ stroke }) => stroke)).toEqual([theme.inside, theme.outline]);
    for (const text of of(texts, 'a-decibels'))
      expect(near(text.y - 11 * 0.3637, y(Number(text.words.replace('−', '-'))))).toBe(true);
  });
});

describe('a curve', () => {
  const box = { x: 50, y: 0, width: 300, height: 100 };
  const random = seeded(60851);
  // Whole units: a decibel is one, a decade a hundred.
  const axes = axesOf(box, { from: 10, to: 10_000 }, { from: -100, to: 0 });
  const spots = (levels: readonly number[], first = 1): Runs =>
    spotsOf(
      levels.map((_, i) => first * 10 ** (i / 10)),
      { levels, plateau: 0 },
      axes,
    );

  it('is drawn where it is above the floor and within the axis, cut just there, and nowhere else', () => {
    for (let run = 0; run < 60; run++) {
      const levels = Array.from({ length: 40 }, () => -160 + 150 * random());
      const runs = spots(levels);
      // One point every ten units, from 50 before the axis begins.
      const exact = (x: number): number => {
        const at = (x - box.x + 100) / 10;
        const i = Math.min(38, Math.floor(at));
        return -((levels[i] ?? 0) + ((levels[i + 1] ?? 0) - (levels[i] ?? 0)) * (at - i));
      };
      for (let x = -45.5; x < 339; x += 1.37) {
        const [y, there] = [exact(x), heightAt(runs, x)];
        const inside = x > box.x + 0.01 && y < 100 - 0.01;
        if (inside) expect(there, `${x}`).toBeCloseTo(y, 6);
        else if (x < box.x - 0.01 || y > 100 + 0.01) expect(there, `${x}`).toBeUndefined();
      }
      for (const stretch of runs) {
        expect(stretch.length).toBeGreaterThan(1);
        for (const [x, y] of stretch) expect(x >= box.x - 1e-9 && y <= 100 + 1e-9).toBe(true);
        for (const [i, [x]] of stretch.slice(1).entries()) expect(x).toBeGreaterThan(stretch[i]?.[0] ?? 999);
      }
    }
  });

  it('that only touches the floor has no length, one that lies on it is drawn', () => {
    for (const [x, y] of spots([-150, -100, -150], 100).flat())
      expect([x, y]).toEqual([expect.closeTo(160, 6), 100]);
    expect(spots([-150, -99, -150], 100)[0]).toHaveLength(3);
    expect(spots([-150, -120, -150], 100)).toEqual([]);
    // A single point is no line.
    expect(spots([-50], 100)).toEqual([]);
    expect(spots([-100, -100, -100], 100)).toHaveLength(1);
    expect(spots([-100, -100, -100], 100)[0]).toHaveLength(3);
    // From the floor up, without its first point twice.
    expect(spots([-150, -100, -50], 100)[0]).toHaveLength(2);
    expect(spots([], 100)).toEqual([]);
    expect(heightAt([], 5)).toBeUndefined();
  });

  it('a height between two points of one stretch, at its ends too, and not before or behind', () => {
    const runs: Runs = [
      [
        [10, 5],
        [20, 15],
      ],
      [
        [40, 8],
        [40, 9],
        [50, 0],
      ],
    ];
    expect([10, 15, 20, 40, 45, 50].map((x) => heightAt(runs, x))).toEqual([5, 10, 15, 8, 4.5, 0]);
    expect([9, 21, 39, 51].map((x) => heightAt(runs, x))).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('where it last comes down through a height, or its end', () => {
    const runs: Runs = [
      [
        [0, 0],
        [10, 20],
        [20, 0],
        [30, 20],
        [40, 20],
        [50, 40],
      ],
    ];
    // Down on paper is a larger height.
    expect(lastAt(runs, 10)).toEqual([25, 10]);
    expect(lastAt(runs, 30)).toEqual([45, 30]);
    expect(lastAt(runs, 0)).toEqual([20, 0]);
    expect(lastAt(runs, 20)).toEqual([40, 20]);
    expect(lastAt(runs, 99)).toEqual([50, 40]);
    expect(
      lastAt(
        [
          ...runs,
          [
            [60, 5],
            [70, 1],
          ],
        ],
        3,
      ),
    ).toEqual([70, 1]);
    expect(lastAt([], 3)).toBeUndefined();
  });

  it('is written with two decimals, a stretch after the other', () => {
    expect(
      dataOf([
        [
          [0, 1 / 3],
          [1, 2],
        ],
        [
          [5, 6],
          [7, 8],
        ],
      ]),
    ).toBe('M0,0.33L1,2M5,6L7,8');
    expect(dataOf([])).toBe('');
  });
});

describe('how a curve is told from others', () => {
  const strokesOf = (tints: readonly string[], variant: number) => {
    const { svg, paths } = sketch((pen) =>
      strokeState(pen, 'M0 0L9 9', stateOf(1, { tints, variant }), theme, 3),
    );
    return paths.map(({ stroke, width, dash }, i) => ({
      stroke,
      width,
      dash,
      offset: [...svg.matchAll(/<path[^>]*>/g)][i]?.[0].match(/dashoffset="(-?\d+)"/)?.[1],
    }));
  };
  const inks = theme.tints;

  it('one pickup is solid, the next state of it in ever finer dashes', () => {
    expect(strokesOf(['tone'], 0)).toEqual([{ stroke: inks.tone, width: 3, dash: '', offset: undefined }]);
    const dashes = [1, 2, 3, 4, 9].map((variant) => strokesOf(['tone'], variant)[0]?.dash);
    expect(dashes).toEqual(['8 2', '5 2', '3 2', '3 2', '3 2']);
  });

  it('several take turns, dash by dash, each beginning where the one before it ends', () => {
    expect(strokesOf(['pickup-1', 'pickup-3'], 0)).toEqual([
      { stroke: inks['pickup-1'], width: 3, dash: '13 17', offset: undefined },
      { stroke: inks['pickup-3'], width: 3, dash: '13 17', offset: '-15' },
    ]);
    expect(
      strokesOf(['pickup-1', 'pickup-2', 'pickup-3'], 1).map(({ dash, offset }) => [dash, offset]),
    ).toEqual([
      ['8 22', undefined],
      ['8 22', '-10'],
      ['8 22', '-20'],
    ]);
  });

  it('a state without a tint has that of other wires, a reference a dashed line on a white core', () => {
    expect(strokesOf([], 0).map(({ stroke }) => stroke)).toEqual([inks.other]);
    const { paths } = sketch((pen) => strokeReference(pen, 'M0 0L9 9', theme, 1.5));
    expect(paths.map(({ stroke, dash }) => [stroke, dash])).toEqual([
      [theme.paper, ''],
      [theme.quiet, '5 3'],
    ]);
  });
});

describe('all states together', () => {
  const plot = plotOf([stateOf(1), silent(2), stateOf(3, { tints: ['pickup-3'] })]);
  const drawing = drawn(plot);

  it('have a curve each and the references theirs, in this order, and none where nothing is heard', () => {
    const groups = [...drawing.svg.matchAll(/<g id="(k-(?:line|reference)-\d)"/g)].map(([, id]) => id);
    expect(groups).toEqual(['k-line-1', 'k-line-3', 'k-reference-1']);
    expect(of(drawing.paths, 'k-line-1').map(({ width, stroke }) => [width, stroke])).toEqual([
      [3, theme.tints['pickup-1']],
    ]);
    expect(textIn(drawing, 'dB', 'k-all').middle).toBeLessThan(textIn(drawing, 'Hz', 'k-all').middle);
    expect(of(drawing.texts, 'k-axes-hertz').length).toBe(10);
    expect(drawing.texts.some(({ words }) => words.startsWith('No output'))).toBe(false);
  });

  it('are named at their ends, a leader to each, states with their badge', () => {
    const names = of(drawing.texts, 'k-names').filter(({ words }) => words.length > 1);
    expect(names.map(({ words }) => words).sort()).toEqual(['State 1', 'State 3', 'reference of all']);
    // From the top down as the curves end.
    expect(names.map(({ y }) => y)).toEqual([...names.map(({ y }) => y)].sort((a, b) => a - b));
    for (const [words, group] of [
      ['State 1', 'k-line-1'],
      ['State 3', 'k-line-3'],
      ['reference of all', 'k-reference-1'],
    ] as const) {
      const name = textIn(drawing, words, 'k-names');
      const end = of(drawing.paths, group)[0]?.pieces.at(-1)?.at(-1);
      // d3 writes its numbers with a comma; the reader takes them all the same.
      const leaders = of(drawing.paths, 'k-names').filter(({ pieces }) =>
        near(pieces[0]?.[2]?.y ?? 0, name.y - 12 * 0.3637),
      );
      const leader = one(leaders, words).pieces[0];
      expect(leader?.[2]?.x).toBeLessThan(name.x);
      if (end)
        expect([leader?.[0]?.x, leader?.[0]?.y]).toEqual([
          expect.closeTo(end.x, 1),
          expect.closeTo(end.y, 1),
        ]);
      const bold = new RegExp(`font-weight="700"[^>]*>${words}<`).test(drawing.svg);
      expect([bold, name.fill]).toEqual(words.startsWith('State') ? [true, theme.ink] : [false, theme.quiet]);
      const badge = of(drawing.rects, 'k-names').filter(({ y, h }) => near(y + h / 2, name.y - 12 * 0.3637));
      expect(badge).toHaveLength(words.startsWith('State') ? 1 : 0);
      for (const { x, w, fill } of badge) {
        expect(x + w).toBeLessThan(name.x);
        expect(fill).toBe(theme.ink);
      }
    }
    expect(
      of(drawing.texts, 'k-names')
        .filter(({ words }) => /^\d$/.test(words))
        .map(({ words }) => words)
        .sort(),
    ).toEqual(['1', '3']);
  });

  it('have a flag at each resonance: a pin, a dot, the badge, and both figures, the first bold', () => {
    const pins = of(drawing.paths, 'k-flags');
    const dots = of(drawing.circles, 'k-flags');
    expect([pins.length, dots.length]).toEqual([2, 2]);
    dots.forEach((dot, i) => {
      expect(dot).toMatchObject({ fill: theme.ink, stroke: theme.paper });
      const pin = pins[i]?.pieces[0];
      expect(pin).toHaveLength(3);
      expect([pin?.[2]?.x, pin?.[2]?.y]).toEqual([dot.x, dot.y]);
      expect(pin?.[1]?.x).toBe(dot.x);
      expect(pin?.[0]?.y).toBeLessThan(pin?.[1]?.y ?? 0);
    });
    // The flags in the order of their frequencies.
    const words = of(drawing.texts, 'k-flags').map((text) => text.words);
    expect(words).toEqual(['1', '2700 Hz', '+2.3 dB', '3', '4100 Hz', '+2.9 dB']);
    for (const text of ['2700 Hz', '4100 Hz'])
      expect(drawing.svg).toMatch(new RegExp(`font-weight="700"[^>]*>${text.replace('+', '\\+')}<`));
    expect(drawing.svg).not.toMatch(/font-weight="700"[^>]*>\+2\.3 dB</);
    expect(of(drawing.rects, 'k-flags')).toHaveLength(2);
    const backwards = of(drawn(plotOf([stateOf(3), stateOf(1)])).texts, 'k-flags').map((text) => text.words);
    expect(backwards.indexOf('2700 Hz')).toBeLessThan(backwards.indexOf('4100 Hz'));
  });

  it('of more than ten have flags with their numbers alone', () => {
    const flags = (count: number) =>
      of(
        drawn(
          plotOf(
            Array.from({ length: count }, (_, i) => stateOf(i + 1, { trace: traceOf(1000 + 300 * i, 2) })),
          ),
        ).texts,
        'k-flags',
      );
    expect(flags(10)).toHaveLength(30);
    expect(flags(11).map(({ words }) => words)).toEqual(Array.from({ length: 11 }, (_, i) => `${i + 1}`));
  });

  it('of which none is heard say so, the grid clear behind it', () => {
    const nothing = drawn(plotOf([silent(1), silent(2)], { references: [] }));
    const says = one(
      nothing.texts.filter(({ words }) => words.startsWith('No output')),
      'no output',
    );
    expect(
      of(nothing.rects, 'k-all').some(
        (rect) =>
          rect.fill === theme.paper &&
          rect.order < says.order &&
          near(rect.x + rect.w / 2, says.middle) &&
          rect.w > says.wide,
      ),
    ).toBe(true);
    expect(of(nothing.texts, 'k-axes-decibels').map(({ words }) => words)).toEqual([
      '−24',
      '−18',
      '−12',
      '−6',
      '0',
      '+6',
    ]);
  });

  it('the axis of levels holds every curve, down to where it ends within reason', () => {
    for (const [f0, q, plateau] of [
      [3000, 2, -1],
      [8000, 4, -10],
      [600, 1, 0],
      [19_000, 3, -30],
    ] as const) {
      const trace = traceOf(f0, q, plateau);
      const one = drawn(plotOf([stateOf(1, { trace })], { references: [] }));
      const figures = of(one.texts, 'k-axes-decibels').map(({ words }) => Number(words.replace('−', '-')));
      const [low, top] = [Math.min(...figures), Math.max(...figures)];
      const [least, most] = [Math.min(...trace.levels), Math.max(...trace.levels)];
      expect(top + 6).toBeGreaterThan(most);
      expect(low <= least || most - low >= 42).toBe(true);
      expect(top - low).toBeGreaterThanOrEqual(18);
      expect(top - low).toBeLessThanOrEqual(54);
    }
  });

  it('takes the room that names, flags and curves need', () => {
    const two = plotOf([stateOf(1), stateOf(2)]);
    expect(namesWidth(plotOf([stateOf(1, { name: 'A name much longer than the other' })]))).toBeGreaterThan(
      namesWidth(two),
    );
    expect(namesWidth(two)).toBeGreaterThanOrEqual(26 + textWidth('reference of all', 12));
    expect(namesWidth(plotOf([], { references: [] }))).toBe(26);
    const many = plotOf(Array.from({ length: 30 }, (_, i) => stateOf(i)));
    expect(overviewHeight(many) - overviewHeight(two)).toBe(31 * 20 - 400);
    expect(leastField(two)).toBe(620);
    const nine = plotOf(Array.from({ length: 10 }, (_, i) => stateOf(i + 1)));
    const flags = of(drawn(nine).texts, 'k-flags').filter(({ words }) => words.includes(' '));
    // The widest figures of each flag, side by side with their badges.
    const needed = nine.states.reduce((sum, _, i) => {
      const own = flags.slice(2 * i, 2 * i + 2);
      return sum + Math.max(...own.map(({ wide }) => wide)) + badgeWidth('1', 10);
    }, 0);
    expect(leastField(nine)).toBeGreaterThan(needed);
    expect(leastField(plotOf(Array.from({ length: 10 }, (_, i) => silent(i))))).toBe(620);
    expect(badgeWidth('1', 10)).toBe(16);
    expect(badgeWidth('1·2·3', 10)).toBe(textWidth('1·2·3', 10, 'bold') + 8);
  });
});

describe('a panel', () => {
  const plot = plotOf([
    stateOf(1),
    silent(2),
    stateOf(3, { references: [stateOf(1), stateOf(2)].flatMap(({ references }) => references) }),
  ]);
  const drawing = drawn(plot);
  const levels = panelLevels(plot);
  const fieldOf = (n: number) =>
    one(
      of(drawing.rects, `k-position-${n}`).filter(({ h, fill }) => h === 196 && fill === theme.paper),
      'field',
    );
  const scales = (n: number) => {
    const { x, y, w, h } = fieldOf(n);
    return axesOf({ x, y, width: w, height: h }, { from: 200, to: 20_000 }, levels);
  };

  it('each state has one, in rows from left to right, with its badge, its name, its field and its rows', () => {
    const plates = [1, 2, 3].map((n) => of(drawing.rects, `k-position-${n}`)[0]);
    plates.forEach((plate, i) => {
      const n = i + 1;
      expect(plate).toMatchObject({ fill: theme.plate, stroke: theme.inside });
      const name = textIn(drawing, `State ${n}`, `k-position-${n}`);
      const badge = textIn(drawing, `${n}`, `k-position-${n}`);
      expect(badge.middle).toBeLessThan(name.x);
      expect(
        of(drawing.rects, `k-position-${n}`).some(
          ({ fill, x, w }) => fill === theme.ink && near(x + w / 2, badge.middle),
        ),
      ).toBe(true);
      expect(of(drawing.texts, `k-position-${n}-axes-hertz`)).toHaveLength(7);
      const heading = textIn(drawing, 'resonance compared with the reference', `k-position-${n}`);
      const rule = of(drawing.paths, `k-position-${n}`).filter(
        ({ pieces }) => pieces[0]?.[0]?.x === heading.x && pieces[0][0]?.y === pieces[0][1]?.y,
      );
      expect(rule).toHaveLength(1);
      if (n === 2) return;
      const [label, words] = [textIn(drawing, `Neck ${n}`), textIn(drawing, `as designed ${n}`)];
      expect([label.y, label.x]).toEqual([words.y, heading.x]);
      expect(words.middle + words.wide / 2).toBeCloseTo((plate?.x ?? 0) + (plate?.w ?? 0) - 14, 1);
      expect(label.y).toBeGreaterThan(heading.y);
      expect(new RegExp(`font-weight="700"[^>]*>Neck ${n}<`).test(drawing.svg)).toBe(true);
    });
    const [first, second, third] = plates;
    if (!first || !second || !third) throw new Error('no panels');
    for (const [a, b] of [
      [first, second],
      [second, third],
    ] as const)
      expect(b.y > a.y || near(b.x, a.x + a.w + 14)).toBe(true);
    for (const { x, w } of [first, second, third])
      expect(x >= 24 && x + w <= (drawing.rects[0]?.w ?? 0) - 24 + 0.01).toBe(true);
    for (const { h } of [first, second, third]) expect(h).toBe(panelHeight(plot));
  });

  it('says where nothing is heard, and draws nothing then', () => {
    const says = one(
      drawing.texts.filter(({ words }) => words === 'no output'),
      'no output',
    );
    expect(says.group).toBe('k-position-2');
    const clear = of(drawing.rects, 'k-position-2').filter(({ h }) => h === 14);
    expect(clear.map(({ x, w, fill }) => [near(x + w / 2, says.middle), w > says.wide, fill])).toEqual([
      [true, true, theme.paper],
    ]);
    expect(drawing.svg).not.toContain('k-position-2-line');
  });

  it('marks the peak with a dot and its figures over all that passes beneath, the −3 dB point with a ring', () => {
    for (const n of [1, 3]) {
      const { trace } = plot.states[n - 1] ?? {};
      if (!trace?.resonance || !trace.cutoff) throw new Error('no marks');
      const { x, y } = scales(n);
      const circles = of(drawing.circles, `k-position-${n}-marks`);
      const dot = one(
        circles.filter(({ r, fill }) => r === 3.5 && fill === theme.ink),
        'dot',
      );
      const ring = one(
        circles.filter(({ r, fill }) => r === 3.5 && fill === theme.paper),
        'ring',
      );
      for (const [mark, at] of [
        [dot, trace.resonance],
        [ring, trace.cutoff],
      ] as const)
        expect([near(mark.x, x(at.frequency)), near(mark.y, y(at.level))]).toEqual([true, true]);
      expect(ring.stroke).toBe(theme.ink);
      const words = textIn(drawing, trace.resonance.words.join(', '));
      const clear = of(drawing.rects, `k-position-${n}-marks`).filter(
        (rect) => near(rect.x + rect.w / 2, words.middle) && near(rect.w, words.wide + 4),
      );
      expect(clear).toHaveLength(1);
      expect(clear[0]?.order).toBeLessThan(words.order);
      const field = fieldOf(n);
      expect(words.middle - words.wide / 2).toBeGreaterThanOrEqual(field.x);
      expect(words.middle + words.wide / 2).toBeLessThanOrEqual(field.x + field.w);
      expect(words.y).toBeLessThan(dot.y);
    }
  });

  it('keeps the figures of a peak inside the field, and leads to them where they had to rise', () => {
    for (const [f0, q, other] of [
      [230, 3, undefined],
      [18_500, 3, undefined],
      [3000, 1.2, 5],
    ] as const) {
      const trace = traceOf(f0, q);
      const references = other === undefined ? [] : [{ words: 'r', trace: traceOf(f0, other) }];
      const one_ = plotOf([stateOf(1, { trace, references })], { references: [] });
      const high = drawn(one_);
      const field = one(
        of(high.rects, 'k-position-1').filter(({ h, fill }) => h === 196 && fill === theme.paper),
        'field',
      );
      const words = textIn(high, (trace.resonance?.words ?? []).join(', '));
      expect(words.middle - words.wide / 2).toBeGreaterThanOrEqual(field.x + 1.9);
      expect(words.middle + words.wide / 2).toBeLessThanOrEqual(field.x + field.w - 1.9);
      const dot = one(
        of(high.circles, 'k-position-1-marks').filter(({ fill }) => fill === theme.ink),
        'dot',
      );
      const leaders = of(high.paths, 'k-position-1-marks').filter(
        ({ pieces }) => near(pieces[0]?.[1]?.x ?? 0, dot.x) && near(pieces[0]?.[1]?.y ?? 0, dot.y),
      );
      const middle = words.y - 13 * 0.3637;
      expect(leaders).toHaveLength(dot.y - middle > 20 ? 1 : 0);
      expect(leaders).toHaveLength(other === undefined ? 0 : 1);
      // Over every curve below the words, by as much as over its own peak, where the field is high enough.
      const curves = [
        ...of(high.paths, 'k-position-1-line'),
        ...of(high.paths, 'k-position-1-reference-1'),
      ].flatMap(({ pieces }) => pieces.flat());
      const under = curves.filter(({ x }) => Math.abs(x - words.middle) < words.wide / 2 - 3);
      expect(middle).toBeLessThanOrEqual(Math.min(...under.map(({ y }) => y)) - 12);
    }
  });

  it('names the −3 dB point and each reference, a leader to the curve, the grid clear behind', () => {
    for (const [n, names] of [
      [1, ['−3 dB at 4050 Hz', 'reference']],
      [3, ['−3 dB at 6150 Hz', 'made for 1', 'made for 2']],
    ] as const) {
      const group = `k-position-${n}-marks`;
      const notes = names.map((words) => textIn(drawing, words, group));
      const spots = notes.map((note) => {
        const y = note.y - 12 * 0.3637;
        const leader = one(
          of(drawing.paths, group).filter(
            ({ pieces }) => near(pieces[0]?.[0]?.y ?? 0, y) && near(pieces[0]?.[1]?.y ?? 0, y),
          ),
          note.words,
        ).pieces[0];
        const clear = of(drawing.rects, group).filter(
          (rect) => near(rect.y + rect.h / 2, y) && near(rect.w, note.wide + 4),
        );
        expect(
          clear.map((rect) => near(rect.x + rect.w / 2, note.middle) && rect.order < note.order),
        ).toEqual([true]);
        const [from, to] = [leader?.[0], leader?.[1]];
        if (!from || !to) throw new Error('no leader');
        // From just beside the words, towards the curve.
        const [left, right] = [note.middle - note.wide / 2, note.middle + note.wide / 2];
        expect(to.x > right ? near(from.x, right + 4) : near(from.x, left - 4)).toBe(true);
        return to;
      });
      const { x, y } = scales(n);
      const state = plot.states[n - 1];
      expect([
        near(spots[0]?.x ?? 0, x(state?.trace?.cutoff?.frequency ?? 0)),
        near(spots[0]?.y ?? 0, y(state?.trace?.cutoff?.level ?? 0)),
      ]).toEqual([true, true]);
      // A dot where each reference is named, each lower than the one before.
      const dots = of(drawing.circles, group).filter(({ r }) => r === 2);
      expect(dots.map((dot) => [dot.x, dot.y])).toEqual(spots.slice(1).map((spot) => [spot.x, spot.y]));
      expect(dots.every(({ fill }) => fill === theme.quiet)).toBe(true);
      expect(notes.map(({ fill }) => fill)).toEqual([theme.ink, ...names.slice(1).map(() => theme.quiet)]);
      spots.slice(1).forEach((spot, i) => {
        expect(spot.y).toBeGreaterThan(spots[i]?.y ?? 0);
      });
    }
  });

  it('without a −3 dB point names its references alone', () => {
    const { cutoff: _, ...trace } = traceOf(3000, 2);
    const { texts, circles } = drawn(plotOf([stateOf(1, { trace })]));
    expect(of(texts, 'k-position-1-marks').map(({ words }) => words)).toEqual([
      'reference',
      '3000 Hz, +2 dB',
    ]);
    expect(of(circles, 'k-position-1-marks').filter(({ fill }) => fill === theme.paper)).toEqual([]);
  });

  it('has its notes beyond the curves where there is no room before them', () => {
    const tight = drawn(
      plotOf([stateOf(1, { trace: traceOf(300, 2), references: [{ words: 'r', trace: traceOf(320, 2) }] })]),
    );
    const notes = of(tight.texts, 'k-position-1-marks').filter(
      ({ words }) => words.startsWith('−3') || words === 'reference',
    );
    expect(notes).toHaveLength(2);
    const curve = Math.max(
      ...of(tight.paths, 'k-position-1-line')
        .flatMap(({ pieces }) => pieces.flat())
        .filter(({ y }) => Math.abs(y - (notes[0]?.y ?? 0)) < 8)
        .map(({ x }) => x),
    );
    for (const { x } of notes) expect(x).toBeGreaterThan(curve);
    expect(new Set(notes.map(({ x }) => x)).size).toBe(1);
  });

  it('all have one range, a little over the highest peak and well below the lowest plateau', () => {
    for (const states of [
      [stateOf(1)],
      [stateOf(1), stateOf(3, { trace: traceOf(5000, 6, -12) })],
      [stateOf(2), silent(1)],
    ]) {
      const { from, to } = panelLevels(plotOf(states));
      const traces = states.flatMap(({ trace, references }) =>
        trace ? [trace, ...references.map((each) => each.trace)] : [],
      );
      const highest = Math.max(
        ...traces.map(({ resonance, plateau }) => Math.max(plateau, resonance?.level ?? plateau)),
      );
      const lowest = Math.min(...traces.map(({ plateau }) => plateau));
      expect(to - highest).toBeGreaterThanOrEqual(2.4);
      expect(to - highest).toBeLessThan(5.4);
      expect(lowest - from).toBeGreaterThanOrEqual(11);
      expect(lowest - from).toBeLessThan(17);
      expect([to % 3, from % 6]).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9)]);
    }
    expect(panelLevels(plotOf([silent(1)]))).toEqual({ from: -12, to: 9 });
    // A plateau is the highest where a curve has no peak.
    const { resonance: _, ...flat } = traceOf(3000, 0.5, 5);
    expect(panelLevels(plotOf([stateOf(1, { trace: flat, references: [] })])).to).toBe(9);
  });

  it('is as wide and as high as its words need', () => {
    const rows = (count: number) =>
      Array.from({ length: count }, () => ({ label: 'Neck', words: 'as designed' }));
    const high = (count: number) => panelHeight(plotOf([stateOf(1, { rows: rows(count) }), silent(2)]));
    expect([high(0), high(2) - high(1), high(3) - high(2)]).toEqual([high(1), 20, 20]);
    expect(panelWidth(plot)).toBe(310);
    const name = 'A name that is far too long for a panel of the usual width, as nothing stops one';
    expect(panelWidth(plotOf([stateOf(1, { name }), stateOf(2)]))).toBeGreaterThan(
      textWidth(name, 14, 'bold') + 28,
    );
    const wide = [{ label: name, words: 'as designed' }];
    expect(panelWidth(plotOf([stateOf(2), stateOf(1, { rows: wide })]))).toBe(
      Math.ceil(textWidth(name, 13, 'bold') + 16 + textWidth('as designed', 13) + 28),
    );
  });
});

it('the plot is wide enough for its title and its lines, and as many panels abreast as go', () => {
  const long =
    'A title that is longer than any sheet of paper has room for on one line, as nothing stops one from it';
  const widthOf = (plot: Plot) => drawn(plot).rects[0]?.w ?? 0;
  expect(widthOf(plotOf([stateOf(1)]))).toBe(980 + 48);
  expect(widthOf(plotOf([stateOf(1)], { title: long }))).toBe(Math.ceil(textWidth(long, 22, 'bold')) + 48);
  expect(widthOf(plotOf([stateOf(1)], { lines: ['short', long + long] }))).toBe(
    Math.ceil(textWidth(long + long, 12)) + 48,
  );
  const rows = (count: number) => {
    const { rects } = drawn(plotOf(Array.from({ length: count }, (_, i) => stateOf(i + 1))));
    const plates = rects.filter(({ group, fill }) => /^k-position-\d+$/.test(group) && fill === theme.plate);
    expect(plates).toHaveLength(count);
    expect(Math.max(...plates.map(({ y, h }) => y + h))).toBeCloseTo((rects[0]?.h ?? 0) - 24, -1);
    return new Set(plates.map(({ y }) => y)).size;
  };
  expect([rows(1), rows(3), rows(4)]).toEqual([1, 1, 2]);
});
