/**
 * Where a control begins to be idle, weak or a short, a pickup to be hidden, and a tone control to load: a value is turned until the
 * answer changes, and there the gains are at the limit that the handbook gives.
 */
import { describe, expect, it } from 'vitest';
import { gains, PROBES } from '../../src/analyse/controls.ts';
import { hiddenPickups, idleControls, shuntControls, trebleOf } from '../../src/analyse/index.ts';
import { toneControlsIn } from '../../src/analyse/tone-controls.ts';
import { border } from './border.ts';
import { type Compact, makeCircuit } from './kits.ts';

const kit = (joints: readonly string[], parts: Compact['parts'] = {}): Compact => ({
  parts: {
    only: { kind: 'single-coil' },
    knob: { kind: 'pot', value: '250k' },
    out: { kind: 'jack' },
    ...parts,
  },
  joints: ['only.ground > out.sleeve', ...joints],
});
/** Decibels that turning the knob from 10 takes off, of the first coil: at direct current, then at each probe. */
function falls(compact: Compact, rotation: number): readonly number[] {
  const circuit = makeCircuit(compact);
  const [[full = []], [turned = []]] = [gains(circuit, {}), gains(circuit, { knob: rotation })];
  return full.map((gain, k) => 20 * Math.log10(gain / (turned[k] ?? NaN)));
}
const atKilohertz = 1 + PROBES.indexOf(1000);
const idle = (compact: Compact) => idleControls(makeCircuit(compact)).find(({ pot }) => pot === 'knob');

describe('an idle pot', () => {
  it('changes no gain by half a decibel', () => {
    const behind = (ohms: number) =>
      kit(['only.hot > out.tip', 'rest.1 > out.tip', 'rest.2 > knob.2', 'knob.1 > out.sleeve'], {
        rest: { kind: 'resistor', value: ohms },
      });
    const [heard, unheard] = border(1e4, 1e8, (ohms) => idle(behind(ohms)) === undefined);
    expect(Math.max(...falls(behind(heard), 0))).toBeCloseTo(0.5, 4);
    expect(idle(behind(unheard))).toEqual({ pot: 'knob', part: 'knob', free: ['3'] });
  });
  it('is none that works half way only', () => {
    const ends = kit(['only.hot > knob.2', 'knob.1 > knob.3', 'knob.3 > out.tip'], {
      knob: { kind: 'pot', value: '1M', taper: 'linear' },
    });
    expect(Math.max(...falls(ends, 0))).toBeCloseTo(0, 9);
    expect(idle(ends)).toBeUndefined();
    const beside = kit(['only.hot > out.tip', 'knob.2 > out.tip', 'knob.1 > knob.3', 'knob.3 > out.sleeve'], {
      knob: { kind: 'pot', value: '10k', taper: 'linear' },
    });
    expect(idle(beside)).toBeUndefined();
  });
});

describe('a volume', () => {
  const above = (ohms: number) =>
    kit(['only.hot > knob.3', 'knob.2 > out.tip', 'knob.1 > rest.1', 'rest.2 > out.sleeve'], {
      rest: { kind: 'resistor', value: ohms },
    });
  it('is weak when it takes less than 20 dB off at 1 kHz', () => {
    const [sound, weak] = border(1e3, 1e5, (ohms) => idle(above(ohms)) === undefined);
    expect(falls(above(sound), 0)[atKilohertz]).toBeCloseTo(20, 5);
    expect(idle(above(weak))?.fall).toBeCloseTo(20, 5);
    expect(idle(above(3 * weak))?.fall).toBeCloseTo(falls(above(3 * weak), 0)[atKilohertz] ?? NaN, 9);
    expect(idle(above(3 * weak))?.free).toEqual([]);
  });
  it('is a pot that the signal has no other way than through: past it through a resistor, or a capacitor, it is none', () => {
    const past = (more: Compact['parts']) =>
      idle({
        ...kit(['only.hot > knob.3', 'knob.2 > out.tip', 'past.1 > knob.3', 'past.2 > knob.2'], more),
      });
    expect(idle(kit(['only.hot > knob.3', 'knob.2 > out.tip']))?.fall).toBeDefined();
    expect(past({ past: { kind: 'resistor', value: '1M' } })).toBeUndefined();
    expect(past({ past: { kind: 'capacitor', value: '1n' } })).toBeUndefined();
  });
});

