/** What is soldered where when a resistor is added, moved or taken out, and how much better or worse a load is for it. */
import { describe, expect, it } from 'vitest';
import type { StateLoads } from '../../src/analyse/index.ts';
import {
  groundLug,
  lugFor,
  padLabel,
  padName,
  placeOfPad,
  resistorsToGround,
  signalLug,
  withJumper,
  withMoved,
  withoutPart,
  withResistor,
  withValues,
} from '../../src/analyse/kit-changes.ts';
import { type Effect, improves, judgedIn, logDistance, worsened } from '../../src/analyse/pad-effects.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { type Compact, makeCircuit, makeKit, mixedSet } from './kits.ts';

const joints = ({ joints: all }: Kit): readonly string[] =>
  all.map(({ kind, from, to, index }) => `${index} ${kind} ${from.part}.${from.lug} > ${to.part}.${to.lug}`);
const kit = makeKit({
  parts: {
    a: { kind: 'single-coil', label: 'Neck' },
    v: { kind: 'pot', value: '250k' },
    r: { kind: 'resistor', value: '470k' },
    out: { kind: 'jack' },
  },
  joints: ['a.hot > v.3', 'r.1 > v.3', 'v.case > r.2'],
});
const FIRST = ['0 wire a.hot > v.3', '1 wire r.1 > v.3', '2 wire v.case > r.2'];

describe('a kit changed', () => {
  it('by a resistor has it last, first its wires and then its legs, numbered on', () => {
    const place = { part: 'pad', ohms: 390e3, from: 'v.3', to: 'v.case' };
    const added = withResistor(kit, { ...place, wires: [['v.2', 'out.tip']] });
    expect(joints(added)).toEqual([
      ...FIRST,
      '3 wire v.2 > out.tip',
      '4 leg pad.1 > v.3',
      '5 leg pad.2 > v.case',
    ]);
    expect(added.parts.slice(0, 4)).toEqual(kit.parts);
    expect(added.parts[4]).toMatchObject({ name: 'pad', label: 'pad', value: { value: 390e3 }, sleeved: [] });
    const [, , , , named] = withResistor(kit, { ...place, label: 'Neck pad', sleeved: true }).parts;
    expect(named).toMatchObject({ label: 'Neck pad', sleeved: ['1'] });
  });
  it('by a resistor moved has its legs anew, whichever way round they were written', () => {
    expect(joints(withMoved(kit, { part: 'r', from: 'a.hot', to: 'out.sleeve' }))).toEqual([
      FIRST[0],
      '1 leg r.1 > a.hot',
      '2 leg r.2 > out.sleeve',
    ]);
  });
  it('by a jumper, without a part, and of other values', () => {
    expect(joints(withJumper(kit, 'v.1', 'v.2'))).toEqual([...FIRST, '3 jumper v.1 > v.2']);
    const without = withoutPart(kit, 'r');
    expect([joints(without), without.parts.map(({ name }) => name)]).toEqual([[FIRST[0]], ['a', 'v', 'out']]);
    const other = withValues(kit, { v: 500e3, a: 1 });
    expect(other.parts).toMatchObject([{}, { value: { value: 500e3 } }, { value: { value: 470e3 } }, {}]);
    // Of no other part of a name that every object has.
    expect(
      withValues(makeKit({ parts: { constructor: { kind: 'jack' } }, joints: [] }), {}).parts,
    ).toHaveLength(1);
  });
});

describe('a name and a label for it', () => {
  it('of no more than 24 characters, taken by no part, without a hyphen at its end', () => {
    const named = (pickup: string, ...taken: readonly string[]) =>
      padName(
        { ...kit, parts: taken.map((name) => ({ ...kit.parts[0], name }) as Kit['parts'][number]) },
        pickup,
      );
    expect([named('neck'), named('neck', 'pad-neck'), named('neck', 'pad-neck', 'pad-neck-2')]).toEqual([
      'pad-neck',
      'pad-neck-2',
      'pad-neck-3',
    ]);
    expect(named('abcdefghijklmnopq')).toBe('pad-abcdefghijklmnopq');
    expect(named('abcdefghijklmnopqr')).toBe('pad-abcdefghijklmnopq');
    expect(named('abcdefghijklmnop-r')).toBe('pad-abcdefghijklmnop');
    expect(named('abcdefghijklmnopqrst', 'pad-abcdefghijklmnopq').length).toBeLessThanOrEqual(24);
  });
  it('the label of the pickup, as long as a drawing has room', () => {
    expect([padLabel(kit, 'a'), padLabel(kit, 'unknown')]).toEqual(['Neck pad', 'unknown pad']);
    const labelled = (length: number) =>
      padLabel(makeKit({ parts: { a: { kind: 'jack', label: 'x'.repeat(length) } }, joints: [] }), 'a');
    expect(labelled(26)).toBe(`${'x'.repeat(26)} pad`);
    expect(labelled(27)).toBeUndefined();
  });
});

