/**
 * Capacitors that lie straight across the signal, and what cards and notes say of them. That a tone control lies between
 * lugs 1 and 2 is the trade handbook's. The frequencies to expect are worked by hand from L and C.
 */
import { describe, expect, it } from 'vitest';
import { readJack, solveLoads, solveResponse, trebleOf } from '../../src/analyse/index.ts';
import { referenceCircuit } from '../../src/analyse/reference.ts';
import { cardsOf } from '../../src/annotate/cards.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import type { Problem } from '../../src/common/problem.ts';
import { isPickup } from '../../src/parts/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { makeCircuit, mixedSet, sampleCircuit, sampleNames } from '../analyse/kits.ts';

/** The mixed set's ground, switch and volume, with a tone wired as told. */
const withTone = (...tone: readonly string[]): Circuit =>
  makeCircuit({ parts: mixedSet.parts, joints: [...mixedSet.joints.slice(0, 12), ...tone] });

const right = withTone('tone.2 > volume.3', 'tone.1 > cap.1', 'cap.2 > tone.case');
const shorting = withTone('volume.3 > cap.1', 'cap.2 > tone.3', 'tone.2 > tone.case');
const straight = withTone('volume.3 > cap.1', 'cap.2 > volume.case', 'tone.1 > cap.1', 'tone.2 > volume.3');

/** The kits here leave values out, which is another note's affair. */
const notes = (circuit: Circuit): readonly Problem[] =>
  notesOf(circuit, solveLoads(circuit)).filter(({ code }) => code !== 'values-assumed');
const across = (circuit: Circuit) => notes(circuit).filter((one) => one.code.startsWith('capacitor-across'));
const verdicts = (circuit: Circuit): readonly string[] =>
  cardsOf(circuit, solveLoads(circuit), readJack(circuit)).flatMap((card) =>
    card.rows.map((row) => row.verdict),
  );

describe('a tone pot wired backwards', () => {
  const other = withTone('tone.2 > volume.3', 'tone.3 > cap.1', 'cap.2 > tone.case');
  it('is a warning, at the lug to move; at full it is where it is brightest', () => {
    const [note, ...more] = notes(shorting).filter(({ code }) => code !== 'load-off-reference');
    expect(more).toEqual([]);
    expect(note?.code).toBe('control-backwards');
    expect(note?.path).toEqual(['joints', 13, 'wire', 'to', 'lug']);
    expect(note?.detail).toEqual({
      part: 'tone',
      hand: 'right',
      end: 'anticlockwise',
      exchange: { used: ['3'], ends: ['1', '3'] },
    });
    expect(notes(other).map(({ code }) => code)).toContain('control-backwards');
    expect(notes(right).map(({ code }) => code)).not.toContain('control-backwards');
  });
  it('has the loads, the sound and the readings of one as the handbook has it', () => {
    for (const circuit of [shorting, other]) {
      expect(across(circuit)).toEqual([]);
      expect(verdicts(circuit)).toEqual(verdicts(right));
      for (const [i, ohms] of readJack(right).entries()) expect(readJack(circuit)[i]).toBeCloseTo(ohms, 6);
    }
    for (const name of sampleNames()) expect(across(sampleCircuit(name)), name).toEqual([]);
  });
  it('is as it should be in a left-handed build, where the other way is backwards', () => {
    const left = (circuit: Circuit) =>
      notes(buildCircuit({ ...circuit.kit, hand: 'left' })).filter(
        ({ code }) => code === 'control-backwards',
      );
    // Of the volume control, which is wired for a right-handed build, the warning is there.
    expect(left(shorting).map(({ detail }) => detail)).toMatchObject([{ part: 'volume', end: 'clockwise' }]);
    expect(left(right).map(({ detail }) => detail)).toMatchObject([{ part: 'volume' }, { part: 'tone' }]);
  });
});

it('three pickups in series keep a tone control a tone control: no capacitor lies across them', () => {
  const coil = { kind: 'single-coil' };
  const circuit = makeCircuit({
    parts: {
      a: coil,
      b: coil,
      c: coil,
      volume: { kind: 'pot', value: '250k' },
      tone: { kind: 'pot', value: '250k' },
      cap: { kind: 'capacitor', value: '22n' },
      out: { kind: 'jack' },
    },
    joints: [
      'a.hot > volume.3',
      'a.ground > b.hot',
      'b.ground > c.hot',
      'c.ground > out.sleeve',
      'volume.1 > out.sleeve',
      'volume.2 > out.tip',
      'volume.3 > tone.2',
      'tone.1 > cap.1',
      'cap.2 > out.sleeve',
    ],
  });
  expect(across(circuit)).toEqual([]);
  expect(verdicts(circuit)).not.toContain('treble cut');
});

