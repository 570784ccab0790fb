/**
 * What an expert would advise beside a resistor's value. What to do is common practice, no source; every figure is by the law of
 * resistors in parallel, capacitors taken as shorts for the signal where a tolerance says so.
 */
import { describe, expect, it } from 'vitest';
import { choosePads, type PadAdvice, type PadOptions } from '../../src/analyse/index.ts';
import { type Compact, makeCircuit, mixedSet } from './kits.ts';

const par = (...ohms: number[]): number => 1 / ohms.reduce((sum, r) => sum + 1 / r, 0);

function advice<K extends PadAdvice['kind']>(
  kind: K,
  pickup: string,
  compact: Compact,
  options: PadOptions = {},
) {
  const found = choosePads(makeCircuit(compact), options).advice.find((one) => one.pickup === pickup);
  if (found?.kind !== kind) throw new Error(`${pickup}: ${found?.kind} instead of ${kind}`);
  return found as Extract<PadAdvice, { kind: K }>;
}

/** Neck and bridge on a five-way lever's pole A, tone control on pole B, as written. */
const onPoles = (
  pickups: Readonly<Record<string, string>>,
  more: Readonly<Record<string, Compact['parts'][string]>>,
  joints: readonly string[],
): Compact => ({
  parts: {
    ...Object.fromEntries(Object.entries(pickups).map(([name, kind]) => [name, { kind }])),
    selector: { kind: 'lever-5' },
    volume: { kind: 'pot', value: '500k' },
    output: { kind: 'jack' },
    ...more,
  },
  joints: [
    'volume.1 > volume.case',
    'output.sleeve > volume.case',
    ...Object.keys(pickups).flatMap((name, i) => [
      `${name}.ground > volume.case`,
      `${name}.hot > selector.A${i + 1}`,
    ]),
    'selector.A0 > volume.3',
    'volume.2 > output.tip',
    ...joints,
  ],
});
const tone = { tone: { kind: 'pot', value: '500k' }, cap: { kind: 'capacitor', value: '22n' } };
const toneJoints = ['tone.case > volume.case', 'tone.1 > cap.1', 'cap.2 > tone.case'];

describe('a resistor that loads the wrong pickup', () => {
  const shared = onPoles(
    { bridge: 'humbucker', neck: 'single-coil' },
    { pad: { kind: 'resistor', value: '470k' } },
    ['pad.1 > volume.3', 'pad.2 > volume.case'],
  );

  it('is moved to the lug of the one that wants it', () => {
    const found = advice('too-heavy', 'bridge', shared);
    expect(found.causes).toContainEqual({ part: 'pad', without: expect.closeTo(500e3, 3) });
    const [move] = found.alternatives;
    expect(move).toMatchObject({
      kind: 'move',
      part: 'pad',
      pads: [{ part: 'pad', pickup: 'neck', from: 'selector.A2', to: 'volume.case' }],
    });
    const loads = move?.effects.map(({ index, pickup, after }) => [index, pickup, Math.round(after.dcLoad)]);
    expect(loads).toContainEqual([0, 'bridge', 500e3]);
    expect(loads).toContainEqual([2, 'neck', Math.round(par(500e3, 470e3))]);
  });

  it('goes to each of several that want one, the others new', () => {
    const three: Compact = onPoles(
      { bridge: 'humbucker', middle: 'single-coil', neck: 'single-coil' },
      { pad: { kind: 'resistor', value: '470k' } },
      ['pad.1 > volume.3', 'pad.2 > volume.case'],
    );
    const [move, ...more] = advice('too-heavy', 'bridge', three).alternatives;
    expect(move).toMatchObject({
      kind: 'move',
      pads: [
        { part: 'pad', pickup: 'middle', from: 'selector.A2' },
        { part: 'pad-neck', pickup: 'neck', from: 'selector.A3', ohms: 470e3 },
      ],
    });
    expect(move?.worse.map(({ index, pickup }) => [index, pickup])).toEqual([
      [3, 'middle'],
      [3, 'neck'],
    ]);
    // Out of the kit it would leave both single coils twice too light.
    expect(more.filter(({ kind }) => kind === 'remove')).toEqual([]);
  });

  it('is taken out where nobody wants it', () => {
    const none = onPoles(
      { bridge: 'humbucker', neck: 'humbucker' },
      { pad: { kind: 'resistor', value: '470k' } },
      ['pad.1 > volume.3', 'pad.2 > volume.case'],
    );
    expect(advice('too-heavy', 'bridge', none).alternatives).toMatchObject([{ kind: 'remove', part: 'pad' }]);
  });

  it('on a humbucker that fits without it, is needless and moves too', () => {
    const odd = onPoles(
      { bridge: 'humbucker', neck: 'single-coil' },
      { pad: { kind: 'resistor', value: '470k' } },
      ['pad.1 > selector.A1', 'pad.2 > volume.case'],
    );
    expect(advice('needless', 'bridge', odd).alternatives).toMatchObject([
      { kind: 'move', pads: [{ from: 'selector.A2', pickup: 'neck' }] },
    ]);
  });
});

describe('what a resistor makes worse elsewhere', () => {
  it('is said of the humbucker in the shared position, and of nothing else', () => {
    const { worse } = advice('pad', 'bridge', mixedSet);
    expect(worse.map(({ index, pickup }) => [index, pickup])).toEqual([[1, 'neck']]);
    expect(worse[0]?.after.dcLoad).toBeCloseTo(par(500e3, 470e3), 3);
  });
});