describe('where a leg goes', () => {
  const parts: Compact['parts'] = {
    a: { kind: 'single-coil' },
    lever: { kind: 'lever-3' },
    v: { kind: 'pot', value: '250k' },
    out: { kind: 'jack' },
    g: { kind: 'ground-point' },
    h: { kind: 'ground-point' },
    i: { kind: 'ground-point' },
  };
  const on = (net: string, all: readonly string[]): string | undefined => {
    const circuit = makeCircuit({ parts, joints: all });
    return lugFor(circuit, circuit.lugs.get(net)?.net ?? -1);
  };
  it('to a throw of the switch, else to its common, to the pot, to the jack, to the pickup itself', () => {
    const all = ['a.hot > out.tip', 'out.tip > v.2', 'v.2 > lever.A0', 'lever.A0 > lever.A1'];
    expect([4, 3, 2, 1, 0].map((count) => on('a.hot', all.slice(0, count)))).toEqual([
      'lever.A1',
      'lever.A0',
      'v.2',
      'out.tip',
      'a.hot',
    ]);
    expect(on('a.hot', ['a.hot > v.1'])).toBe('v.1');
    expect(on('a.hot', ['a.hot > v.3'])).toBe('v.3');
  });
  it('to one with room before one that holds three, whatever it is', () => {
    const full = ['a.hot > lever.A1', 'g.1 > lever.A1', 'h.1 > lever.A1'];
    expect(on('a.hot', full)).toBe('a.hot');
    expect(on('a.hot', [...full, 'h.1 > v.3'])).toBe('v.3');
    // Where none has room, the switch is as good as before.
    const crowded = ['a.hot > g.1', 'a.hot > h.1', 'g.1 > h.1', 'g.1 > i.1', 'h.1 > i.1', 'i.1 > lever.A1'];
    expect(on('a.hot', [...crowded, 'a.hot > lever.A1', 'g.1 > lever.A1'])).toBe('lever.A1');
    expect(on('a.hot', [...full, 'h.1 > lever.B3'])).toBe('lever.B3');
    expect(on('a.hot', [...full.slice(0, 2), 'g.1 > lever.B3'])).toBe('lever.A1');
    // A bend onto its own case takes no room.
    expect(on('v.1', ['v.1 > v.3', 'v.1 > g.1', 'v.1 > h.1'])).toBe('v.3');
  });
  it('and its other leg to a pot’s case, or to the sleeve', () => {
    const circuit = (more: readonly string[]) =>
      makeCircuit({ parts, joints: ['a.ground > out.sleeve', ...more] });
    expect(groundLug(circuit(['v.case > out.sleeve']))).toBe('v.case');
    expect(groundLug(circuit([]))).toBe('out.sleeve');
  });
});

describe('resistors that a pickup has already', () => {
  const circuit = makeCircuit({
    ...mixedSet,
    parts: {
      ...mixedSet.parts,
      one: { kind: 'resistor', value: '470k' },
      two: { kind: 'resistor', value: '470k' },
      far: { kind: 'resistor', value: '470k' },
      dead: { kind: 'resistor', value: '470k' },
    },
    joints: [
      ...mixedSet.joints,
      'one.1 > selector.A1',
      'one.2 > volume.case',
      'tone.case > two.1',
      'bridge.hot > two.2',
      'far.1 > selector.A1',
      'far.2 > volume.3',
      'dead.1 > volume.case',
      'dead.2 > tone.case',
    ],
  });
  const net = circuit.lugs.get('selector.A1')?.net ?? -1;
  const ground = circuit.lugs.get('volume.case')?.net ?? -1;
  it('lead from its net straight to ground', () => {
    expect(resistorsToGround(circuit, net)).toEqual(['one', 'two']);
    expect([resistorsToGround(circuit, ground), resistorsToGround(circuit, undefined)]).toEqual([[], []]);
    expect(resistorsToGround(makeCircuit({ parts: mixedSet.parts, joints: [] }), 0)).toEqual([]);
  });
  it('are soldered where they are written to be, the pickup’s end first', () => {
    expect(placeOfPad(circuit, 'one', net)).toEqual(['selector.A1', 'volume.case']);
    expect(placeOfPad(circuit, 'two', net)).toEqual(['bridge.hot', 'tone.case']);
    expect(placeOfPad(circuit, 'one', ground)).toEqual(['volume.case', 'selector.A1']);
    const loose = makeCircuit({
      parts: { ...mixedSet.parts, r: { kind: 'resistor', value: '1k' } },
      joints: [...mixedSet.joints, 'r.1 > selector.A1'],
    });
    expect(placeOfPad(loose, 'r', loose.lugs.get('selector.A1')?.net ?? -1)).toBeUndefined();
  });
});

