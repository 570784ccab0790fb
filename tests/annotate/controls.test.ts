/** Pots that turn nothing, unusual values, and what was taken for granted: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { readJack, solveLoads } from '../../src/analyse/index.ts';
import { CARD_TYPE, cardWidth, meterWords } from '../../src/annotate/card-size.ts';
import { cardsOf } from '../../src/annotate/cards.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { padsOf } from '../../src/annotate/pads.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { textWidth } from '../../src/common/text.ts';
import { wording } from '../../src/common/wording.ts';
import { isPickup, outlineOf } from '../../src/parts/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { type Compact, makeCircuit, mixedSet, sampleCircuit, sampleNames } from '../analyse/kits.ts';

/** The kits here leave values out, which is another note's affair. */
const notes = (circuit: Circuit) =>
  notesOf(circuit, solveLoads(circuit)).filter(({ code }) => code !== 'values-assumed');
const idle = (circuit: Circuit) => notes(circuit).filter((one) => one.code === 'control-no-effect');

/** The mixed set without the joints at a lug, and with others. */
const rewired = (gone: string, ...more: readonly string[]): Circuit =>
  makeCircuit({
    parts: mixedSet.parts,
    joints: [...mixedSet.joints.filter((joint) => !String(joint).includes(gone)), ...more],
  });

describe('a control that turns nothing', () => {
  it('a volume whose wiper is not used', () => {
    const [note, ...more] = idle(rewired('volume.2', 'volume.3 > output.tip'));
    expect(more).toEqual([]);
    expect(note?.path).toEqual(['parts', 'volume']);
    expect(note?.detail).toEqual({ part: 'volume', free: ['2'] });
  });
  it('a volume without ground takes too little off', () => {
    const [note, ...more] = idle(rewired('volume.1'));
    expect(more).toEqual([]);
    expect(note?.detail).toMatchObject({ part: 'volume', free: ['1'] });
    const { message, remedy } = wording['control-no-effect'](
      note?.detail as Parameters<(typeof wording)['control-no-effect']>[0],
    );
    // By hand, at 1 kHz: the track in series with the input of 1 MΩ, 300 pF beside it (530 kΩ).
    const fall = 20 * Math.log10(Math.hypot(1 + 500e3 / 1e6, 500e3 * 2 * Math.PI * 1e3 * 300e-12));
    expect(Number(/only ([\d.]+) dB/.exec(message)?.[1])).toBeCloseTo(fall, 0);
    expect(remedy).toContain('bend it back onto the case');
  });
  it('a tone that reaches the signal in no state', () => {
    expect(idle(rewired('tone.2 ', 'tone.2 > tone.3')).map((one) => one.path)).toEqual([['parts', 'tone']]);
  });
  it('none in a sound kit, nor with a blend between two pickups or a control of the bass', () => {
    for (const name of sampleNames()) expect(idle(sampleCircuit(name)), name).toEqual([]);
    expect(idle(makeCircuit(mixedSet))).toEqual([]);
    const blend: Compact = {
      parts: {
        neck: { kind: 'single-coil' },
        bridge: { kind: 'single-coil' },
        blend: { kind: 'pot', value: '250k' },
        output: { kind: 'jack' },
      },
      joints: [
        'neck.hot > blend.3',
        'bridge.hot > blend.1',
        'blend.2 > output.tip',
        'neck.ground > output.sleeve',
        'bridge.ground > output.sleeve',
        'blend.case > output.sleeve',
      ],
    };
    expect(idle(makeCircuit(blend))).toEqual([]);
    // At 0 the whole track lies beside a capacitor, which takes the bass off: no volume.
    const cut: Compact = {
      parts: { ...blend.parts, cap: { kind: 'capacitor', value: '1n' } },
      joints: [
        'neck.hot > blend.3',
        'cap.1 > blend.1',
        'cap.2 > blend.3',
        'blend.2 > output.tip',
        'neck.ground > output.sleeve',
        'blend.case > output.sleeve',
      ],
    };
    expect(idle(makeCircuit(cut))).toEqual([]);
  });
});

describe('a case that floats', () => {
  const cases = (circuit: Circuit) =>
    notes(circuit).flatMap((one) => (one.code === 'case-not-grounded' ? [one.detail] : []));
  it('none in the samples', () => {
    for (const name of sampleNames()) expect(cases(sampleCircuit(name)), name).toEqual([]);
  });
  it('is told, with what is soldered to it, and as the cause of a tone that does nothing', () => {
    const circuit = rewired('tone.case > volume.case');
    expect(cases(circuit)).toEqual([{ part: 'tone', lug: 'tone.case', on: ['cap.2'] }]);
    const [note] = idle(circuit);
    expect(note?.detail).toMatchObject({ part: 'tone', floating: 'tone.case' });
    const { remedy } = wording['control-no-effect'](
      note?.detail as Parameters<(typeof wording)['control-no-effect']>[0],
    );
    expect(remedy).toMatch(/^tone\.case is not connected to ground, nor is what is soldered to it\./);
    expect(remedy).not.toContain('lug 3.');
  });
});

