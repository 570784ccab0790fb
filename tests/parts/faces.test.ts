/** What parts look like: windings, tracks, bands and words where a person knows them to be, and two parts beside each other. */
import { describe, expect, it } from 'vitest';
import { PITCH, type Point, type Rect } from '../../src/common/geometry.ts';
import { textWidth } from '../../src/common/text.ts';
import { compose } from '../../src/parts/compose.ts';
import { groundPoint } from '../../src/parts/ground-point.ts';
import { contactsOf, faceOf, type Kind, kinds, outlineOf, type Part } from '../../src/parts/index.ts';
import { jack } from '../../src/parts/jack.ts';
import { lever3 } from '../../src/parts/lever-3.ts';
import type { LabelSlot, Outline } from '../../src/parts/outline.ts';
import type { Shape } from '../../src/parts/shape.ts';
import { makeKit } from '../analyse/kits.ts';

const FIELDS: Partial<Record<Kind, object>> = {
  pot: { value: '250k' },
  'push-pull': { value: '500k' },
  'dual-pot': { value: '250k', taper: 'linear' },
  'stacked-pot': { a: { value: '500k' }, b: { value: '250k', taper: 'reverse-log', 'no-load': true } },
  blend: { value: '250k' },
  'mini-toggle': { action: 'on-on' },
  rotary: { throws: 5 },
  resistor: { value: '470k' },
  capacitor: { value: '22n' },
  switch: { lugs: { left: ['A1', 'A0'], right: ['on'] }, positions: [[['A0', 'A1']]] },
};
const partOf = (kind: Kind, label = 'Name', written: object = {}): Part => {
  const [part] = makeKit({ parts: { x: { kind, label, ...FIELDS[kind], ...written } }, joints: [] }).parts;
  if (!part) throw new Error('no part');
  return part;
};
const seen = (part: Part, caption?: string) => {
  const outline = outlineOf(part, caption);
  return { outline, face: faceOf(part, { outline, closed: contactsOf(part)[0]?.joins ?? [] }) };
};
const rectsOf = (face: readonly Shape[], role: string): readonly Rect[] =>
  face.flatMap((shape) => (shape.shape === 'rect' && shape.role === role ? [shape.rect] : []));
const boxOf = ({ text, centre, size, weight }: LabelSlot): Rect => {
  const width = textWidth(text, size, weight);
  return { x: centre.x - width / 2, y: centre.y - size / 2, width, height: size };
};
const inside = (a: Rect, b: Rect): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.width <= b.x + b.width && a.y + a.height <= b.y + b.height;
const middle = (r: Rect): Point => ({ x: r.x + r.width / 2, y: r.y + r.height / 2 });

describe.each(Object.keys(kinds) as Kind[])('%s', (kind) => {
  it.each(['I', 'Name', 'A longer name of it', 'M'.repeat(24)])(
    '“%s”: its words are on it, none over another',
    (label) => {
      const { outline } = seen(partOf(kind, label));
      const component = kinds[kind].is.includes('component' as never);
      // A component has its words above and below it, where no wire runs; any other part on its plate.
      const places = component || kind === 'push-pull' ? outline.blocked : [outline.body];
      const boxes = outline.labels.map(boxOf);
      for (const box of boxes)
        expect(
          places.some((place) => inside(box, place)),
          JSON.stringify(box),
        ).toBe(true);
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1))
          expect(
            a.x >= b.x + b.width || b.x >= a.x + a.width || a.y + a.height <= b.y || b.y + b.height <= a.y,
          ).toBe(true);
      });
      expect(
        outline.labels
          .map(({ text }) => text)
          .join('')
          .replaceAll(' ', ''),
      ).toContain(label.replaceAll(' ', ''));
    },
  );

  it('has its name first, bold, and no smaller than what stands below it', () => {
    const [name, ...all] = seen(partOf(kind)).outline.labels;
    // A switch that stands beside its pot has the name as well.
    const rest = all.filter(({ text }) => text !== 'Name');
    expect(all.length - rest.length).toBe(kind === 'push-pull' ? 1 : 0);
    expect(name).toMatchObject({ text: 'Name', weight: 'bold' });
    for (const { size } of rest) expect(name?.size).toBeGreaterThanOrEqual(size);
    expect(name?.size).toBe(14);
    for (const { weight } of rest) expect(weight).toBe('regular');
  });

  it('takes up whole steps of the grid, all of it inside', () => {
    const { outline } = seen(partOf(kind));
    expect([outline.width % PITCH, outline.height % PITCH]).toEqual([0, 0]);
    for (const rect of [outline.body, ...outline.blocked])
      expect(inside(rect, { x: 0, y: 0, width: outline.width, height: outline.height })).toBe(true);
  });
});