describe('the lug on which a signal leaves', () => {
  const coils = { a: { kind: 'single-coil' }, b: { kind: 'single-coil' }, out: { kind: 'jack' } };
  const leaves = (
    wiring: readonly string[],
    pickup: string,
    chain: readonly string[] = [],
  ): string | undefined => {
    const circuit: Circuit = makeCircuit({ parts: coils, joints: wiring });
    const [state] = circuit.states;
    return state && signalLug(circuit, state, pickup, chain)?.id;
  };
  it('is the hot one, or the other where they are exchanged, or that of the chain', () => {
    expect(leaves(['a.hot > out.tip', 'a.ground > out.sleeve'], 'a')).toBe('a.hot');
    expect(leaves(['a.ground > out.tip', 'a.hot > out.sleeve'], 'a')).toBe('a.ground');
    const series = ['a.hot > out.tip', 'a.ground > b.hot', 'b.ground > out.sleeve'];
    expect([leaves(series, 'a', ['b']), leaves(series, 'b', ['a'])]).toEqual(['a.hot', 'a.hot']);
    const opposed = ['a.ground > out.tip', 'a.hot > b.hot', 'b.ground > out.sleeve'];
    expect([leaves(opposed, 'a', ['b']), leaves(opposed, 'b', ['a'])]).toEqual(['a.ground', 'a.ground']);
  });
});

describe('better and worse', () => {
  const effect = (index: number, pickup: string, before: number, after: number): Effect => ({
    index,
    state: { positions: {}, positionNames: {}, closedContacts: [], sounding: [pickup], shorted: false },
    pickup,
    before: { dcLoad: before, signalLoad: after },
    after: { dcLoad: after, signalLoad: before },
    reference: { dcLoad: 100e3, signalLoad: 100e3 },
    percent: 0,
  });
  const now = (...names: readonly string[]): readonly StateLoads[] =>
    names.map((sounding, index) => ({
      index,
      state: {
        positions: {},
        positionNames: {},
        closedContacts: [],
        sounding: [...sounding],
        shorted: false,
      },
      pickups: [...sounding].map((pickup) => ({ pickup }) as StateLoads['pickups'][number]),
      output: 0,
      silentTogether: false,
    }));

  it('half a load is as far off as twice that load', () => {
    expect(logDistance(50, 100)).toBeCloseTo(logDistance(200, 100), 12);
    expect(logDistance(100, 100)).toBe(0);
  });
  it('a load over 10 % further from its reference is worse, to either side, by the load that is matched', () => {
    for (const [before, after, worse] of [
      [100e3, 111e3, true],
      [100e3, 109e3, false],
      [100e3, 90e3, true],
      [100e3, 92e3, false],
      [120e3, 95e3, false],
      [90e3, 112e3, false],
      [95e3, 117e3, true],
    ] as const) {
      expect(worsened('dc', effect(0, 'a', before, after)), `${before} to ${after}`).toBe(worse);
      expect(worsened('signal', effect(0, 'a', after, before))).toBe(worse);
    }
  });
  it('a pickup is judged where the fewest sound with it, the first of such positions', () => {
    const states = now('ab', 'b', 'a', 'a', 'abc');
    expect(['a', 'b', 'c', 'd'].map((name) => judgedIn(states, name)?.index)).toEqual([2, 1, 4, undefined]);
  });
  it('a change is one for the better by more than a per cent, where it makes none worse where that one is judged', () => {
    const states = now('a', 'ab', 'b');
    const better = (...effects: readonly Effect[]) => improves('dc', states, effects, 'a');
    expect(better(effect(0, 'a', 150e3, 148e3))).toBe(true);
    expect(better(effect(0, 'a', 150e3, 149e3))).toBe(false);
    expect(better(effect(0, 'a', 150e3, 160e3))).toBe(false);
    expect(better(effect(0, 'a', 150e3, 100e3), effect(2, 'b', 100e3, 109e3))).toBe(true);
    expect(better(effect(0, 'a', 150e3, 100e3), effect(2, 'b', 100e3, 112e3))).toBe(false);
    // In a position that they share it may.
    expect(better(effect(0, 'a', 150e3, 100e3), effect(1, 'b', 100e3, 200e3))).toBe(true);
    expect(better(effect(1, 'a', 150e3, 100e3))).toBe(false);
  });
});
