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
