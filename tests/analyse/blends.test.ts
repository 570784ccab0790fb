/**
 * Several blends in one kit, and stacked pots as blends, against what is reckoned by hand beside each. That a blend pot has no resistance
 * in one half of each gang, and that a plain pot with a pickup at either end blends too, is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { rolesOf, solveLoads } from '../../src/analyse/index.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { positionText } from '../../src/circuit/position.ts';
import { type Compact, makeCircuit } from './kits.ts';

const coil = { kind: 'single-coil', resistance: 6e3 };
const four = { one: coil, two: coil, three: coil, four: coil };

/** Two blend pots with two pickups each on the wipers, the outputs of both on one volume. */
const twoBlends: Compact = {
  parts: {
    ...four,
    left: { kind: 'blend', value: '250k' },
    right: { kind: 'blend', value: '250k' },
    volume: { kind: 'pot', value: '250k' },
    jack: { kind: 'jack' },
  },
  joints: [
    'one.hot > left.a2',
    'two.hot > left.b2',
    'three.hot > right.a2',
    'four.hot > right.b2',
    ...['left', 'right'].flatMap((blend) => [
      `${blend}.a3 > ${blend}.b1`,
      `${blend}.a3 > volume.3`,
      `${blend}.a1 > jack.sleeve`,
      `${blend}.b3 > jack.sleeve`,
    ]),
    'volume.2 > jack.tip',
    'volume.1 > jack.sleeve',
    ...['one', 'two', 'three', 'four'].map((pickup) => `${pickup}.ground > jack.sleeve`),
  ],
};

/** A stacked pot of which each shaft turns one plain track with a pickup at either end, both wipers on one volume. */
const stacked: Compact = {
  parts: {
    ...four,
    blend: {
      kind: 'stacked-pot',
      a: { value: '1M', taper: 'linear' },
      b: { value: '500k', taper: 'linear' },
    },
    volume: { kind: 'pot', value: '250k' },
    jack: { kind: 'jack' },
  },
  joints: [
    'one.hot > blend.a1',
    'two.hot > blend.a3',
    'three.hot > blend.b1',
    'four.hot > blend.b3',
    'blend.a2 > volume.3',
    'blend.b2 > volume.3',
    'volume.2 > jack.tip',
    'volume.1 > jack.sleeve',
    ...['one', 'two', 'three', 'four'].map((pickup) => `${pickup}.ground > jack.sleeve`),
  ],
};

const table = (kit: Compact) => {
  const circuit = makeCircuit(kit);
  return new Map(
    solveLoads(circuit).map(({ state, pickups }) => [
      Object.values(state.positions).join(' '),
      new Map(pickups.map(({ pickup, dcLoad, level }) => [pickup, { dcLoad, level }] as const)),
    ]),
  );
};

describe('two blend pots', () => {
  it('have each their centre and two ends, with every one of the other', () => {
    const circuit = makeCircuit(twoBlends);
    expect([...rolesOf(circuit).values()]).toEqual(['blend', 'blend', 'volume']);
    // Position 1 is the centre, 2 the anticlockwise end, where gang a's wiper is at ground, 3 the clockwise one.
    const left: Record<number, readonly string[]> = { 1: ['one', 'two'], 2: ['two'], 3: ['one'] };
    const right: Record<number, readonly string[]> = { 1: ['three', 'four'], 2: ['four'], 3: ['three'] };
    const expected = [1, 2, 3].flatMap((l) =>
      [1, 2, 3].map((r) => [`${l} ${r}`, [...(left[l] ?? []), ...(right[r] ?? [])]]),
    );
    const found = circuit.states.map(({ positions, sounding }) => [
      Object.values(positions).join(' '),
      sounding,
    ]);
    expect(found).toEqual(expected);
    expect(circuit.states.map(positionText)).toContain('left towards two, right at centre');
  });

  it('load every pickup with four tracks and the volume, wherever they are turned', () => {
    // At its centre and at either end each gang has its whole track between the output and ground: 5 × 250 k side by side are 50 k.
    for (const [place, pickups] of table(twoBlends))
      for (const [pickup, { dcLoad }] of pickups)
        expect(dcLoad, `${pickup} at ${place}`).toBeCloseTo(50e3, 3);
  });
});

