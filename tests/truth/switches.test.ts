/**
 * Every switch that has no pot behind it: where its lugs are, what touches in each position, and what its face says of it, read from
 * drawings from either side, upright and turned by a half. Source: the handbook, “Parts”; what it leaves open is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { inspect } from '../../src/inspect/index.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { arrangementSchema } from '../../src/place/arrangement.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { findErrors } from '../../src/solve/errors.ts';
import { drawingErrors, LOW } from '../random/proof.ts';
import { described, drawn } from './draw.ts';
import { type Drawing, inBox, jointErrors, type Part, type Point, read } from './reader.ts';

const views = ['solder-side', 'component-side'] as const;

interface Row {
  readonly part: object;
  /** From the top down, seen from the solder side. */
  readonly left: readonly string[];
  readonly right: readonly string[];
  /** For each position the groups that touch, a group's lugs with blanks between. */
  readonly touch: readonly (readonly string[])[];
  /** Words on the face, each with the positions it is in bold in; the same for each where it stands twice. */
  readonly words: Readonly<Record<string, readonly number[]>>;
  /** How it is wired between two single coils, `neck` and `bridge`, and `volume`; and what sounds then. */
  readonly joints: readonly (string | object)[];
  readonly sounds: readonly (readonly string[])[];
  /** What else the kit says. */
  readonly more?: object;
}

const upTo = (n: number): readonly number[] => Array.from({ length: n }, (_, i) => i + 1);
const column = (pole: string, throws: number): readonly string[] => [
  ...upTo(throws).map((n) => `${pole}${n}`),
  `${pole}0`,
];
const numbers = (count: number): Row['words'] => Object.fromEntries(upTo(count).map((n) => [String(n), [n]]));
const BOTH = ['neck', 'bridge'];
const onePickupEach = ['bridge.hot > s.A1', 'neck.hot > s.A2', 's.A0 > volume.3'];
const GROUNDED = ['neck.ground > volume.case', 'bridge.ground > volume.case'];

