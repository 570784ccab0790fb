/** What is offered instead of a pad where the volume is not wired in the usual way, or stands in a pot with two gangs. Loads by hand. */
import { describe, expect, it } from 'vitest';
import { choosePads } from '../../src/analyse/index.ts';
import { lugAt } from '../../src/circuit/circuit.ts';
import { type Compact, makeCircuit } from './kits.ts';

/** Two single coils on a three-way lever, made for 250 k. */
const pickups: Compact['parts'] = {
  neck: { kind: 'single-coil' },
  bridge: { kind: 'single-coil' },
  selector: { kind: 'lever-3' },
  jack: { kind: 'jack' },
};
const joints = [
  'neck.hot > selector.A1',
  'selector.A1 > selector.A2',
  'bridge.hot > selector.B3',
  'selector.B3 > selector.B2',
  'selector.A0 > selector.B0',
  'neck.ground > jack.sleeve',
  'bridge.ground > jack.sleeve',
];

const alternatives = (kit: Compact, match: 'dc' | 'signal' = 'dc') => {
  const circuit = makeCircuit(kit);
  const neck = choosePads(circuit, { match }).advice.find((one) => one.pickup === 'neck');
  return { circuit, alternatives: neck && 'alternatives' in neck ? neck.alternatives : [] };
};

describe('the pad at the volume’s input', () => {
  const wired = (input: number, output: number, ground: number): Compact => ({
    parts: { ...pickups, volume: { kind: 'pot', value: '500k' } },
    joints: [
      ...joints,
      `selector.A0 > volume.${input}`,
      `volume.${output} > jack.tip`,
      `volume.${ground} > jack.sleeve`,
    ],
  });

  it.each([
    ['the usual way', 3, 2, 1],
    ['in reverse, from the wiper to the end', 2, 3, 1],
    ['backwards', 1, 2, 3],
    ['in reverse and backwards', 2, 1, 3],
  ])('wired %s it is where the signal comes in', (_, input, output, ground) => {
    const { circuit, alternatives: found } = alternatives(wired(input, output, ground));
    const moved = found.find((one) => one.kind === 'elsewhere');
    expect(moved?.kind === 'elsewhere' && lugAt(circuit, moved.pad.from).net).toBe(
      lugAt(circuit, `volume.${input}`).net,
    );
    // 500 k beside 470 k, for either pickup alone.
    const loads = moved?.effects.filter(({ index }) => index !== 1).map(({ after }) => after.dcLoad);
    expect(loads).toHaveLength(2);
    for (const load of loads ?? []) expect(load).toBeCloseTo((500e3 * 470e3) / 970e3, 3);
  });
});

describe('other pots', () => {
  const stacked = (tone: string): Compact => ({
    parts: {
      ...pickups,
      controls: { kind: 'stacked-pot', a: { value: '500k' }, b: { value: tone } },
      cap: { kind: 'capacitor', value: '22n' },
    },
    joints: [
      ...joints,
      'selector.A0 > controls.a3',
      'controls.a2 > jack.tip',
      'controls.a1 > jack.sleeve',
      'controls.a3 > controls.b2',
      'controls.b1 > cap.1',
      'cap.2 > jack.sleeve',
    ],
  });

  it.each([
    ['dc', '500k', { 'controls.a': 250e3 }],
    ['signal', '500k', { 'controls.a': 250e3, 'controls.b': 250e3 }],
    ['signal', '250k', { 'controls.a': 250e3 }],
  ] as const)(
    'are offered by shaft of a stacked pot, for %s loads with a tone of %s',
    (match, tone, pots) => {
      const found = alternatives(stacked(tone), match).alternatives.find((one) => one.kind === 'pots');
      expect(found?.kind === 'pots' && found.pots).toEqual(pots);
      expect(found?.effects.find(({ index }) => index === 0)?.after.dcLoad).toBeCloseTo(250e3, 3);
    },
  );

  it('are offered for both gangs of a dual pot', () => {
    // One gang for the signal; the other's track hangs on it at one end only, and loads nothing.
    const found = alternatives({
      parts: { ...pickups, volume: { kind: 'dual-pot', value: '500k' } },
      joints: [
        ...joints,
        'selector.A0 > volume.a3',
        'volume.a2 > jack.tip',
        'volume.a1 > jack.sleeve',
        'volume.a3 > volume.b3',
      ],
    }).alternatives.find((one) => one.kind === 'pots');
    expect(found?.kind === 'pots' && found.pots).toEqual({ volume: 250e3 });
    expect(found?.effects.find(({ index }) => index === 0)?.after.dcLoad).toBeCloseTo(250e3, 3);
  });
});
