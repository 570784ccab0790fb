/**
 * Colour codes: each on its own wire where there is room for it, else beside it on a leader, and never over anything. Compared
 * with trying every place; wires and parts on random sheets, from a fixed seed.
 */
import { describe, expect, it } from 'vitest';
import type { Point, Rect } from '../../src/common/geometry.ts';
import { seeded } from '../../src/common/random.ts';
import { textWidth } from '../../src/common/text.ts';
import { chipWidth, drawChips } from '../../src/draw/chips.ts';
import { themes } from '../../src/draw/theme.ts';
import type { Emphasis } from '../../src/draw/wires.ts';
import { outlineOf } from '../../src/parts/index.ts';
import { rectToSheet } from '../../src/place/frame.ts';
import type { PlacedPart, PlacedWire, Placement } from '../../src/place/placement.ts';
import { makeKit } from '../analyse/kits.ts';
import { sketch } from './sketch.ts';

const theme = themes.light;
const CODES = ['BK', 'BN', 'RD', 'OG', 'YE', 'GN', 'BU', 'VT', 'GNYE'];
const random = seeded(60831);
const upTo = (most: number): number => Math.floor(random() * (most + 1));
const p = (x: number, y: number): Point => ({ x, y });

const wireAlong = (points: readonly Point[], i: number, colour?: string): PlacedWire => ({
  joint: {
    kind: 'wire',
    from: { part: 'a', lug: `${i}` },
    to: { part: 'b', lug: `${i}` },
    index: i,
    ...(colour === undefined ? {} : { colour }),
  },
  own: [],
  points,
});

const [RESISTOR, POT] = makeKit({
  parts: { pad: { kind: 'resistor', value: '470k' }, volume: { kind: 'pot', value: '250k' } },
  joints: [],
}).parts;

function partAt(which: 'pad' | 'volume', x: number, y: number): PlacedPart {
  const part = which === 'pad' ? RESISTOR : POT;
  if (!part) throw new Error('no part');
  const outline = outlineOf(part);
  return {
    part,
    outline,
    frame: { x, y, width: outline.width, height: outline.height, turn: 0, mirror: false },
  };
}

interface Chip {
  readonly rect: Rect;
  readonly leader?: readonly Point[];
}
/** Chips by their codes. */
function chipsOf(
  placement: Placement,
  emphasis: readonly Emphasis[] = [],
  highlighted: readonly string[] = [],
) {
  const { rects, texts, paths } = sketch((pen) =>
    drawChips(pen, placement, { theme, highlighted: new Set(highlighted) }, emphasis),
  );
  expect(texts).toHaveLength(rects.length);
  const found = new Map<string, Chip>();
  texts.forEach((text, i) => {
    const rect = rects[i];
    if (!rect) throw new Error('no chip');
    // The code stands in the middle of its chip, and the leader was drawn before the chip that it ends under.
    expect([text.middle, text.y - 12 * 0.3637]).toEqual([
      rect.x + rect.w / 2,
      expect.closeTo(rect.y + rect.h / 2, 1),
    ]);
    expect(rect.w).toBe(chipWidth(text.words));
    const leader = paths.find(({ order }) => order === rect.order - 1);
    if (leader) expect(leader).toMatchObject({ stroke: theme.quiet, width: 1.4 });
    if (leader) expect(leader.dash).toBe('');
    found.set(text.words, {
      rect: { x: rect.x, y: rect.y, width: rect.w, height: rect.h },
      ...(leader?.pieces[0] ? { leader: leader.pieces[0] } : {}),
    });
  });
  expect(paths).toHaveLength([...found.values()].filter(({ leader }) => leader).length);
  return found;
}

const over = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
const about = ({ x, y }: Point, width: number, height: number): Rect => ({
  x: x - width / 2,
  y: y - height / 2,
  width,
  height,
});
const mid = ({ x, y, width, height }: Rect): Point => p(x + width / 2, y + height / 2);

interface Straight {
  readonly a: Point;
  readonly b: Point;
  readonly length: number;
}
const straights = ({ points }: PlacedWire): readonly Straight[] =>
  points.slice(1).map((b, i) => {
    const a = points[i] ?? b;
    return { a, b, length: Math.abs(a.x - b.x) + Math.abs(a.y - b.y) };
  });
/** The widest line is nine units wide. */
const inkOf = (wire: PlacedWire): readonly Rect[] =>
  straights(wire).map(({ a, b }) =>
    about(p((a.x + b.x) / 2, (a.y + b.y) / 2), Math.abs(a.x - b.x) + 9, Math.abs(a.y - b.y) + 9),
  );

/** What parts cover: body, what is closed to wires, tags, words. */
const coversOf = ({ parts }: Placement): readonly Rect[] =>
  parts.flatMap(({ frame, outline }) => [
    ...[outline.body, ...outline.blocked, ...outline.lugs.map(({ tag }) => tag)].map((rect) =>
      rectToSheet(frame, rect),
    ),
    ...outline.labels.map(({ text, centre, size, weight }) =>
      about(p(frame.x + centre.x, frame.y + centre.y), textWidth(text, size, weight), size),
    ),
  ]);