const ROWS: Readonly<Record<string, Row>> = {
  'lever-4': {
    part: { kind: 'lever-4' },
    left: column('A', 4),
    right: column('B', 4),
    touch: upTo(4).map((n) => [`A0 A${n}`, `B0 B${n}`]),
    words: numbers(4),
    // Bridge, both in parallel, neck, both in series.
    joints: [
      'bridge.hot > s.A1',
      { jumper: 's.A1 > s.A2' },
      's.A0 > volume.3',
      'neck.hot > volume.3',
      'neck.ground > s.B0',
      's.B2 > volume.case',
      { jumper: 's.B2 > s.B3' },
      's.B4 > bridge.hot',
      'bridge.ground > volume.case',
    ],
    sounds: [['bridge'], BOTH, ['neck'], BOTH],
  },
  'lever-5-4p': {
    part: { kind: 'lever-5-4p' },
    left: [...column('A', 5), ...column('C', 5)],
    right: [...column('B', 5), ...column('D', 5)],
    touch: upTo(5).map((n) => [`A0 A${n}`, `B0 B${n}`, `C0 C${n}`, `D0 D${n}`]),
    words: numbers(5),
    // Each pole brings in a pickup: bridge by A and D, neck by B and C.
    joints: [
      'bridge.hot > s.A1',
      { jumper: 's.A1 > s.A2' },
      'neck.hot > s.B2',
      { jumper: 's.B2 > s.B3' },
      'neck.hot > s.C4',
      'bridge.hot > s.D5',
      { jumper: 's.A0 > s.B0' },
      { jumper: 's.C0 > s.D0' },
      's.A0 > volume.3',
      's.C0 > volume.3',
      ...GROUNDED,
    ],
    sounds: [['bridge'], BOTH, ['neck'], ['neck'], ['bridge']],
  },
  'toggle-3': {
    part: { kind: 'toggle-3' },
    left: ['1', 'common', '2'],
    right: ['frame'],
    touch: [['1 common'], ['1 2 common'], ['2 common']],
    words: { 'up, middle': [1, 2], 'middle, down': [2, 3] },
    joints: [
      'bridge.hot > s.1',
      'neck.hot > s.2',
      's.common > volume.3',
      's.frame > volume.case',
      ...GROUNDED,
    ],
    sounds: [['bridge'], BOTH, ['neck']],
  },
  'mini toggle, on-on': {
    part: { kind: 'mini-toggle', action: 'on-on' },
    left: ['A1', 'A0', 'A2'],
    right: ['B1', 'B0', 'B2'],
    touch: [
      ['A0 A1', 'B0 B1'],
      ['A0 A2', 'B0 B2'],
    ],
    words: { down: [1], up: [2] },
    joints: [...onePickupEach, ...GROUNDED],
    sounds: [['bridge'], ['neck']],
  },
  'mini toggle, on-on, one pole': {
    part: { kind: 'mini-toggle', action: 'on-on', poles: 1 },
    left: ['A1', 'A0', 'A2'],
    right: [],
    touch: [['A0 A1'], ['A0 A2']],
    words: { down: [1], up: [2] },
    joints: [...onePickupEach, ...GROUNDED],
    sounds: [['bridge'], ['neck']],
  },
  'mini toggle, on-off-on': {
    part: { kind: 'mini-toggle', action: 'on-off-on' },
    left: ['A1', 'A0', 'A2'],
    right: ['B1', 'B0', 'B2'],
    touch: [['A0 A1', 'B0 B1'], [], ['A0 A2', 'B0 B2']],
    more: { intended: { silent: [{ s: 'centre' }] } },
    words: { down: [1], up: [3] },
    joints: [...onePickupEach, ...GROUNDED],
    sounds: [['bridge'], [], ['neck']],
  },
  'mini toggle, on-on-on': {
    part: { kind: 'mini-toggle', action: 'on-on-on', poles: 2 },
    left: ['A1', 'A0', 'A2'],
    right: ['B1', 'B0', 'B2'],
    touch: [
      ['A0 A1', 'B0 B1'],
      ['A0 A1', 'B0 B2'],
      ['A0 A2', 'B0 B2'],
    ],
    words: { 'down, centre': [1, 2], up: [3], down: [1], 'centre, up': [2, 3] },
    joints: [
      'bridge.hot > s.A1',
      'neck.hot > s.B2',
      's.A0 > volume.3',
      { jumper: 's.A0 > s.B0' },
      ...GROUNDED,
    ],
    sounds: [['bridge'], BOTH, ['neck']],
  },
  'rotary, two poles': {
    part: { kind: 'rotary', poles: 2, throws: 3, shorting: true },
    left: ['A0', 'A1', 'A2', 'A3'],
    right: ['B0', 'B1', 'B2', 'B3'],
    touch: upTo(3).map((n) => [`A0 A${n}`, `B0 B${n}`]),
    words: numbers(3),
    joints: [
      'bridge.hot > s.A1',
      { jumper: 's.A1 > s.A2' },
      'neck.hot > s.B3',
      { jumper: 's.B2 > s.B3' },
      { jumper: 's.A0 > s.B0' },
      's.A0 > volume.3',
      ...GROUNDED,
    ],
    sounds: [['bridge'], BOTH, ['neck']],
  },
  'rotary, one pole of twelve': {
    part: { kind: 'rotary', throws: 12 },
    left: ['A0', ...upTo(6).map((n) => `A${n}`)],
    right: upTo(6).map((n) => `A${n + 6}`),
    touch: upTo(12).map((n) => [`A0 A${n}`]),
    words: numbers(12),
    joints: [
      'bridge.hot > s.A1',
      ...upTo(10).map((n) => ({ jumper: `s.A${n} > s.A${n + 1}` })),
      'neck.hot > s.A12',
      's.A0 > volume.3',
      ...GROUNDED,
    ],
    sounds: [...Array.from({ length: 11 }, () => ['bridge']), ['neck']],
  },
  'rotary, four poles of six': {
    part: { kind: 'rotary', poles: 4, throws: 6 },
    left: ['A', 'B'].flatMap((pole) => [0, ...upTo(6)].map((n) => `${pole}${n}`)),
    right: ['C', 'D'].flatMap((pole) => [0, ...upTo(6)].map((n) => `${pole}${n}`)),
    touch: upTo(6).map((n) => ['A', 'B', 'C', 'D'].map((pole) => `${pole}0 ${pole}${n}`)),
    words: numbers(6),
    joints: [
      'bridge.hot > s.A1',
      ...upTo(2).map((n) => ({ jumper: `s.A${n} > s.A${n + 1}` })),
      'neck.hot > s.D6',
      ...upTo(3).map((n) => ({ jumper: `s.D${n + 2} > s.D${n + 3}` })),
      's.A0 > volume.3',
      's.D0 > volume.3',
      ...GROUNDED,
    ],
    sounds: [['bridge'], ['bridge'], BOTH, ['neck'], ['neck'], ['neck']],
  },
  slide: {
    part: { kind: 'slide' },
    left: ['A1', 'A0', 'A2'],
    right: ['B1', 'B0', 'B2'],
    touch: [
      ['A0 A1', 'B0 B1'],
      ['A0 A2', 'B0 B2'],
    ],
    words: { up: [1], down: [2] },
    joints: [...onePickupEach, ...GROUNDED],
    sounds: [['bridge'], ['neck']],
  },
  'slide, one pole': {
    part: { kind: 'slide', poles: 1 },
    left: ['A1', 'A0', 'A2'],
    right: [],
    touch: [['A0 A1'], ['A0 A2']],
    words: { up: [1], down: [2] },
    joints: [...onePickupEach, ...GROUNDED],
    sounds: [['bridge'], ['neck']],
  },
  'kill button': {
    part: { kind: 'kill-button' },
    left: ['1'],
    right: ['2'],
    touch: [[], ['1 2']],
    words: { 'released: open': [1], 'pressed: closed': [2] },
    // Across the signal.
    joints: [
      'bridge.hot > volume.3',
      'neck.hot > volume.3',
      's.1 > volume.3',
      's.2 > volume.case',
      ...GROUNDED,
    ],
    sounds: [BOTH, []],
  },
  'kill button, normally closed': {
    part: { kind: 'kill-button', contact: 'normally-closed' },
    left: ['1'],
    right: ['2'],
    touch: [['1 2'], []],
    words: { 'released: closed': [1], 'pressed: open': [2] },
    // In the signal.
    joints: ['bridge.hot > s.1', 'neck.hot > s.1', 's.2 > volume.3', ...GROUNDED],
    sounds: [BOTH, []],
  },
  'described in the kit, with names and a frame': {
    part: {
      kind: 'switch',
      lugs: { left: ['A1', 'A0', 'A2'], right: ['shell'] },
      positions: [[['A0', 'A1']], [['A0', 'A1', 'A2']], [['A0', 'A2']]],
      called: ['fore', 'between', 'aft'],
      frame: 'shell',
    },
    left: ['A1', 'A0', 'A2'],
    right: ['shell'],
    touch: [['A0 A1'], ['A0 A1 A2'], ['A0 A2']],
    words: { 'fore, between': [1, 2], 'between, aft': [2, 3] },
    joints: [...onePickupEach, 's.shell > volume.case', ...GROUNDED],
    sounds: [['bridge'], BOTH, ['neck']],
  },
};

