/** The tables of the terminal, from figures written down: what stands in each cell, and where a cell is left empty. */
import { describe, expect, it } from 'vitest';
import {
  type Curve,
  type CurveShape,
  type Limits,
  type PickupCurve,
  type PickupLoads,
  type ResonanceLimits,
  type StateLoads,
  type StateResponse,
  solveLoads,
  type ToleranceRange,
} from '../../src/analyse/index.ts';
import { columns } from '../../src/report/columns.ts';
import { limitTables } from '../../src/report/meter-table.ts';
import { responseCsv, responseHead, responseTable } from '../../src/report/response-table.ts';
import { togetherTable } from '../../src/report/table.ts';
import { makeCircuit, mixedSet } from '../analyse/kits.ts';

const circuit = makeCircuit(mixedSet);
const nth = <T>(list: readonly T[], index: number): T => {
  const found = list[index];
  if (found === undefined) throw new Error(`no ${index}`);
  return found;
};
const states = circuit.states;

describe('columns', () => {
  it('stand as wide as their widest cell: the first to the left, the others to the right', () => {
    const rows = [
      ['a', 'bb', '1', '22'],
      ['aaaa', 'b', '333'],
    ];
    expect(columns(['h', 'head', 'n', 'm'], rows).split('\n')).toEqual([
      'h     head    n   m',
      'a     bb      1  22',
      'aaaa  b     333',
    ]);
    expect(columns(['h', 'head', 'n', 'm'], rows, 1, '> ').split('\n')).toEqual([
      '> h     head    n   m',
      '> a       bb    1  22',
      '> aaaa     b  333',
    ]);
  });
  it('without a heading are left out only where they are empty in every row', () => {
    expect(
      columns(
        ['a', '', 'c'],
        [
          ['x', '', '1'],
          ['y', 'z', '2'],
        ],
        1,
      ),
    ).toBe('a     c\nx     1\ny  z  2');
    expect(columns(['a', 'b'], [['x', '']], 1)).toBe('a  b\nx');
  });
});

const shape = (more: Partial<CurveShape> = {}): CurveShape => ({
  plateau: -1,
  resonance: { frequency: 3456.7, height: 4.26, level: 3.2 },
  cutoff: 5678.4,
  ...more,
});
const curve = (own: CurveShape): Curve => ({ gain: [1, 0, 0.5], shape: own });
const pickup = (name: string, own: CurveShape, reference: CurveShape, difference = {}): PickupCurve => ({
  pickup: name,
  ...curve(own),
  reference: { gain: [2, 1e-12, 0.99995], shape: reference },
  difference,
});
const { resonance: _, ...falling } = shape();
const { cutoff: __, ...open } = shape();

