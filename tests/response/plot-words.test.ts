/** What a plot says of curves written down: marks, what is against its reference, which references are one line, and silence. */
import { describe, expect, it } from 'vitest';
import type {
  Curve,
  CurveShape,
  FrequencyResponse,
  PickupCurve,
  StateResponse,
} from '../../src/analyse/index.ts';
import { plotOf } from '../../src/annotate/plot.ts';
import { makeCircuit, mixedSet } from '../analyse/kits.ts';

const circuit = makeCircuit(mixedSet);
const KNOBS = { volume: 7, tone: 10 };
const curve = (shape: Partial<CurveShape> = {}, gain: readonly number[] = [1, 1, 1]): Curve => ({
  gain,
  shape: { plateau: 0, ...shape },
});
const peak = { frequency: 3456, height: 4.26, level: 3.2 };
const pickup = (
  name: string,
  own: Curve,
  reference: Curve,
  difference: PickupCurve['difference'] = {},
): PickupCurve => ({ pickup: name, ...own, reference, difference });

function plot(...states: readonly (Pick<StateResponse, 'pickups'> & { readonly together?: Curve })[]) {
  const response: FrequencyResponse = {
    frequencies: [100, 1000, 10_000],
    states: states.map((one, index) => {
      const state = circuit.states[index];
      if (!state) throw new Error(`no state ${index}`);
      return { index, state, knobs: KNOBS, ...one };
    }),
  };
  return plotOf(circuit, response, KNOBS);
}
const db = (level: number): number => 10 ** (level / 20);

describe('marks', () => {
  it('stand at the peak and 3 dB below the plateau, with their figures', () => {
    const { trace } =
      plot({ pickups: [], together: curve({ plateau: -2, resonance: peak, cutoff: 5678 }, [1, 10, 0]) })
        .states[0] ?? {};
    expect(trace?.levels).toEqual([0, 20, -200]);
    expect(trace?.resonance).toEqual({ frequency: 3456, level: 3.2, words: ['3.46 kHz', '+4.3 dB'] });
    expect(trace?.cutoff).toMatchObject({ frequency: 5678, words: ['−3 dB at 5.68 kHz'] });
    expect(trace?.cutoff?.level).toBeCloseTo(-2 - 3.0103, 4);
    const { trace: bare } = plot({ pickups: [], together: curve() }).states[0] ?? {};
    expect([bare?.resonance, bare?.cutoff]).toEqual([undefined, undefined]);
  });
  it('and a line are there only where something is heard', () => {
    const at = (plateau: number) => plot({ pickups: [], together: curve({ plateau }) }).states[0]?.trace;
    expect([at(-150), at(-149.9) === undefined]).toEqual([undefined, false]);
    expect(plot({ pickups: [] }).states[0]?.trace).toBeUndefined();
  });
});

describe('a pickup against its reference', () => {
  const words = (
    own: Partial<CurveShape>,
    reference: Partial<CurveShape>,
    difference: PickupCurve['difference'] = {},
  ) =>
    plot({ pickups: [pickup('bridge', curve(own), curve(reference), difference)], together: curve() })
      .states[0]?.rows[0]?.words;
  it.each([
    [{ frequency: 300, percent: 12.4, height: -1.26 }, '+12 %, peak −1.3 dB'],
    [{ frequency: 0, percent: 0.4, height: 0.04 }, 'as designed'],
    [{ frequency: 0, percent: 0.6, height: 0.04 }, '+1 %, peak 0.0 dB'],
    [{ frequency: 0, percent: 0, height: 0.06 }, '0 %, peak +0.1 dB'],
  ])('%j: %s', (difference, said) =>
    expect(words({ resonance: peak }, { resonance: peak }, difference)).toBe(said),
  );
  it('without a peak on one side, or on either', () => {
    expect(words({ resonance: peak }, {})).toBe('a peak; the reference has none');
    expect(words({}, { resonance: peak })).toBe('no peak; the reference has one');
    expect(words({}, {})).toBe('no peak in either');
    expect(words({ plateau: -150, resonance: peak }, {})).toBe('no output');
    expect(words({ plateau: -149.9 }, {})).toBe('no peak in either');
  });
});

