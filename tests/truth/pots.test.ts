/**
 * What pots of every kind look like, read from drawings: order of lugs, length of the tracks, where each wiper stands, and words. Source: the
 * handbook, “Parts”; what a blend's and a no-load pot's tracks are is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { bassKit, controlsKit, dualBlendKit, plainBlendKit } from '../oracle/pot-kits.ts';
import { described, drawn } from './draw.ts';
import type { Part, Point } from './reader.ts';

const kitOf = (compact: object, more: object = {}) => described({ title: 'Pots', ...compact, ...more });
const partOf = async (
  kit: ReturnType<typeof kitOf>,
  name: string,
  wanted: Parameters<typeof drawn>[1] = {},
): Promise<Part> => {
  const found = (await drawn(kit, wanted)).parts.find((part) => part.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
};
const leftToRight = (tags: Part['tags']): readonly string[] =>
  [...tags].sort((a, b) => a.box.x - b.box.x).map(({ name }) => name);
const middleOf = ({ box }: Part['tags'][number]): number => box.x + box.w / 2;

/** Arcs and dots of the gang whose wiper is on a lug: those above its three lugs. */
function gangOf(part: Part, lugs: readonly string[]) {
  const own = part.tags.filter(({ name }) => lugs.includes(name)).map(middleOf);
  const [left, right] = [Math.min(...own) - 14, Math.max(...own) + 14];
  const inside = (p: Point | undefined): boolean => p !== undefined && p.x > left && p.x < right;
  return {
    middle: (left + right) / 2,
    arcs: part.paths.filter(({ curved, pieces }) => curved && inside(pieces[0]?.[0])),
    dots: part.circles.filter((circle) => circle.r < 6 && inside(circle)),
  };
}
/** The dot that is furthest from the wiper's hub: where the wiper is. */
const wiperOf = ({ dots }: ReturnType<typeof gangOf>): Point | undefined =>
  [...dots].sort((a, b) => a.y - b.y)[0];

describe.each(['solder-side', 'component-side'] as const)('from the %s', (view) => {
  it('each gang of a pot with two reads 3, 2, 1, or 1, 2, 3 from the other side', async () => {
    for (const [kit, name] of [
      [kitOf(bassKit()), 'blend'],
      [kitOf(bassKit()), 'controls'],
      [kitOf(dualBlendKit), 'blend'],
    ] as const) {
      const { tags } = await partOf(kit, name, { view });
      const [first, second] = [leftToRight(tags).slice(0, 3), leftToRight(tags).slice(3)];
      const gangs =
        view === 'solder-side' ? [first, second] : [second, first].map((gang) => [...gang].reverse());
      expect(gangs).toEqual([
        ['a3', 'a2', 'a1'],
        ['b3', 'b2', 'b1'],
      ]);
    }
  });

  it('a blend stands in the middle, and at the end of the rotation that a position is of', async () => {
    const kit = kitOf(bassKit());
    const side = view === 'solder-side' ? -1 : 1;
    for (const [state, turned] of [
      [undefined, 0],
      [0, 0],
      // Position 2 is the anticlockwise end, the side of lugs 1; position 3 the clockwise one.
      [1, -side],
      [2, side],
    ] as const) {
      const part = await partOf(kit, 'blend', { view, ...(state === undefined ? {} : { state }) });
      for (const gang of ['a', 'b']) {
        const found = gangOf(
          part,
          [1, 2, 3].map((n) => `${gang}${n}`),
        );
        const off = (wiperOf(found)?.x ?? Number.NaN) - found.middle;
        expect(Math.abs(off) < 2 ? 0 : Math.sign(off), `${gang} ${state}`).toBe(turned);
      }
    }
  });
});

it('a blend’s resistance is one half of each gang, on the side of a1 and of b3', async () => {
  const part = await partOf(kitOf(bassKit()), 'blend');
  for (const [gang, lug] of [
    ['a', 'a1'],
    ['b', 'b3'],
  ] as const) {
    const { arcs, middle } = gangOf(
      part,
      [1, 2, 3].map((n) => `${gang}${n}`),
    );
    const [thick, ...more] = arcs.filter(({ width }) => width > 4);
    expect(more).toEqual([]);
    const xs = thick?.pieces[0]?.map(({ x }) => x - middle) ?? [];
    const tag = part.tags.find(({ name }) => name === lug);
    const side = Math.sign((tag ? middleOf(tag) : Number.NaN) - middle);
    for (const x of xs) expect(x * side).toBeGreaterThan(-1);
    expect(Math.max(...xs.map(Math.abs))).toBeGreaterThan(15);
    // The rest of the circle is a conductor.
    expect(arcs.filter(({ width }) => width < 4)).toHaveLength(1);
  }
});

