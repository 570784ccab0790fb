/** Every kind of part, from either side, for either hand, in every position of it: one small sheet of pictures a kind. */
import { describe, expect, it } from 'vitest';
import { hands, type Kit, views } from '../../src/describe/kit.ts';
import { kitFromValue } from '../../src/describe/read.ts';
import { findArrangement } from '../../src/files/layouts.ts';
import { contactsOf, type Kind, kinds } from '../../src/parts/index.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { extent } from '../../src/place/frame.ts';
import { flipped } from '../../src/place/view.ts';
import { expectPicture } from './picture.ts';

const base = {
  parts: { pickup: { kind: 'single-coil', resistance: '6.1k' }, output: { kind: 'jack' } },
  joints: [{ wire: 'pickup.hot > output.tip' }, { wire: 'pickup.ground > output.sleeve' }],
};

/** For each kind the part that is shown, and how it is joined. */
const shown: Readonly<Record<Kind, { readonly part: object; readonly joints: readonly object[] }>> = {
  'single-coil': {
    part: { kind: 'single-coil', resistance: '5.7k' },
    joints: wires('hot > output.tip', 'ground > output.sleeve'),
  },
  humbucker: {
    part: { kind: 'humbucker', resistance: '8.2k' },
    joints: wires('hot > output.tip', 'ground > output.sleeve'),
  },
  'four-lead-humbucker': {
    part: { kind: 'four-lead-humbucker', resistance: '8.2k' },
    joints: wires(
      'a-start > output.tip',
      'a-finish > shown.b-finish',
      'b-start > output.sleeve',
      'shield > output.sleeve',
    ),
  },
  pot: {
    part: { kind: 'pot', value: '250k' },
    joints: wires('3 > output.tip', '1 > output.sleeve', 'case > output.sleeve'),
  },
  'lever-3': { part: { kind: 'lever-3' }, joints: wires('A0 > output.tip', 'B2 > pickup.hot') },
  'lever-5': { part: { kind: 'lever-5' }, joints: wires('A0 > output.tip', 'B2 > pickup.hot') },
  resistor: { part: { kind: 'resistor', value: '237k', tolerance: '1%' }, joints: legs() },
  capacitor: { part: { kind: 'capacitor', value: '22n' }, joints: legs() },
  jack: { part: { kind: 'jack' }, joints: [] },
  'push-pull': {
    part: { kind: 'push-pull', value: '500k' },
    joints: wires('3 > output.tip', '1 > output.sleeve', 'case > output.sleeve', 'A0 > pickup.hot'),
  },
  switch: {
    part: {
      kind: 'switch',
      lugs: { left: ['on', 'A0', 'A2'], right: ['common', 'B1'] },
      positions: [
        [['on', 'A0']],
        [
          ['A0', 'B1', 'common'],
          ['on', 'A2'],
        ],
        [],
      ],
    },
    joints: wires('A0 > output.tip', 'common > pickup.hot'),
  },
  'dual-pot': {
    part: { kind: 'dual-pot', value: '250k' },
    joints: wires('a3 > output.tip', 'b2 > pickup.hot', 'a1 > output.sleeve', 'case > output.sleeve'),
  },
  'stacked-pot': {
    part: {
      kind: 'stacked-pot',
      a: { value: '500k' },
      b: { value: '250k', taper: 'linear', 'no-load': true },
    },
    joints: wires('a3 > output.tip', 'b2 > pickup.hot', 'a1 > output.sleeve', 'case > output.sleeve'),
  },
  blend: {
    part: { kind: 'blend', value: '250k' },
    joints: wires('a3 > output.tip', 'b2 > pickup.hot', 'a1 > output.sleeve', 'case > output.sleeve'),
  },
  'lever-4': { part: { kind: 'lever-4' }, joints: wires('A0 > output.tip', 'B4 > pickup.hot') },
  'lever-5-4p': { part: { kind: 'lever-5-4p' }, joints: wires('A0 > output.tip', 'D5 > pickup.hot') },
  'toggle-3': {
    part: { kind: 'toggle-3' },
    joints: wires('common > output.tip', '1 > pickup.hot', 'frame > output.sleeve'),
  },
  'mini-toggle': {
    part: { kind: 'mini-toggle', action: 'on-on-on' },
    joints: wires('A0 > output.tip', 'B1 > pickup.hot'),
  },
  rotary: {
    part: { kind: 'rotary', poles: 2, throws: 4, shorting: true },
    joints: wires('A0 > output.tip', 'B4 > pickup.hot'),
  },
  slide: { part: { kind: 'slide' }, joints: wires('A0 > output.tip', 'B1 > pickup.hot') },
  'kill-button': { part: { kind: 'kill-button' }, joints: wires('1 > output.tip', '2 > output.sleeve') },
  'ground-point': { part: { kind: 'ground-point', label: 'Strings' }, joints: wires('1 > output.sleeve') },
  'stereo-jack': { part: { kind: 'stereo-jack' }, joints: [{ wire: 'pickup.hot > output.ring' }] },
};

