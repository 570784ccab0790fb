/** What a part looks like from either side, whichever hand it is for. Source: the handbook, “Parts”. */
import { describe, expect, it } from 'vitest';
import { described, drawn, sample, samples } from './draw.ts';
import { type Drawing, jointErrors, type Part, type Point } from './reader.ts';

const views = ['solder-side', 'component-side'] as const;
const hands = ['right', 'left'] as const;
const near = (a: Point | undefined, b: Point | undefined): number =>
  a && b ? Math.hypot(a.x - b.x, a.y - b.y) : Infinity;

const leftToRight = ({ tags }: Part): readonly string[] =>
  [...tags].sort((a, b) => a.box.x - b.box.x).map(({ name }) => name);

/** The arc of a pot's track by its two ends, each with the lug that its stem leads to. */
function trackOf(part: Part): readonly { readonly end: Point; readonly lug: string }[] {
  const arc = part.paths.find(({ curved }) => curved);
  const ends = [arc?.pieces[0]?.[0], arc?.pieces[0]?.at(-1)];
  return ends.flatMap((end) => {
    const stem = part.paths
      .filter(({ curved }) => !curved)
      .flatMap(({ pieces }) => pieces)
      .find((piece) => near(piece[0], end) < 1);
    const foot = stem?.at(-1);
    const lug = part.tags.find(
      ({ box }) => foot && Math.abs(box.x + box.w / 2 - foot.x) < 1 && foot.y <= box.y + 1,
    );
    return end && lug ? [{ end, lug: lug.name }] : [];
  });
}

/** The lug whose end of the track the wiper's arm points to: the line that comes from lug 2. */
function wiperAt(part: Part): string | undefined {
  const two = part.tags.find(({ name }) => name === '2')?.box;
  const arm = part.paths
    .flatMap(({ pieces }) => pieces)
    .find((piece) => two && piece.length > 2 && Math.abs((piece[0]?.x ?? 0) - (two.x + two.w / 2)) < 1);
  const tip = arm?.at(-1);
  return [...trackOf(part)].sort((a, b) => near(a.end, tip) - near(b.end, tip))[0]?.lug;
}

const pots = ({ parts }: Drawing): readonly Part[] => parts.filter(({ pot }) => pot !== undefined);

describe.each(views)('from the %s', (view) => {
  describe.each(hands)('%s-handed', (hand) => {
    it('a pot with its lugs down reads 3, 2, 1 from the solder side and 1, 2, 3 from the component side', async () => {
      const found = pots(await drawn(sample('kestrel-hss'), { view, hand }));
      expect(found).toHaveLength(3);
      for (const part of found)
        expect(leftToRight(part), part.name).toEqual(
          view === 'solder-side' ? ['3', '2', '1'] : ['1', '2', '3'],
        );
    });
    it('a pot’s lugs hang below its case, and its wiper stands at full at the end that lug 3 is', async () => {
      for (const part of pots(await drawn(sample('kestrel-hss'), { view, hand }))) {
        for (const { box } of part.tags) expect(box.y).toBeGreaterThan(part.pot?.y ?? Infinity);
        expect(
          trackOf(part)
            .map(({ lug }) => lug)
            .sort(),
        ).toEqual(['1', '3']);
        expect(wiperAt(part)).toBe('3');
      }
    });
    it.each(['wren-sh', 'kestrel-hss'])(
      '%s: a lever’s poles side by side, their throws in order, the common last',
      async (name) => {
        const { parts } = await drawn(sample(name), { view, hand });
        const lever = parts.find((part) => part.name === 'selector');
        const columns = new Map<number, string[]>();
        for (const { name: lug, box } of [...(lever?.tags ?? [])].sort((a, b) => a.box.y - b.box.y))
          columns.set(box.x, [...(columns.get(box.x) ?? []), lug]);
        const poles = [...columns].sort(([a], [b]) => a - b).map(([, lugs]) => lugs);
        const [a, b] = ['A', 'B'].map((pole) => [1, 2, 3, 0].map((n) => `${pole}${n}`));
        expect(poles).toEqual(view === 'solder-side' ? [a, b] : [b, a]);
      },
    );
  });
});

/** Throws joined to the common, position by position; source: the handbook, “Parts”. */
const CONTACTS: Readonly<Record<string, readonly (readonly number[])[]>> = {
  'wren-sh': [[1], [2], [3]],
  'kestrel-hss': [[1], [1, 2], [2], [2, 3], [3]],
};

describe.each(Object.entries(CONTACTS))('the contacts of %s', (name, table) => {
  it.each(views)('in each position, from the %s', async (view) => {
    for (const [state, throws] of table.entries()) {
      const { parts } = await drawn(sample(name), { view, state });
      const lever = parts.find((part) => part.name === 'selector');
      const bridges = lever?.paths.filter(({ width }) => width >= 5) ?? [];
      const closed = (lever?.tags ?? []).filter(({ name: lug, box }) => {
        const side = (box.x + box.w / 2) as number;
        const others = lever?.tags.map((tag) => tag.box.x + tag.box.w / 2) ?? [];
        const middle = (Math.min(...others) + Math.max(...others)) / 2;
        return (
          !lug.endsWith('0') &&
          bridges.some(({ pieces }) => {
            const p = pieces[0]?.[0];
            return p && Math.abs(p.y - (box.y + box.h / 2)) < 1 && p.x < middle === side < middle;
          })
        );
      });
      expect(closed.map((tag) => tag.name).sort()).toEqual(
        ['A', 'B'].flatMap((pole) => throws.map((n) => `${pole}${n}`)).sort(),
      );
    }
  });
});

describe('joints read from the picture are those of the kit', () => {
  it.each(samples)('%s', async (name) => {
    const kit = sample(name);
    for (const view of views)
      for (const hand of hands)
        for (const arrangement of [kit.arrangement, 'free-flow'])
          expect(jointErrors(await drawn(kit, { view, hand, arrangement }), kit)).toEqual([]);
  });
});

it('two pickups in series stand apart, and the joint between them is drawn', async () => {
  const kit = described({
    kit: 'series',
    title: 'SS in series, volume',
    parts: {
      neck: { kind: 'single-coil' },
      bridge: { kind: 'single-coil' },
      volume: { kind: 'pot', value: '250k' },
      output: { kind: 'jack' },
    },
    joints: [
      'neck.hot > volume.3',
      'neck.ground > bridge.hot',
      'bridge.ground > volume.case',
      'volume.1 > volume.case',
      'volume.2 > output.tip',
      'output.sleeve > volume.case',
    ],
  });
  const drawing = await drawn(kit);
  expect(jointErrors(drawing, kit)).toEqual([]);
  const boxes = ['neck', 'bridge'].map((name) => drawing.parts.find((part) => part.name === name)?.rects[0]);
  const [a, b] = boxes;
  if (!a || !b) throw new Error('no pickups');
  expect(a.x + a.w <= b.x || b.x + b.w <= a.x || a.y + a.h <= b.y || b.y + b.h <= a.y).toBe(true);
});
