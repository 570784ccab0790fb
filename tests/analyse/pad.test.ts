/** The padding choice. The trade's expectations are common practice, no source; the loads are by the parallel law. */
import { describe, expect, it } from 'vitest';
import { choosePads, type PadAdvice, type PadOptions, solveLoads } from '../../src/analyse/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { type Compact, makeCircuit, mixedSet, sampleCircuit, sampleNames } from './kits.ts';

const par = (...ohms: number[]): number => 1 / ohms.reduce((sum, r) => sum + 1 / r, 0);
const mixed = makeCircuit(mixedSet);
const twoSingles = makeCircuit({
  ...mixedSet,
  parts: { ...mixedSet.parts, neck: { kind: 'single-coil' } },
});

function advice<K extends PadAdvice['kind']>(kind: K, pickup: string, options: PadOptions, circuit = mixed) {
  const found = choosePads(circuit, options).advice.find((one) => one.pickup === pickup);
  if (found?.kind !== kind) throw new Error(`${pickup}: ${found?.kind} instead of ${kind}`);
  return found as Extract<PadAdvice, { kind: K }>;
}

describe('a mixed set without pads, 500k pots', () => {
  it.each([
    ['E12', 470e3],
    ['E24', 510e3],
    ['E96', 499e3],
  ] as const)('--match dc from %s: %d Ω on the single coil', (series, ohms) => {
    const pad = advice('pad', 'bridge', { series });
    expect(pad.ideal / 500e3).toBeCloseTo(1, 9);
    expect(pad.chosen.ohms).toBe(ohms);
    expect(pad.chosen.load / par(500e3, ohms)).toBeCloseTo(1, 9);
    expect([pad.from, pad.to, pad.part]).toEqual(['selector.A1', 'volume.case', 'pad-bridge']);
  });

  it.each([
    ['E12', 270e3],
    ['E24', 240e3],
    ['E96', 249e3],
  ] as const)('--match signal from %s: %d Ω, near 250k', (series, ohms) => {
    const pad = advice('pad', 'bridge', { series, match: 'signal' });
    expect(Math.abs(pad.ideal / 250e3 - 1)).toBeLessThan(5e-3);
    expect(pad.chosen.ohms).toBe(ohms);
    expect(Math.abs(pad.chosen.load / par(500e3, 500e3, ohms) - 1)).toBeLessThan(5e-3);
  });

  it('with the ideal value in stock the load meets its reference', () => {
    const { ideal } = advice('pad', 'bridge', { match: 'signal' });
    const pad = advice('pad', 'bridge', { match: 'signal', series: { stock: [ideal] } });
    expect(pad.chosen.load / pad.reference).toBeCloseTo(1, 9);
    expect(pad).not.toHaveProperty('below');
    expect(pad).not.toHaveProperty('above');
  });

  it('gives both neighbours with their loads', () => {
    const pad = advice('pad', 'bridge', {});
    expect([pad.below?.ohms, pad.above?.ohms]).toEqual([390e3, 560e3]);
    expect(pad.below?.load).toBeLessThan(pad.chosen.load);
    expect(pad.above?.load).toBeGreaterThan(pad.chosen.load);
  });

  it('shows what the pad does to the other pickup where both sound', () => {
    const { effects } = advice('pad', 'bridge', {}).chosen;
    const shared = effects.find((effect) => effect.index === 1 && effect.pickup === 'neck');
    expect(shared?.before.dcLoad).toBeCloseTo(500e3, 3);
    expect(shared?.after.dcLoad).toBeCloseTo(par(500e3, 470e3), 3);
    const alone = effects.find((effect) => effect.index === 2 && effect.pickup === 'neck');
    expect(alone?.after).toEqual(alone?.before);
  });

  it('offers the volume’s input and other pots, each with its figures, where no other pickup suffers', () => {
    expect(advice('pad', 'bridge', {}).alternatives).toEqual([]);
    const { alternatives } = advice('pad', 'neck', {}, twoSingles);
    const moved = alternatives.find((one) => one.kind === 'elsewhere');
    expect(moved?.effects.find((e) => e.index === 0 && e.pickup === 'bridge')?.after.dcLoad).toBeCloseTo(
      par(500e3, 470e3),
      3,
    );
    const pots = alternatives.find((one) => one.kind === 'pots');
    expect(pots).toMatchObject({ pots: { volume: 250e3 } });
    expect(pots?.effects.find((e) => e.index === 0)?.after.dcLoad).toBeCloseTo(250e3, 3);
    expect(alternatives.some((one) => one.kind === 'spare-pole')).toBe(false);
  });

  it('the plan’s kit is the circuit its effects were solved in', () => {
    const plan = choosePads(mixed);
    const again = solveLoads(buildCircuit(plan.kit)).flatMap(({ pickups }) =>
      pickups.map((one) => one.signalLoad),
    );
    expect(plan.effects.map((effect) => effect.after.signalLoad)).toEqual(again);
    expect(choosePads(buildCircuit(plan.kit)).advice.map((one) => one.kind)).toEqual(['fits', 'fits']);
  });
});