function anySheet(): Placement {
  const [width, height] = [360 + 40 * upTo(4), 300 + 40 * upTo(3)];
  const wires = CODES.map((code, i) => {
    const points = [p(20 + 16 * upTo(20), 20 + 16 * upTo(16))];
    for (let n = 1 + upTo(2), level = random() < 0.5; n > 0; n--, level = !level) {
      const last = points.at(-1) ?? p(0, 0);
      const most = level ? width : height;
      const along = level ? last.x : last.y;
      const to = Math.min(most - 20, Math.max(20, along + 16 * (1 + upTo(12)) * (random() < 0.5 ? 1 : -1)));
      points.push(level ? p(to, last.y) : p(last.x, to));
    }
    return wireAlong(points, i, i % 4 === 3 ? undefined : code);
  });
  return {
    width,
    height,
    wires,
    parts: [partAt('pad', 16 * upTo(12), 16 * upTo(10)), partAt('volume', 16 * upTo(12), 16 * upTo(8))],
  };
}

const ROOMS = [
  { ends: 14, clear: 2, apart: 18 },
  { ends: 8, clear: 1, apart: 12 },
];
const SHEETS = Array.from({ length: 28 }, anySheet);

describe('a colour code', () => {
  it('is on the longest stretch with room, as near its middle as can be, and off everything else', () => {
    let [on, aside, overWires] = [0, 0, 0];
    for (const sheet of SHEETS) {
      const found = chipsOf(sheet);
      const before: Rect[] = [];
      for (const wire of sheet.wires) {
        const code = wire.joint.colour;
        if (code === undefined) continue;
        const chip = found.get(code);
        const width = chipWidth(code);
        const others = sheet.wires.filter((one) => one !== wire).flatMap(inkOf);
        const outside = (rect: Rect): boolean =>
          rect.y < 0 ||
          rect.y + rect.height > sheet.height ||
          rect.x < -16 ||
          rect.x + rect.width > sheet.width + 16;
        const taken = [...coversOf(sheet), ...before];
        const places = ROOMS.flatMap(({ ends, clear, apart }, room) =>
          straights(wire).flatMap(({ a, b, length }, order) => {
            const level = a.y === b.y;
            const size = level ? width : 16;
            const offs = Array.from(
              { length: 1 + Math.floor((length / 2 - size / 2 - ends) / 4) },
              (_, k) => 4 * k,
            );
            return offs.flatMap((off) =>
              [-1, 1].flatMap((side) => {
                const share = 0.5 + (side * off) / length;
                const at = p(Math.round(a.x + (b.x - a.x) * share), Math.round(a.y + (b.y - a.y) * share));
                const wide = about(at, width + 2 * clear, 16 + 2 * clear);
                const along = level ? about(at, width + 2 * apart, 2) : about(at, 2, 16 + 2 * apart);
                const free =
                  !others.some((ink) => over(ink, wide) || over(ink, along)) &&
                  !taken.some((one) => over(one, wide)) &&
                  !outside(wide);
                return free ? [{ room, length, order, off, side, at }] : [];
              }),
            );
          }),
        );
        const [best] = places.sort(
          (a, b) =>
            a.room - b.room || b.length - a.length || a.order - b.order || a.off - b.off || a.side - b.side,
        );
        if (best) {
          expect(chip?.leader, code).toBeUndefined();
          expect(chip?.rect).toEqual(about(best.at, width, 16));
          on++;
        } else {
          const led = checkAside(sheet, wire, code, chip, taken, outside);
          if (led) aside++;
          if (led === 'over wires') overWires++;
        }
        if (chip) before.push(chip.rect);
      }
    }
    expect([on > 40, aside > 12, overWires > 1]).toEqual([true, true, true]);
  });

  it('of a wire without one is not drawn', () => {
    const wires = [wireAlong([p(20, 50), p(300, 50)], 0)];
    expect(chipsOf({ width: 320, height: 100, wires, parts: [] }).size).toBe(0);
  });

  it('is not drawn of a wire that is not there, and the others stay where they are', () => {
    for (const sheet of SHEETS.slice(0, 5)) {
      const [all, some] = [chipsOf(sheet), chipsOf(sheet, ['absent', 'new', 'pale'])];
      expect(some.has('BK')).toBe(false);
      all.delete('BK');
      expect(some).toEqual(all);
    }
  });

  it('keeps off the pale box of a part that is highlighted', () => {
    const wires = [wireAlong([p(16, 76), p(176, 76)], 0, 'RD')];
    const placement = { width: 300, height: 200, wires, parts: [partAt('pad', 48, 0)] };
    const [plain, boxed] = [chipsOf(placement).get('RD'), chipsOf(placement, [], ['pad']).get('RD')];
    // The part ends at 64, its pale box at 68.
    expect(mid(plain?.rect ?? about(p(0, 0), 0, 0)).y).toBe(76);
    expect(boxed?.rect).not.toEqual(plain?.rect);
  });

  it('has no place where none is free', () => {
    const wires = [wireAlong([p(10, 8), p(30, 8)], 0, 'RD')];
    expect(chipsOf({ width: 40, height: 16, wires, parts: [] }).size).toBe(0);
  });
});

