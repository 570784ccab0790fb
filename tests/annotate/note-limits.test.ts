/** Notes at their limits: a value just inside says nothing, one just outside does, and what it says is worked out by hand. */
import { describe, expect, it } from 'vitest';
import type { PickupLoads, StateLoads } from '../../src/analyse/index.ts';
import { solveLoads } from '../../src/analyse/index.ts';
import { loadNotes, toneNotes } from '../../src/annotate/load-notes.ts';
import { padsOf } from '../../src/annotate/pads.ts';
import { valueNotes } from '../../src/annotate/value-notes.ts';
import { describeCards, describeJoints, stateLine, viewLine } from '../../src/annotate/words.ts';
import { type Details, wording } from '../../src/common/wording.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { colourName } from '../../src/messages/words.ts';
import { type Compact, makeCircuit, makeKit, mixedSet, sampleCircuit } from '../analyse/kits.ts';

/** Without the note on what is assumed, which has a test of its own. */
const notesOfParts = (parts: Compact['parts'], more: Partial<Kit> = {}) =>
  valueNotes({ ...makeKit({ parts, joints: [] }), ...more })
    .filter(({ code }) => code !== 'values-assumed')
    .map(({ code, path, detail }) => [code, path.join('.'), detail]);

describe('values that are assumed', () => {
  const assumed = (parts: Compact['parts']) =>
    valueNotes(makeKit({ parts, joints: [] })).flatMap((one) =>
      one.code === 'values-assumed'
        ? [wording[one.code](one.detail as Details['values-assumed']).message]
        : [],
    );
  const given = { resistance: '6k', inductance: 2.4, capacitance: '110p' };
  it('are told in one note, parts with the same fields together', () => {
    expect(
      assumed({
        a: { kind: 'single-coil' },
        b: { kind: 'humbucker', resistance: '8k' },
        c: { kind: 'four-lead-humbucker' },
        d: { kind: 'single-coil', ...given },
        v: { kind: 'pot', value: '250k' },
        s: { kind: 'stacked-pot', a: { value: '250k', taper: 'log' }, b: { value: '250k' } },
      }),
    ).toEqual([
      'values assumed, typical of their kind: resistance, inductance and capacitance of “a” and “c”; inductance and capacitance of “b”; taper of “v” and “s.b”',
    ]);
  });
  it('are none where they are written, of a blend that is one, and of a resistor', () => {
    expect(
      assumed({
        a: { kind: 'single-coil', ...given },
        v: { kind: 'push-pull', value: '250k', taper: 'log' },
        x: { kind: 'blend', value: '500k' },
        r: { kind: 'resistor', value: '470k' },
      }),
    ).toEqual([]);
  });
});

describe('values', () => {
  it('a winding over 30 % off the usual resistance hardly has the usual inductance: it goes with the square of the turns', () => {
    // A single coil has 6 kΩ and 2.4 H.
    const told = (resistance: number, more: object = {}) =>
      notesOfParts({ a: { kind: 'single-coil', resistance, ...more } });
    const usual = makeKit({ parts: { a: { kind: 'single-coil' } }, joints: [] }).parts[0];
    const ohms = usual && 'usualResistance' in usual ? usual.usualResistance : NaN;
    expect([told(1.29 * ohms), told(0.71 * ohms), told(1.31 * ohms, { inductance: 3 })]).toEqual([
      [],
      [],
      [],
    ]);
    for (const share of [1.31, 0.69, 2])
      expect(told(share * ohms)).toMatchObject([
        [
          'inductance-assumed',
          'parts.a.resistance',
          { part: 'a', inductance: '2.4 H', scaled: `${Number((2.4 * share ** 2).toPrecision(2))} H` },
        ],
      ]);
    expect(notesOfParts({ a: { kind: 'single-coil' } })).toEqual([]);
  });

  it('unusual ones begin beyond what is usual, and a likely one is of a prefix more or less', () => {
    // Of a winding from 100 Ω to 100 kΩ.
    const told = (resistance: number) => {
      const found = notesOfParts({ a: { kind: 'single-coil', resistance, inductance: 1 } });
      return found.map(([code, path, detail]) => [code, path, (detail as { likely?: string }).likely]);
    };
    expect([told(100), told(100e3)]).toEqual([[], []]);
    const note = (likely?: string) => [['unusual-value', 'parts.a.resistance', likely]];
    expect(told(99)).toEqual(note('99k'));
    expect(told(101e3)).toEqual(note('101'));
    expect(told(0.2)).toEqual(note('200'));
    expect(told(0.5e6)).toEqual(note('500'));
    expect(told(6e6)).toEqual(note('6k'));
    expect(told(6e8)).toEqual(note('600'));
  });

  it('a resistor that the stock has not is named, with the stock in order', () => {
    const parts = { a: { kind: 'resistor', value: '470k' }, b: { kind: 'resistor', value: '220k' } };
    expect(notesOfParts(parts)).toEqual([]);
    expect(notesOfParts(parts, { stock: [1e6, 220e3, 47e3] })).toEqual([
      ['not-in-stock', 'parts.a.value', { part: 'a', got: '470k', stock: ['47k', '220k', '1M'] }],
    ]);
    expect(notesOfParts({ c: { kind: 'capacitor', value: '22n' } }, { stock: [1] })).toEqual([]);
  });
});