describe('a stacked pot as two blends', () => {
  it('is found to be two, each with its own centre and ends', () => {
    const circuit = makeCircuit(stacked);
    expect([...rolesOf(circuit)].map(([id, role]) => `${id} ${role}`)).toEqual([
      'blend.a blend',
      'blend.b blend',
      'volume volume',
    ]);
    expect([...table(stacked).keys()]).toEqual([
      '1 1',
      '1 2',
      '1 3',
      '2 1',
      '2 2',
      '2 3',
      '3 1',
      '3 2',
      '3 3',
    ]);
    expect(circuit.states.map(positionText)).toContain('blend.a towards one, blend.b at centre');
  });

  it('loads a pickup with what lies between it and the wiper, and the volume', () => {
    // The other pickups are out, and what hangs on them leads nowhere. Ohms from each end to the wiper in positions 1, 2 and 3.
    const between = (track: number) => ({ low: [track / 2, 0, track], high: [track / 2, track, 0] });
    const [a, b] = [between(1e6), between(500e3)];
    for (const [place, pickups] of table(stacked)) {
      const [atA = 1, atB = 1] = place.split(' ').map(Number);
      const expected: Record<string, number | undefined> = {
        one: a.low[atA - 1],
        two: a.high[atA - 1],
        three: b.low[atB - 1],
        four: b.high[atB - 1],
      };
      for (const [pickup, { dcLoad }] of pickups)
        expect(dcLoad, `${pickup} at ${place}`).toBeCloseTo((expected[pickup] ?? Number.NaN) + 250e3, 3);
    }
  });

  it('leaves one pickup of two far below the other at an end', () => {
    const centre = table(stacked).get('1 1');
    const end = table(stacked).get('2 2');
    // In the centre two by two are alike; a is twice b, so that its two are weaker.
    expect(centre?.get('one')?.level).toBeCloseTo(centre?.get('two')?.level ?? Number.NaN, 9);
    expect(centre?.get('three')?.level).toBe(0);
    // Coils straight at the output, one of another pair beside it: either gives as much as the other.
    expect(end?.get('one')?.level).toBeCloseTo(0, 9);
    expect(end?.get('three')?.level).toBeCloseTo(0, 9);
    // A track of 1 M before the output, whose impedance is two coils side by side: 1 M beside 500 k is 6 dB further down, or less by their own.
    const [two, four] = [end?.get('two')?.level ?? -100, end?.get('four')?.level ?? -100];
    expect(four - two).toBeGreaterThan(5);
    expect(four - two).toBeLessThan(20 * Math.log10(2));
    expect(four).toBeLessThan(-20);
  });
});

describe('a blend beside many switches', () => {
  const withSwitches = (count: number): Compact => ({
    parts: {
      ...twoBlends.parts,
      ...Object.fromEntries(
        Array.from({ length: count }, (_, i) => [`switch-${i + 1}`, { kind: 'slide', poles: 1 }]),
      ),
    },
    joints: twoBlends.joints,
  });
  const found = (count: number) => {
    const circuit = makeCircuit(withSwitches(count));
    const notes = notesOf(circuit, []).filter(({ code }) => code === 'blend-at-centre-only');
    return { settings: circuit.settings.length, notes: notes.map(({ path, detail }) => [path, detail]) };
  };

  it('is turned as far as 1024 settings go, and a note says which is not', () => {
    expect(found(6)).toEqual({ settings: 64 * 9, notes: [] });
    const note = (part: string, count: number) => [['parts', part], { part, count, most: 1024 }];
    expect(found(7)).toEqual({ settings: 128 * 3, notes: [note('right', 128 * 9)] });
    expect(found(9)).toEqual({ settings: 512, notes: [note('left', 512 * 3), note('right', 512 * 3)] });
  }, 60_000);
});
