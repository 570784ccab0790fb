/** Figures of soldering steps, read back by the reader that knows nothing of what drew them. */
import { describe, expect, it } from 'vitest';
import type { Prepared } from '../../../src/draw/compose.ts';
import type { FigureStep } from '../../../src/draw/leaflet/step.ts';
import { stepFigures } from '../../../src/draw/leaflet/step-figure.ts';
import { samples } from '../../truth/draw.ts';
import { type Box, inBox, read } from '../../truth/reader.ts';
import { copied, runsBetween } from '../copier.ts';
import { figureSteps, placed } from './kits.ts';

/** Paper less its margins, millimetres. */
const WIDE = { width: 277, height: 190 };
const ROOMS = {
  'A4, upright': { width: 180, height: 240 },
  'A5, upright': { width: 128, height: 180 },
  'A4, aside': WIDE,
};
const altOf = ({ number }: FigureStep): string => `What is soldered in step ${number}`;
const figures = (prepared: Prepared, box = WIDE, theme: 'light' | 'print' = 'light') =>
  stepFigures(prepared, figureSteps(prepared.circuit), box, { altOf, theme }).figures;

const near = (a: { x: number; y: number }, b: { x: number; y: number }): number =>
  Math.hypot(a.x - b.x, a.y - b.y);
const viewBox = (svg: string): readonly number[] =>
  (/viewBox="([^"]*)"/.exec(svg)?.[1] ?? '').split(' ').map(Number);

describe.each(samples)('%s', (name) => {
  it('shows each joint as new in its own step, as made in later ones, and not at all before', async () => {
    const prepared = await placed(name);
    const { circuit } = prepared;
    const steps = figureSteps(circuit);
    const done = new Set<number>();
    for (const [i, { svg }] of figures(prepared).entries()) {
      const drawing = read(svg);
      const now = steps[i]?.details.map(({ index }) => index) ?? [];
      const marked = new Set(drawing.marked.map(({ pieces }) => JSON.stringify(pieces)));
      const fresh = drawing.wires.filter(({ pieces }) => marked.has(JSON.stringify(pieces)));
      expect(fresh.map(({ joint }) => joint - 1).sort()).toEqual([...now].sort());
      expect(
        drawing.wires
          .filter((wire) => !fresh.includes(wire))
          .map(({ joint }) => joint - 1)
          .sort(),
      ).toEqual([...done].sort());
      for (const index of now) done.add(index);
    }
    expect(done.size).toBe(circuit.joints.length);
  });

  it('has every part at the same place and of the same size in all steps', async () => {
    const all = figures(await placed(name)).map(({ svg, width, height }) => ({
      svg,
      width,
      height,
      drawing: read(svg),
    }));
    expect(new Set(all.map(({ svg, width, height }) => `${viewBox(svg)} ${width} ${height}`)).size).toBe(1);
    const places = new Map<string, Set<string>>();
    for (const { drawing } of all)
      for (const part of drawing.parts) {
        const middles = part.rects
          .filter(({ w, h }) => w > 40 && h > 15)
          .map(({ x, y, w, h }) => [x, y, w, h]);
        const at = JSON.stringify([middles.slice(0, 1), part.pot?.x, part.pot?.y]);
        places.set(part.name, (places.get(part.name) ?? new Set()).add(at));
      }
    expect([...places].filter(([, at]) => at.size !== 1)).toEqual([]);
    expect(places.size).toBe((await placed(name)).circuit.kit.parts.length);
  });

  it('numbers both ends of each new joint as its line, filled where it is soldered now, open where it is hooked', async () => {
    const prepared = await placed(name);
    const steps = figureSteps(prepared.circuit);
    let [hooked, tags] = [0, 0];
    for (const [i, { svg }] of figures(prepared).entries()) {
      const drawing = read(svg);
      const { details } = steps[i] ?? { details: [] };
      const groups = new Set(
        drawing.texts.map(({ group }) => group).filter((group) => /-end-\d+-(from|to)$/.test(group)),
      );
      const wanted = details.flatMap(({ index, from, to }, k) =>
        [from, to].flatMap(({ soldered }, e) =>
          soldered === 'none' ? [] : [{ index, end: e === 0 ? 'from' : 'to', number: k + 1, soldered }],
        ),
      );
      expect(groups.size).toBe(wanted.length);
      for (const { index, end, number, soldered } of wanted) {
        const own = <T extends { group: string }>(marks: readonly T[]): readonly T[] =>
          marks.filter(({ group }) => group.endsWith(`-end-${index + 1}-${end}`));
        // Paper, then a dot; or paper alone with a hook on it.
        const [paper, solder] = own(drawing.circles);
        const [dot, bead] = [soldered === 'now' ? solder : paper, own(drawing.circles).at(-1)];
        const hook = drawing.paths.filter(({ group }) => group.endsWith(`-hook-${index + 1}-${end}`));
        expect(hook.length).toBe(soldered === 'now' ? 0 : 1);
        expect(own(drawing.texts).map(({ words }) => words)).toEqual([String(number)]);
        expect(new Set([dot?.fill, bead?.fill])).toEqual(
          new Set([soldered === 'now' ? '#1d2b36' : '#ffffff']),
        );
        if (soldered !== 'now') hooked++;
        const joint = prepared.circuit.joints[index]?.[end as 'from' | 'to'];
        const part = drawing.parts.find((one) => one.name === joint?.part);
        const tag = part?.tags.find((one) => one.name === joint?.lug);
        if (!dot || !part) throw new Error('no dot');
        // At the lug's tag, on the case, or at a leg's end.
        if (tag) {
          expect(touches(tag.box, dot), `${joint?.part}.${joint?.lug}`).toBe(true);
          tags++;
        } else if (part.pot) expect(near(dot, part.pot)).toBeLessThan(part.pot.r + 1);
        else if (part.legs.length > 0)
          expect(Math.min(...part.legs.map((leg) => near(leg, dot)))).toBeLessThan(1);
      }
    }
    expect(hooked).toBeGreaterThan(0);
    expect(tags).toBeGreaterThan(8);
  });

  it.each(Object.entries(ROOMS))(
    'has no type under 7 points on %s, and keeps to its room',
    async (_, room) => {
      for (const { svg, width, height, smallest } of figures(await placed(name), room)) {
        expect(width).toBeLessThanOrEqual(room.width);
        expect(height).toBeLessThanOrEqual(room.height);
        const unit = width / (viewBox(svg)[2] ?? 1);
        const points = read(svg).texts.map(({ size }) => (size * unit * 72) / 25.4);
        expect(Math.min(...points)).toBeGreaterThan(6.99);
        expect(Math.min(...points)).toBeCloseTo(smallest, 1);
      }
    },
  );
});

