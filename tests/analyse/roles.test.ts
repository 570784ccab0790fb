/**
 * Where the limits lie between volume, tone and neither: a value is turned until the answer changes, and there the network, worked
 * out by hand, must be at the limit that the handbook gives.
 */
import { describe, expect, it } from 'vitest';
import { knobsAtFull, PROBES } from '../../src/analyse/controls.ts';
import { knobSettings, rolesOf } from '../../src/analyse/index.ts';
import { border } from './border.ts';
import { type Compact, makeCircuit } from './kits.ts';

const kit = (joints: readonly string[], parts: Compact['parts']): Compact => ({
  parts: {
    only: { kind: 'single-coil', resistance: '6k', inductance: '2.4H' },
    knob: { kind: 'pot', value: '250k' },
    out: { kind: 'jack' },
    ...parts,
  },
  joints: ['only.ground > out.sleeve', ...joints],
});
const roleOf = (compact: Compact) => rolesOf(makeCircuit(compact)).get('knob');
const par = (a: number, b: number): number => 1 / (1 / a + 1 / b);

it.each([
  ['as usual', '3', '1'],
  ['wired backwards', '1', '3'],
])('a volume takes the direct voltage to less than a tenth: %s', (_, top, bottom) => {
  const withRest = (ohms: number) =>
    kit([`only.hot > knob.${top}`, 'knob.2 > out.tip', `knob.${bottom} > rest.1`, 'rest.2 > out.sleeve'], {
      rest: { kind: 'resistor', value: ohms },
    });
  const [rest] = border(100, 1e6, (ohms) => roleOf(withRest(ohms)) === 'volume');
  // Into 1 MΩ of the amplifier: the whole track in series with the rest, and the track between coil and tip.
  const full = par(250e3 + rest, 1e6) / (6000 + par(250e3 + rest, 1e6));
  const zero = par(rest, 1e6) / (256e3 + par(rest, 1e6));
  expect(zero / full).toBeCloseTo(0.1, 6);
});

describe('a tone', () => {
  /** Series of resistor and capacitor across the coil when the pot is at 0, or at full, and the pot besides at the other end. */
  const tone = (backwards: boolean) => (ohms: number) =>
    kit(
      [
        'only.hot > out.tip',
        'knob.2 > out.tip',
        `knob.${backwards ? 3 : 1} > cap.1`,
        'cap.2 > rest.1',
        'rest.2 > out.sleeve',
      ],
      { cap: { kind: 'capacitor', value: '100n' }, rest: { kind: 'resistor', value: ohms } },
    );
  /** Volts at the jack per volt in the coil: the coil with 120 pF, cable and amplifier, and the path. */
  const gain = (path: number, f: number): number => {
    const w = 2 * Math.PI * f;
    // The path's admittance: a resistor in series with 100 nF.
    const x = -1 / (w * 100e-9);
    const size = path * path + x * x;
    const [g, b] = [path / size + 1 / 1e6, -x / size + w * (CAPACITANCE + 300e-12)];
    // 1 / (1 + (R + jωL)(G + jB)).
    const l = w * 2.4;
    return 1 / Math.hypot(1 + 6000 * g - l * b, 6000 * b + l * g);
  };
  const CAPACITANCE = makeCircuit(kit(['only.hot > out.tip'], {})).kit.parts.flatMap((part) =>
    'capacitance' in part ? [part.capacitance.value] : [],
  )[0] as number;

  it.each([
    ['as usual', false],
    ['wired backwards', true],
  ])('takes a decibel off somewhere from 500 Hz to 10 kHz: %s', (_, backwards) => {
    const [rest] = border(1e3, 1e7, (ohms) => roleOf(tone(backwards)(ohms)) === 'tone');
    const falls = PROBES.map((f) => 20 * Math.log10(gain(rest + 250e3, f) / gain(rest, f)));
    expect(Math.max(...falls)).toBeCloseTo(1, 3);
    expect(roleOf(tone(backwards)(0.9 * rest))).toBe('tone');
    expect(roleOf(tone(backwards)(1.1 * rest))).toBe('other');
  });

  it('is listened to from 500 Hz to 10 kHz, in steps of an octave at most', () => {
    expect([PROBES[0], PROBES.at(-1)]).toEqual([500, 10_000]);
    for (const [i, f] of PROBES.slice(1).entries()) {
      expect(f / (PROBES[i] ?? NaN)).toBeGreaterThan(1);
      expect(f / (PROBES[i] ?? NaN)).toBeLessThanOrEqual(2);
    }
  });
});

it('the handbook’s table: all at 10, then each control alone at 7, 5, 2 and 0', () => {
  expect(knobsAtFull).toEqual({ volume: 10, tone: 10 });
  expect(knobSettings.map(({ volume, tone }) => `${volume} ${tone}`)).toEqual([
    '10 10',
    '10 7',
    '10 5',
    '10 2',
    '10 0',
    '7 10',
    '5 10',
    '2 10',
    '0 10',
  ]);
});

it('a pot counts in whichever position it works, and by none of the coils that it shorts there', () => {
  // The lever’s third position has neither coil nor pot in circuit.
  const circuit = makeCircuit({
    parts: {
      a: { kind: 'single-coil' },
      b: { kind: 'single-coil' },
      knob: { kind: 'pot', value: '250k' },
      lever: { kind: 'lever-3' },
      out: { kind: 'jack' },
    },
    joints: [
      'a.ground > out.sleeve',
      'b.ground > out.sleeve',
      'a.hot > lever.A1',
      'b.hot > knob.3',
      'knob.2 > lever.A2',
      'knob.1 > out.sleeve',
      'lever.A0 > out.tip',
    ],
  });
  expect(rolesOf(circuit).get('knob')).toBe('volume');
});