const kits = Object.entries(ROWS).map(([name, { part, joints, more }], i) =>
  described({
    kit: `switch-${i}`,
    title: `SS, ${name}`,
    ...more,
    parts: {
      neck: { kind: 'single-coil' },
      bridge: { kind: 'single-coil' },
      s: { label: 'Selector', ...part },
      volume: { kind: 'pot', value: '250k' },
      output: { kind: 'jack' },
    },
    joints: [
      { bend: 'volume.1 > volume.case' },
      'output.sleeve > volume.case',
      ...joints,
      'volume.2 > output.tip',
    ],
  }),
);

const switchIn = ({ parts }: Drawing): Part => {
  const found = parts.find(({ name }) => name === 's');
  if (!found) throw new Error('no switch');
  return found;
};

const onSegment = (p: Point, a: Point, b: Point): boolean => {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = Math.hypot(dx, dy);
  const along = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (length || 1);
  const off = Math.abs((p.x - a.x) * dy - (p.y - a.y) * dx) / (length || 1);
  return off < 1 && along > -1 && along < length + 1;
};

/** Groups of lugs that broad lines join: each ends on thin lines, and these begin at lugs. */
function touching({ paths, tags, rects }: Part): readonly string[] {
  // What is as broad and has the plate's own colour is the room round a line that passes over another.
  const plates = new Set(rects.filter(({ w, h }) => w > 60 && h > 60).map(({ fill }) => fill));
  const broad = paths.filter(({ width, stroke }) => width >= 5 && !plates.has(stroke));
  const thin = paths.filter(({ width }) => width < 5).flatMap(({ pieces }) => pieces);
  const leads = thin.flatMap((piece) => {
    const [start] = piece;
    const lug = start && tags.find(({ box }) => inBox(box, start, 2));
    return lug ? [{ lug: lug.name, piece }] : [];
  });
  expect(leads.map(({ lug }) => lug).sort()).toEqual(tags.map(({ name }) => name).sort());
  const groups: Set<string>[] = [];
  for (const { pieces } of broad) {
    const ends = pieces.flatMap((piece) => [piece[0], piece.at(-1)]);
    const met = new Set(
      leads
        .filter(({ piece }) =>
          ends.some((end) =>
            piece.some((a, i) => {
              const b = piece[i + 1];
              return end && b && onSegment(end, a, b);
            }),
          ),
        )
        .map(({ lug }) => lug),
    );
    const with_ = groups.filter((group) => [...met].some((lug) => group.has(lug)));
    const joined = new Set([...met, ...with_.flatMap((group) => [...group])]);
    for (const one of with_) groups.splice(groups.indexOf(one), 1);
    groups.push(joined);
  }
  return groups.map((group) => [...group].sort().join(' ')).sort();
}
const sorted = (groups: readonly string[]): readonly string[] =>
  groups.map((group) => group.split(' ').sort().join(' ')).sort();