describe('other answers', () => {
  it('a load that is too heavy is said to be, with what loads it', () => {
    const heavy = makeCircuit({
      ...mixedSet,
      parts: { ...mixedSet.parts, volume: { kind: 'pot', value: '250k' } },
    });
    const found = advice('too-heavy', 'neck', {}, heavy);
    expect(found).toMatchObject({ causes: [{ part: 'volume', without: Infinity }] });
    expect(found.load).toBeCloseTo(250e3, 3);
    // A volume of 500k would load the bridge too lightly.
    expect(found.alternatives).toEqual([]);
    const signal = advice('too-heavy', 'neck', { match: 'signal' }, heavy);
    expect(signal.causes.map((cause) => cause.part)).toEqual(['volume', 'tone']);
  });

  it.each([[[]], [[0]], [[470e3, -470e3]], [[NaN]], [[Infinity]], [[1e12]], [[0.001]]])(
    'a stock of %j is refused whole',
    (stock) => expect(() => choosePads(mixed, { series: { stock } })).toThrow(RangeError),
  );

  it('so is a nearness that is not a fraction', () => {
    for (const near of [-0.1, 1, NaN]) expect(() => choosePads(mixed, { near })).toThrow(RangeError);
  });

  it('a stock whose nearest value makes matters worse is not fitted', () => {
    const found = advice('no-stock', 'bridge', { series: { stock: [10e3, 22e3] } });
    expect(found.ideal / 500e3).toBeCloseTo(1, 9);
    expect(found.nearest.load).toBeCloseTo(par(500e3, 22e3), 3);
    expect(choosePads(mixed, { series: { stock: [22e3] } }).kit).toBe(mixed.kit);
  });

  it('a pad that is there already is given another value, not doubled; all else about it stays', () => {
    const kestrel = sampleCircuit('kestrel-hss');
    const found = advice('pad', 'middle', { match: 'signal' }, kestrel);
    expect(found).toMatchObject({ replaces: ['pad-middle'], part: 'pad-middle', present: false });
    expect([found.from, found.to]).toEqual(['selector.A2', 'volume.case']);
    expect(Math.abs(found.ideal / 250e3 - 1)).toBeLessThan(5e-3);
    const { kit } = choosePads(kestrel, { match: 'signal' });
    expect(kit.joints).toEqual(kestrel.kit.joints);
    expect(kit.parts.map((part) => part.name)).toEqual(kestrel.kit.parts.map((part) => part.name));
    expect(kit.parts.find((part) => part.name === 'pad-middle')).toMatchObject({
      label: 'Middle pad',
      value: { value: 270e3 },
      sleeved: ['1'],
    });
  });

  it('a pad that is given another value stays where it is soldered', () => {
    const padded = makeCircuit({
      ...mixedSet,
      parts: { ...mixedSet.parts, pad: { kind: 'resistor', value: '100k' } },
      joints: [...mixedSet.joints, 'tone.case > pad.1', 'pad.2 > bridge.hot'],
    });
    const found = advice('pad', 'bridge', {}, padded);
    expect([found.part, found.from, found.to]).toEqual(['pad', 'bridge.hot', 'tone.case']);
  });

  it('a pad that is the nearest available is left in, however far off', () => {
    const series = { stock: [390e3] };
    const once = choosePads(mixed, { series });
    expect(once.kit).not.toBe(mixed.kit);
    const twice = choosePads(buildCircuit(once.kit), { series });
    expect(twice.advice[1]).toMatchObject({ kind: 'pad', present: true });
    expect(twice.kit).toBe(once.kit);
    expect(twice.effects.every((effect) => effect.after.dcLoad === effect.before.dcLoad)).toBe(true);
  });

  it('choosing twice changes nothing the second time, on any kit', () => {
    for (const name of sampleNames())
      for (const match of ['dc', 'signal'] as const)
        for (const series of ['E3', 'E12', { stock: [150e3, 1e6] }] as const) {
          const once = choosePads(sampleCircuit(name), { match, series });
          expect(choosePads(buildCircuit(once.kit), { match, series }).kit, `${name} ${match}`).toBe(
            once.kit,
          );
        }
  });

  it.each([
    ['h', 's'],
    ['s', 'h'],
  ])(
    'two pickups that nothing keeps apart, %s first, do not take the pad out of each other’s hands',
    (...order) => {
      const joined = makeCircuit({
        parts: {
          ...Object.fromEntries(
            order.map((name) => [name, { kind: name === 'h' ? 'humbucker' : 'single-coil' }]),
          ),
          volume: { kind: 'pot', value: '500k' },
          out: { kind: 'jack' },
        },
        joints: [
          ...order.flatMap((name) => [`${name}.hot > volume.3`, `${name}.ground > out.sleeve`]),
          'volume.1 > out.sleeve',
          'volume.2 > out.tip',
        ],
      });
      for (const match of ['dc', 'signal'] as const)
        for (const series of [
          'E12',
          { stock: [1e6] },
          { stock: [330e3] },
          { stock: [100e3, 2e6] },
        ] as const) {
          const once = choosePads(joined, { match, series });
          expect(once.kit.parts.filter((part) => part.kind === 'resistor')).toHaveLength(1);
          expect(choosePads(buildCircuit(once.kit), { match, series }).kit).toBe(once.kit);
        }
      const signal = choosePads(joined, { match: 'signal' }).advice.find(({ pickup }) => pickup === 'h');
      // A humbucker without a tone control wants no resistor; after the single coil it has that one’s.
      if (order[0] === 'h') expect(signal).toMatchObject({ kind: 'no-tone', others: false });
      else expect(signal).toMatchObject({ kind: 'shares', owner: 's', pads: ['pad-s'] });
    },
  );

  it('a pad on a pickup that meets its reference without it is called needless', () => {
    const padded = makeCircuit({
      parts: { ...mixedSet.parts, odd: { kind: 'resistor', value: '470k' } },
      joints: [...mixedSet.joints, 'odd.1 > selector.B2', 'odd.2 > volume.case'],
    });
    const found = advice('needless', 'neck', {}, padded);
    expect(found.pads).toEqual(['odd']);
    expect(found.load).toBeCloseTo(par(500e3, 470e3), 3);
    expect(found.without).toBeCloseTo(500e3, 3);
  });

  it('a lug with three joints on it takes no pad where another is free', () => {
    const full = makeCircuit({
      ...mixedSet,
      parts: { ...mixedSet.parts, extra: { kind: 'ground-point' } },
      joints: [...mixedSet.joints, 'extra.1 > selector.A1'],
    });
    expect(advice('pad', 'bridge', {}, full).from).toBe('selector.A2');
  });

  it('a pickup that sounds in no state is said to be silent', () => {
    const joints = mixedSet.joints.filter((joint) => joint !== 'bridge.hot > selector.A1');
    advice('silent', 'bridge', {}, makeCircuit({ ...mixedSet, joints }));
  });

  it('a spare pole carries the pad only where its contact is closed', () => {
    const onePole: Compact = {
      parts: { ...mixedSet.parts, selector: { kind: 'lever-3' } },
      // Pole A alone picks the pickups: neck on 3, bridge on 1; pole B is free.
      joints: [
        ...mixedSet.joints.filter((joint) => !String(joint).includes('selector')),
        'bridge.hot > selector.A1',
        'neck.hot > selector.A3',
        'selector.A0 > volume.3',
      ],
    };
    const { alternatives } = advice('pad', 'bridge', {}, makeCircuit(onePole));
    const spare = alternatives.filter((one) => one.kind === 'spare-pole');
    expect(spare).toMatchObject([
      { pad: { from: 'selector.B1', wires: [['selector.A1', 'selector.B0']] }, states: [0] },
    ]);
    expect(spare[0]?.effects.find((e) => e.pickup === 'bridge')?.after.dcLoad).toBeCloseTo(
      par(500e3, 470e3),
      3,
    );
    expect(spare[0]?.effects.find((e) => e.pickup === 'neck')?.after.dcLoad).toBeCloseTo(500e3, 3);
  });
});

it('a stock of next to nothing helps nobody, and is told so', () => {
  const plan = choosePads(makeCircuit(mixedSet), { series: { stock: [0.1] } });
  const bridge = plan.advice.find(({ pickup }) => pickup === 'bridge');
  if (bridge?.kind !== 'no-stock') throw new Error(`advice of another kind: ${bridge?.kind}`);
  // The resistor and all else in parallel: hardly more than the resistor.
  expect(bridge.nearest.load).toBeGreaterThan(0.0999);
  expect(bridge.nearest.load).toBeLessThan(0.1);
  expect(bridge.nearest.percent).toBeCloseTo(-100, 3);
});
