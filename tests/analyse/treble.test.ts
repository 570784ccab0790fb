/** Treble by a few frequencies, against the whole sweep: where each pickup's reference falls by 3 dB, and what is left of it in the kit. */
import { describe, expect, it } from 'vitest';
import { capacitorsAcross, solveResponse, trebleOf } from '../../src/analyse/index.ts';
import { toneControlsIn } from '../../src/analyse/tone-controls.ts';
import { referenceCutoffs } from '../../src/analyse/treble.ts';
import { seeded } from '../../src/common/random.ts';
import { type Compact, makeCircuit, mixedSet, sampleCircuit } from './kits.ts';

const random = seeded(8);
const between = (low: number, high: number): number => low * (high / low) ** random();

it('the reference’s −3 dB point is that of the sweep, or the end of hearing where there is none', () => {
  const pickups = Array.from({ length: 12 }, (_, i) => [
    `p${i}`,
    {
      kind: i % 2 ? 'single-coil' : 'humbucker',
      resistance: between(2e3, 15e3),
      inductance: i < 3 ? 0.05 : between(0.5, 10),
      capacitance: between(50e-12, 300e-12),
    },
  ]);
  const circuit = makeCircuit({
    parts: { ...Object.fromEntries(pickups), out: { kind: 'jack' } },
    joints: pickups.flatMap(([name]) => [`${name}.hot > out.tip`, `${name}.ground > out.sleeve`]),
  });
  const cutoffs = referenceCutoffs(circuit);
  const [state] = solveResponse(circuit, { points: 1 }).states;
  expect(state?.pickups).toHaveLength(12);
  for (const { pickup, reference } of state?.pickups ?? [])
    expect((cutoffs.get(pickup) ?? NaN) / (reference.shape.cutoff ?? 20_000), pickup).toBeCloseTo(1, 3);
  expect([...cutoffs.values()].filter((hertz) => hertz === 20_000)).toHaveLength(3);
});

describe('what a pickup keeps', () => {
  const circuits = [
    ...['kestrel-hss', 'wren-hs'].map(sampleCircuit),
    ...['100p', '470p', '2.2n', '10n'].map((value) =>
      makeCircuit({
        parts: { ...mixedSet.parts, more: { kind: 'capacitor', value } },
        joints: [...mixedSet.joints, 'more.1 > volume.3', 'more.2 > volume.case'],
      }),
    ),
  ];
  it('is its gain at a quarter, a half and the whole of the reference’s −3 dB point, beside 3 dB off its own plateau', () => {
    const seen = { lost: 0, lower: 0, kept: 0 };
    for (const circuit of circuits) {
      const found = trebleOf(circuit);
      const cutoffs = referenceCutoffs(circuit);
      for (const [name, cutoff] of cutoffs) {
        const at = (hertz: number) => solveResponse(circuit, { points: 1, from: hertz }).states;
        const [plateau, quarter, half, whole] = [100, cutoff / 4, cutoff / 2, cutoff].map(at);
        for (const [index, state] of (plateau ?? []).entries()) {
          const gain = (states = plateau): number =>
            20 * Math.log10(states?.[index]?.pickups.find(({ pickup }) => pickup === name)?.gain[0] ?? NaN);
          const treble = found[index]?.get(name);
          expect(treble === undefined).toBe(!state.state.sounding.includes(name));
          if (!treble) continue;
          const wanted = gain() - 10 * Math.log10(2);
          expect(treble.level).toBeCloseTo(gain(whole) - wanted, 6);
          expect(treble.lower).toBe(Math.min(gain(quarter), gain(half), gain(whole)) < wanted);
          // Of one that sounds by itself nothing else can have taken it.
          if (state.state.sounding.length === 1) expect(treble.lost).toBe(gain(half) < wanted);
          else if (treble.lost) expect(gain(half)).toBeLessThan(wanted);
          seen.lost += treble.lost ? 1 : 0;
          seen.lower += treble.lower ? 1 : 0;
          seen.kept += treble.lower ? 0 : 1;
        }
      }
    }
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(2);
  });
});

describe('a capacitor across the signal', () => {
  const kit = (joints: readonly string[], more: Compact['parts'] = {}): Compact => ({
    parts: {
      a: { kind: 'single-coil' },
      volume: { kind: 'pot', value: '250k' },
      tone: { kind: 'pot', value: '250k' },
      cap: { kind: 'capacitor', value: '22n' },
      out: { kind: 'jack' },
      ...more,
    },
    joints: [
      'a.hot > volume.3',
      'a.ground > out.sleeve',
      'volume.2 > out.tip',
      'volume.1 > out.sleeve',
      ...joints,
    ],
  });
  const found = (compact: Compact) =>
    capacitorsAcross(makeCircuit(compact)).map(({ capacitor, control, lost }) => [
      capacitor,
      control,
      lost.length,
    ]);
  it('is the one that by itself takes the treble; with a tone control either way round there is none', () => {
    expect(found(kit(['tone.2 > volume.3', 'tone.1 > cap.1', 'cap.2 > out.sleeve']))).toEqual([]);
    expect(found(kit(['tone.2 > volume.3', 'tone.3 > cap.1', 'cap.2 > out.sleeve']))).toEqual([]);
    expect(found(kit(['cap.1 > volume.3', 'cap.2 > out.sleeve', 'tone.1 > tone.case']))).toEqual([
      ['cap', undefined, 1],
    ]);
    const two = { small: { kind: 'capacitor', value: '47p' }, large: { kind: 'capacitor', value: '10n' } };
    expect(
      found(
        kit(
          [
            'tone.2 > volume.3',
            'tone.1 > cap.1',
            'cap.2 > out.sleeve',
            'small.1 > volume.3',
            'small.2 > out.sleeve',
            'large.1 > volume.3',
            'large.2 > out.sleeve',
          ],
          two,
        ),
      ),
    ).toEqual([['large', undefined, 1]]);
  });
  it('has no pot to blame that would only silence it', () => {
    // Turned down the volume takes the treble and all the rest with it.
    expect(found(kit(['cap.1 > volume.2', 'cap.2 > out.sleeve', 'tone.1 > tone.case']))).toEqual([
      ['cap', undefined, 1],
    ]);
  });
});

it('both tone controls load where there are just two pots, of which neither is a volume', () => {
  const circuit = makeCircuit({
    parts: {
      a: { kind: 'single-coil' },
      one: { kind: 'pot', value: '250k' },
      two: { kind: 'pot', value: '250k' },
      c1: { kind: 'capacitor', value: '22n' },
      c2: { kind: 'capacitor', value: '22n' },
      out: { kind: 'jack' },
    },
    joints: [
      'a.hot > out.tip',
      'a.ground > out.sleeve',
      ...['one', 'two'].flatMap((name, i) => [
        `${name}.2 > out.tip`,
        `${name}.1 > c${i + 1}.1`,
        `c${i + 1}.2 > out.sleeve`,
      ]),
    ],
  });
  const [state] = circuit.states;
  expect(state && toneControlsIn(circuit, state)).toEqual(['one', 'two']);
});