/** Names of the lugs at either edge, from the top down. */
function edges({ tags }: Part): readonly (readonly string[])[] {
  const xs = tags.map(({ box }) => box.x);
  const middle = (Math.min(...xs) + Math.max(...tags.map(({ box }) => box.x + box.w))) / 2;
  const down = [...tags].sort((a, b) => a.box.y - b.box.y);
  const at = (left: boolean) =>
    down.filter(({ box }) => box.x + box.w / 2 < middle === left).map(({ name }) => name);
  return tags.every(({ box }) => box.x === xs[0])
    ? [down.map(({ name }) => name), []]
    : [at(true), at(false)];
}

/** Whether each word of the face that says a position is in bold: all that are written so, alike. */
function boldOf(svg: string, word: string): readonly boolean[] {
  const group = /<g id="[^"]*-part-s">.*?<\/g>/s.exec(svg)?.[0] ?? '';
  return [...group.matchAll(/<text([^>]*)>([^<]*)<\/text>/g)]
    .filter(([, , text]) => text === word)
    .map(([, attributes = '']) => attributes.includes('font-weight="700"'));
}

/** The word is a lug's name too, as those of the toggle are: its tag is always bold. */
const isLug = (row: Row, word: string): boolean => [...row.left, ...row.right].includes(word);

