/** What `loads` prints and gives as data. Loads are the trade handbook's table, worked by hand with the parallel law. */
import { describe, expect, it } from 'vitest';
import {
  readMeter,
  solveKnobSettings,
  solveLimits,
  solveLoads,
  solveResponse,
  toJson,
} from '../../src/analyse/index.ts';
import { probeLug } from '../../src/analyse/soldered.ts';
import { type Circuit, lugId } from '../../src/circuit/circuit.ts';
import { wholeNumber } from '../../src/commands/loads.ts';
import { formatSigned } from '../../src/common/figures.ts';
import { columns, percentText } from '../../src/report/columns.ts';
import { loadsData } from '../../src/report/loads-data.ts';
import { limitTables, meterTable } from '../../src/report/meter-table.ts';
import { responseTable } from '../../src/report/response-table.ts';
import { assumptions, loadsTable } from '../../src/report/table.ts';
import { makeCircuit, mixedSet, sampleCircuit } from '../analyse/kits.ts';

const par = (...ohms: number[]): number => 1 / ohms.reduce((sum, r) => sum + 1 / r, 0);
const kestrel = sampleCircuit('kestrel-hss');
const limits = solveLimits(kestrel, { samples: 200, seed: 7 });
const figures = (circuit: Circuit) => ({
  circuit,
  loads: solveLoads(circuit),
  response: solveResponse(circuit, { points: 1 }).states,
  readings: readMeter(circuit),
});
const widest = (text: string): number => Math.max(...text.split('\n').map((line) => line.length));

describe('the tables', () => {
  const { loads, response, readings } = figures(kestrel);

  it('of loads: both with reference and distance in ohms and per cent, and the total', () => {
    const [head = '', , , bridge = ''] = loadsTable(loads).split('\n');
    expect(head).toMatch(/DC load +reference +off by +signal load +reference +off by +total load$/);
    const total = Number(/([\d.]+) kΩ$/.exec(bridge)?.[1]);
    expect(bridge).toMatch(/bridge +242\.3 kΩ +500 kΩ +−51\.5 % +163\.2 kΩ +250 kΩ +−86\.\d+ kΩ +−34\.7 %/);
    // 500k ∥ 470k ∥ 500k ∥ 1M of the amplifier, and the middle pickup's own 5.9 kΩ and 2.4 H beside it at 1 kHz.
    const x = 2 * Math.PI * 1000 * 2.4;
    const coil = (5900 ** 2 + x ** 2) / 5900;
    expect(Math.abs(total / (par(500e3, 470e3, 500e3, 1e6, coil) / 1e3) - 1)).toBeLessThan(1e-2);
  });

  it('of response: resonance, height and -3 dB point beside the reference; of several pickups together too', () => {
    const lines = responseTable(response).split('\n');
    const own = response[2]?.pickups[0];
    const [f, ref] = [own?.shape.resonance, own?.reference.shape.resonance].map((peak) =>
      Math.round(peak?.frequency ?? 0),
    );
    expect(lines.find((line) => line.startsWith('selector 3'))).toMatch(
      new RegExp(`middle +${f} Hz .* ${ref} Hz `),
    );
    expect(lines.filter((line) => line.includes('together'))).toHaveLength(2);
  });

  it('of meter readings: the jack, then each lug that a probe reaches, before the pickups and finished, full and at zero', () => {
    const lines = meterTable(kestrel.kit, readings).split('\n');
    expect(lines[1]).toMatch(/^selector 1 +tip to sleeve +500 kΩ +8\.261 kΩ +0 Ω +0 Ω$/);
    expect(lines[2]).toMatch(/^ +selector\.A3 to ground +open +5\.632 kΩ +open +5\.632 kΩ$/);
    expect(lines.some((line) => line.includes('output.tip'))).toBe(false);
    expect(probeLug(kestrel.kit, ['neck.hot', 'selector.A3'])).toBe('selector.A3');
    expect(probeLug(kestrel.kit, ['neck.hot'])).toBe('neck.hot');
  });

  it('of limits: smallest and largest, with seed and samples', () => {
    const text = limitTables(kestrel, limits);
    // Corners of the parallel law: pot ±20 %, pad ±5 % (common practice, no source); rounded outwards.
    const ends = [Math.floor(par(400e3, 446.5e3) / 1e3), Math.ceil(par(600e3, 493.5e3) / 1e3)];
    expect(text).toMatch(new RegExp(`selector 3 +middle +${ends.join('–')} kΩ`));
    // What is by samples is under a heading of its own, and nothing else is.
    const [first, samples, ...more] = text.split(/^Resonance: /m);
    expect(more).toEqual([]);
    expect(samples).toMatch(/^95 % of 200 samples, each value uniform within its tolerance, seed 7\n/);
    expect(first).not.toMatch(/sample|Hz|dB/);
    expect(samples).not.toContain('Ω');
    expect(samples).toMatch(/selector 3 +middle +\d{4}–\d{4} Hz +\+\d\.\d to \+\d\.\d dB/);
    expect(text).toMatch(/tip to sleeve +400–600 kΩ/);
  });

  it('of settings say each setting once, beside its first pickup', () => {
    const text = responseTable(solveKnobSettings(kestrel), true);
    const rows = text.split('\n').slice(1);
    const at = rows.findIndex((row) => row.startsWith('selector 2'));
    expect(rows[at]).toMatch(/^selector 2 +10 +10 +middle/);
    expect(rows[at + 1]).toMatch(/^ {20,}bridge/);
    expect(rows[at + 3]).toMatch(/^ +10 +7 +middle/);
    expect(rows.filter((row) => /^selector \d/.test(row))).toHaveLength(5);
  });

  it('are no wider than a terminal', () => {
    for (const text of [
      loadsTable(loads),
      responseTable(response),
      meterTable(kestrel.kit, readings),
      limitTables(kestrel, limits),
    ])
      expect(widest(text)).toBeLessThanOrEqual(110);
  });

  it('are the same in a kit where nothing resonates or reads', () => {
    const dull = makeCircuit({
      parts: {
        a: { kind: 'single-coil', 'core-loss': '1k' },
        volume: { kind: 'pot', value: '1k' },
        out: { kind: 'jack' },
      },
      joints: ['a.hot > volume.3', 'volume.2 > out.tip', 'volume.1 > out.sleeve', 'a.ground > out.sleeve'],
    });
    const { loads, response } = figures(dull);
    expect(loadsTable(loads)).toContain('always');
    expect(responseTable(response)).toContain('no peak');
  });
});

