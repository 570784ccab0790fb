/**
 * The print theme from a copier, which leaves black and white alone: joints are still told apart by their form, and nothing that is
 * framed, hatched, marked or measured is lost. Read from the dots of the picture; only where to look comes from the drawing.
 */
import { describe, expect, it } from 'vitest';
import { linesOf } from '../../src/annotate/lines.ts';
import { findPage } from '../../src/files/layouts.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { drawn, drawnSheets, sample, samples } from '../truth/draw.ts';
import type { Drawing, Point, Wire } from '../truth/reader.ts';
import { type Copy, copied, runsBetween } from './copier.ts';

const page = findPage('a4');
if (!page) throw new Error('no page');
const ASPECT = { theme: 'print', page } as const;

/** What a line is, by its form alone; the key's own words for it are in `WORDS`. */
type Form = 'signal' | 'ground' | 'leg' | 'sleeved' | 'jumper' | 'bend' | 'braid' | 'unclear';

/** The same copy, asked in units of which one is so many of the sheet's. */
const inUnits = (copy: Copy, unit: number): Copy => ({
  black: (x, y) => copy.black(x * unit, y * unit),
  scale: copy.scale * unit,
});

/**
 * Across a line, every unit along it: how many black stretches, and from the first's edge to the last's.
 *
 * @param others where other lines end; beside an end, what is seen is that line's too
 */
function formOf(copy: Copy, a: Point, b: Point, inset: number, others: readonly Point[] = []): Form {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const cuts: { readonly count: number; readonly wide: number; readonly ink: number }[] = [];
  const beside = others
    .map(({ x, y }) => ({
      along: (x - a.x) * ux + (y - a.y) * uy,
      off: Math.abs((x - a.x) * uy - (y - a.y) * ux),
    }))
    .filter(({ off }) => off < 8)
    .map(({ along }) => along);
  for (let s = inset; s <= length - inset; s += 0.5) {
    if (beside.some((along) => Math.abs(along - s) < 6)) continue;
    const [x, y] = [a.x + ux * s, a.y + uy * s];
    const reach = 5.9;
    const runs = runsBetween(
      copy,
      { x: x - uy * reach, y: y + ux * reach },
      { x: x + uy * reach, y: y - ux * reach },
    );
    const [first, last] = [runs[0], runs.at(-1)];
    cuts.push({
      count: runs.length,
      wide: first && last ? last[1] - first[0] : 0,
      ink: runs.reduce((sum, [from, to]) => sum + to - from, 0),
    });
  }
  const share = (is: (cut: (typeof cuts)[number]) => boolean): number => cuts.filter(is).length / cuts.length;
  const wide = [...cuts].sort((p, q) => p.wide - q.wide)[Math.floor(cuts.length / 2)]?.wide ?? 0;
  if (share(({ count }) => count === 3) > 0.8) return 'sleeved';
  if (share(({ count }) => count === 2) > 0.8) return wide > 9 ? 'bend' : 'ground';
  if (share(({ count }) => count === 1) > 0.9) return wide > 2.6 ? 'signal' : 'leg';
  if (share(({ count }) => count === 1 || count === 2) < 0.9) return 'unclear';
  // Now closed, now open: how often tells a weave from links.
  const turns = cuts.slice(1).filter(({ count }, i) => count !== cuts[i]?.count).length;
  const period = (2 * cuts.length * 0.5) / Math.max(1, turns);
  return period < 6.5 ? 'braid' : 'jumper';
}

/** The longest straight stretch of a wire that no letters stand on. */
function stretchOf({ pieces }: Wire, { rects }: Drawing): readonly [Point, Point] | undefined {
  const chips = rects.filter(({ group }) => group.endsWith('-colours'));
  return pieces
    .flatMap((piece) => piece.slice(1).map((b, i): readonly [Point, Point] => [piece[i] ?? b, b]))
    .filter(([a, b]) => Math.hypot(b.x - a.x, b.y - a.y) >= 24)
    .filter(([a, b]) =>
      chips.every(
        ({ x, y, w, h }) =>
          Math.max(a.x, b.x) < x ||
          Math.min(a.x, b.x) > x + w ||
          Math.max(a.y, b.y) < y ||
          Math.min(a.y, b.y) > y + h,
      ),
    )
    .sort(([a, b], [c, d]) => Math.hypot(d.x - c.x, d.y - c.y) - Math.hypot(b.x - a.x, b.y - a.y))[0];
}