/** Points of a line a unit or so apart, its ends left out. */
const pointsOn = (a: Point, b: Point, step: number): readonly Point[] => {
  const count = Math.floor(Math.hypot(b.x - a.x, b.y - a.y) / step);
  return Array.from({ length: Math.max(0, count - 1) }, (_, i) =>
    p(Math.round(a.x + ((b.x - a.x) * (i + 1)) / count), Math.round(a.y + ((b.y - a.y) * (i + 1)) / count)),
  );
};

/** Where a chip may stand from its wire, 20 to 112 units off on a raster of 8, the nearest first. */
const OFFS = Array.from({ length: 29 * 29 }, (_, i) => {
  const [dx, dy] = [8 * (i % 29) - 112, 8 * Math.floor(i / 29) - 112];
  return { dx, dy, reach: Math.hypot(dx, dy) };
})
  .filter(({ reach }) => reach >= 20 && reach <= 112)
  .sort((a, b) => a.reach - b.reach);

/**
 * A chip beside its wire: the nearest place that is free, its leader over no other wire if that can be, and over no part; none
 * only where there is no such place. Answers how it is led.
 */
function checkAside(
  sheet: Placement,
  wire: PlacedWire,
  code: string,
  chip: Chip | undefined,
  taken: readonly Rect[],
  outside: (rect: Rect) => boolean,
): 'clear' | 'over wires' | undefined {
  const others = sheet.wires.filter((one) => one !== wire).flatMap(inkOf);
  const all = [...others, ...inkOf(wire)];
  const width = chipWidth(code);
  const starts = straights(wire)
    .flatMap(({ a, b }) => pointsOn(a, b, 8))
    .filter((at) => !others.some((ink) => over(ink, about(at, 2, 2))));
  const free = (at: Point): boolean => {
    const wide = about(at, width + 4, 20);
    return !outside(wide) && !all.some((ink) => over(ink, wide)) && !taken.some((one) => over(one, wide));
  };
  const leads = (a: Point, b: Point): 'clear' | 'over wires' | 'no' => {
    const spots = pointsOn(a, b, 3).map((at) => about(at, 2, 2));
    if (spots.some((spot) => outside(spot) || taken.some((one) => over(one, spot)))) return 'no';
    return spots.some((spot) => others.some((ink) => over(ink, spot))) ? 'over wires' : 'clear';
  };
  const nearest = { clear: Number.POSITIVE_INFINITY, 'over wires': Number.POSITIVE_INFINITY };
  for (const { reach, dx, dy } of OFFS) {
    if (Number.isFinite(nearest.clear)) break;
    for (const start of starts) {
      const there = p(start.x + dx, start.y + dy);
      if (!free(there)) continue;
      const led = leads(start, there);
      if (led !== 'no') nearest[led] = Math.min(nearest[led], reach);
    }
  }
  const wanted = Number.isFinite(nearest.clear)
    ? 'clear'
    : Number.isFinite(nearest['over wires'])
      ? 'over wires'
      : undefined;
  if (!wanted || !chip) {
    expect([code, chip]).toEqual([code, wanted ? 'a chip' : undefined]);
    return undefined;
  }
  const [from, to] = [chip.leader?.[0], chip.leader?.[1]];
  if (!from || !to) throw new Error('no leader');
  expect(to).toEqual(mid(chip.rect));
  expect(chip.rect.height).toBe(16);
  expect(starts).toContainEqual(from);
  expect([free(to), leads(from, to)]).toEqual([true, wanted]);
  expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeCloseTo(nearest[wanted], 6);
  return wanted;
}

describe('a long wire', () => {
  const lettersOn = (points: readonly Point[]): readonly number[] => {
    const placement = { width: 2000, height: 400, parts: [], wires: [wireAlong(points, 0, 'BU')] };
    const { rects } = sketch((pen) => drawChips(pen, placement, { theme, highlighted: new Set() }));
    return rects.map(({ x, w }) => x + w / 2).sort((a, b) => a - b);
  };
  it('has its code near both ends from 560 units on, a shorter one in its middle', () => {
    const [near, far, ...more] = lettersOn([p(100, 200), p(661, 200)]);
    expect(more).toEqual([]);
    expect((near ?? 0) - 100).toBeLessThan(40);
    expect(661 - (far ?? 0)).toBeLessThan(40);
    expect(lettersOn([p(100, 200), p(660, 200)])).toEqual([380]);
  });
  it('has one where its ends lie side by side', () => {
    expect(lettersOn([p(100, 100), p(700, 100), p(700, 300), p(100, 300)])).toHaveLength(1);
    expect(lettersOn([p(100, 100), p(700, 100), p(700, 300), p(400, 300)])).toHaveLength(2);
  });
});