describe('a tone control that misses a pickup', () => {
  const missing = onPoles({ bridge: 'humbucker', middle: 'humbucker' }, tone, [
    ...toneJoints,
    'selector.B0 > volume.3',
    'selector.B2 > tone.2',
  ]);

  it('is joined to it by a jumper, not replaced by a resistor', () => {
    const found = advice('no-tone', 'bridge', missing, { match: 'signal' });
    expect(found).toMatchObject({ others: true });
    expect(found.alternatives).toMatchObject([
      { kind: 'tone-jumper', from: 'selector.B1', to: 'selector.B2', tones: ['tone'] },
    ]);
    const after = found.alternatives[0]?.effects.find(
      ({ index, pickup }) => index === 0 && pickup === 'bridge',
    );
    // 22 nF is 7 kΩ at 1 kHz, next to nothing beside 500 kΩ.
    expect((after?.after.signalLoad ?? 0) / par(500e3, 500e3)).toBeCloseTo(1, 2);
    expect(found.standIn).toBe(470e3);
  });

  it('is offered beside a resistor where the DC load is off as well', () => {
    const single = onPoles({ bridge: 'single-coil', middle: 'humbucker' }, tone, [
      ...toneJoints,
      'selector.B0 > volume.3',
      'selector.B2 > tone.2',
    ]);
    expect(advice('pad', 'bridge', single, { match: 'signal' }).alternatives[0]).toMatchObject({
      kind: 'tone-jumper',
    });
  });

  it('has no say in the DC load', () => advice('fits', 'bridge', missing));

  it('where the kit has none, is the nature of the circuit', () => {
    const found = advice('no-tone', 'bridge', onPoles({ bridge: 'humbucker' }, {}, []), { match: 'signal' });
    expect(found).toMatchObject({ others: false, alternatives: [] });
    expect(
      choosePads(makeCircuit(onPoles({ bridge: 'humbucker' }, {}, [])), { match: 'signal' }).kit.parts,
    ).toHaveLength(4);
  });
});

describe('where the signal leaves', () => {
  it('a pickup with its leads exchanged has the resistor on the lead that carries signal', () => {
    const reversed = onPoles({ bridge: 'humbucker' }, { neck: { kind: 'single-coil' } }, [
      'neck.hot > volume.case',
      'neck.ground > selector.A3',
    ]);
    expect(advice('pad', 'neck', reversed)).toMatchObject({ from: 'selector.A3', to: 'volume.case' });
  });

  /** Bridge on top of neck, always in series. */
  const pair: Compact = {
    parts: {
      neck: { kind: 'single-coil', resistance: '6k' },
      bridge: { kind: 'single-coil', resistance: '7k' },
      volume: { kind: 'pot', value: '500k' },
      output: { kind: 'jack' },
    },
    joints: [
      'volume.1 > volume.case',
      'output.sleeve > volume.case',
      'neck.ground > volume.case',
      'neck.hot > bridge.ground',
      'bridge.hot > volume.3',
      'volume.2 > output.tip',
    ],
  };

  it('two in series have one resistor across both', () => {
    const first = advice('pad', 'neck', pair);
    expect(first).toMatchObject({ pair: ['bridge'], from: 'volume.3', to: 'volume.case' });
    // What the neck sees: the volume with the resistor across it, and the other winding in series.
    expect(first.chosen.load).toBeCloseTo(par(500e3, first.chosen.ohms) + 7e3, 3);
    expect(advice('pair', 'bridge', pair)).toMatchObject({ first: 'neck' });
  });
});

it('two that are in series in some positions only are no pair for the one that sounds alone in another', () => {
  const tapped: Compact = {
    parts: {
      bridge: { kind: 'single-coil', resistance: '7k' },
      neck: { kind: 'single-coil', resistance: '6k' },
      selector: { kind: 'lever-3' },
      volume: { kind: 'pot', value: '500k' },
      output: { kind: 'jack' },
    },
    joints: [
      'bridge.hot > volume.3',
      'bridge.ground > neck.hot',
      'neck.ground > volume.case',
      // In position 2 the lower of the two is taken out.
      'neck.hot > selector.A0',
      'selector.A2 > volume.case',
      'volume.1 > volume.case',
      'output.sleeve > volume.case',
      'volume.2 > output.tip',
    ],
  };
  const { advice: all } = choosePads(makeCircuit(tapped), { match: 'dc' });
  const of = (pickup: string) => all.find((one) => one.pickup === pickup);
  expect(of('bridge')).not.toHaveProperty('pair');
  expect(of('bridge')?.kind).not.toBe('pair');
  expect(of('neck')).toHaveProperty('pair', ['bridge']);
});

describe('what is in stock', () => {
  const padded: Compact = {
    ...mixedSet,
    parts: { ...mixedSet.parts, pad: { kind: 'resistor', value: '470k' } },
    joints: [...mixedSet.joints, 'pad.1 > selector.A1', 'pad.2 > volume.case'],
  };

  it('a resistor that fits and cannot be had is changed to the nearest that can', () => {
    advice('fits', 'bridge', padded);
    const found = advice('pad', 'bridge', padded, { series: { stock: [390e3, 1e6] } });
    expect(found).toMatchObject({ notInStock: 470e3, present: false, chosen: { ohms: 390e3 } });
    advice('fits', 'bridge', padded, { series: { stock: [390e3, 470e3] } });
  });

  it('but not to one that is worse than none', () =>
    expect(advice('no-stock', 'bridge', padded, { series: { stock: [10e3] } })).toMatchObject({
      notInStock: 470e3,
      nearest: { ohms: 10e3 },
    }));
});
