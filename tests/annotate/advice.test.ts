/** What is warned of pots and positions in kits made for it, and what is said to be done. Figures are worked out by hand beside each. */
import { describe, expect, it } from 'vitest';
import { seriesTracks, solveLoads } from '../../src/analyse/index.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import { valueSource } from '../../src/describe/source.ts';
import { findErrors } from '../../src/solve/errors.ts';
import { type Compact, makeCircuit, makeKit } from '../analyse/kits.ts';

const told = (kit: Compact, code: string) => {
  const circuit = makeCircuit(kit);
  return toDiagnostics(notesOf(circuit, solveLoads(circuit)), { ...valueSource('a'), exact: true })
    .filter((one) => one.code === code)
    .map(({ message }) => message);
};

const coil = (ohms: number) => ({
  kind: 'single-coil',
  resistance: ohms,
  inductance: 2.4,
  capacitance: '110p',
});
const pickups = { neck: coil(6000), bridge: coil(6000) };
const grounds = ['neck.ground > out.sleeve', 'bridge.ground > out.sleeve'];

describe('a blend', () => {
  const parts = { ...pickups, blend: { kind: 'blend', value: '500k' }, out: { kind: 'jack' } };
  const right = [
    'neck.ground > blend.case',
    'bridge.ground > blend.case',
    'blend.case > out.sleeve',
    'neck.hot > blend.a2',
    'bridge.hot > blend.b2',
    'blend.a3 > blend.b1',
    'blend.a3 > out.tip',
    'blend.a1 > blend.case',
    'blend.b3 > blend.case',
  ];
  it('that is wired as it should be has no track in series at its centre', () =>
    expect(seriesTracks(makeCircuit({ parts, joints: right }))).toEqual([]));
  it('with plain tracks has half of one in series with each pickup there', () => {
    const plain = { ...parts, blend: { kind: 'blend', value: '500k', taper: 'linear' } };
    const circuit = makeCircuit({ parts: plain, joints: right });
    const found = seriesTracks(circuit);
    expect(found.map(({ pickup, pot }) => [pickup, pot])).toEqual([
      ['neck', 'blend'],
      ['bridge', 'blend'],
    ]);
    expect(found.map(({ states }) => states.map(({ turned }) => turned?.blend))).toEqual([[0.5], [0.5]]);
    // At direct current, by voltage dividers: from the output the other pickup, 250 k + 6 k ∥ 250 k, and the amplifier's 1 M lead to
    // ground, 203.7 k; the wiper has that and 250 k in series, and 250 k to ground, 161.2 k; so 1 V behind 6 k gives 0.4329 V. With a
    // wire for the series half 250 k ∥ 203.7 k = 112.2 k are left, and 0.9493 V.
    for (const { fall } of found) expect(fall).toBeCloseTo(20 * Math.log10(0.94926 / 0.4329), 2);
    expect(told({ parts: plain, joints: right }, 'pot-in-series')).toHaveLength(2);
  });
  it('of one plain pot is what it is', () => {
    const joints = [...grounds, 'p.case > out.sleeve', 'neck.hot > p.1', 'bridge.hot > p.3', 'p.2 > out.tip'];
    const one = { ...pickups, p: { kind: 'pot', value: '250k', taper: 'linear' }, out: { kind: 'jack' } };
    expect(told({ parts: one, joints }, 'pot-in-series')).toEqual([]);
  });
  it('wired the wrong way round is silent at its centre, and which lugs to exchange is told', () => {
    const other: Readonly<Record<string, string>> = { a1: 'a3', a3: 'a1', b1: 'b3', b3: 'b1' };
    const joints = right.map((one) => one.replace(/blend\.([ab][13])/g, (_, lug) => `blend.${other[lug]}`));
    const errors = toDiagnostics(findErrors(makeKit({ parts, joints })), {
      ...valueSource('a'),
      exact: true,
    });
    expect(errors.map(({ code, message }) => `${code}: ${message}`)).toEqual([
      'no-output: no output with blend at centre',
    ]);
    expect(errors[0]?.remedy).toContain(
      'At “blend” exchange what is on lugs a1 and a3, and exchange what is on lugs b1 and b3.',
    );
    // With the other track not connected there is more to it.
    const less = joints.filter((one) => one !== 'blend.a1 > blend.b3');
    const [first] = toDiagnostics(findErrors(makeKit({ parts, joints: less })), {
      ...valueSource('a'),
      exact: true,
    });
    expect(first?.code).toBe('no-output');
    expect(first?.remedy).toMatch(/blend/);
  });
});

describe('a track in series with the only pickup', () => {
  // Of 1 V the amplifier's 1 M keeps 1 M / (1 M + R + 6 k): more than half is lost to R alone from about 1 M on (voltage divider).
  const falls = (value: string) =>
    told(
      {
        parts: {
          neck: coil(6000),
          p: { kind: 'blend', value },
          out: { kind: 'jack' },
        },
        joints: ['neck.ground > out.sleeve', 'p.case > out.sleeve', 'neck.hot > p.a1', 'p.a2 > out.tip'],
      },
      'pot-in-series',
    ).length;
  it('is told from 6 dB on', () => expect([falls('250k'), falls('800k'), falls('1.2M')]).toEqual([0, 0, 1]));
});

describe('a position named after a pickup', () => {
  const names = (called: readonly string[], first = 'neck', last = 'bridge') =>
    told(
      {
        parts: {
          ...pickups,
          s: {
            kind: 'switch',
            lugs: { left: ['A1', 'A0', 'A2'] },
            positions: [[['A0', 'A1']], [['A0', 'A1', 'A2']], [['A0', 'A2']]],
            called,
          },
          out: { kind: 'jack' },
        },
        joints: [...grounds, `${first}.hot > s.A1`, `${last}.hot > s.A2`, 's.A0 > out.tip'],
      },
      'position-name',
    );
  it('selects it', () => {
    expect(names(['neck', 'both', 'bridge'])).toEqual([]);
    expect(names(['Neck', 'neck and bridge', 'Bridge'], 'bridge', 'neck')).toEqual([
      'the position “Neck” of “s” selects bridge, not “neck”',
      'the position “Bridge” of “s” selects neck, not “bridge”',
    ]);
    expect(names(['up', 'middle', 'down'], 'bridge', 'neck')).toEqual([]);
  });
});

describe('a no-load pot', () => {
  const tone = (hand: 'left' | 'right', end: 1 | 3, noLoad: boolean) => {
    const kit = makeCircuit({
      parts: {
        neck: coil(6000),
        t: { kind: 'pot', value: '250k', ...(noLoad ? { 'no-load': true } : {}) },
        c: { kind: 'capacitor', value: '22n' },
        out: { kind: 'jack' },
      },
      joints: [
        'neck.ground > out.sleeve',
        't.case > out.sleeve',
        'neck.hot > out.tip',
        `out.tip > t.${end}`,
        't.2 > c.1',
        'c.2 > out.sleeve',
      ],
    });
    const circuit = { ...kit, kit: { ...kit.kit, hand } };
    return notesOf(circuit, solveLoads(circuit))
      .map(({ code }) => code)
      .filter((code) => ['control-backwards', 'no-load-other-end'].includes(code));
  };
  it('opens at the clockwise end, which in a left-handed build is the wrong one', () => {
    expect(tone('right', 1, true)).toEqual([]);
    expect(tone('left', 3, false)).toEqual([]);
    expect(tone('left', 3, true)).toEqual(['no-load-other-end']);
    expect(tone('left', 1, false)).toEqual(['control-backwards']);
  });
});