/** Share of a straight edge that is black. */
const edgeOn =
  (copy: Copy) =>
  (from: Point, to: Point): number => {
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const [nx, ny] = [(to.y - from.y) / length, (from.x - to.x) / length];
    // A line a dot wide may lie in either of the rows of dots that it touches.
    return Math.max(
      ...[-0.6, 0, 0.6].map(
        (off) =>
          runsBetween(
            copy,
            { x: from.x + nx * off, y: from.y + ny * off },
            { x: to.x + nx * off, y: to.y + ny * off },
          ).reduce((sum, [a, b]) => sum + b - a, 0) / length,
      ),
    );
  };

/** Frames of a sheet's cards. */
const framesOf = ({ cards, rects }: Drawing) =>
  cards.map((card) => {
    const frame = rects.find((rect) => rect.group === card.texts[0]?.group && rect.h > 60);
    if (!frame) throw new Error('no frame');
    return { card, frame };
  });

const met = new Map<string, number>();

describe.each(samples)('%s on A4, copied', (name) => {
  it('each joint has the form of its kind', async () => {
    const kit = sample(name);
    const drawing = await drawn(kit, ASPECT);
    const copy = await copied(drawing.svg);
    const lines = linesOf(buildCircuit(kit));
    for (const wire of drawing.wires) {
      const { look = 'none' } = lines[wire.joint - 1] ?? {};
      const stretch = stretchOf(wire, drawing);
      if (!stretch) continue;
      const others = drawing.wires
        .filter((other) => other !== wire)
        .flatMap(({ pieces }) => pieces.flatMap((piece) => [...piece.slice(0, 1), ...piece.slice(-1)]));
      expect(
        formOf(copy, ...stretch, 5, others),
        `${look}, joint ${wire.joint}: ${wire.ends.join(' > ')}`,
      ).toBe(look);
      met.set(look, (met.get(look) ?? 0) + 1);
    }
  });

  it('the key’s samples have the form that their words say', async () => {
    const drawing = await drawn(sample(name), ASPECT);
    const copy = await copied(drawing.svg);
    const WORDS: Readonly<Record<string, Form>> = {
      signal: 'signal',
      'ground (double line)': 'ground',
      'bare component leg': 'leg',
      'sleeved leg': 'sleeved',
      'bare jumper': 'jumper',
      'lug bent back and soldered to the case': 'bend',
      'bare shield braid: keep clear of signal lugs': 'braid',
    };
    const group = drawing.paths.filter((path) => path.group.endsWith('-key'));
    let seen = 0;
    for (const text of drawing.texts.filter((one) => one.group.endsWith('-key'))) {
      const form = WORDS[text.words];
      if (form === undefined) continue;
      const line = group.find(({ pieces }) => {
        const end = pieces[0]?.at(-1);
        return end && Math.abs(end.y - (text.y - 4)) < 3 && Math.abs(text.x - end.x - 8) < 1;
      });
      const [a, b] = line?.pieces[0] ?? [];
      if (!line || !a || !b) throw new Error(text.words);
      expect(formOf(inUnits(copy, line.scale), a, b, 1), text.words).toBe(form);
      seen++;
    }
    expect(seen).toBeGreaterThan(3);
  });

  it('frames and bars of the cards are there', async () => {
    let seen = 0;
    for (const drawing of await drawnSheets(sample(name), ASPECT)) {
      const sheet = await copied(drawing.svg);
      for (const { card, frame } of framesOf(drawing)) {
        const { x, y, w, h } = frame;
        const copy = inUnits(sheet, frame.scale);
        const edge = edgeOn(copy);
        expect(edge({ x: x + 14, y }, { x: x + w - 14, y })).toBeGreaterThan(0.95);
        expect(edge({ x, y: y + 14 }, { x, y: y + h - 14 })).toBeGreaterThan(0.95);
        // A bar is filled as far as it says, and from there hollow.
        for (const [i, row] of card.rows.entries()) {
          const bars = drawing.rects.filter((rect) => rect.group === frame.group && rect.h === 7);
          const [whole] = [...new Set(bars.map((bar) => bar.y))]
            .map((at) => bars.find((bar) => bar.y === at))
            .slice(i);
          if (!whole) throw new Error('no bar');
          const middle = whole.y + 3.5;
          const filled = { x: whole.x + 4, y: middle };
          const end = whole.x + row.bar * whole.w;
          expect(edge(filled, { x: end - 4, y: middle })).toBeGreaterThan(0.95);
          if (end + 12 < whole.x + whole.w / 2)
            expect(
              runsBetween(copy, { x: end + 4, y: middle }, { x: whole.x + whole.w / 2 - 4, y: middle }),
            ).toEqual([]);
          expect(
            edge({ x: whole.x + 6, y: whole.y }, { x: whole.x + whole.w - 6, y: whole.y }),
          ).toBeGreaterThan(0.95);
        }
        seen++;
      }
    }
    expect(seen).toBeGreaterThan(2);
  });

  it('tracks, tags and bands are there', async () => {
    const drawing = await drawn(sample(name), ASPECT);
    const copy = await copied(drawing.svg);
    const edge = edgeOn(copy);
    for (const part of drawing.parts) {
      // A pot's track: many short strokes round the middle, across from its lugs.
      const two = part.tags.find((tag) => tag.name === '2')?.box;
      if (part.pot && two) {
        const { x, y, r } = part.pot;
        const across = Math.atan2(y - (two.y + two.h / 2), x - (two.x + two.w / 2));
        const points = Array.from({ length: 241 }, (_, i) => across + ((i - 120) * Math.PI) / 720);
        const seen = points.map((angle) =>
          copy.black(x + (r - 15) * Math.cos(angle), y + (r - 15) * Math.sin(angle)),
        );
        expect(seen.slice(1).filter((now, i) => now !== seen[i]).length, part.name).toBeGreaterThan(12);
      }
      // A lug's tag is framed; the letters of a colour are not, so that the two are told apart.
      for (const { name: lug, box } of part.tags) {
        const sides = [
          edge({ x: box.x + 6, y: box.y }, { x: box.x + box.w - 6, y: box.y }),
          edge({ x: box.x, y: box.y + 6 }, { x: box.x, y: box.y + box.h - 6 }),
          edge({ x: box.x + box.w, y: box.y + 6 }, { x: box.x + box.w, y: box.y + box.h - 6 }),
        ];
        expect(sides.filter((side) => side > 0.35).length, `${part.name}.${lug}`).toBeGreaterThanOrEqual(2);
      }
      // Bands: each is two strokes across the body.
      const bands = part.rects.filter(({ w, h }) => w === 5 && h === 18);
      const body = part.rects.find(({ w, h }) => w === 58 && h === 20);
      if (bands.length > 0 && body) {
        const runs = runsBetween(
          copy,
          { x: body.x + 4, y: body.y + 4 },
          { x: body.x + body.w - 4, y: body.y + 4 },
        );
        expect(runs.length, part.name).toBe(2 * bands.length);
      }
    }
    for (const chip of drawing.rects.filter(({ group }) => group.endsWith('-colours')))
      for (const y of [chip.y + 0.7, chip.y + chip.h - 0.7])
        expect(edge({ x: chip.x + 4, y }, { x: chip.x + chip.w - 4, y })).toBeLessThan(0.6);
  });
});