describe('what is assumed', () => {
  it('is said of every pickup with a value by default, and of coupling', () => {
    expect(assumptions(kestrel.kit).split('\n')).toEqual([
      'neck: L 2.4 H, C 110 pF assumed, typical of a single coil pickup',
      'middle: L 2.4 H, C 110 pF assumed, typical of a single coil pickup',
      'bridge: L 4.4 H, C 130 pF assumed, typical of a two-lead humbucker pickup',
      'Core loss is neglected for neck, middle and bridge: the real peak is lower (in dB) and broader.',
      'Mutual inductance between pickups is neglected: each pickup is one winding.',
    ]);
  });

  it('is not said of a value that was given, even the same', () => {
    const given = makeCircuit({
      ...mixedSet,
      parts: {
        ...mixedSet.parts,
        bridge: {
          kind: 'single-coil',
          resistance: '6k',
          inductance: '2.4H',
          capacitance: '110p',
          'core-loss': '300k',
        },
      },
    });
    expect(assumptions(given.kit)).not.toContain('bridge');
    expect(assumptions(given.kit)).toContain('neck: R 8.2 kΩ, L 4.4 H, C 130 pF assumed');
  });
});

describe('the data', () => {
  const all = figures(kestrel);
  const read = (with_: object) => JSON.parse(toJson(loadsData({ ...all, ...with_ })));
  const plain = read({});
  const wide = read({ limits });

  it('has every figure under its state and pickup, unrounded', () => {
    const [first, second] = plain.positions;
    expect(first.switches).toEqual({ selector: 1 });
    expect(second.sounding).toEqual(['middle', 'bridge']);
    const { middle } = second.pickups;
    expect(middle.dcLoad).toBeCloseTo(par(500e3, 470e3), 3);
    expect(middle.reference.dcLoad).toBeCloseTo(250e3, 3);
    expect(middle.difference.dcLoad.ohms).toBeCloseTo(par(500e3, 470e3) - 250e3, 3);
    expect(middle.totalLoad).toBe(all.loads[1]?.pickups[0]?.total.signalLoad);
    expect(middle.response.resonance).toEqual(all.response[1]?.pickups[0]?.shape.resonance);
    expect(middle.response.reference).toEqual(all.response[1]?.pickups[0]?.reference.shape);
    expect(middle.response.difference).toEqual(all.response[1]?.pickups[0]?.difference);
    expect(second.together).toEqual(all.response[1]?.together?.shape);
  });

  it('has the meter readings, every lug of a net by name', () => {
    const { volumeOn10, volumeOn0 } = plain.positions[0].meter;
    expect(volumeOn10.jack.disconnected).toBeCloseTo(500e3, 3);
    expect(volumeOn0.jack).toEqual({ disconnected: 0, connected: 0 });
    const lug = volumeOn10.lugs.find((one: { probe: string }) => one.probe === 'selector.A3');
    expect(lug.lugs).toContain(lugId('neck', 'hot'));
    // The pad is soldered there together with the pickup's lead.
    expect(lug.disconnected).toBe('open');
    expect(lug.connected).toBeCloseTo(par(470e3, 5700), 3);
    expect(
      plain.positions[2].meter.volumeOn10.lugs.some(
        (one: { disconnected: unknown }) => one.disconnected === 'open',
      ),
    ).toBe(true);
  });

  it('says which values of a pickup are defaults, and that no coils are coupled', () => {
    expect(plain.pickups.neck).toEqual({
      kind: 'single-coil',
      resistance: 5700,
      inductance: 2.4,
      capacitance: 110e-12,
      defaulted: ['inductance', 'capacitance'],
    });
    expect(plain.coupling).toBe('none');
  });

  it('has the limits only when asked for, with its seed', () => {
    expect(JSON.stringify(plain)).not.toContain('"limits"');
    expect(wide.limits).toEqual({ seed: 7, samples: 200, temperatures: { low: 10, high: 30 } });
    const { limits: own } = wide.positions[2].pickups.middle;
    expect(own.dcLoad.low).toBeCloseTo(par(400e3, 446.5e3), 3);
    expect(own.resonance.frequency.low).toBeLessThan(own.resonance.frequency.high);
    expect(wide.positions[2].limits.jack.volumeFull.disconnected.high).toBeCloseTo(600e3, 3);
    // The pad at +5 %, the winding at +10 % and 10 K above 20 °C, where copper has 3.93 % more (IEC 60028).
    expect(wide.positions[2].limits.jack.volumeFull.connected.high).toBeCloseTo(
      par(600e3, 493.5e3, 5900 * 1.1 * 1.0393),
      3,
    );
  });
});