describe('a pickup', () => {
  it.each([
    ['single-coil', 1],
    ['humbucker', 2],
  ] as const)(
    '%s: %d coil(s), each with turns of wire inside it, and the leads leave the last',
    (kind, count) => {
      const { face, outline } = seen(partOf(kind));
      const [coils, turns] = [rectsOf(face, 'coil'), rectsOf(face, 'turn')];
      expect(coils).toHaveLength(count);
      expect(turns).toHaveLength(2 * count);
      const centres = coils.map((coil) => middle(coil).x).sort((a, b) => a - b);
      expect(new Set(centres).size).toBe(count);
      for (const turn of turns) {
        const around = coils.filter((coil) => inside(turn, coil));
        expect(around).toHaveLength(1);
        for (const coil of around) {
          expect(middle(turn)).toEqual(middle(coil));
          // Round and round at one distance.
          expect((coil.width - turn.width) % 6).toBe(0);
          expect(coil.width - turn.width).toBe(coil.height - turn.height);
          expect(turn.width).toBeLessThan(coil.width);
        }
      }
      // Every coil lies over the plate, every turn over its coil.
      const roles = face.map((shape) => shape.role);
      expect(roles.indexOf('plate')).toBe(0);
      expect(roles.indexOf('coil')).toBeLessThan(roles.indexOf('turn'));
      const [leads, link] = face.flatMap((shape) => (shape.shape === 'path' ? [shape.runs] : []));
      // Hot leaves the last coil, ground the first: where these are two, a link makes one winding of them.
      expect(leads?.map(([start]) => start?.to.x)).toEqual([centres.at(-1), centres[0]]);
      const inner = coils.map(({ x, width }) => [x, x + width]).sort(([a = 0], [b = 0]) => a - b);
      expect(link?.[0]?.map(({ to }) => to.x)).toEqual(
        count === 1 ? undefined : [inner[0]?.[1], inner[1]?.[0]],
      );
      for (const { to } of link?.[0] ?? []) expect(to.y).toBe(middle(coils[0] ?? outline.body).y);
      // Ground passes below the other coil, and on the cover.
      const back = leads?.[1]?.map(({ to }) => to.y) ?? [];
      expect(Math.max(...back)).toBeLessThan(outline.body.y + outline.body.height);
      // The hot one from the top of the coil to the upper lug, ground from its bottom to the lower.
      const heights = (leads ?? []).map((run) => run.at(-1)?.to.y);
      expect(heights).toEqual(outline.lugs.map(({ tag }) => middle(tag).y));
      expect(leads?.map(([start]) => start?.to.y)).toEqual([
        coils[0]?.y,
        (coils[0]?.y ?? 0) + (coils[0]?.height ?? 0),
      ]);
    },
  );

  it('says that its resistance is assumed where it was not written', () => {
    const words = (written: object) =>
      seen(partOf('humbucker', 'Neck', written)).outline.labels.map(({ text }) => text);
    expect(words({})).toEqual(['Neck', 'humbucker, 8.2 kΩ assumed']);
    expect(words({ resistance: '8.2k' })).toEqual(['Neck', 'humbucker, 8.2 kΩ']);
  });
});

/** The middle of the circle that an arc of SVG runs on (SVG 2, appendix B.2.4), for a circle. */
function arcCentre(from: Point, to: Point, radius: number, large: boolean, clockwise: boolean): Point {
  const [hx, hy] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
  const off = Math.sqrt(Math.max(0, radius ** 2 / (hx ** 2 + hy ** 2) - 1)) * (large === clockwise ? -1 : 1);
  return { x: off * hy + (from.x + to.x) / 2, y: -off * hx + (from.y + to.y) / 2 };
}

