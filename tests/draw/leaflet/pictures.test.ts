/** The wiring by itself, parts' pictures and probes, read back by the reader that knows nothing of what drew them. */
import { describe, expect, it } from 'vitest';
import { partPicture } from '../../../src/draw/leaflet/part-picture.ts';
import { probeFigures } from '../../../src/draw/leaflet/probes.ts';
import { wiringFigure } from '../../../src/draw/leaflet/wiring-figure.ts';
import { lugsOf, type Part } from '../../../src/parts/index.ts';
import { samples } from '../../truth/draw.ts';
import { type Box, inBox, jointErrors, type Point, read } from '../../truth/reader.ts';
import { placed } from './kits.ts';

const PAGE = { width: 190, height: 270 };
const viewBox = (svg: string): Box => {
  const [x = 0, y = 0, w = 0, h = 0] = (/viewBox="([^"]*)"/.exec(svg)?.[1] ?? '').split(' ').map(Number);
  return { x, y, w, h };
};

describe.each([
  ['A4', PAGE],
  ['A5', { width: 128, height: 180 }],
] as const)('on %s', (_, page) => {
  it.each(samples)(
    '%s: the wiring alone is the kit, fills its room, in type of 7 points or more, and nothing of it is cut off',
    async (name) => {
      const prepared = await placed(name);
      const { svg, width, height, smallest } = wiringFigure(prepared, page, { alt: 'Wiring' });
      const drawing = read(svg);
      expect(jointErrors(drawing, prepared.circuit.kit)).toEqual([]);
      expect(drawing.head).toEqual([]);
      expect(drawing.cards).toEqual([]);
      expect(Math.max(width / page.width, height / page.height)).toBeCloseTo(1, 2);
      const box = viewBox(svg);
      for (const rect of drawing.rects.slice(1))
        expect([inBox(box, rect), inBox(box, { x: rect.x + rect.w, y: rect.y + rect.h })]).toEqual([
          true,
          true,
        ]);
      for (const { middle, wide, y, size } of drawing.texts) {
        expect([
          inBox(box, { x: middle - wide / 2, y }),
          inBox(box, { x: middle + wide / 2, y: y - size / 2 }),
        ]).toEqual([true, true]);
      }
      for (const { pieces } of drawing.wires) expect(pieces.flat().every((p) => inBox(box, p))).toBe(true);
      const type = Math.min(...drawing.texts.map((text) => text.size));
      expect(((type * width) / box.w) * (72 / 25.4)).toBeCloseTo(smallest, 1);
      expect(smallest).toBeGreaterThanOrEqual(7);
      const codes = drawing.texts.filter(({ group }) => group.endsWith('-colours'));
      expect(new Set(codes.map(({ words }) => words))).toEqual(
        new Set(prepared.circuit.joints.flatMap(({ colour }) => colour ?? [])),
      );
    },
  );
});

describe('the picture of a part', () => {
  const ROOM = { width: 22, height: 14 };
  const pictureOf = async (name: string, part: string) => {
    const prepared = await placed(name);
    const found = prepared.circuit.kit.parts.find((one) => one.name === part);
    if (!found) throw new Error(part);
    const figure = partPicture(prepared, found, ROOM, { alt: found.label });
    return { ...figure, drawing: read(figure.svg), part: found };
  };
  const bodyless = ({ drawing }: Awaited<ReturnType<typeof pictureOf>>) =>
    drawing.rects.slice(1).map(({ x, y, w, h }) => [x, y, w, h]);

  it('has a resistor’s bands from left to right: yellow, violet, yellow and gold are 470 kΩ and 5 % (IEC 60062)', async () => {
    const { drawing } = await pictureOf('kestrel-hss', 'pad-neck');
    const bands = drawing.rects.filter(({ w, h }) => w === 5 && h > 10).sort((a, b) => a.x - b.x);
    expect(bands.map(({ fill }) => fill)).toEqual(['#f2c60f', '#7c3f98', '#f2c60f', '#b8963e']);
  });
  it('has a capacitor’s code in a size that can be read: 223 is 22 nF', async () => {
    const { drawing, smallest } = await pictureOf('kestrel-hss', 'tone-cap');
    expect(drawing.texts.map(({ words }) => words)).toEqual(['223']);
    expect(smallest).toBeGreaterThan(7);
  });
  it('has as many tags as a part has lugs to solder to, and no word else', async () => {
    for (const { name, circuit } of await Promise.all(
      samples.map(async (name) => ({ name, ...(await placed(name)) })),
    ))
      for (const part of circuit.kit.parts as readonly Part[]) {
        const { drawing, width, height } = await pictureOf(name, part.name);
        const tags = lugsOf(part).filter(({ role }) => role !== 'case' && role !== 'leg');
        expect(
          drawing.rects.filter(({ fill }) => fill === '#e8d9a8'),
          part.name,
        ).toHaveLength(tags.length);
        expect(drawing.texts.length).toBe(part.kind === 'capacitor' ? 1 : 0);
        expect(width).toBeLessThanOrEqual(ROOM.width);
        expect(height).toBeLessThanOrEqual(ROOM.height);
      }
  });
  it('lies the same way for every part of a kind, whichever way it is turned in the wiring', async () => {
    expect(bodyless(await pictureOf('kestrel-hss', 'tone-1'))).toEqual(
      bodyless(await pictureOf('kestrel-hss', 'tone-2')),
    );
    expect(bodyless(await pictureOf('kestrel-hss', 'neck'))).toEqual(
      bodyless(await pictureOf('kestrel-hss', 'middle')),
    );
  });
});