describe.each(Object.entries(ROWS).map(([name, row], i) => ({ name, row, kit: kits[i] })))(
  '$name',
  ({ row, kit }) => {
    if (!kit) throw new Error('no kit');

    it.each(views)('has its lugs in order, from the %s', async (view) => {
      for (const hand of ['right', 'left'] as const) {
        const [one = [], other = []] = edges(switchIn(await drawn(kit, { view, hand })));
        if (row.right.length === 0) expect(one).toEqual(row.left);
        else
          expect([one, other]).toEqual(
            view === 'solder-side' ? [row.left, row.right] : [row.right, row.left],
          );
      }
    });

    it.each(views)(
      'touches what it should in each position, and says which it is, from the %s',
      async (view) => {
        for (const [state, groups] of row.touch.entries()) {
          const drawing = await drawn(kit, { view, state });
          expect(touching(switchIn(drawing)), `position ${state + 1}`).toEqual(sorted(groups));
          for (const [word, positions] of Object.entries(row.words)) {
            if (isLug(row, word)) continue;
            const bold = boldOf(drawing.svg, word);
            expect(bold.length, word).toBeGreaterThan(0);
            expect(new Set(bold), `${word} in position ${state + 1}`).toEqual(
              new Set([positions.includes(state + 1)]),
            );
          }
        }
      },
    );

    it('is drawn in its first position where none is asked for', async () =>
      expect(touching(switchIn(await drawn(kit)))).toEqual(sorted(row.touch[0] ?? [])));

    it('sounds as it is wired, without an error', () => {
      expect(findErrors(kit)).toEqual([]);
      expect(buildCircuit(kit).states.map(({ sounding }) => [...sounding].sort())).toEqual(
        row.sounds.map((names) => [...names].sort()),
      );
    });

    it.each(views)(
      'turned by a half, from the %s: the same lugs in the other order, the same contacts and joints',
      async (view) => {
        const turned = arrangementSchema.parse({
          arrangement: 'turned',
          about: 'The switch upside down.',
          seats: [{ seat: 'switch', at: [30, 0], turn: 2 }],
        });
        const prepared = await prepare(kit, turned, { effort: { steps: 0, seed: 1 } });
        for (const [state, groups] of row.touch.entries()) {
          const part = switchIn(read(render(prepared, { view, state }).svg));
          expect(touching(part)).toEqual(sorted(groups));
          const up = [row.left, row.right].map((names) => [...names].reverse());
          const [one, other] = edges(part);
          if (row.right.length === 0) expect(one).toEqual(up[0]);
          else expect([one, other]).toEqual(view === 'solder-side' ? [up[1], up[0]] : up);
        }
        const { svg } = render(prepared, { view });
        expect(jointErrors(read(svg), kit)).toEqual([]);
        expect(inspect(svg, kit)).toEqual([]);
      },
    );

    it('is drawn without a finding, and reads back as it is described', async () => {
      for (const view of views)
        for (const arrangement of ['free-flow', 'plate-row'])
          for (const state of [undefined, row.touch.length - 1]) {
            const drawing = await drawn(kit, {
              view,
              arrangement,
              ...(state === undefined ? {} : { state }),
            });
            expect(inspect(drawing.svg, kit)).toEqual([]);
            expect(jointErrors(drawing, kit)).toEqual([]);
          }
    });
  },
);

it('several switches with long names stand in every arrangement, apart and without a finding', {
  timeout: 120_000,
}, async () => {
  const kit = described({
    kit: 'several-switches',
    title: 'SS, four-way lever, mini toggle, button',
    parts: {
      neck: { kind: 'single-coil' },
      bridge: { kind: 'single-coil' },
      selector: { kind: 'lever-4', label: 'A very long name of a selector' },
      cut: { kind: 'mini-toggle', action: 'on-off-on', poles: 1, label: 'Extraordinarylabelwithoutspace' },
      mute: { kind: 'kill-button', contact: 'normally-closed', label: 'Mute of the whole instrument' },
      volume: { kind: 'pot', value: '250k' },
      output: { kind: 'jack' },
    },
    joints: [
      { bend: 'volume.1 > volume.case' },
      'output.sleeve > volume.case',
      ...GROUNDED,
      'bridge.hot > selector.A1',
      'neck.hot > selector.A2',
      'neck.hot > selector.B3',
      'bridge.hot > selector.B4',
      'selector.A0 > mute.1',
      'selector.B0 > mute.1',
      'mute.2 > cut.A0',
      'cut.A1 > volume.3',
      'cut.A2 > volume.3',
      'volume.2 > output.tip',
    ],
  });
  expect(await drawingErrors(kit, 1, LOW)).toEqual([]);
});