describe('the table of responses', () => {
  const knobs = (volume: number, tone: number) => ({ volume, tone });
  const entry = (
    index: number,
    pickups: readonly PickupCurve[],
    more: Partial<StateResponse> = {},
  ): StateResponse => ({
    index,
    state: nth(states, index),
    knobs: knobs(10, 10),
    pickups,
    ...more,
  });
  const cells = (text: string) =>
    text
      .split('\n')
      .slice(1)
      .map((line) => line.trim().split(/ {2,}/));
  it('has peak, height and −3 dB point, those of the reference, and how far off it is', () => {
    const far = { frequency: 210.4, percent: 6.25, height: -1.04 };
    const near = { frequency: -0.2, percent: 0, height: 0 };
    const entries = [
      entry(0, [pickup('a', shape(), shape({ resonance: { frequency: 3000.5, height: 5, level: 1 } }), far)]),
      entry(1, [pickup('a', falling, shape()), pickup('b', open, falling, near)], {
        together: curve(shape()),
      }),
      entry(2, [pickup('c', shape({ plateau: -150 }), shape())], { together: curve(shape()) }),
    ];
    expect(cells(responseTable(entries))).toEqual([
      [
        'selector 1',
        'a',
        '3457 Hz',
        '+4.3 dB',
        '5678 Hz',
        '3001 Hz',
        '+5.0 dB',
        '+210 Hz',
        '+6.3 %',
        '−1.0 dB',
      ],
      ['selector 2', 'a', 'no peak', '5678 Hz', '3457 Hz', '+4.3 dB'],
      ['b', '3457 Hz', '+4.3 dB', 'over 20 kHz', 'no peak', '0 Hz', '0.0 %', '0.0 dB'],
      // Together only where several sound.
      ['together', '3457 Hz', '+4.3 dB', '5678 Hz'],
      ['selector 3', 'c', 'no output', '3457 Hz', '+4.3 dB'],
    ]);
    expect(cells(responseTable([entry(2, [pickup('c', shape({ plateau: -149.9 }), shape())])]))[0]?.[2]).toBe(
      '3457 Hz',
    );
  });
  it('with the settings of the knobs has each once, and each position once', () => {
    const two = [pickup('a', shape(), shape()), pickup('b', shape(), shape())];
    const entries = [
      entry(0, two, { knobs: knobs(10, 10) }),
      entry(0, two, { knobs: knobs(7, 10) }),
      entry(1, two, { knobs: knobs(10, 10) }),
    ];
    const rows = cells(responseTable(entries, true)).map((row) => row.slice(0, 4).join(' '));
    expect(rows).toEqual([
      'selector 1 10 10 a',
      'b 3457 Hz +4.3 dB 5678 Hz',
      '7 10 a 3457 Hz',
      'b 3457 Hz +4.3 dB 5678 Hz',
      'selector 2 10 10 a',
      'b 3457 Hz +4.3 dB 5678 Hz',
    ]);
    expect(responseTable(entries, true).split('\n')[0]).toMatch(
      /^position +volume +tone +sounding +resonance/,
    );
    expect(responseTable(entries).split('\n')[0]).toMatch(/^position +sounding +resonance/);
  });

  it('as values has each state, its pickups alone where there are several, and each reference once', () => {
    const response = {
      frequencies: [20, 632.456, 20_000],
      states: [
        entry(0, [pickup('bridge', shape(), shape())], { together: curve(shape()) }),
        entry(1, [pickup('neck', shape(), shape()), pickup('bridge', shape(), shape())], {
          together: curve(shape()),
        }),
        entry(2, []),
      ],
    };
    const [heads, ...rows] = responseCsv(circuit, response).trimEnd().split('\n');
    expect(
      heads
        ?.split(',')
        .filter((head) => head !== ' dB"')
        .map((head) => head.replace('"', '')),
    ).toEqual([
      'frequency in Hz',
      'selector 1: bridge',
      'selector 2: neck + bridge',
      'selector 2: from neck',
      'selector 2: from bridge',
      'reference: neck',
      'reference: bridge',
    ]);
    expect(rows).toEqual([
      '20.00,0.000,0.000,0.000,0.000,6.021,6.021',
      '632.46,-200.000,-200.000,-200.000,-200.000,-200.000,-200.000',
      // Rounding leaves no minus before nothing.
      '20000.00,-6.021,-6.021,-6.021,-6.021,0.000,0.000',
    ]);
  });

  it('says above it what it holds for', () => {
    const { kit } = circuit;
    expect(responseHead(circuit).split('\n')).toEqual([
      kit.title,
      'cable 300 pF, amplifier 1 MΩ; peak heights relative to the level at 100 Hz, core loss neglected',
    ]);
    expect(responseHead(circuit, knobs(7, 0)).split('\n')[1]).toMatch(/^volume 7, tone 0; cable/);
    const lossy = makeCircuit({
      ...mixedSet,
      parts: {
        ...mixedSet.parts,
        neck: { kind: 'humbucker', 'core-loss': '300k' },
        bridge: { kind: 'single-coil', 'core-loss': '300k' },
      },
    });
    expect(responseHead(lossy)).not.toContain('core loss');
  });
});

