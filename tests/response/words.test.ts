/** What a plot says of a pickup beside its reference: words for every case there can be. */
import { describe, expect, it } from 'vitest';
import { knobsAtFull, type PickupCurve, solveResponse } from '../../src/analyse/index.ts';
import { plotOf } from '../../src/annotate/plot.ts';
import { must } from '../../src/common/must.ts';
import { panelLevels } from '../../src/draw/plot/panel.ts';
import { sampleCircuit } from '../analyse/kits.ts';

const circuit = sampleCircuit('heron-ss');
const response = solveResponse(circuit, { points: 40 });

/** The words where every pickup's curve is changed so. */
function wordsWith(change: (curve: PickupCurve) => PickupCurve): readonly string[] {
  const states = response.states.map((state) => ({ ...state, pickups: state.pickups.map(change) }));
  return plotOf(circuit, { ...response, states }, knobsAtFull).states.flatMap(({ rows }) =>
    rows.map(({ words }) => words),
  );
}
const apart = (percent: number | undefined, height: number | undefined) => (curve: PickupCurve) =>
  ({ ...curve, difference: { ...curve.difference, percent, height } }) as PickupCurve;
const peakless = ({ resonance: _, ...shape }: PickupCurve['shape']) => shape as PickupCurve['shape'];

describe('a pickup beside the harness it was made for', () => {
  it.each([
    [0, 0, 'as designed'],
    [0.4, -0.04, 'as designed'],
    [0, 1.26, '0 %, peak +1.3 dB'],
    [12.4, 0, '+12 %, peak 0.0 dB'],
    [-31, -2, '−31 %, peak −2.0 dB'],
  ])('%s %% and %s dB: %s', (percent, height, words) =>
    expect(new Set(wordsWith(apart(percent, height)))).toEqual(new Set([words])),
  );
  it('where one has no peak, or neither', () => {
    const none = apart(undefined, undefined);
    expect(new Set(wordsWith(none))).toEqual(new Set(['a peak; the reference has none']));
    const bare = (curve: PickupCurve): PickupCurve => none({ ...curve, shape: peakless(curve.shape) });
    expect(new Set(wordsWith(bare))).toEqual(new Set(['no peak; the reference has one']));
    expect(
      new Set(
        wordsWith((curve) => {
          const { reference } = curve;
          return bare({ ...curve, reference: { ...reference, shape: peakless(reference.shape) } });
        }),
      ),
    ).toEqual(new Set(['no peak in either']));
  });
  it('where nothing is heard', () =>
    expect(new Set(wordsWith((curve) => ({ ...curve, shape: { ...curve.shape, plateau: -200 } })))).toEqual(
      new Set(['no output']),
    ));
});

describe('the scale of the panels', () => {
  const trace = (plateau: number, peak?: number) => ({
    levels: [],
    plateau,
    ...(peak === undefined ? {} : { resonance: { frequency: 4000, level: peak } }),
  });
  const plot = plotOf(circuit, response, knobsAtFull);
  const withTraces = (...traces: readonly ReturnType<typeof trace>[]) =>
    panelLevels({
      ...plot,
      states: traces.map((one) => ({
        ...must(plot.states[0], 'state'),
        trace: one as never,
        references: [],
      })),
    });

  it('reaches well below the lowest plateau and above the highest peak', () => {
    expect(withTraces(trace(0, 5), trace(-20)).from).toBeLessThanOrEqual(-31);
    expect(withTraces(trace(0, 5)).from).toBeGreaterThan(-20);
    expect(withTraces(trace(0, 5), trace(-20)).to).toBe(9);
    expect(withTraces(trace(0), trace(0, 14)).to).toBe(18);
  });
});