it('a capacitor that no pot has a say in is noted at the capacitor', () => {
  const [note, ...more] = across(straight);
  expect(more).toEqual([]);
  expect(note?.path).toEqual(['parts', 'cap']);
  expect(note?.code).toBe('capacitor-across-always');
  expect(note?.detail).not.toHaveProperty('control');
});

describe('the word on a card', () => {
  /** A capacitor across the volume, of a value that takes a little or a lot. */
  const choked = (value: string): Circuit =>
    makeCircuit({
      parts: { ...mixedSet.parts, cap: { kind: 'capacitor', value } },
      joints: [
        ...mixedSet.joints.slice(0, 12),
        'cap.1 > volume.3',
        'cap.2 > volume.case',
        'tone.1 > tone.case',
      ],
    });

  it('is never brighter where the whole sweep puts the −3 dB point below the reference’s', () => {
    let up = 0;
    let down = 0;
    for (const value of ['1p', '100p', '220p', '470p', '1n', '2.2n', '4.7n', '22n', '100n']) {
      const circuit = choked(value);
      const { states } = solveResponse(circuit, { points: 1 });
      const cards = cardsOf(circuit, solveLoads(circuit), readJack(circuit));
      for (const { index, pickups } of states)
        for (const { pickup, shape, reference } of pickups) {
          const verdict = cards[index]?.rows.find((row) => row.pickup === pickup)?.verdict ?? '';
          const lower = (shape.cutoff ?? 20_000) < (reference.shape.cutoff ?? 20_000);
          if (lower) expect(verdict, `${value} ${pickup} ${index}`).not.toContain('brighter');
          if (lower) down++;
          else if (verdict.includes('brighter')) up++;
        }
    }
    // Both kinds were met, or this has shown nothing.
    expect(Math.min(up, down)).toBeGreaterThan(3);
  });
  it('agrees with the whole sweep on what is lost', () => {
    for (const circuit of [shorting, choked('470p'), choked('10n'), sampleCircuit('kestrel-hss')]) {
      const found = trebleOf(circuit);
      for (const { index, pickups } of solveResponse(circuit, { points: 1 }).states)
        for (const { pickup, shape, reference } of pickups)
          expect(found[index]?.get(pickup)?.lost).toBe(
            (shape.cutoff ?? 20_000) < (reference.shape.cutoff ?? 20_000) / 2,
          );
    }
  });
});

it('a capacitor across the signal in one position of two is a warning, in every position an error', () => {
  const parts = {
    bridge: { kind: 'single-coil' },
    selector: { kind: 'lever-3' },
    cap: { kind: 'capacitor', value: '100n' },
    volume: { kind: 'pot', value: '250k' },
    output: { kind: 'jack' },
  };
  const joints = [
    'bridge.hot > selector.A1',
    'selector.A1 > selector.A2',
    'selector.A2 > selector.A3',
    'selector.A0 > volume.3',
    'volume.2 > output.tip',
    'volume.1 > output.sleeve',
    'bridge.ground > output.sleeve',
    'cap.2 > output.sleeve',
  ];
  const codes = (...more: readonly string[]) =>
    notes(makeCircuit({ parts, joints: [...joints, ...more] }))
      .map(({ code }) => code)
      .filter((code) => code.startsWith('capacitor'));
  expect(codes('cap.1 > selector.B2', 'selector.B0 > selector.A0')).toEqual(['capacitor-across']);
  expect(codes('cap.1 > selector.A0')).toEqual(['capacitor-across-always']);
});

it('a pickup in its own reference harness is 3 dB down where that is, and one with less load is louder there', () => {
  const [single] = makeCircuit(mixedSet).kit.parts.filter((part) => part.name === 'bridge');
  if (!single || !isPickup(single)) throw new Error('no pickup');
  const circuit = referenceCircuit(single, makeCircuit(mixedSet).kit.outputLoad);
  const [plain] = trebleOf(circuit);
  expect(Math.abs(plain?.get('bridge')?.level ?? NaN)).toBeLessThan(0.05);
  // On 500k pots its peak is higher, and so is its treble.
  expect(trebleOf(right)[0]?.get('bridge')?.level).toBeGreaterThan(0.5);
});