describe('small words', () => {
  it('whole numbers are digits within their bounds, and nothing else', () => {
    const seed = wholeNumber(0, 2 ** 32 - 1);
    expect([seed('0'), seed('4294967295'), seed('60063')]).toEqual([0, 4294967295, 60063]);
    for (const text of ['-1', '4294967296', '1.5', '1e3', '', ' ', 'seed', '0x10', 'NaN'])
      expect(() => seed(text), text).toThrow(/allowed: a whole number from 0 to 4294967295/);
  });

  it('signs and per cent', () => {
    expect([formatSigned(0.04, 1), formatSigned(-0.04, 1), formatSigned(1, 1), formatSigned(-1, 0)]).toEqual([
      '0.0',
      '0.0',
      '+1.0',
      '−1',
    ]);
    expect([percentText(-3.09), percentText(Infinity)]).toEqual(['−3.1 %', '–']);
  });

  it('a column that is empty throughout is left out', () =>
    expect(columns(['a', '', 'c'], [['x', '', '1']], 1)).toBe('a  c\nx  1'));
});

it('a difference of nothing has no sign', () => {
  const [state] = solveLoads(kestrel);
  if (!state) throw new Error('no state');
  const off = (ohms: number): string => {
    const changed = state.pickups.map((one) => ({
      ...one,
      difference: { dcLoad: { ohms, percent: 0 }, signalLoad: { ohms, percent: 0 } },
    }));
    return loadsTable([{ ...state, pickups: changed }]);
  };
  expect(off(0)).toMatch(/ 0 Ω /);
  expect(off(0)).not.toContain('+0 Ω');
  expect(off(1000)).toContain('+1 kΩ');
});

it('figures as JSON are set in by two blanks unless told otherwise, and what is open is a word', () => {
  const value = { load: Number.POSITIVE_INFINITY, of: [1] };
  expect(toJson(value)).toBe('{\n  "load": "open",\n  "of": [\n    1\n  ]\n}');
  expect(toJson(value, 0)).toBe('{"load":"open","of":[1]}');
});