/** Whether a dot touches a box from outside. */
const touches = ({ x, y, w, h }: Box, dot: { x: number; y: number; r: number }): boolean =>
  inBox({ x, y, w, h }, dot, dot.r + 1) && !inBox({ x: x + 1, y: y + 1, w: w - 2, h: h - 2 }, dot);

describe.each([
  ...samples,
  'circuit/hss-lever-5-4p-1v1t-auto-split',
  'circuit/hh-toggle-3-2v2t-coupled',
  'circuit/sss-lever-5-1v2t-neck-on',
])('%s, printed on an upright A4 page', (name) => {
  it('has no number over a name, a lug or another number', async () => {
    let count = 0;
    for (const { svg } of figures(await placed(name), ROOMS['A4, upright'])) {
      const { circles, texts } = read(svg);
      const numbers = circles.filter(({ group, r }) => /-end-/.test(group) && r > 8);
      const names = texts.filter(({ group }) => !/-end-/.test(group));
      for (const [i, { x, y, r }] of numbers.entries()) {
        const box = { x: x - r, y: y - r, w: 2 * r, h: 2 * r };
        const hidden = names.filter(({ middle, wide, y: foot, size }) =>
          overlap(box, { x: middle - wide / 2, y: foot - 0.73 * size, w: wide, h: 0.73 * size }),
        );
        expect(hidden.map(({ words }) => words)).toEqual([]);
        expect(numbers.filter((other, k) => k !== i && near(other, { x, y }) < r + other.r)).toEqual([]);
        count++;
      }
    }
    expect(count).toBeGreaterThan(20);
  });
});

const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;