it('a blend’s wiper is seen whole, from its hub to the track, and no word lies on it', async () => {
  for (const state of [0, 1, 2]) {
    const part = await partOf(kitOf(bassKit()), 'blend', { state });
    for (const gang of ['a', 'b']) {
      const found = gangOf(
        part,
        [1, 2, 3].map((n) => `${gang}${n}`),
      );
      const tip = wiperOf(found);
      const touches = ({ x, y }: Point = { x: 0, y: 0 }): boolean =>
        Math.hypot(x - (tip?.x ?? 0), y - (tip?.y ?? 0)) < 1;
      // A line from the wiper's lug, in the gang's middle, ends where it touches.
      const arms = part.paths
        .flatMap(({ pieces }) => pieces)
        .filter((piece) => Math.abs((piece[0]?.x ?? 0) - found.middle) < 1 && touches(piece.at(-1)));
      expect(arms, `${gang} ${state}`).toHaveLength(1);
      for (const { middle, wide, words } of part.texts.filter(({ words }) => !/^[ab][123]$/.test(words)))
        expect(Math.abs(middle - (tip?.x ?? middle)), words).toBeGreaterThan(wide / 2);
    }
  }
});

it('the key says what the two halves of a blend’s track are, and only where there is one', async () => {
  const keyOf = async (kit: ReturnType<typeof kitOf>, theme: 'light' | 'print') =>
    (await drawn(kit, { theme })).key.map(({ words }) => words).filter((words) => words.includes('track'));
  expect(await keyOf(kitOf(bassKit()), 'light')).toEqual([
    'blend pot’s track: pale half has resistance, dark half has none',
  ]);
  expect(await keyOf(kitOf(bassKit()), 'print')).toEqual([
    'blend pot’s track: hatched half has resistance, plain half has none',
  ]);
  expect(await keyOf(kitOf(dualBlendKit), 'light')).toEqual([]);
});

it('a no-load track ends before its wiper at full, and words say what it is', async () => {
  const gapTo = async (fields: object): Promise<number> => {
    const part = await partOf(
      kitOf({ ...controlsKit(fields), kit: 'no-load' in fields ? 's-no-load' : 's-plain' }),
      'tone',
    );
    const { arcs, dots } = gangOf(part, ['1', '2', '3']);
    const ends = arcs.flatMap(({ pieces }) => [pieces[0]?.[0], pieces[0]?.at(-1)]);
    const tip = [...dots].sort((a, b) => b.r - a.r)[0];
    const words = part.texts.map((text) => text.words);
    expect(words.some((word) => word.includes('no-load'))).toBe('no-load' in fields);
    return Math.min(
      ...ends.map((end) => Math.hypot((end?.x ?? 0) - (tip?.x ?? 0), (end?.y ?? 0) - (tip?.y ?? 0))),
    );
  };
  const [plain, open] = [await gapTo({}), await gapTo({ 'no-load': true })];
  expect(plain).toBeLessThan(6);
  expect(open).toBeGreaterThan(10);
});

it('words tell one shaft from two', async () => {
  const words = async (kit: ReturnType<typeof kitOf>, name: string) =>
    (await partOf(kit, name)).texts.map((text) => text.words).join(' ');
  expect(await words(kitOf(bassKit()), 'controls')).toMatch(/inner shaft .*outer shaft/);
  expect(await words(kitOf(dualBlendKit), 'blend')).toMatch(/500 kΩ lin .*1 MΩ lin same shaft/);
});

it('a plain pot between two pickups is drawn in the middle, and in a left-handed build full is the other end', async () => {
  const plain = gangOf(await partOf(kitOf(plainBlendKit), 'blend'), ['1', '2', '3']);
  expect(Math.abs((wiperOf(plain)?.x ?? Number.NaN) - plain.middle)).toBeLessThan(2);
  const exchanged: Readonly<Record<string, string>> = {
    'volume.1': 'volume.3',
    'volume.3': 'volume.1',
    'tone.1': 'tone.3',
  };
  const { joints, ...rest } = controlsKit();
  const left = kitOf({
    ...rest,
    hand: 'left',
    joints: joints.map((joint) =>
      String(joint)
        .split(' > ')
        .map((end) => exchanged[end] ?? end)
        .join(' > '),
    ),
  });
  for (const name of ['volume', 'tone']) {
    const part = await partOf(left, name);
    const gang = gangOf(part, ['1', '2', '3']);
    const one = part.tags.find((tag) => tag.name === '1');
    const tip = [...gang.dots].sort((a, b) => b.r - a.r)[0];
    expect(Math.sign((tip?.x ?? 0) - gang.middle), name).toBe(
      Math.sign((one ? middleOf(one) : 0) - gang.middle),
    );
  }
});
