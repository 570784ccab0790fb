/** What a part takes up on the sheet: names wrapped without losing a letter, plates that grow with them, first places. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PITCH, type Point, type Rect } from '../../src/common/geometry.ts';
import { textWidth } from '../../src/common/text.ts';
import { languages } from '../../src/messages/language.ts';
import { kinds, outlineOf } from '../../src/parts/index.ts';
import { belowLines, nameLines } from '../../src/parts/outline.ts';
import { arrangementSchema } from '../../src/place/arrangement.ts';
import { initialPlacement } from '../../src/place/seating.ts';
import { makeKit } from '../analyse/kits.ts';

const letters = fc.string({
  unit: fc.constantFrom(...'aMiW Äß 9-'),
  minLength: 1,
  maxLength: 30,
});
const packed = (text: string): string => text.replaceAll(' ', '');
const wide = (text: string): number => textWidth(text, 14, 'bold');

describe('a name in lines', () => {
  it('keeps every letter in its order; only a single word is wider than it should be, and none much', () =>
    fc.assert(
      fc.property(letters, fc.constantFrom(20, 60, 130), (text, width) => {
        const lines = nameLines(text, width);
        expect(packed(lines.join(''))).toBe(packed(text));
        for (const line of lines) {
          expect(line.trim()).toBe(line);
          expect(line).not.toBe('');
          expect(wide(line)).toBeLessThanOrEqual(Math.max(width, 9 * PITCH + 20));
          if (wide(line) > width) expect(line).toMatch(/^[^ -]+-*$|^-+$/);
        }
      }),
      { seed: 60331, numRuns: 500 },
    ));

  it.each([
    ['Blend pot', 200, ['Blend pot']],
    ['Blend pot two', wide('Blend pot'), ['Blend pot', 'two']],
    ['Push-pull pot', wide('Push-pull'), ['Push-pull', 'pot']],
    ['Push-pull pot', wide('Push-'), ['Push-', 'pull', 'pot']],
    ['Push-pull pot', wide('pull pot'), ['Push-', 'pull pot']],
    ['a Extraordinarily', wide('Extra'), ['a', 'Extraordinarily']],
    ['-', 5, ['-']],
    ['', 50, []],
    [' ', 50, []],
  ] as const)('“%s” in %d: %j', (text, width, lines) => expect(nameLines(text, width)).toEqual(lines));

  it('a word longer than any plate should be is cut into like pieces', () => {
    const lines = nameLines('M'.repeat(30), 60);
    expect(lines.length).toBeGreaterThan(1);
    expect(new Set(lines.map((line) => line.length)).size).toBe(1);
  });
});

it('what stands below a name loses no space that does not break, whatever the width', () => {
  const text = 'humbucker, 7,8\u00a0kΩ or 8.4 kΩ, 22\u202fnF';
  expect(belowLines(text, 10)).toEqual(['humbucker,', '7,8\u00a0kΩ', 'or', '8.4 kΩ,', '22\u202fnF']);
  for (const width of [10, 60, 100, 1000])
    expect(belowLines(text, width).join(' ').replace(/ +/g, ' ')).toBe(text);
});

it.each(languages)(
  'a part in its narrow form has every letter and space of its usual one, in %s',
  (language) => {
    const [part] = makeKit({
      parts: { x: { kind: 'four-lead-humbucker', label: 'Neck humbucker', resistance: '7.8k' } },
      joints: [],
    }).parts;
    if (!part) throw new Error('no part');
    const words = (narrow: boolean) =>
      outlineOf(part, undefined, language, narrow)
        .labels.map(({ text }) => text)
        .join('')
        .replaceAll(' ', '');
    expect(words(true)).toBe(words(false));
  },
);

const outline = (kind: string, label: string, more: object = {}, narrow = false) => {
  const [part] = makeKit({ parts: { x: { kind, label, ...more } }, joints: [] }).parts;
  if (!part) throw new Error('no part');
  return outlineOf(part, undefined, 'en', narrow);
};

describe('a lever', () => {
  const [short, long] = [outline('lever-5', 'Selector'), outline('lever-5', 'Selector of the three pickups')];
  it('has a short name in one line, larger than what it is', () => {
    expect(short.labels.map(({ text }) => text)).toEqual(['Selector', 'five-way']);
    expect(short.labels[0]?.size).toBeGreaterThan(short.labels[1]?.size ?? 99);
  });
  it('has a long name in several lines of the same size, and grows by a grid step for each', () => {
    const lines = long.labels.slice(0, -1);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.map(({ text }) => text).join(' ')).toBe('Selector of the three pickups');
    for (const { size } of lines) expect(size).toBe(short.labels[0]?.size);
    expect(long.height - short.height).toBe((lines.length - 1) * PITCH);
    // The lugs move down with the plate's end, so that names and lugs keep apart.
    const top = ({ lugs }: typeof long): number => Math.min(...lugs.map(({ tag }) => tag.y));
    expect(top(long) - top(short)).toBe((lines.length - 1) * PITCH);
  });
});

describe('ways into a lug', () => {
  const forms = (['usual', 'narrow'] as const).flatMap((form) =>
    (Object.keys(kinds) as (keyof typeof kinds)[]).map((kind) => [kind, form] as const),
  );
  it.each(forms)('%s, %s form: each ends on the lug, and comes from outside', (kind, form) => {
    const fields: Readonly<Record<string, object>> = {
      resistor: { value: '470k' },
      capacitor: { value: '22n' },
      pot: { value: '250k' },
      'push-pull': { value: '500k' },
      'mini-toggle': { action: 'on-on' },
      rotary: { throws: 5 },
      'dual-pot': { value: '250k' },
      'stacked-pot': { a: { value: '500k' }, b: { value: '250k' } },
      blend: { value: '250k' },
      switch: { lugs: { left: ['A1', 'common'], right: ['B', 'on', 'x'] }, positions: [[['A1', 'B']]] },
    };
    const { lugs, body, width, height } = outline(kind, 'Name', fields[kind], form === 'narrow');
    const inside = (box: Rect, { x, y }: Point, slack = 0): boolean =>
      x >= box.x - slack &&
      x <= box.x + box.width + slack &&
      y >= box.y - slack &&
      y <= box.y + box.height + slack;
    for (const { lug, tag, ports } of lugs) {
      expect(ports.length, lug).toBeGreaterThan(0);
      for (const { node, inward, spot, via } of ports) {
        // From the node, straight on, to the spot or to the corner before it.
        const target = via ?? spot;
        const [dx, dy] = [target.x - node.x, target.y - node.y];
        expect(dx * inward.y - dy * inward.x, `${lug} in line`).toBeCloseTo(0, 6);
        expect(dx * inward.x + dy * inward.y, `${lug} ahead`).toBeGreaterThanOrEqual(0);
        expect(inside(tag, spot, 0.01) || lug === 'case', `${lug} spot`).toBe(true);
        expect(Math.abs(node.x % PITCH) + Math.abs(node.y % PITCH), `${lug} on the grid`).toBe(0);
        if (lug !== 'case' && kind !== 'resistor' && kind !== 'capacitor')
          expect(inside(body, node), `${lug} off the body`).toBe(false);
        expect(inside({ x: 0, y: 0, width, height }, node, 3 * PITCH), `${lug} near the part`).toBe(true);
      }
    }
    // The name stands above the value, or what the part is.
    const [name, value] = outline(kind, 'Name', fields[kind]).labels;
    if (name && value) expect(name.centre.y, 'name above value').toBeLessThan(value.centre.y);
    // A leg of a component is left from its own side, or up or down: never back over the component.
    if (kind === 'resistor' || kind === 'capacitor')
      for (const [i, { ports }] of lugs.entries())
        for (const { inward } of ports)
          expect(inward.x === 0 || Math.sign(inward.x) === (i === 0 ? 1 : -1), `leg ${i + 1}`).toBe(true);
  });
});

it.each([0, 1, 2, 3] as const)('a seat for pots turned by %d: pots are, a push-pull pot stands', (turn) => {
  const parts = makeKit({
    parts: { a: { kind: 'pot', value: '500k' }, b: { kind: 'push-pull', value: '500k' } },
    joints: [],
  }).parts.map((part) => ({ part, outline: outlineOf(part) }));
  const arrangement = arrangementSchema.parse({
    arrangement: 'turned',
    about: 'Pots turned.',
    seats: [{ seat: 'pot', at: [0, 0], step: [40, 0], turn }],
  });
  const placed = initialPlacement(parts, arrangement, 'right', new Map(), 1);
  expect(placed.map((one) => one.turn)).toEqual([turn, 0]);
});

describe('first places', () => {
  const kit = makeKit({
    parts: {
      neck: { kind: 'single-coil' },
      middle: { kind: 'single-coil' },
      bridge: { kind: 'single-coil' },
      out: { kind: 'jack' },
    },
    joints: [],
  });
  const parts = kit.parts.map((part) => ({ part, outline: outlineOf(part, undefined) }));
  const laid = new Map([
    ['neck', { x: 40 * PITCH, y: 30 * PITCH }],
    ['middle', { x: 10 * PITCH, y: 0 }],
    ['bridge', { x: 20 * PITCH, y: 2 * PITCH }],
    ['out', { x: 90 * PITCH, y: 5 * PITCH }],
  ]);
  const gridParts = initialPlacement(
    parts,
    { id: 'free-flow', title: '', seats: [] } as never,
    'right',
    laid,
    1,
  );
  it('has pickups in the order written, one below the other, as far left as the layout has any', () => {
    const [neck, middle, bridge] = gridParts;
    expect([neck?.column, middle?.column, bridge?.column]).toEqual([10, 10, 10]);
    expect(neck?.row).toBe(0);
    for (const [upper, lower] of [
      [neck, middle],
      [middle, bridge],
    ] as const)
      expect(lower?.row).toBeGreaterThanOrEqual((upper?.row ?? 0) + (upper?.outline.height ?? 0) / PITCH + 2);
  });
  it('leaves the others where the layout has them', () =>
    expect(gridParts[3]).toMatchObject({ column: 90, row: 5 }));
});
