/** What is offered beside a resistor, and what is not: no offer changes what sounds, and one of a kind is enough. */
import { describe, expect, it } from 'vitest';
import { choosePads, type PadAdvice, type PadOptions } from '../../src/analyse/index.ts';
import { type Compact, makeCircuit, mixedSet } from './kits.ts';

const advice = (compact: Compact, pickup: string, options: PadOptions = {}): PadAdvice | undefined =>
  choosePads(makeCircuit(compact), options).advice.find((one) => one.pickup === pickup);
const offers = (compact: Compact, pickup: string, options: PadOptions = {}) => {
  const found = advice(compact, pickup, options);
  return found && 'alternatives' in found ? found.alternatives : [];
};

describe('a jumper to a tone control', () => {
  /** A humbucker on throw A1, the common to the volume; the tone where it is told. */
  const kit = (...joints: readonly string[]): Compact => ({
    parts: {
      bridge: { kind: 'humbucker' },
      neck: { kind: 'humbucker' },
      selector: { kind: 'lever-5' },
      volume: { kind: 'pot', value: '500k' },
      tone: { kind: 'pot', value: '500k' },
      cap: { kind: 'capacitor', value: '22n' },
      output: { kind: 'jack' },
    },
    joints: [
      'volume.1 > volume.case',
      'output.sleeve > volume.case',
      'bridge.ground > volume.case',
      'neck.ground > volume.case',
      'bridge.hot > selector.A1',
      'selector.A0 > volume.3',
      'volume.2 > output.tip',
      'tone.1 > cap.1',
      'cap.2 > volume.case',
      ...joints,
    ],
  });
  const jumpers = (...joints: readonly string[]) =>
    offers(kit(...joints), 'bridge', { match: 'signal' }).flatMap((one) =>
      one.kind === 'tone-jumper' ? [`${one.from} > ${one.to}: ${one.tones.join()}`] : [],
    );
  it('leads from a free throw that is closed where the pickup is judged, to one with a tone on it', () => {
    expect(jumpers('neck.hot > selector.A3', 'selector.B0 > volume.3', 'selector.B3 > tone.2')).toEqual([
      'selector.B1 > selector.B3: tone',
    ]);
  });
  it('never from a lug that is in use: the pickup would sound in the tone’s position too', () => {
    expect(jumpers('neck.hot > selector.A2', 'selector.A3 > tone.2')).toEqual([]);
    expect(
      jumpers(
        'neck.hot > selector.A3',
        'selector.B0 > volume.3',
        'selector.B3 > tone.2',
        'selector.B1 > selector.B2',
      ),
    ).toEqual([]);
  });
  it('is none on a pole that leads nowhere', () => {
    expect(jumpers('neck.hot > selector.A3', 'selector.B3 > tone.2')).toEqual([]);
  });
  it('of several that would do is one', () => {
    expect(
      jumpers(
        'neck.hot > selector.A3',
        'selector.B0 > volume.3',
        'selector.B3 > tone.2',
        'selector.B2 > selector.B3',
      ),
    ).toEqual(['selector.B1 > selector.B2: tone']);
  });
});

describe('how near is near enough', () => {
  const circuit = makeCircuit({
    ...mixedSet,
    parts: {
      ...mixedSet.parts,
      bridge: { kind: 'single-coil', reference: { volume: '400k', tone: '400k' } },
    },
  });
  const kind = (near: number) =>
    choosePads(circuit, { near }).advice.find(({ pickup }) => pickup === 'bridge')?.kind;
  it('is as far off as the load may be: 500 kΩ of 400 kΩ is 25 per cent', () => {
    expect([kind(0.2501), kind(0.2499)]).toEqual(['fits', 'pad']);
    expect(kind(0)).toBe('pad');
  });
  it('is five per cent of the DC load, and values of E12, unless told otherwise', () => {
    const plain = makeCircuit(mixedSet);
    expect(choosePads(plain)).toEqual(choosePads(plain, { match: 'dc', series: 'E12', near: 0.05 }));
    const off = (volume: number) =>
      advice({ ...mixedSet, parts: { ...mixedSet.parts, volume: { kind: 'pot', value: volume } } }, 'neck')
        ?.kind;
    expect([off(524e3), off(526e3), off(476e3), off(474e3)]).toEqual(['fits', 'pad', 'fits', 'too-heavy']);
  });
  it('a stock may hold what a resistor may be, up to 1 GΩ', () => {
    const plain = makeCircuit(mixedSet);
    for (const ohms of [100, 1e9])
      expect(choosePads(plain, { series: { stock: [ohms] } }).advice).toHaveLength(2);
    for (const ohms of [0.0999, 1.0001e9])
      expect(() => choosePads(plain, { series: { stock: [470e3, ohms] } })).toThrow(RangeError);
  });
});

describe('what follows from a choice', () => {
  it('a resistor passes a switch where its lug is on one, and gets a sleeve there', () => {
    expect(advice(mixedSet, 'bridge')).toMatchObject({ kind: 'pad', from: 'selector.A1', sleeved: true });
    const bare: Compact = {
      parts: { a: { kind: 'single-coil' }, volume: { kind: 'pot', value: '500k' }, output: { kind: 'jack' } },
      joints: [
        'a.hot > volume.3',
        'a.ground > output.sleeve',
        'volume.1 > volume.case',
        'volume.case > output.sleeve',
        'volume.2 > output.tip',
      ],
    };
    expect(advice(bare, 'a')).toMatchObject({
      kind: 'pad',
      from: 'volume.3',
      to: 'volume.case',
      sleeved: false,
    });
  });
  it('the ideal value brings the load to its reference, and the chosen one is the available one nearest to it', () => {
    for (const match of ['dc', 'signal'] as const) {
      const found = advice(mixedSet, 'bridge', { match });
      if (found?.kind !== 'pad') throw new Error('no pad');
      const stocked = advice(mixedSet, 'bridge', { match, series: { stock: [found.ideal] } });
      expect(stocked?.kind === 'pad' ? stocked.chosen.load / stocked.reference : 0).toBeCloseTo(1, 9);
      expect([found.below?.ohms ?? NaN, found.chosen.ohms, found.above?.ohms ?? NaN]).toEqual(
        [found.below?.ohms ?? NaN, found.chosen.ohms, found.above?.ohms ?? NaN].sort((a, b) => a - b),
      );
    }
  });
  it('what loads a pickup is told heaviest first, in the order written of two alike', () => {
    const found = advice(
      {
        ...mixedSet,
        parts: {
          ...mixedSet.parts,
          light: { kind: 'resistor', value: '1M' },
          heavy: { kind: 'resistor', value: '220k' },
          again: { kind: 'resistor', value: '1M' },
          idle: { kind: 'resistor', value: '1k' },
        },
        joints: [
          ...mixedSet.joints,
          ...['light', 'heavy', 'again'].flatMap((name) => [
            `${name}.1 > volume.3`,
            `${name}.2 > volume.case`,
          ]),
          'idle.1 > selector.A1',
        ],
      },
      'neck',
    );
    expect(found?.kind === 'too-heavy' ? found.causes.map(({ part }) => part) : found?.kind).toEqual([
      'heavy',
      'volume',
      'light',
      'again',
    ]);
  });
});