describe('unusual values', () => {
  const asked = (part: string, field: string, value: string): readonly unknown[] => {
    const described = { ...mixedSet.parts[part], kind: mixedSet.parts[part]?.kind ?? '', [field]: value };
    return notes(makeCircuit({ ...mixedSet, parts: { ...mixedSet.parts, [part]: described } }))
      .filter((one) => one.code === 'unusual-value')
      .map(({ path, detail }) => [path.join('.'), (detail as { likely?: string }).likely]);
  };
  it.each([
    ['volume', 'value', '250', '250k'],
    ['volume', 'value', '500m', '500k'],
    ['tone', 'value', '250M', '250k'],
    ['neck', 'resistance', '8.2', '8.2k'],
    ['neck', 'resistance', '8.2M', '8.2k'],
    ['cap', 'value', '22u', '22n'],
    ['cap', 'value', '22p', '22n'],
    ['cap', 'value', '1u', '1n'],
    ['cap', 'value', '1m', '1n'],
    ['volume', 'value', '0.25', '250k'],
  ])('%s.%s: %s, likely %s', (part, field, value, likely) =>
    expect(asked(part, field, value)).toEqual([[`parts.${part}.${field}`, likely]]),
  );
  it.each([
    ['volume', 'value', '10k'],
    ['volume', 'value', '2M'],
    ['neck', 'resistance', '100'],
    ['neck', 'resistance', '100k'],
    ['cap', 'value', '100p'],
    ['cap', 'value', '220n'],
  ])('%s.%s: %s is not asked about', (part, field, value) => expect(asked(part, field, value)).toEqual([]));
  it('a resistor may be of any value', () => {
    const parts = { ...mixedSet.parts, pad: { kind: 'resistor', value: '47' } };
    const joints = [...mixedSet.joints, 'pad.1 > selector.A1', 'pad.2 > volume.case'];
    expect(notes(makeCircuit({ parts, joints })).map((one) => one.code)).not.toContain('unusual-value');
  });
});

describe('what was taken for granted is marked', () => {
  const kit = (resistance?: string): Circuit =>
    makeCircuit({
      ...mixedSet,
      parts: {
        ...mixedSet.parts,
        neck: { kind: 'humbucker', ...(resistance === undefined ? {} : { resistance }) },
        bridge: { kind: 'single-coil', resistance: '6k' },
      },
    });
  const meters = (circuit: Circuit) =>
    cardsOf(circuit, solveLoads(circuit), readJack(circuit)).map((card) => card.meter);
  const words = (circuit: Circuit): string => {
    const [neck] = circuit.kit.parts.filter(isPickup);
    return neck ? (outlineOf(neck).labels[1]?.text ?? '') : '';
  };
  it('on the pickup and on the meter readings that hang on it, and on no others', () => {
    expect(words(kit())).toBe('humbucker, 8.2 kΩ assumed');
    expect(meters(kit()).map((text) => text.endsWith(', assumed'))).toEqual([false, true, true]);
  });
  it('and a card has room for the mark beside what stands before it', () => {
    const circuit = kit();
    const cards = cardsOf(circuit, solveLoads(circuit), readJack(circuit));
    const longest = Math.max(...cards.map((card) => textWidth(card.meter, CARD_TYPE.row, 'bold')));
    expect(cardWidth(cards) - 28).toBeGreaterThan(
      textWidth(meterWords({ language: 'en' }), CARD_TYPE.small) + longest,
    );
  });
  it('not once it is given', () => {
    expect(words(kit('8.4k'))).toBe('humbucker, 8.4 kΩ');
    expect(meters(kit('8.4k')).some((text) => text.includes('assumed'))).toBe(false);
  });
});

it('a pad’s figure is that of its pickup alone, and says so', () => {
  const circuit = sampleCircuit('kestrel-hss');
  // 500 kΩ in parallel with 470 kΩ, the trade handbook’s table.
  expect(padsOf(circuit, solveLoads(circuit)).map((pad) => pad.caption)).toEqual([
    'Neck alone: DC load 242 kΩ',
    'Middle alone: DC load 242 kΩ',
  ]);
});

describe('values that do not belong together', () => {
  const bridge = (fields: Readonly<Record<string, unknown>>) =>
    notes(
      makeCircuit({ ...mixedSet, parts: { ...mixedSet.parts, neck: { kind: 'humbucker', ...fields } } }),
    ).filter(({ code }) => code === 'inductance-assumed');

  it('a winding of twice the usual resistance with the usual inductance', () => {
    const [warning, ...more] = bridge({ resistance: '16k' });
    expect(more).toEqual([]);
    expect(warning?.path).toEqual(['parts', 'neck', 'resistance']);
    // Inductance by the square of the turns, resistance by the turns: 4.4 H × (16 / 8.2)².
    expect(warning?.detail).toMatchObject({ inductance: '4.4 H', usual: '8.2 kΩ', scaled: '17 H' });
  });

  it.each([
    [{ resistance: '16k', inductance: '8H' }],
    [{ resistance: '8.2k' }],
    [{ resistance: '10.6k' }],
    [{ resistance: '5.8k' }],
    [{}],
  ])('not with %j', (fields) => expect(bridge(fields)).toEqual([]));

  it.each([['10.7k'], ['5.7k']])('but with %s', (resistance) =>
    expect(bridge({ resistance })).toHaveLength(1),
  );
});

describe('the stock', () => {
  const stocked = (stock: readonly number[]) => {
    const { kit } = makeCircuit({
      ...mixedSet,
      parts: { ...mixedSet.parts, pad: { kind: 'resistor', value: '470k' } },
      joints: [...mixedSet.joints, 'pad.1 > selector.A1', 'pad.2 > volume.case'],
    });
    return notes(buildCircuit({ ...kit, stock })).filter(({ code }) => code === 'not-in-stock');
  };

  it('has every resistor of the kit, or says which it has not', () => {
    expect(stocked([470e3, 1e6])).toEqual([]);
    expect(stocked([1e6, 390e3])).toMatchObject([
      { path: ['parts', 'pad', 'value'], detail: { part: 'pad', got: '470k', stock: ['390k', '1M'] } },
    ]);
  });
});