it('a pot’s track runs round its middle the long way, over the top, open towards the lugs', () => {
  const { face, outline } = seen(partOf('pot'));
  const track = face.find((shape) => shape.role === 'track');
  const [from, to] = track?.shape === 'path' ? (track.runs[0] ?? []) : [];
  if (!from || !to) throw new Error('no track');
  const { radius = 0, large = false, clockwise = false } = to;
  const centre = arcCentre(from.to, to.to, radius, large, clockwise);
  expect(centre.x).toBeCloseTo(middle(outline.body).x, 6);
  expect(centre.y).toBeCloseTo(middle(outline.body).y, 6);
  expect(large).toBe(true);
  // Its two ends are below the middle, towards the lugs, the clockwise end on the side of lug 3.
  for (const end of [from, to]) expect(end.to.y).toBeGreaterThan(centre.y);
  const lugX = (name: string): number =>
    middle(outline.lugs.find(({ lug }) => lug === name)?.tag ?? outline.body).x;
  expect(Math.sign(from.to.x - centre.x)).toBe(Math.sign(lugX('3') - lugX('1')));
  expect(outline.lugs.map(({ lug, surface }) => [lug, surface ?? false])).toEqual([
    ['3', false],
    ['2', false],
    ['1', false],
    ['case', true],
  ]);
  // Wherever a ground wire comes from, it ends just inside the rim, seven units on along its grid line.
  for (const { spot, inward } of outline.lugs.at(-1)?.ports ?? [])
    expect(Math.hypot(spot.x - 7 * inward.x - centre.x, spot.y - 7 * inward.y - centre.y)).toBeCloseTo(
      outline.body.width / 2,
      6,
    );
});

describe('a component', () => {
  it.each(['resistor', 'capacitor'] as const)(
    '%s: its body is between its legs, however short its name',
    (kind) => {
      for (const label of ['I', 'M'.repeat(24)]) {
        const { outline } = seen(partOf(kind, label));
        const [left, right] = outline.lugs.map(({ tag }) => tag);
        if (!left || !right) throw new Error('no legs');
        expect(left.x + left.width).toBeLessThanOrEqual(outline.body.x);
        expect(right.x).toBeGreaterThanOrEqual(outline.body.x + outline.body.width);
        expect(middle(left).x + middle(right).x).toBe(outline.width);
        for (const { ports, tag } of outline.lugs)
          for (const { spot, via, node } of ports) {
            expect(spot).toEqual(middle(tag));
            expect(via?.y).toBe(spot.y);
            // From the leg on to the corner, and there any way but back.
            expect(Math.sign((via?.x ?? 0) - spot.x)).toBe(Math.sign(spot.x - middle(outline.body).x));
            expect(Math.hypot(node.x - (via?.x ?? 0), node.y - (via?.y ?? 0))).toBe(PITCH);
          }
      }
    },
  );

  it('with words of what it does is a grid step higher, and these stand last, bold', () => {
    for (const kind of ['resistor', 'capacitor'] as const) {
      const [without, caption] = [
        seen(partOf(kind)).outline,
        seen(partOf(kind), 'load 250 kΩ of the neck').outline,
      ];
      expect(caption.height - without.height).toBe(PITCH);
      expect(without.labels).toHaveLength(2);
      expect(caption.labels).toHaveLength(3);
      expect(caption.labels[2]).toMatchObject({ text: 'load 250 kΩ of the neck', weight: 'bold' });
      for (const label of caption.labels)
        expect(inside(boxOf(label), caption.blocked[0] ?? caption.body)).toBe(true);
    }
  });

  it('a resistor’s bands stand apart, all of them on its body, the last by itself at the far end', () => {
    for (const written of [
      { value: '470k', tolerance: '5%' },
      { value: '237k', tolerance: '1%' },
    ]) {
      const { outline, face } = seen(partOf('resistor', 'R', written));
      const bands = rectsOf(face, 'band');
      expect(bands).toHaveLength(written.tolerance === '5%' ? 4 : 5);
      const gaps = bands.slice(1).map((band, i) => band.x - (bands[i]?.x ?? 0) - (bands[i]?.width ?? 0));
      for (const band of bands) expect(inside(band, outline.body)).toBe(true);
      expect(new Set(gaps.slice(0, -1)).size).toBe(1);
      expect(Math.min(...gaps)).toBeGreaterThan(2);
      expect(gaps.at(-1)).toBeGreaterThan(1.5 * (gaps[0] ?? 0));
      const [before, behind] = [
        (bands[0]?.x ?? 0) - outline.body.x,
        outline.body.x + outline.body.width - (bands.at(-1)?.x ?? 0),
      ];
      expect(before).toBeGreaterThan(5);
      expect(behind).toBeGreaterThan(10);
    }
    // Four bands have more room between them than five.
    const pitch = (written: object): number => {
      const bands = rectsOf(seen(partOf('resistor', 'R', written)).face, 'band');
      return (bands[1]?.x ?? 0) - (bands[0]?.x ?? 0);
    };
    expect(pitch({ tolerance: '5%' })).toBeGreaterThan(pitch({ value: '237k', tolerance: '1%' }));
  });
});

