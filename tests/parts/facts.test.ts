/** What each kind of part is taken to be where a kit does not say, and how it may be shown. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { farads, fraction, henries, LABEL_LONGEST, ohms } from '../../src/parts/fields.ts';
import {
  componentOf,
  contactsOf,
  type Kind,
  kinds,
  lugsOf,
  mayMirror,
  type Part,
  usualValuesOf,
  withOhms,
} from '../../src/parts/index.ts';
import { LUG_ROOM, make } from '../../src/parts/kind.ts';
import { newResistor } from '../../src/parts/resistor.ts';
import { makeKit } from '../analyse/kits.ts';

const partOf = (kind: Kind, written: object = {}): Part => {
  const [part] = makeKit({ parts: { x: { kind, ...written } }, joints: [] }).parts;
  if (!part) throw new Error('no part');
  return part;
};
const assumed = (value: unknown) => ({ value, from: 'default' });
const told = (value: unknown) => ({ value, from: 'given' });

describe('what is taken where nothing is written', () => {
  it('a single coil has 6 kΩ, 2.4 H and 110 pF, and was made for pots of 250 kΩ', () =>
    expect(partOf('single-coil')).toMatchObject({
      resistance: assumed(6000),
      inductance: assumed(2.4),
      capacitance: assumed(110e-12),
      reference: { volume: assumed(250e3), tone: assumed(250e3) },
    }));
  it('a humbucker has 8.2 kΩ, 4.4 H and 130 pF, and was made for pots of 500 kΩ', () =>
    expect(partOf('humbucker')).toMatchObject({
      resistance: assumed(8200),
      inductance: assumed(4.4),
      capacitance: assumed(130e-12),
      reference: { volume: assumed(500e3), tone: assumed(500e3) },
    }));
  it.each(['single-coil', 'humbucker'] as const)(
    '%s: windings differ by 10 %, capacitance by 20 %',
    (kind) => {
      const part = partOf(kind);
      expect(part).toMatchObject({
        tolerance: assumed(0.1),
        inductanceTolerance: assumed(0.1),
        capacitanceTolerance: assumed(0.2),
      });
      // Core loss is left out of account unless it is known.
      expect('coreLoss' in part).toBe(false);
      const [coil] = kinds[kind].elements(part as never);
      expect(coil && 'coreLoss' in coil).toBe(false);
      const lossy = partOf(kind, { 'core-loss': '1M' });
      expect(lossy).toMatchObject({ coreLoss: told(1e6) });
      expect(kinds[kind].elements(lossy as never)[0]).toMatchObject({ coreLoss: told(1e6) });
    },
  );
  it('a pot is logarithmic, 15 % at half rotation, within 20 %', () =>
    expect(partOf('pot', { value: '250k' })).toMatchObject({
      taper: assumed('log'),
      midpoint: assumed(0.15),
      tolerance: assumed(0.2),
    }));
  it('a resistor is within 5 %, a capacitor within 10 %', () => {
    expect(partOf('resistor', { value: '470k' })).toMatchObject({ tolerance: assumed(0.05) });
    expect(partOf('capacitor', { value: '22n' })).toMatchObject({ tolerance: assumed(0.1) });
  });
});

it('only what has no order of lugs to tell the sides by may be drawn left for right', () => {
  const any: Partial<Record<Kind, object>> = {
    pot: { value: '250k' },
    'push-pull': { value: '250k' },
    'dual-pot': { value: '1k' },
    'stacked-pot': { a: { value: '1k' }, b: { value: '1k' } },
    blend: { value: '1k' },
    'mini-toggle': { action: 'on-on' },
    rotary: { throws: 5 },
    resistor: { value: '1k' },
    capacitor: { value: '1n' },
    switch: { lugs: { left: ['A', 'B'] }, positions: [[]] },
  };
  const may = (Object.keys(kinds) as Kind[]).filter((kind) => mayMirror(partOf(kind, any[kind])));
  expect(may.sort()).toEqual([
    'capacitor',
    'four-lead-humbucker',
    'ground-point',
    'humbucker',
    'jack',
    'resistor',
    'single-coil',
  ]);
});

it('a lug holds three wires, a pot’s case eleven', () => {
  expect(LUG_ROOM).toBe(3);
  const rooms = lugsOf(partOf('pot', { value: '250k' })).map(({ name, room }) => [name, room]);
  expect(rooms).toEqual([
    ['1', undefined],
    ['2', undefined],
    ['3', undefined],
    ['case', 11],
  ]);
});

it.each([
  ['pot', { value: '250k' }, 10e3, 2e6],
  ['push-pull', { value: '250k' }, 10e3, 2e6],
  ['capacitor', { value: '22n' }, 50e-12, 470e-9],
  ['single-coil', { resistance: '6k' }, 100, 100e3],
  ['humbucker', { resistance: '8k' }, 100, 100e3],
] as const)('%s: usual from %d to %d', (kind, written, least, most) => {
  const [usual, ...more] = usualValuesOf(partOf(kind, written));
  expect(more).toEqual([]);
  expect([usual?.least, usual?.most]).toEqual([least, most]);
});

describe('contacts', () => {
  const touching = (part: Part) =>
    contactsOf(part).map(({ position, joins }) => [position, joins.map((group) => group.join(' '))]);
  it('of the levers: each stop touches its throws, both poles alike', () => {
    const both = (throws: string) =>
      ['A', 'B'].map((pole) => [...`0${throws}`].map((n) => pole + n).join(' '));
    expect(touching(partOf('lever-3'))).toEqual(['1', '2', '3'].map((stop, i) => [i + 1, both(stop)]));
    expect(touching(partOf('lever-5'))).toEqual(
      ['1', '12', '2', '23', '3'].map((stop, i) => [i + 1, both(stop)]),
    );
  });
  it('of a rotary switch: one throw a position, on up to four poles, and no more than 24 throws', () => {
    const issues = (poles: number, throws: number) => kinds.rotary.validate?.({ poles, throws }) ?? [];
    for (const [poles, throws] of [
      [1, 12],
      [2, 12],
      [3, 8],
      [4, 6],
    ] as const) {
      expect(issues(poles, throws)).toEqual([]);
      const part = partOf('rotary', { poles, throws });
      expect(lugsOf(part)).toHaveLength(poles * (throws + 1));
      expect(touching(part)).toEqual(
        Array.from({ length: throws }, (_, i) => [
          i + 1,
          ['A', 'B', 'C', 'D'].slice(0, poles).map((pole) => `${pole}0 ${pole}${i + 1}`),
        ]),
      );
    }
    expect(issues(3, 9).map(({ path }) => path)).toEqual([['throws']]);
    expect(issues(4, 7)[0]?.remedy).toContain('at most throws: 6');
    // Make before break is a matter of what happens between positions.
    for (const shorting of [true, false])
      expect(touching(partOf('rotary', { throws: 3, shorting }))).toEqual(
        touching(partOf('rotary', { throws: 3 })),
      );
  });
  it('of the small switches: two poles where it is not written, a button open until it is pressed', () => {
    for (const written of [
      ['mini-toggle', { action: 'on-on' }],
      ['slide', {}],
    ] as const) {
      const [kind, fields] = written;
      expect(touching(partOf(kind, fields))).toEqual(touching(partOf(kind, { ...fields, poles: 2 })));
      expect(lugsOf(partOf(kind, { ...fields, poles: 1 })).map(({ name }) => name)).toEqual([
        'A1',
        'A0',
        'A2',
      ]);
    }
    const button = (written: object) =>
      contactsOf(partOf('kill-button', written)).map(({ called, joins }) => [called, joins.length]);
    expect(button({})).toEqual(button({ contact: 'normally-open' }));
    expect(button({})).toEqual([
      ['released', 0],
      ['pressed', 1],
    ]);
    expect(button({ contact: 'normally-closed' })).toEqual([
      ['released', 1],
      ['pressed', 0],
    ]);
  });
  it('of a part are the same ones however often they are asked for: what is closed is told by identity', () => {
    for (const kind of ['slide', 'toggle-3', 'lever-4'] as const) {
      const part = partOf(kind);
      expect(contactsOf(part)[1]?.joins).toBe(contactsOf(part)[1]?.joins);
    }
  });
  it('of a switch that the kit describes: its groups, in the order written', () =>
    expect(
      touching(
        partOf('switch', {
          lugs: { left: ['A', 'B'], right: ['C'] },
          positions: [[], [['A', 'C']], [['B', 'C']]],
        }),
      ),
    ).toEqual([
      [1, []],
      [2, ['A C']],
      [3, ['B C']],
    ]));
  it('a capital and a number name a pole and its throw, 0 the common; any other name is a lug by itself', () => {
    const part = partOf('switch', {
      lugs: { left: ['A0', 'A1', 'B10', 'on', 'a1', '5', 'AB1'] },
      positions: [[]],
    });
    expect(lugsOf(part)).toStrictEqual([
      { name: 'A0', role: 'common', pole: 'A' },
      { name: 'A1', role: 'throw', pole: 'A' },
      { name: 'B10', role: 'throw', pole: 'B' },
      ...['on', 'a1', '5', 'AB1'].map((name) => ({ name, role: 'throw' })),
    ]);
    const levers = lugsOf(partOf('lever-5')).map(({ name, role, pole }) => [name, role, pole]);
    for (const [name = '', role, pole] of levers)
      expect([role, pole]).toEqual([name.endsWith('0') ? 'common' : 'throw', name[0]]);
  });
});

describe('limits of what may be written, both included', () => {
  const may = (field: { safeParse: (written: unknown) => { success: boolean } }, value: unknown): boolean =>
    field.safeParse(value).success;
  it.each([
    ['ohms', ohms(''), 0.1, 1e9],
    ['farads', farads(''), 1e-13, 1e-3],
    ['henries', henries(''), 1e-6, 1e3],
  ] as const)('%s', (_, field, least, most) => {
    for (const value of [least, most, Math.sqrt(least * most), 1.5 * least, most / 1.5]) {
      expect(may(field, value), String(value)).toBe(true);
      expect(field.parse(value)).toBe(value);
    }
    for (const value of [least * 0.999, most * 1.001, 0, -least]) expect(may(field, value)).toBe(false);
  });
  it('a share is more than nothing and less than all', () => {
    for (const [written, share] of [
      ['20%', 0.2],
      [' 0.5% ', 0.005],
      [0.75, 0.75],
      ['0.999', 0.999],
    ] as const)
      expect(fraction('').parse(written)).toBe(share);
    for (const none of ['', ' ', '%', '0%', '100%', 0, 1, 2, -0.1, 'five', '5 percent'])
      expect(may(fraction(''), none), String(none)).toBe(false);
  });
  it('milliohms are told from megohms, and only of resistances', () => {
    const words = (field: typeof ohms, written: string): string =>
      field('').safeParse(written).error?.issues[0]?.message ?? '';
    expect(words(ohms, '2.2m')).toContain('did you mean 2.2M?');
    expect(words(ohms, '0.01')).not.toContain('did you mean');
    expect(words(farads, '1.5')).not.toContain('did you mean');
    expect(words(farads, '20m')).toMatch(/out of range.*mF$/);
  });
  it('a switch has up to 24 lugs at an edge and 24 positions, and two lugs at least', () => {
    const { lugs, positions } = kinds.switch.fields;
    const names = (count: number) => Array.from({ length: count }, (_, i) => `l${i}`);
    expect([24, 25].map((count) => may(lugs, { left: names(count) }))).toEqual([true, false]);
    expect([24, 25].map((count) => may(lugs, { left: ['a'], right: names(count) }))).toEqual([true, false]);
    expect([0, 1, 24, 25].map((count) => may(positions, Array(count).fill([])))).toEqual([
      false,
      true,
      true,
      false,
    ]);
    expect([1, 2].map((count) => may(positions, [[names(count)]]))).toEqual([false, true]);
    const wrong = (left: readonly string[], right?: readonly string[]) =>
      kinds.switch.validate?.({
        lugs: { left: [...left], ...(right ? { right: [...right] } : {}) },
        positions: [[]],
      });
    const closing = (...positions: string[][][]) =>
      kinds.switch
        .validate?.({ lugs: { left: ['a', 'b', 'c'] }, positions })
        .map(({ path, why }) => [path.join(), why]);
    expect(closing([['a', 'b']], [['b', 'c']])).toEqual([]);
    expect(closing([['a', 'b']], [['b', 'x']])).toEqual([['positions,1', '“x” is not a lug of this switch']]);
    expect(
      closing(
        [
          ['a', 'b'],
          ['c', 'a'],
        ],
        [],
      ),
    ).toEqual([['positions,0', '“a” is named twice in one position']]);
    expect(wrong(['a', 'b'])).toEqual([]);
    expect(wrong(['a'], ['b'])).toEqual([]);
    expect(wrong(['a'])?.map(({ why }) => why)).toEqual(['a switch needs at least two lugs']);
    expect(wrong(['a', 'b'], ['a'])?.map(({ why }) => why)).toEqual(['“a” is named twice']);
  });
  it('a label has up to 30 letters', () => expect(LABEL_LONGEST).toBe(30));
});

it('sleeving goes over the leg that is named, over both, or over none', () => {
  for (const kind of ['resistor', 'capacitor'] as const)
    for (const [sleeving, legs] of [
      [undefined, []],
      [1, ['1']],
      [2, ['2']],
      ['both', ['1', '2']],
    ] as const)
      expect(
        componentOf(
          partOf(kind, {
            value: kind === 'resistor' ? '1k' : '1n',
            ...(sleeving === undefined ? {} : { sleeving }),
          }),
        )?.sleeved,
      ).toEqual(legs);
});

it('a resistor that the program adds says no more than it must', () => {
  expect(newResistor({ ohms: 470e3 })).toStrictEqual({ value: 470e3 });
  expect(newResistor({ ohms: 470e3, label: 'Pad', sleeved: true })).toStrictEqual({
    label: 'Pad',
    value: 470e3,
    sleeving: 1,
  });
  expect(newResistor({ ohms: 1e3, sleeved: false })).toStrictEqual({ value: 1e3 });
});

it('another resistance is that of the whole part, and of no part that has none', () => {
  for (const kind of ['pot', 'resistor'] as const)
    expect(withOhms(partOf(kind, { value: '250k' }), 100e3)).toEqual(partOf(kind, { value: '100k' }));
  const both = partOf('push-pull', { value: '250k' });
  expect(withOhms(both, 100e3)).toEqual(partOf('push-pull', { value: '100k' }));
  expect(withOhms(partOf('jack'), 5)).toEqual(partOf('jack'));
  const stacked = (a: string, b: string) => partOf('stacked-pot', { a: { value: a }, b: { value: b } });
  expect(withOhms(stacked('250k', '500k'), 100e3)).toEqual(stacked('100k', '100k'));
  expect(withOhms(stacked('250k', '500k'), 100e3, 'a')).toEqual(stacked('100k', '500k'));
  expect(withOhms(stacked('250k', '500k'), 100e3, 'b')).toEqual(stacked('250k', '100k'));
});

it('a part made without a label is called by its name', () => {
  expect(make(kinds.jack, { name: 'out' }, {})).toEqual({ kind: 'jack', name: 'out', label: 'out' });
  expect(make(kinds.jack, { name: 'out', label: 'Output' }, {}).label).toBe('Output');
});