function wires(...ends: readonly string[]): readonly object[] {
  return ends.map((end) => ({ wire: `shown.${end}` }));
}
function legs(): readonly object[] {
  return [{ leg: 'shown.1 > output.tip' }, { leg: 'shown.2 > output.sleeve' }];
}

/** A jack takes the place of the one that every kit has. */
const isJack = (kind: Kind): boolean => kinds[kind].is.some((trait) => trait === 'jack');

function kitWith(kind: Kind): Kit {
  const { part, joints } = shown[kind];
  const own = isJack(kind) ? 'output' : 'shown';
  const { kit, problems } = kitFromValue(
    {
      kit: `part-${kind}`,
      title: kind,
      parts: {
        ...base.parts,
        ...(own === 'shown' ? { shown: { label: 'Shown', ...part } } : { output: part }),
      },
      joints: [...base.joints, ...joints],
    },
    'parts.ts',
  );
  if (!kit) throw new Error(JSON.stringify(problems));
  return kit;
}

/** Pots made of two are wider than the others, as is a toggle with its frame; some switches are longer. */
const WIDER: Partial<Record<Kind, number>> = {
  'push-pull': 500,
  'dual-pot': 500,
  'stacked-pot': 500,
  blend: 500,
  'toggle-3': 360,
};
const LONGER: Partial<Record<Kind, number>> = { 'lever-4': 300, rotary: 330, 'lever-5-4p': 660 };
const cellOf = (kind: Kind) => ({ width: WIDER[kind] ?? 320, height: LONGER[kind] ?? 260 });

async function sheet(kind: Kind): Promise<string> {
  const CELL = cellOf(kind);
  const kit = kitWith(kind);
  const name = isJack(kind) ? 'output' : 'shown';
  const part = kit.parts.find((one) => one.name === name);
  const arrangement = findArrangement('free-flow');
  if (!part || typeof arrangement === 'string') throw new Error('nothing to show');
  const states = contactsOf(part).length === 0 ? [undefined] : contactsOf(part).map((_, i) => i);
  const rows: string[][] = [];
  for (const hand of hands) {
    const prepared = await prepare(kit, arrangement, { hand, effort: { steps: 0, seed: 1 } });
    for (const view of views) {
      rows.push(
        states.map((state) => {
          const { svg } = render(prepared, { view, ...(state === undefined ? {} : { state }) });
          const seen = view === 'component-side' ? flipped(prepared.placement) : prepared.placement;
          const frame = seen.parts.find((one) => one.part.name === name)?.frame;
          if (!frame) throw new Error('not placed');
          const group = new RegExp(`<g id="[^"]*-part-${name}">.*?</g>`, 's').exec(svg)?.[0] ?? '';
          const from = { x: frame.x + (extent(frame).width - CELL.width) / 2, y: frame.y - 16 };
          return `<g transform="translate(${-from.x} ${-from.y})">${group.replace(/ id="[^"]*"/, '')}</g>`;
        }),
      );
    }
  }
  const across = states.length * CELL.width;
  const down = rows.length * CELL.height;
  const cells = rows.flatMap((row, r) =>
    row.map((cell, c) => `<g transform="translate(${c * CELL.width} ${r * CELL.height})">${cell}</g>`),
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${across} ${down}" width="${across}" height="${down}" font-family="Inter" text-anchor="middle"><rect x="0" y="0" width="${across}" height="${down}" fill="#ffffff"></rect>${cells.join('')}</svg>`;
}

describe('every kind of part', () => {
  it.each(Object.keys(kinds) as Kind[])('%s', async (kind) => {
    const svg = await sheet(kind);
    expect(svg.match(/<g transform/g)?.length).toBeGreaterThanOrEqual(8);
    await expectPicture(`part-${kind}`, svg, contactsWide(kind));
  });
});

const WIDE: Partial<Record<Kind, number>> = {
  'lever-3': 480,
  'lever-4': 640,
  'lever-5': 800,
  'lever-5-4p': 800,
  switch: 640,
  'push-pull': 640,
  'toggle-3': 540,
  'mini-toggle': 480,
  rotary: 640,
  slide: 320,
  'kill-button': 320,
};
const contactsWide = (kind: Kind): number => WIDE[kind] ?? 220;
