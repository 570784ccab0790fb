/** Which end of a switch is position 1, as its face shows it, from either side and for either hand. Source: the handbook, “Parts”. */
import { describe, expect, it } from 'vitest';
import { described, drawn, sample } from './draw.ts';
import type { Part, Text } from './reader.ts';

const views = ['solder-side', 'component-side'] as const;
const hands = ['right', 'left'] as const;

/** Throws joined to the common, position by position. */
const LEVERS: Readonly<Record<string, readonly (readonly number[])[]>> = {
  'wren-sh': [[1], [2], [3]],
  'kestrel-hss': [[1], [1, 2], [2], [2, 3], [3]],
};

const heightOf = ({ tags }: Part, lug: string): number => {
  const box = tags.find(({ name }) => name === lug)?.box;
  if (!box) throw new Error(`no lug ${lug}`);
  return box.y + box.h / 2;
};
/** Texts of a part that name no lug, and not the part. */
const marksOf = ({ texts, tags }: Part): readonly Text[] =>
  texts.filter(
    ({ words, middle, y }) =>
      /^(?:\d[\d,–]*|in|out)$/.test(words) &&
      !tags.some(({ box }) => middle >= box.x && middle <= box.x + box.w && y >= box.y && y <= box.y + box.h),
  );
const isBold = (svg: string, { words, size }: Text): boolean =>
  new RegExp(`font-size="${size}" font-weight="700"[^>]*>${words}<`).test(svg);

describe.each(Object.entries(LEVERS))('the lever of %s', (name, throws) => {
  describe.each(views)('from the %s', (view) => {
    it.each(hands)('%s-handed: each number is level with its contacts, between the poles', async (hand) => {
      for (const [state] of throws.entries()) {
        const { parts, svg } = await drawn(sample(name), { view, hand, state });
        const lever = parts.find((part) => part.name === 'selector');
        if (!lever) throw new Error('no lever');
        const marks = marksOf(lever);
        expect(marks.map(({ words }) => words)).toEqual(throws.map((_, i) => String(i + 1)));
        const columns = lever.tags.map(({ box }) => box.x + box.w / 2);
        for (const [i, mark] of marks.entries()) {
          const rows = (throws[i] ?? []).map((n) => heightOf(lever, `A${n}`));
          const mean = rows.reduce((sum, row) => sum + row, 0) / rows.length;
          expect(Math.abs(mark.y - 0.36 * mark.size - mean)).toBeLessThan(1);
          expect(mark.middle).toBeCloseTo((Math.min(...columns) + Math.max(...columns)) / 2, 1);
        }
        // The position that is drawn, and no other, is in bold.
        const group = /<g id="[^"]*-part-selector">.*?<\/g>/s.exec(svg)?.[0] ?? '';
        expect(marks.map((mark) => isBold(group, mark))).toEqual(throws.map((_, i) => i === state));
      }
    });
  });
});

const kit = described({
  kit: 'two-switches',
  title: 'S, a switch and a push-pull',
  parts: {
    neck: { kind: 'single-coil', label: 'Neck' },
    toggle: {
      kind: 'switch',
      label: 'Cut',
      lugs: { left: ['A1', 'A0', 'A2'], right: ['x'] },
      positions: [[['A0', 'A1']], [['A0', 'A2']], [['A0', 'A2', 'x']], [['A0', 'A2']]],
    },
    volume: { kind: 'push-pull', label: 'Volume', value: '500k' },
    output: { kind: 'jack' },
  },
  joints: [
    'neck.hot > volume.3',
    'neck.ground > volume.case',
    'volume.1 > volume.case',
    'volume.2 > output.tip',
    'output.sleeve > volume.case',
    'toggle.A0 > volume.3',
    'toggle.A1 > volume.2',
    'volume.A0 > volume.3',
    'volume.A2 > toggle.A2',
  ],
});

/** The mark nearest to a lug's contact: on its side of the plate, just above it. */
function markAt(part: Part, lug: string): string | undefined {
  const box = part.tags.find(({ name }) => name === lug)?.box;
  if (!box) throw new Error(`no lug ${lug}`);
  const near = marksOf(part).filter(
    ({ middle, y }) => Math.abs(middle - (box.x + box.w / 2)) < 45 && y < box.y + box.h / 2 && y > box.y - 16,
  );
  return near.length === 1 ? near[0]?.words : undefined;
}

describe.each(views)('a switch’s contacts from the %s', (view) => {
  it('say in which positions they are closed; a common says nothing', async () => {
    const { parts } = await drawn(kit, { view });
    const part = (name: string): Part => {
      const found = parts.find((one) => one.name === name);
      if (!found) throw new Error(name);
      return found;
    };
    const [toggle, pot] = [part('toggle'), part('volume')];
    expect(['A1', 'A0', 'A2', 'x'].map((lug) => markAt(toggle, lug))).toEqual(['1', undefined, '2–4', '3']);
    expect(['A1', 'A0', 'A2', 'B1', 'B0', 'B2'].map((lug) => markAt(pot, lug))).toEqual([
      'in',
      undefined,
      'out',
      'in',
      undefined,
      'out',
    ]);
  });
});

it('the sheet says once which switch each number of a card is of', async () => {
  const told = async (name: string) => (await drawn(sample(name))).texts.map(({ words }) => words).join(' ');
  expect(await told('kestrel-hss')).toContain('Card number: position of Selector, as on its face.');
  const { texts, cards } = await drawn(kit);
  const words = texts.map(({ words }) => words).join(' ');
  expect(words).toContain(
    'Card numbers: positions of Cut · Volume (1 pushed in, 2 pulled out), as on their faces.',
  );
  // Where one card is of several positions, what the stroke means.
  const merged = cards.map(({ badge }) => /\d+(\/\d+)+/.exec(badge)?.[0]).find((one) => one !== undefined);
  expect(merged).toBeDefined();
  const last = merged?.split('/').at(-1) ?? '';
  expect(words).toContain(
    `${merged}: the same in positions ${merged?.split('/').slice(0, -1).join(', ')} and ${last}.`,
  );
});

it('a position that is silent on purpose says so, and nothing of a signal path', async () => {
  const kill = described({
    kit: 'mute',
    title: 'Mute',
    parts: {
      neck: { kind: 'single-coil' },
      volume: { kind: 'pot', value: '250k' },
      mute: { kind: 'kill-button' },
      output: { kind: 'jack' },
    },
    joints: [
      'neck.hot > volume.3',
      'volume.2 > output.tip',
      'volume.1 > output.sleeve',
      'neck.ground > output.sleeve',
      'volume.case > output.sleeve',
      'mute.1 > output.tip',
      'mute.2 > volume.case',
    ],
  });
  const said = async (state: number) =>
    (await drawn(kill, { state })).texts.map(({ words }) => words).join(' ');
  expect(await said(0)).toContain('selected: signal path highlighted');
  expect(await said(1)).toContain('No output in this position.');
  expect(await said(1)).not.toContain('signal path');
});