it('every kind of joint was met', () => {
  expect([...met.keys()].sort()).toEqual(['bend', 'braid', 'ground', 'jumper', 'leg', 'signal', 'sleeved']);
});

it('a copy of the light theme does lose what grey told, so that the tests above can fail', async () => {
  const drawing = (await drawnSheets(sample('kestrel-hss'), { page })).find(({ cards }) => cards.length > 0);
  if (!drawing) throw new Error('no cards');
  const [{ frame } = { frame: undefined }] = framesOf(drawing);
  if (!frame) throw new Error('no frame');
  const copy = inUnits(await copied(drawing.svg), frame.scale);
  expect(edgeOn(copy)({ x: frame.x + 14, y: frame.y }, { x: frame.x + frame.w - 14, y: frame.y })).toBe(0);
});

it('new joints of a step keep their dotted lines along both sides', async () => {
  const kit = sample('osprey-hsh');
  for (const step of [1, 3, 4]) {
    const drawing = await drawn(kit, { ...ASPECT, step });
    const copy = await copied(drawing.svg);
    expect(drawing.marked.length).toBeGreaterThan(0);
    for (const { pieces } of drawing.marked) {
      const [a, b] =
        [...(pieces[0] ?? [])]
          .slice(1)
          .map((to, i) => [pieces[0]?.[i] ?? to, to] as const)
          .sort(([p, q], [r, s]) => Math.hypot(s.x - r.x, s.y - r.y) - Math.hypot(q.x - p.x, q.y - p.y))[0] ??
        [];
      if (!a || !b || Math.hypot(b.x - a.x, b.y - a.y) < 60) continue;
      const length = Math.hypot(b.x - a.x, b.y - a.y);
      const [nx, ny] = [(b.y - a.y) / length, -(b.x - a.x) / length];
      const dots = [-7.3, 7.3].map(
        (off) =>
          runsBetween(
            copy,
            { x: a.x + nx * off, y: a.y + ny * off },
            { x: b.x + nx * off, y: b.y + ny * off },
          ).length,
      );
      expect(Math.max(...dots) / length, `${step}`).toBeGreaterThan(0.08);
    }
  }
});