type Share = readonly [pickup: string, dc: number, signal: number];

describe('loads', () => {
  const circuit = makeCircuit(mixedSet);
  const solved = solveLoads(circuit);
  /** The loads of each position, DC and signal, as shares of their references. */
  const loads = (...shares: readonly (readonly Share[])[]): readonly StateLoads[] =>
    solved.map((one, i) => ({
      ...one,
      pickups: (shares[i] ?? []).map(([pickup, dc, signal]) => ({
        ...(one.pickups[0] as PickupLoads),
        pickup,
        dcLoad: dc * 250e3,
        signalLoad: signal * 125e3,
        reference: { dcLoad: 250e3, signalLoad: 125e3 },
      })),
    }));
  const told = (...shares: readonly (readonly Share[])[]) =>
    loadNotes(circuit, loads(...shares)).map(({ path, detail }) => [path.join('.'), detail]);

  it('a note wants both loads over a fifth off, where the pickup sounds alone', () => {
    for (const [dc, signal, noted] of [
      [1.21, 1.21, true],
      [0.79, 0.79, true],
      [0.79, 1.21, true],
      [1.19, 1.5, false],
      [1.5, 1.19, false],
      [0.81, 0.5, false],
      [Infinity, 2, false],
      [2, Infinity, false],
    ] as const)
      expect(told([['bridge', dc, signal]]).length > 0, `${dc} ${signal}`).toBe(noted);
    expect(
      told([
        ['bridge', 2, 2],
        ['neck', 2, 2],
      ]),
    ).toEqual([]);
  });
  it('has its figures by load, with the positions of each', () => {
    expect(told([['bridge', 2, 2]], [['bridge', 2, 1.5]], [['bridge', 2, 2]])).toEqual([
      [
        'parts.bridge',
        {
          part: 'bridge',
          figures: [
            { load: '250 kΩ', percent: 100, where: ' in positions 1 and 3' },
            { load: '188 kΩ', percent: 50, where: ' in position 2' },
          ],
          reference: '125 kΩ',
          below: false,
        },
      ],
    ]);
  });
  it('is of loads below the reference only where all of them are', () => {
    const below = (...shares: readonly (readonly Share[])[]) =>
      told(...shares).map(([, detail]) => (detail as { below: boolean }).below);
    expect(below([['bridge', 0.5, 0.5]], [['bridge', 0.7, 0.6]])).toEqual([true]);
    expect(below([['bridge', 0.5, 0.5]], [['bridge', 2, 2]])).toEqual([false]);
    expect(below([['bridge', 0.5, 2]])).toEqual([false]);
    expect(below([['bridge', 0.5, 0.5]], [['neck', 2, 2]])).toEqual([true, false]);
  });
  it('is none where the treble of that pickup is lost in that position', () => {
    const off = loads([['bridge', 2, 2]], [['bridge', 2, 2]]);
    const lost = (index: number, pickup: string) => {
      const state = solved[index]?.state;
      if (!state) throw new Error('no state');
      return loadNotes(circuit, off, [{ state, pickup }]).flatMap(({ detail }) =>
        (detail as { figures: readonly { where: string }[] }).figures.map(({ where }) => where),
      );
    };
    expect(lost(0, 'bridge')).toEqual([' in position 2']);
    expect(lost(0, 'neck')).toEqual([' in positions 1 and 2']);
  });

  it('two tone controls at once are told at the second, with the heaviest load', () => {
    const kestrel = sampleCircuit('kestrel-hss');
    const own = solveLoads(kestrel);
    const [note, ...more] = toneNotes(kestrel, own);
    expect(more).toEqual([]);
    const least = Math.min(...(own[3]?.pickups ?? []).map(({ signalLoad }) => signalLoad));
    expect(note).toMatchObject({
      path: ['parts', 'tone-2'],
      detail: {
        tones: ['tone-1', 'tone-2'],
        where: ' in position 4',
        load: `${(least / 1e3).toFixed(1)} kΩ`,
      },
    });
    // Where several sound it is the heaviest of their loads, whichever comes first.
    const turned = own.map((one) => ({ ...one, pickups: [...one.pickups].reverse() }));
    const lighter = own.map((one) => ({
      ...one,
      pickups: one.pickups.map((load, i) => ({ ...load, signalLoad: load.signalLoad * (i + 1) })),
    }));
    for (const loads of [turned, lighter]) expect(toneNotes(kestrel, loads)).toEqual([note]);
  });
});