describe('the tables of limits', () => {
  const range = (low: number, high: number): ToleranceRange => ({
    low,
    nominal: low,
    high,
    method: 'search',
  });
  const resonance = (low: number, high: number, least: number, most: number): ResonanceLimits => ({
    frequency: { low, nominal: low, high, method: '95 % of samples, uniform' },
    height: { low: least, nominal: least, high: most, method: '95 % of samples, uniform' },
    without: 0,
  });
  const own = (name: string, dc: ToleranceRange) => ({
    pickup: name,
    dcLoad: dc,
    signalLoad: range(123_456, 654_321),
    total: { dcLoad: range(1, 2), signalLoad: range(999.4, 1000.6) },
  });
  const both = (one: ToleranceRange) => ({ disconnected: one, connected: range(8000, 9000) });
  const net = circuit.nets.find(({ lugs }) => lugs.includes('selector.A1'));
  const tip = circuit.nets.find(({ lugs }) => lugs.includes('output.tip'));
  const limits: Limits = {
    seed: 5,
    samples: 12_000,
    temperatures: { low: 10, high: 35 },
    states: [
      {
        index: 0,
        state: nth(states, 0),
        pickups: [
          { ...own('bridge', range(400e3, 600e3)), resonance: resonance(3999.6, 5000.4, -0.04, 3.26) },
        ],
        jack: { volumeFull: both(range(500e3, 500e3)), volumeZero: both(range(0, 0)) },
        lugs: [net, tip].map((one) => ({
          net: one?.index ?? -1,
          lug: one?.lugs.find((lug) => !/^(neck|bridge)/.test(lug)) ?? '',
          ...both(range(950e3, 1.2e6)),
        })),
      },
      {
        index: 1,
        state: nth(states, 1),
        pickups: [own('neck', range(Infinity, Infinity)), own('bridge', range(47e3, Infinity))],
        lugs: [],
        resonance: resonance(4000, 4000, 1, 1),
      },
    ],
  };
  const [worst = '', ...rest] = limitTables(circuit, limits).split('\n');
  const cells = rest.map((line) => line.trim().split(/ {2,}/));
  it('say what they hold for', () => {
    expect(worst).toBe(
      'Worst-case limits of loads and multimeter readings: all parts within tolerance, 10 to 35 °C',
    );
    expect(rest).toContain(
      'Resonance: 95 % of 12,000 samples, each value uniform within its tolerance, seed 5',
    );
  });
  it('have smallest and largest, rounded outwards to three figures, in one unit where both are', () => {
    expect(cells).toContainEqual(['selector 1', 'bridge', '400–600 kΩ', '123–655 kΩ', '999 Ω–1.01 kΩ']);
    expect(cells).toContainEqual(['selector 2', 'neck', 'open', '123–655 kΩ', '999 Ω–1.01 kΩ']);
    expect(cells).toContainEqual(['bridge', '47 kΩ–open', '123–655 kΩ', '999 Ω–1.01 kΩ']);
  });
  it('have readings with the volume up, but the tip’s own net only once', () => {
    expect(cells).toContainEqual(['selector 1', 'tip to sleeve', '500 kΩ', '8–9 kΩ']);
    expect(cells).toContainEqual(['selector.A1 to ground', '950 kΩ–1.2 MΩ', '8–9 kΩ']);
    expect(cells.filter(([first]) => first?.includes('to ground'))).toHaveLength(1);
    expect(cells.filter(([, second]) => second === 'tip to sleeve')).toHaveLength(1);
  });
  it('have where the resonances lie, of several together besides', () => {
    expect(cells).toContainEqual(['selector 1', 'bridge', '4000–5000 Hz', '0.0 to +3.3 dB']);
    expect(cells).toContainEqual(['selector 2', 'neck', 'no peak']);
    expect(cells).toContainEqual(['together', '4000 Hz', '+1.0 to +1.0 dB']);
    expect(cells.filter(([first]) => first === 'together')).toHaveLength(1);
  });
});

it('the table of how pickups are joined leaves out a position of which there is nothing to say', () => {
  const [first, both, last] = solveLoads(circuit);
  const down = (one: StateLoads | undefined, level: number, humCancelling = false): StateLoads => {
    if (!one) throw new Error('no state');
    return {
      ...one,
      humCancelling,
      pickups: one.pickups.map((load, i): PickupLoads => (i === 0 ? { ...load, level } : load)),
    };
  };
  const cells = (loads: readonly StateLoads[]) =>
    togetherTable(loads)
      .split('\n')
      .map((line) => line.trim().split(/ {2,}/));
  expect(togetherTable([down(first, 0), down(last, -0.5)])).toBe('');
  expect(cells([down(first, 0), down(both, 0), down(last, -3)])).toEqual([
    ['position', 'sounding', 'joined', 'level'],
    ['selector 2', 'neck + bridge', 'in parallel'],
    ['selector 3', 'neck', 'neck 3.0 dB quieter'],
  ]);
  expect(cells([down(first, 0), down(both, 0), down(last, 0, true)])).toEqual([
    ['position', 'sounding', 'joined', 'level', 'hum'],
    ['selector 2', 'neck + bridge', 'in parallel'],
    ['selector 3', 'neck', 'hum-cancelling'],
  ]);
});