describe('a pot of two lugs that shorts the signal', () => {
  const shunt = (ohms: number, joints: readonly string[] = []) =>
    kit(['only.hot > out.tip', 'knob.2 > out.tip', 'knob.1 > rest.1', 'rest.2 > out.sleeve', ...joints], {
      rest: { kind: 'resistor', value: ohms },
    });
  const found = (compact: Compact) => shuntControls(makeCircuit(compact));
  it('takes 20 dB off, or more', () => {
    const [shorts, leaves] = border(10, 1e5, (ohms) => found(shunt(ohms)).length > 0);
    expect(falls(shunt(shorts), 0)[atKilohertz]).toBeCloseTo(20, 5);
    expect(found(shunt(shorts))).toEqual([{ pot: 'knob', part: 'knob', free: '3' }]);
    expect(found(shunt(leaves))).toEqual([]);
    // An end that is on the wiper is of as little use as a free one.
    const bridged = { pot: 'knob', part: 'knob', free: '3', wiper: '2' };
    expect(found(shunt(shorts, ['knob.3 > only.hot']))).toEqual([bridged]);
    const other = kit(['only.hot > out.tip', 'knob.2 > out.tip', 'knob.3 > rest.1', 'rest.2 > out.sleeve'], {
      rest: { kind: 'resistor', value: 1 },
      knob: { kind: 'pot', value: '250k' },
    });
    // Wired to the other end it is at full at that one, and shorts as well.
    expect(found(other)).toEqual([{ pot: 'knob', part: 'knob', free: '1' }]);
  });
  it('of everything that is heard in a position: what is 40 dB down does not count, nor silence', () => {
    const two = (ohms: number) =>
      kit(
        [
          'only.hot > out.tip',
          'knob.2 > out.tip',
          'knob.1 > out.sleeve',
          'b.ground > out.sleeve',
          'b.hot > far.1',
          'far.2 > out.tip',
        ],
        { b: { kind: 'single-coil' }, far: { kind: 'resistor', value: ohms } },
      );
    expect(found(two(1e3))).toEqual([{ pot: 'knob', part: 'knob', free: '3' }]);
    expect(found(kit(['only.hot > knob.2', 'knob.1 > out.sleeve', 'out.tip > only.ground']))).toEqual([]);
  });
});

describe('a pickup that a pot hides at full', () => {
  /** Two equal coils, the second behind a resistor and the pot’s track, which the kit says is no blend; turned down, the pot takes the first away. */
  const blend = (ohms: number, first = '250k') =>
    makeCircuit({
      parts: {
        a: { kind: 'single-coil' },
        b: { kind: 'single-coil' },
        knob: { kind: 'pot', value: first, role: 'other' },
        rest: { kind: 'resistor', value: ohms },
        out: { kind: 'jack' },
      },
      joints: [
        'a.hot > knob.3',
        'knob.2 > out.tip',
        'knob.1 > rest.1',
        'rest.2 > b.hot',
        'a.ground > out.sleeve',
        'b.ground > out.sleeve',
      ],
    });
  const level = (ohms: number, rotation: number, coil: number) =>
    gains(blend(ohms), { knob: rotation })[coil]?.[atKilohertz] ?? NaN;
  it('is found with its pot and the positions; alone it is neither hidden nor brought out', () => {
    const circuit = blend(1000);
    expect(hiddenPickups(circuit)).toEqual([{ pickup: 'b', pot: 'knob', states: circuit.states }]);
  });
  it('is brought out by 6 dB more than it was, and to a tenth of its voltage', () => {
    const [found, lost] = border(1e3, 1e8, (ohms) => hiddenPickups(blend(ohms)).length > 0);
    const most = Math.max(level(found, 0.5, 1), level(found, 0, 1));
    const limit = Math.max(0.1, 2 * level(found, 1, 1));
    expect(most / limit).toBeCloseTo(1, 6);
    expect(hiddenPickups(blend(lost))).toEqual([]);
  });
  it('is more than 12 dB below the loudest', () => {
    // The pot small, and no resistor: at full `b` is behind the whole track only.
    const small = (ohms: number) => blend(0.1, String(ohms));
    const [sounds, hidden] = border(100, 1e6, (ohms) => hiddenPickups(small(ohms)).length > 0);
    const [a, b] = gains(small(hidden), {}).map((row) => row[atKilohertz] ?? NaN);
    expect((b ?? NaN) / (a ?? NaN)).toBeCloseTo(0.25, 6);
    expect(hiddenPickups(small(sounds))).toEqual([]);
  });
});