describe('probes', () => {
  const ROOM = { width: 85, height: 60 };
  const probed = async (name: string, one: string, other: string) => {
    const prepared = await placed(name);
    const spot = (id: string, words: string) => ({
      part: id.split('.')[0] ?? '',
      lug: id.split('.')[1] ?? '',
      words,
    });
    const joints = prepared.circuit.joints.map((_, i) => i);
    const spots = [spot(one, 'red'), spot(other, 'black')] as const;
    const probing = { id: 'test-1', alt: `${one} and ${other}`, joints, spots };
    const [figure] = probeFigures(prepared, [probing], ROOM);
    if (!figure) throw new Error('no figure');
    const drawing = read(figure.svg);
    const of = (n: number) => {
      const mine = <T extends { group: string }>(marks: readonly T[]): readonly T[] =>
        marks.filter(({ group }) => group.endsWith(`-probe-${n}`));
      const [flag] = mine(drawing.rects);
      const [tip] = mine(drawing.circles);
      if (!flag || !tip) throw new Error('no probe');
      return { flag, tip, words: mine(drawing.texts).map(({ words }) => words), lines: mine(drawing.paths) };
    };
    return { figure, drawing, probes: [of(1), of(2)] as const };
  };
  const PAIRS = [
    ['kestrel-hss', 'output.tip', 'output.sleeve'],
    ['kestrel-hss', 'selector.A2', 'volume.case'],
    ['kestrel-hss', 'tone-2.2', 'output.sleeve'],
    ['kestrel-hss', 'selector.A3', 'selector.B1'],
    ['kestrel-hss', 'volume.2', 'output.tip'],
    ['wren-hs', 'volume.3', 'output.tip'],
    ['plover-sss', 'selector.B2', 'volume.1'],
  ] as const;

  it.each(PAIRS)('%s: %s and %s are touched, and no word is hidden', async (name, one, other) => {
    const { figure, drawing, probes } = await probed(name, one, other);
    expect(probes.map(({ words }) => words)).toEqual([['red'], ['black']]);
    const ids = [...figure.svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [i, id] of [one, other].entries()) {
      const [partName = '', lug = ''] = id.split('.');
      const part = drawing.parts.find((found) => found.name === partName);
      const probe = probes[i === 0 ? 0 : 1];
      const label = part?.texts.find(({ words }) => words === lug);
      const tag = part?.rects.find(
        ({ x, y, w, h, fill }) =>
          fill === '#e8d9a8' && label && inBox({ x, y, w, h }, { x: label.middle, y: label.y - 4 }),
      );
      if (lug === 'case')
        expect(Math.hypot(probe.tip.x - (part?.pot?.x ?? 0), probe.tip.y - (part?.pot?.y ?? 0))).toBeLessThan(
          part?.pot?.r ?? 0,
        );
      else if (!tag) throw new Error(`${id} has no tag`);
      else expect(inBox(tag, probe.tip, 0.6)).toBe(true);
    }
    const words = drawing.texts.filter(({ group }) => !/-probe-/.test(group));
    const points: readonly Point[] = probes.flatMap(({ lines, flag }) => [
      ...lines.flatMap(({ pieces }) => pieces.flatMap(([a, b]) => (a && b ? between(a, b) : []))),
      ...between(flag, { x: flag.x + flag.w, y: flag.y + flag.h }),
      ...between({ x: flag.x, y: flag.y + flag.h }, { x: flag.x + flag.w, y: flag.y }),
    ]);
    for (const { words: text, middle, wide, y, size } of words) {
      const box = { x: middle - wide / 2, y: y - 0.7 * size, w: wide, h: 0.7 * size };
      expect(
        points.some((p) => inBox(box, p)),
        text,
      ).toBe(false);
    }
    const box = viewBox(figure.svg);
    for (const { flag } of probes)
      expect(inBox(box, flag) && inBox(box, { x: flag.x + flag.w, y: flag.y + flag.h })).toBe(true);
    expect(figure.width).toBeLessThanOrEqual(ROOM.width);
    expect(figure.height).toBeLessThanOrEqual(ROOM.height);
    expect(
      Math.min(...drawing.texts.map(({ size }) => size)) * (figure.width / box.w) * (72 / 25.4),
    ).toBeGreaterThan(6.99);
  });

  it('shows two parts that lie far apart in two windows, a joint between them in each', async () => {
    const windows = async (one: string, other: string) => {
      const { drawing } = await probed('kestrel-hss', one, other);
      return drawing.rects.filter(({ corner, fill }) => corner === 6 && fill === 'none').length;
    };
    expect(await windows('tone-2.2', 'output.sleeve')).toBe(2);
    expect(await windows('output.tip', 'output.sleeve')).toBe(1);
    const { drawing } = await probed('kestrel-hss', 'neck.ground', 'volume.case');
    expect(drawing.parts.map(({ name }) => name).sort()).toEqual(['neck', 'volume']);
  });

  it('the first probe is red and the second black, by convention of multimeters (common practice, no source)', async () => {
    const { probes } = await probed('kestrel-hss', 'output.tip', 'output.sleeve');
    expect(probes.map(({ lines }) => lines.at(-1)?.stroke)).toEqual(['#c8322b', '#1d2b36']);
  });
});

const between = (a: Point, b: Point): readonly Point[] =>
  Array.from({ length: 41 }, (_, i) => ({
    x: a.x + ((b.x - a.x) * i) / 40,
    y: a.y + ((b.y - a.y) * i) / 40,
  }));