describe('references', () => {
  const at = (name: string, ...levels: readonly number[]) => pickup(name, curve(), curve({}, levels.map(db)));
  const words = (pickups: readonly PickupCurve[]) =>
    plot({ pickups, together: curve() }).states[0]?.references.map((one) => one.words);
  it('less than a fifth of a decibel apart all along are one line, named together', () => {
    expect(words([at('neck', 0, 0, 0), at('bridge', 0.19, -0.19, 0)])).toEqual([
      'reference, neck and bridge',
    ]);
    expect(words([at('neck', 0, 0, 0), at('bridge', 0, 0, 0.21)])).toEqual([
      'reference, neck',
      'reference, bridge',
    ]);
    expect(words([at('neck', 0, 0, 0), at('bridge', -0.21, 0, 0)])).toHaveLength(2);
  });
  it('that are silent, or of a position that is, are none', () => {
    expect(words([pickup('neck', curve(), curve({ plateau: -150 }))])).toEqual([]);
    expect(words([pickup('neck', curve(), curve({ plateau: -149.9 }))])).toHaveLength(1);
    expect(
      plot({ pickups: [at('neck', 0, 0, 0)], together: curve({ plateau: -160 }) }).states[0]?.references,
    ).toEqual([]);
  });
  it('of the whole plot are each pickup’s once, in the order written', () => {
    const found = plot(
      { pickups: [at('bridge', 5, 5, 5)], together: curve() },
      { pickups: [at('neck', 0, 0, 0), at('bridge', 5, 5, 5)], together: curve() },
    ).references;
    expect(found.map((one) => one.words)).toEqual(['reference, neck', 'reference, bridge']);
  });
});

describe('a plot', () => {
  const drawn = plot(
    {
      pickups: [
        pickup('bridge', curve({ resonance: peak }), curve({ resonance: peak }), {
          percent: 10,
          height: 1,
          frequency: 9,
        }),
      ],
      together: curve({ resonance: peak, cutoff: 5678 }),
    },
    { pickups: [pickup('neck', curve(), curve()), pickup('bridge', curve(), curve())], together: curve() },
    { pickups: [] },
  );
  it('says at its head what it holds for', () => {
    expect(drawn.id).toBe(`${circuit.kit.id}-response`);
    expect(drawn.lines[0]).toBe(
      'Response: output voltage at the jack for 1 V induced in each selected coil. Volume 7, tone 10; cable 300 pF, amplifier 1 MΩ.',
    );
    expect(drawn.lines[1]).toMatch(/level at 100 Hz, core loss neglected\.$/);
    const lossy = makeCircuit({
      parts: { a: { kind: 'single-coil', 'core-loss': '300k' }, out: { kind: 'jack' } },
      joints: ['a.hot > out.tip', 'a.ground > out.sleeve'],
    });
    expect(plotOf(lossy, { frequencies: [], states: [] }, KNOBS).lines[1]).toMatch(/level at 100 Hz\.$/);
  });
  it('describes each position for those who cannot see it', () => {
    expect(drawn.description.slice((drawn.lines[0]?.length ?? 0) + 1)).toBe(
      'Position 1: bridge, resonance 3.46 kHz, +4.3 dB, −3 dB at 5.68 kHz. bridge against its reference: +10 %, peak +1.0 dB. ' +
        'Position 2: neck + bridge, no resonance. neck against its reference: no peak in either; bridge against its reference: no peak in either. ' +
        'Position 3: neck, no output.',
    );
  });
  it('has a tint for each pickup, and tells apart positions of the same tints', () => {
    expect(
      drawn.states.map(({ badge, name, tints, variant }) => [badge, name, tints.length, variant]),
    ).toEqual([
      ['1', 'bridge', 1, 0],
      ['2', 'neck + bridge', 2, 0],
      ['3', 'neck', 1, 0],
    ]);
    const same = makeCircuit({
      parts: { a: { kind: 'single-coil' }, s: { kind: 'lever-3' }, out: { kind: 'jack' } },
      joints: ['a.hot > out.tip', 'a.ground > out.sleeve'],
    });
    const states = same.states.map((state, index) => ({ index, state, knobs: KNOBS, pickups: [] }));
    expect(plotOf(same, { frequencies: [], states }, KNOBS).states.map(({ variant }) => variant)).toEqual([
      0, 1, 2,
    ]);
  });
});