describe('a tone control that loads', () => {
  /** Volume of 250 kΩ at the jack, and a tone of so many ohms. */
  const behind = (ohms: number): Compact => ({
    parts: {
      only: { kind: 'single-coil' },
      volume: { kind: 'pot', value: '250k' },
      tone: { kind: 'pot', value: ohms },
      cap: { kind: 'capacitor', value: '22n' },
      rest: { kind: 'resistor', value: '1k' },
      out: { kind: 'jack' },
    },
    joints: [
      'only.ground > out.sleeve',
      'only.hot > volume.3',
      'volume.2 > out.tip',
      'volume.1 > out.sleeve',
      'rest.1 > volume.3',
      'rest.2 > tone.2',
      'tone.1 > cap.1',
      'cap.2 > out.sleeve',
    ],
  });
  const tones = (compact: Compact): readonly string[] => {
    const circuit = makeCircuit(compact);
    const [state] = circuit.states;
    return state ? toneControlsIn(circuit, state) : [];
  };
  it('raises the load by a twentieth when it is taken out', () => {
    const [loads, not] = border(5e5, 5e7, (ohms) => tones(behind(ohms)).length > 0);
    const reactance = 1 / (2 * Math.PI * 1000 * 22e-9);
    const path = loads + 1e3;
    // 1 / Re(Y): the volume beside resistor and pot in series with the capacitor.
    const whole = 1 / (1 / 250e3 + path / (path ** 2 + reactance ** 2));
    expect(250e3 / whole).toBeCloseTo(1.05, 6);
    expect(tones(behind(loads))).toEqual(['tone']);
    expect(tones(behind(not))).toEqual([]);
  });
});

describe('treble', () => {
  /** A single coil in its own reference harness, with so many farads across it. */
  const across = (farads: number): Compact => ({
    parts: {
      only: { kind: 'single-coil' },
      volume: { kind: 'pot', value: '250k' },
      tone: { kind: 'pot', value: '250k' },
      cap: { kind: 'capacitor', value: '22n' },
      more: { kind: 'capacitor', value: farads },
      out: { kind: 'jack' },
    },
    joints: [
      'only.ground > out.sleeve',
      'only.hot > volume.3',
      'volume.2 > out.tip',
      'volume.1 > out.sleeve',
      'tone.2 > volume.3',
      'tone.1 > cap.1',
      'cap.2 > out.sleeve',
      'more.1 > volume.3',
      'more.2 > out.sleeve',
    ],
  });
  const treble = (farads: number) => trebleOf(makeCircuit(across(farads)))[0]?.get('only');
  it('is lower with more across the coil than in its reference, and lost where the −3 dB point comes to half of it', () => {
    const found = treble(1e-12);
    expect(found).toMatchObject({ lost: false, lower: true });
    expect(found?.level).toBeLessThan(0);
    const [, lost] = border(1e-12, 1e-7, (farads) => treble(farads)?.lost === true);
    // −3 dB of a coil into capacitances goes with 1/√C, but for its losses: some four times the capacitance in all.
    const own = 110e-12 + 300e-12;
    expect((lost + own) / own).toBeGreaterThan(3.5);
    expect((lost + own) / own).toBeLessThan(5);
  });
});