it('a padding resistor is captioned with the load of its pickup where that sounds alone', () => {
  const parts = {
    ...mixedSet.parts,
    bridge: { kind: 'single-coil', label: 'Bridge' },
    pad: { kind: 'resistor', value: '470k' },
    far: { kind: 'resistor', value: '470k' },
    dead: { kind: 'resistor', value: '470k' },
  };
  const pads = (...joints: readonly string[]) => {
    const circuit = makeCircuit({ parts, joints: [...mixedSet.joints, ...joints] });
    return padsOf(circuit, solveLoads(circuit));
  };
  const rest = ['far.1 > bridge.hot', 'far.2 > volume.3', 'dead.1 > volume.case', 'dead.2 > tone.case'];
  // 500 kΩ beside 470 kΩ, and as much again while `far` leads to the volume: in position 1 that is the same net.
  for (const legs of [
    ['pad.1 > selector.A1', 'pad.2 > volume.case'],
    ['pad.2 > bridge.hot', 'pad.1 > tone.case'],
  ])
    expect(pads(...legs, ...rest)).toEqual([
      { part: 'pad', pickup: 'bridge', caption: 'Bridge alone: DC load 242 kΩ' },
    ]);
  expect(pads('pad.1 > volume.3', 'pad.2 > volume.case')).toEqual([]);
});

describe('the sheet’s words', () => {
  it('say the side and the hand, and how switches stand', () => {
    expect([viewLine('solder-side', 'right', 'en'), viewLine('component-side', 'left', 'en')]).toEqual([
      'Seen from the solder side; right-handed build.',
      'Seen from the component side, as if through the plate; left-handed build.',
    ]);
    const circuit = makeCircuit({
      parts: {
        a: { kind: 'lever-3', label: 'Selector' },
        b: { kind: 'lever-3', label: 'Mode' },
        c: { kind: 'jack' },
      },
      joints: [],
    });
    const nothing = { crossings: false, letters: false };
    const state = circuit.states.find(({ positions }) => positions.a === 3 && positions.b === 2);
    expect(stateLine(circuit, state, nothing)).toBe('Selector in position 3, Mode in position 2.');
    expect(stateLine(circuit, undefined, nothing)).toBe('Selector in position 1, Mode in position 1.');
    expect(stateLine(circuit, undefined, { ...nothing, anyState: true })).toBe('');
  });
  it('say of knobs, crossings, colours and letters what a drawing has, and nothing that it has not', () => {
    const of = (parts: Readonly<Record<string, { kind: string; value?: string }>>) =>
      makeCircuit({ parts: { ...parts, c: { kind: 'jack' } }, joints: [] });
    const [bare, knob] = [of({}), of({ v: { kind: 'pot', value: '500k' } })];
    const nothing = { crossings: false, letters: false };
    expect(stateLine(bare, undefined, nothing)).toBe('');
    expect(stateLine(knob, undefined, nothing)).toBe('All controls on 10.');
    expect(stateLine(bare, undefined, { ...nothing, crossings: true })).toBe(
      'At a crossing, the broken line passes underneath.',
    );
    const letters = 'Letters: insulation colour (IEC 60757).';
    expect(stateLine(bare, undefined, { ...nothing, letters: true })).toBe(letters);
    expect(stateLine(bare, undefined, { ...nothing, colours: 'signal' })).toBe(
      'Line colour: signal carried.',
    );
    expect(stateLine(bare, undefined, { ...nothing, colours: 'signal', letters: true })).toBe(
      `Line colour: signal carried. ${letters}`,
    );
    expect(stateLine(bare, undefined, { ...nothing, colours: 'insulation', letters: true })).toBe(
      'Line colour and letters: the wire’s insulation (IEC 60757).',
    );
    expect(stateLine(bare, undefined, { ...nothing, colours: 'both', letters: true })).toBe(
      'Line colour: the wire’s insulation where letters give it (IEC 60757), else the signal carried.',
    );
  });
  it('name a wire’s colour, or two, and a code that is none as it is', () => {
    expect(['BK', 'GNYE', 'XX'].map((code) => colourName('en', code))).toEqual([
      'black',
      'green and yellow',
      'XX',
    ]);
  });
  it('describe every card and every joint', () => {
    const circuit = makeCircuit({
      parts: {
        a: { kind: 'single-coil', label: 'Neck' },
        v: { kind: 'pot', value: '250k', label: 'Vol' },
        out: { kind: 'jack', label: 'Out' },
      },
      joints: ['a.hot > v.3', 'v.2 > out.tip', 'a.ground > out.sleeve'],
    });
    const row = { pickup: 'a', label: 'Neck', dcLoad: '250 kΩ', signalLoad: '125 kΩ', ratio: 1, verdict: '' };
    const card = {
      language: 'en' as const,
      states: [1],
      badge: '2',
      combinations: [['2']],
      title: 'Neck',
      rows: [row, { ...row, label: 'Two', level: '3.0 dB quieter' }],
      switches: [],
      meter: '',
    };
    expect(
      describeCards([
        { ...card, badge: '' },
        { ...card, joined: 'in series', rows: [row] },
      ]),
    ).toBe(
      'Neck. Neck: DC load 250 kΩ, signal load 125 kΩ; Two: DC load 250 kΩ, signal load 125 kΩ, 3.0 dB quieter. ' +
        'Position 2: Neck, in series. Neck: DC load 250 kΩ, signal load 125 kΩ.',
    );
    expect(describeJoints(circuit)).toBe(
      'Joints: wire from Neck hot to Vol lug 3; wire from Vol lug 2 to Out tip; wire from Neck ground to Out sleeve.',
    );
  });
});
