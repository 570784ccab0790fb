/** Every usual way to join the coils of a humbucker with four leads, one volume pot, by name. */
import type { Compact } from '../analyse/kits.ts';

const parts = {
  bridge: { kind: 'four-lead-humbucker', resistance: '8.2k' },
  volume: { kind: 'pot', value: '500k' },
  output: { kind: 'jack' },
};
const rest = ['volume.1 > output.sleeve', 'volume.2 > output.tip', 'volume.case > output.sleeve'];

const way = (joints: readonly string[], more: Compact['parts'] = {}): Compact => ({
  parts: { ...parts, ...more },
  joints: [...joints, ...rest],
});

const resistor = { part: { kind: 'resistor', value: '4.7k' } };
const series = [
  'bridge.a-start > volume.3',
  'bridge.a-finish > bridge.b-finish',
  'bridge.b-start > volume.case',
];

export const ways: Readonly<Record<string, Compact>> = {
  series: way(series),
  'series, the other way round': way([
    'bridge.b-start > volume.3',
    'bridge.a-finish > bridge.b-finish',
    'bridge.a-start > volume.case',
  ]),
  parallel: way([
    'bridge.a-start > volume.3',
    'bridge.b-finish > volume.3',
    'bridge.a-finish > volume.case',
    'bridge.b-start > volume.case',
  ]),
  'coil B shorted': way([...series, 'bridge.b-finish > volume.case']),
  'coil A shorted': way([...series, 'bridge.a-finish > volume.3']),
  'coil B lifted': way([
    'bridge.a-start > volume.3',
    'bridge.a-finish > volume.case',
    'bridge.b-start > volume.case',
  ]),
  'coil B in the air': way(['bridge.a-start > volume.3', 'bridge.a-finish > volume.case']),
  'coils against each other': way([
    'bridge.a-start > volume.3',
    'bridge.a-finish > bridge.b-start',
    'bridge.b-finish > volume.case',
  ]),
  'coils against each other, parallel': way([
    'bridge.a-start > volume.3',
    'bridge.b-start > volume.3',
    'bridge.a-finish > volume.case',
    'bridge.b-finish > volume.case',
  ]),
  'split through a resistor': way([...series, 'part.1 > bridge.a-finish', 'part.2 > volume.case'], resistor),
  'split through a capacitor': way([...series, 'part.1 > bridge.a-finish', 'part.2 > volume.case'], {
    part: { kind: 'capacitor', value: '47n' },
  }),
  'two in parallel, one split': way(
    [
      ...series,
      'bridge.a-finish > volume.case',
      'neck.a-start > volume.3',
      'neck.a-finish > neck.b-finish',
      'neck.b-start > volume.case',
    ],
    { neck: { kind: 'four-lead-humbucker', resistance: '7.6k', inductance: '3.9H', 'core-loss': '600k' } },
  ),
  'two in series': way(
    [
      'bridge.a-start > volume.3',
      'bridge.a-finish > bridge.b-finish',
      'bridge.b-start > neck.a-start',
      'neck.a-finish > neck.b-finish',
      'neck.b-start > volume.case',
    ],
    { neck: { kind: 'four-lead-humbucker', resistance: '7.6k', coupling: 0.3 } },
  ),
};
