/**
 * The probes of every test that a leaflet has, of all samples and all circuits that ship: neither a probe nor its flag lies on a lug, on a word or on the other probe, and no
 * flag on a wire of the lug that is touched. Read back by the reader that knows nothing of what drew them.
 */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { jackTests, stepTests } from '../../../src/annotate/step-tests.ts';
import { endAt } from '../../../src/circuit/circuit.ts';
import { nth } from '../../../src/common/must.ts';
import { probeFigures } from '../../../src/draw/leaflet/probes.ts';
import { planOf } from '../../../src/soldering/plan.ts';
import { samples } from '../../truth/draw.ts';
import { type Box, inBox, type Point, read } from '../../truth/reader.ts';
import { placed } from './kits.ts';

/** What a leaflet gives such a picture on A4 and on A5, millimetres. */
const ROOMS = [
  { width: 78, height: 64 },
  { width: 54, height: 64 },
];
/** Millimetres of a drawing unit below which a test's picture may be smaller than the others. */
const LEAST = 0.122;
/** Radius of a lug's tag at its corners, by which tags are known in these figures. */
const TAG = 5;

const grown = ({ x, y, w, h }: Box, by: number): Box => ({
  x: x - by,
  y: y - by,
  w: w + 2 * by,
  h: h + 2 * by,
});
const meet = (a: Box, b: Box): boolean =>
  a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
const between = (a: Point, b: Point): readonly Point[] =>
  Array.from({ length: 61 }, (_, i) => ({
    x: a.x + ((b.x - a.x) * i) / 60,
    y: a.y + ((b.y - a.y) * i) / 60,
  }));

/** What is hidden in a figure, in words. */
function hiddenIn(svg: string): readonly string[] {
  const drawing = read(svg);
  const ofProbe = (n: number) => {
    const mine = <T extends { group: string }>(marks: readonly T[]): readonly T[] =>
      marks.filter(({ group }) => group.endsWith(`-probe-${n}`));
    const [flag] = mine(drawing.rects);
    const [tip] = mine(drawing.circles);
    const lines = mine(drawing.paths);
    if (!flag || !tip || lines.length === 0) throw new Error('no probe');
    return { n, flag, tip, lines };
  };
  const probes = [ofProbe(1), ofProbe(2)];
  const others = <T extends { group: string }>(marks: readonly T[]): readonly T[] =>
    marks.filter(({ group }) => !/-probe-\d$/.test(group));
  const tags = others(drawing.rects).filter(({ corner }) => corner === TAG);
  const words = others(drawing.texts).map(({ words: text, middle, wide, y, size }) => ({
    text,
    box: { x: middle - wide / 2, y: y - 0.72 * size, w: wide, h: 0.72 * size },
  }));
  const wires = others(drawing.paths).filter(({ group }) => /-joint-\d+$/.test(group));
  return probes.flatMap(({ n, flag, tip, lines }) => {
    const other = probes.find((one) => one.n !== n)?.flag;
    const points = lines.flatMap(({ pieces }) => pieces.flatMap(([a, b]) => (a && b ? between(a, b) : [])));
    const touched = tags.find((tag) => inBox(tag, tip, 0.6));
    // The needle's point stands on the edge of its own lug.
    const beyond = points.filter((p) => Math.hypot(p.x - tip.x, p.y - tip.y) > 4);
    const own = touched
      ? wires.filter(({ pieces }) =>
          pieces.some((piece) => [piece[0], piece.at(-1)].some((p) => p && inBox(grown(touched, 1.5), p))),
        )
      : [];
    return [
      ...words.flatMap(({ text, box }) =>
        meet(box, flag) || beyond.some((p) => inBox(box, p)) ? [`probe ${n} on “${text}”`] : [],
      ),
      ...tags.flatMap((tag) =>
        meet(tag, flag) || beyond.some((p) => inBox(tag, p)) ? [`probe ${n} on a lug`] : [],
      ),
      ...own.flatMap(({ pieces }) =>
        pieces.some((piece) =>
          piece.slice(1).some((b, i) => between(piece[i] ?? b, b).some((p) => inBox(flag, p))),
        )
          ? [`flag ${n} on a wire of its lug`]
          : [],
      ),
      ...(other && (meet(flag, other) || points.some((p) => inBox(other, p)))
        ? [`probe ${n} on the other`]
        : []),
    ];
  });
}

const kits = [
  ...samples,
  ...readdirSync('samples/circuits')
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => `circuit/${name.slice(0, -5)}`),
];

describe.each(kits.map((name, i) => [name, nth(ROOMS, i % ROOMS.length)] as const))('%s', (name, room) => {
  it('has every probe clear of lugs, words and wires of its own lug', async () => {
    const prepared = await placed(name);
    const { circuit } = prepared;
    const { placed: when, steps } = planOf(circuit);
    const { before, finished } = jackTests(circuit);
    const pairs = [
      ...stepTests(circuit).flatMap(({ step, tests }) => tests.map(({ from, to }) => ({ step, from, to }))),
      ...[...before.slice(0, 1), ...finished.slice(0, 1)].map(({ from, to }) => ({
        step: steps.length,
        from,
        to,
      })),
    ];
    expect(pairs.length).toBeGreaterThan(1);
    const told = (i: number): string => `${pairs[i]?.from} ${pairs[i]?.to}`;
    // The same two lugs again are seen in much the same picture.
    const anew = pairs.filter((_, i) => pairs.findIndex((_, k) => told(k) === told(i)) === i);
    const probings = anew.map(({ step, from, to }, i) => ({
      id: `test-${i}`,
      alt: 'Probes',
      joints: when.flatMap((one, joint) => (one <= step ? [joint] : [])),
      spots: [
        { ...endAt(from), words: 'red' },
        { ...endAt(to), words: 'black' },
      ] as const,
    }));
    const figures = probeFigures(prepared, probings, room);
    const seen = figures.flatMap(({ svg, smallest, width, height }, i) =>
      [
        ...hiddenIn(svg),
        ...(smallest < 6.98 ? ['type under 7 points'] : []),
        ...(width < 20 ? ['narrower than 20 mm'] : []),
        ...(width > room.width || height > room.height ? ['larger than its room'] : []),
      ].map((fault) => `step ${anew[i]?.step}, ${anew[i]?.from} and ${anew[i]?.to}: ${fault}`),
    );
    expect(seen).toEqual([]);
    // A part is as large in each of them: sizes are cut to hundredths of a millimetre. Alone a part that is too large for that is smaller.
    const scales = figures.map(({ svg, width }) => width / Number(/viewBox="\S+ \S+ (\S+)/.exec(svg)?.[1]));
    const common = Math.max(...scales);
    expect(common).toBeGreaterThan(LEAST);
    for (const scale of scales)
      expect([common, scale]).toEqual([
        common,
        expect.toSatisfy((n: number) => n < LEAST || common / n < 1.002),
      ]);
    if (samples.includes(name)) expect(common / Math.min(...scales)).toBeLessThan(1.002);
  });
});