/** Everything in a value that has a place, moved to the right; a direction has none. */
const moved = (value: unknown, by: number): unknown =>
  Array.isArray(value)
    ? value.map((one) => moved(one, by))
    : value === null || typeof value !== 'object'
      ? value
      : Object.fromEntries(
          Object.entries(value).map(([key, one]) => [
            key,
            key === 'x' ? one + by : key === 'inward' ? one : moved(one, by),
          ]),
        );

describe('two parts in one', () => {
  const made = <K extends Kind>(kind: K) =>
    ({ ...kinds[kind], fields: {}, build: () => partOf(kind, '') }) as never;
  it.each(['pot', 'capacitor', 'resistor', 'humbucker', 'jack', 'lever-5'] as const)(
    'a %s stands to the right of the first, as it stands alone, with room for a wire between',
    (kind) => {
      const both = compose('both', 'both', groundPoint, made(kind));
      const part = both.build({ kind: 'both', name: 'x', label: 'Post' }, {});
      const first = groundPoint.build({ kind: 'ground-point', name: 'x', label: 'Post' }, {});
      const [left, alone] = [groundPoint.outline(first, undefined, 'en'), seen(partOf(kind, ''))];
      const by = left.width + 2 * PITCH;
      const outline: Outline = both.outline(part, undefined, 'en');
      expect(outline.lugs).toEqual([...left.lugs, ...(moved(alone.outline.lugs, by) as typeof left.lugs)]);
      expect(outline.labels).toEqual([
        ...left.labels,
        ...(moved(alone.outline.labels, by) as typeof left.labels),
      ]);
      expect(outline.blocked).toEqual([...left.blocked, ...(moved(alone.outline.blocked, by) as Rect[])]);
      expect([outline.width, outline.height]).toEqual([
        by + alone.outline.width,
        Math.max(left.height, alone.outline.height),
      ]);
      const closed = contactsOf(partOf(kind, ''))[0]?.joins ?? [];
      expect(both.face(part, { outline, closed })).toEqual([
        ...groundPoint.face(first, { outline: left, closed: [] }),
        ...(moved(alone.face, by) as Shape[]),
      ]);
    },
  );

  it('may be drawn left for right only if both may', () => {
    expect(compose('a', 'a', groundPoint, lever3).mirrors).toBe(false);
    expect(compose('a', 'a', lever3, jack).mirrors).toBe(false);
    expect(compose('a', 'a', groundPoint, jack).mirrors).toBe(true);
  });

  it('has usual values and another resistance only where the first has', () => {
    const plain = compose('a', 'a', groundPoint, lever3);
    expect(['usual' in plain, 'withOhms' in plain]).toEqual([false, false]);
    expect([kinds['push-pull'].usual, kinds['push-pull'].withOhms].map((one) => typeof one)).toEqual([
      'function',
      'function',
    ]);
  });
});
