/** What each wire is said to carry, of a circuit that has every kind of net. Source: the drawing's own key. */
import { expect, it } from 'vitest';
import { linesOf } from '../../src/annotate/lines.ts';
import { type Compact, makeCircuit } from '../analyse/kits.ts';

const parts: Compact['parts'] = {
  neck: { kind: 'single-coil' },
  bridge: { kind: 'single-coil' },
  selector: { kind: 'lever-3' },
  series: { kind: 'resistor', value: '10k' },
  volume: { kind: 'pot', value: '250k' },
  tone: { kind: 'pot', value: '250k' },
  cap: { kind: 'capacitor', value: '22n' },
  output: { kind: 'jack' },
};
const tints = (joints: readonly (readonly [string, string])[]): readonly (readonly [string, string])[] => {
  const lines = linesOf(makeCircuit({ parts, joints: joints.map(([joint]) => joint) }));
  return joints.map(([joint], i) => [joint, lines[i]?.tint ?? '']);
};

it('behind the switch: its output where it meets the volume, else another net', () => {
  const through: readonly (readonly [string, string])[] = [
    ['bridge.hot > selector.A1', 'pickup-3'],
    ['neck.hot > selector.B3', 'pickup-1'],
    ['selector.A0 > selector.B0', 'other'],
    ['selector.A0 > series.1', 'other'],
    ['series.2 > volume.3', 'other'],
    ['tone.2 > volume.3', 'other'],
    ['tone.1 > cap.1', 'tone'],
    ['cap.2 > volume.case', 'ground'],
    ['volume.1 > volume.case', 'ground'],
    ['volume.2 > output.tip', 'output'],
    ['output.sleeve > volume.case', 'ground'],
  ];
  expect(tints(through)).toEqual(through);
  const straight: readonly (readonly [string, string])[] = [
    ['bridge.hot > selector.A1', 'pickup-3'],
    ['neck.hot > selector.A3', 'pickup-1'],
    ['selector.A0 > volume.3', 'switch-output'],
    // A capacitor on the switch's output is still on the switch's output.
    ['cap.1 > volume.3', 'switch-output'],
    ['cap.2 > tone.3', 'tone'],
    ['tone.2 > volume.case', 'ground'],
    ['volume.2 > output.tip', 'output'],
    ['output.sleeve > volume.case', 'ground'],
  ];
  expect(tints(straight)).toEqual(straight);
});

const pickups: Compact['parts'] = {
  neck: { kind: 'single-coil' },
  bridge: { kind: 'single-coil' },
  output: { kind: 'jack' },
};
const grounds: readonly (readonly [string, string])[] = [
  ['neck.ground > volume.case', 'ground'],
  ['bridge.ground > volume.case', 'ground'],
  ['volume.1 > volume.case', 'ground'],
  ['output.sleeve > volume.case', 'ground'],
];
const tintsOf = (
  more: Compact['parts'],
  wanted: readonly (readonly [string, string])[],
): readonly (readonly [string, string])[] => {
  const all = [...wanted, ...grounds];
  const lines = linesOf(makeCircuit({ parts: { ...pickups, ...more }, joints: all.map(([joint]) => joint) }));
  return all.map(([joint], i) => [joint, lines[i]?.tint ?? '']);
};

const volume = { kind: 'pot', value: '250k' };
const tone = { kind: 'pot', value: '250k' };
const tap = (value: string) => ({ kind: 'capacitor', value });

it('a treble bleed makes no wire a tone control’s, whoever feeds the volume', () => {
  const bleed = { volume, bleed: tap('1n'), damper: { kind: 'resistor', value: '150k' } };
  const across = [
    ['bleed.1 > volume.3', 'other'],
    ['bleed.2 > damper.1', 'other'],
    ['damper.2 > volume.2', 'output'],
    ['volume.2 > output.tip', 'output'],
  ] as const;
  const one = { kind: 'switch', lugs: { left: ['A1', 'A0'] }, positions: [[], [['A0', 'A1']]] };
  // Each pickup has a switch of its own, and the throws meet at the volume.
  const throws = [
    ['neck.hot > s1.A0', 'pickup-1'],
    ['bridge.hot > s2.A0', 'pickup-3'],
    ['s1.A1 > volume.3', 'other'],
    ['s2.A1 > volume.3', 'other'],
    ...across,
  ] as const;
  expect(tintsOf({ ...bleed, s1: one, s2: one }, throws)).toEqual([...throws, ...grounds]);
  // A tone control beside it changes nothing for the wires of the bleed.
  const beside = [
    ...throws,
    ['tone.2 > volume.3', 'other'],
    ['tone.1 > cap.1', 'tone'],
    ['cap.2 > volume.case', 'ground'],
  ] as const;
  expect(tintsOf({ ...bleed, s1: one, s2: one, tone, cap: tap('22n') }, beside)).toEqual([
    ...beside,
    ...grounds,
  ]);
});

it('a capacitor in the signal’s way makes no wire a tone control’s', () => {
  const wanted = [
    ['bridge.hot > thin.1', 'pickup-3'],
    ['neck.hot > selector.B3', 'pickup-1'],
    ['thin.2 > selector.A1', 'other'],
    ['selector.A0 > selector.B0', 'switch-output'],
    ['selector.A0 > volume.3', 'switch-output'],
    ['volume.2 > output.tip', 'output'],
  ] as const;
  expect(tintsOf({ volume, thin: tap('4.7n'), selector: { kind: 'lever-3' } }, wanted)).toEqual([
    ...wanted,
    ...grounds,
  ]);
  // A bass control: a pot across a capacitor that all of the signal comes through.
  const bass = [
    ['bridge.hot > bass.3', 'pickup-3'],
    ['neck.hot > selector.B3', 'pickup-1'],
    ['bass.2 > bass.1', 'other'],
    ['bass.1 > selector.A1', 'other'],
    ['cap.1 > bass.3', 'pickup-3'],
    ['cap.2 > bass.1', 'other'],
    ['selector.A0 > selector.B0', 'switch-output'],
    ['selector.A0 > volume.3', 'switch-output'],
    ['volume.2 > output.tip', 'output'],
  ] as const;
  const more = {
    volume,
    bass: { kind: 'pot', value: '1M' },
    cap: tap('2.2n'),
    selector: { kind: 'lever-3' },
  };
  expect(tintsOf(more, bass)).toEqual([...bass, ...grounds]);
});

it('a tone control that the switch selects is one on both sides of the switch, and on both sides of its capacitor', () => {
  const wanted = [
    ['neck.hot > selector.A3', 'pickup-1'],
    ['bridge.hot > selector.A1', 'pickup-3'],
    ['selector.A0 > volume.3', 'switch-output'],
    ['selector.A0 > selector.B0', 'switch-output'],
    ['selector.B3 > tone.3', 'tone'],
    ['selector.B1 > cap.1', 'tone'],
    ['cap.2 > low.2', 'tone'],
    ['low.1 > volume.case', 'ground'],
    ['tone.2 > damper.1', 'tone'],
    ['damper.2 > second.1', 'tone'],
    ['second.2 > volume.case', 'ground'],
    ['volume.2 > output.tip', 'output'],
  ] as const;
  const more = {
    volume,
    tone,
    low: tone,
    cap: tap('22n'),
    second: tap('47n'),
    damper: { kind: 'resistor', value: '1k' },
    selector: { kind: 'lever-3' },
  };
  expect(tintsOf(more, wanted)).toEqual([...wanted, ...grounds]);
});