describe.each(['light', 'print'] as const)('in the theme %s, copied in black and white', (theme) => {
  it('what is new is broad and what was made before is thin or gone', async () => {
    const prepared = await placed('kestrel-hss');
    const steps = figureSteps(prepared.circuit);
    let [broad, thin] = [0, 0];
    for (const [i, { svg }] of figures(prepared, WIDE, theme).entries()) {
      const drawing = read(svg);
      const copy = await copied(svg);
      const now = new Set(steps[i]?.details.map(({ index }) => index + 1));
      for (const { joint, pieces } of drawing.wires) {
        // Across the middle of the longest level stretch that nothing else comes near.
        const level = pieces
          .flatMap((points) => points.slice(1).map((b, k) => [points[k] ?? b, b] as const))
          .filter(([a, b]) => a.y === b.y && Math.abs(a.x - b.x) > 40)
          .sort(([a, b], [c, d]) => Math.abs(c.x - d.x) - Math.abs(a.x - b.x))[0];
        if (!level) continue;
        const middle = { x: (level[0].x + level[1].x) / 2, y: level[0].y };
        const others = [
          ...drawing.circles,
          ...drawing.wires.filter((one) => one.joint !== joint).flatMap((one) => one.pieces.flat()),
        ];
        if (others.some((one) => near(one, middle) < 30)) continue;
        const runs = runsBetween(copy, { x: middle.x, y: middle.y - 9 }, { x: middle.x, y: middle.y + 9 });
        const across = runs.length === 0 ? 0 : (runs.at(-1)?.[1] ?? 0) - (runs[0]?.[0] ?? 0);
        if (now.has(joint)) {
          expect(across, `joint ${joint}`).toBeGreaterThan(5);
          broad++;
        } else {
          expect(across, `joint ${joint}`).toBeLessThan(3);
          thin++;
        }
      }
    }
    expect(broad).toBeGreaterThan(5);
    expect(thin).toBeGreaterThan(20);
  });
});

it('draws an end that was made before as a dot, as a ring while it is only hooked, and as a dot in a ring where it is soldered now', async () => {
  const prepared = await placed('kestrel-hss');
  const steps = figureSteps(prepared.circuit);
  const seen = { soldered: 0, hooked: 0, gathered: 0 };
  for (const [i, { svg }] of figures(prepared).entries()) {
    const { circles, paths } = read(svg);
    for (const { details } of steps.slice(0, i))
      for (const { index, ...ends } of details)
        for (const end of ['from', 'to'] as const) {
          const { soldered } = ends[end];
          // Nothing is soldered where a lug is bent.
          if (soldered === 'none' || prepared.circuit.joints[index]?.kind === 'bend') continue;
          const later = typeof soldered === 'object' ? soldered.later : 0;
          const wanted = later > i + 1 ? 'hooked' : later === i + 1 ? 'gathered' : 'soldered';
          const rings = paths.filter(({ group }) => group.endsWith(`-hook-${index + 1}-${end}`));
          expect([i, index, end, rings.length]).toEqual([i, index, end, wanted === 'soldered' ? 0 : 1]);
          const [ring] = rings;
          const [middle] = ring ? ringMiddles(circles, ring.pieces, index) : [];
          if (ring) expect(middle !== undefined).toBe(wanted === 'gathered');
          seen[wanted]++;
        }
  }
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(0);
});

/** Dots of ink of a joint made before that lie within a ring. */
const ringMiddles = (
  circles: readonly { group: string; fill: string; x: number; y: number; r: number }[],
  pieces: readonly (readonly { x: number; y: number }[])[],
  index: number,
) =>
  circles.filter(
    (one) =>
      one.group.endsWith(`-made-${index + 1}`) &&
      one.fill === '#1d2b36' &&
      pieces.flat().every((p) => near(one, p) > one.r && near(one, p) < 9),
  );

it('is the same bytes each time, in presentation attributes alone, and says what it shows', async () => {
  const prepared = await placed('osprey-hsh');
  const [first, again] = [figures(prepared), figures(prepared)];
  expect(again).toEqual(first);
  for (const { svg, alt } of first) {
    expect(svg).not.toMatch(/style|var\(|url\(|filter|<script|href/);
    expect(read(svg).description).toBe(alt);
  }
});
