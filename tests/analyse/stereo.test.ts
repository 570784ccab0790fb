/** A stereo jack: each output by itself, against the same pickup at a mono jack, by hand, and against ngspice. */
import { describe, expect, it } from 'vitest';
import {
  idleComponents,
  readMeter,
  readOutputs,
  solveLimits,
  solveLoads,
  solveResponse,
  toneControlsIn,
} from '../../src/analyse/index.ts';
import { makeStateSolver, transferAt } from '../../src/analyse/response.ts';
import { cardsOf } from '../../src/annotate/cards.ts';
import { kitFromValue } from '../../src/checked.ts';
import { perOutput } from '../../src/circuit/circuit.ts';
import { meterTable } from '../../src/report/meter-table.ts';
import { responseTable } from '../../src/report/response-table.ts';
import { ownNetlist } from '../oracle/own-netlist.ts';
import { runSpice } from '../oracle/spice.ts';
import { type Compact, makeCircuit, makeKit } from './kits.ts';

const pickups = {
  neck: { kind: 'single-coil', resistance: '5.7k', inductance: '2.2' },
  bridge: { kind: 'single-coil', resistance: '6.5k', inductance: '2.9' },
};
const volumes = { low: { kind: 'pot', value: '250k' }, high: { kind: 'pot', value: '500k' } };
const ground = ['neck.ground', 'bridge.ground', 'low.1', 'high.1', 'low.case', 'high.case'].map(
  (lug) => `${lug} > out.sleeve`,
);
const stereo: Compact = {
  parts: { ...pickups, ...volumes, out: { kind: 'stereo-jack' } },
  joints: [...ground, 'neck.hot > low.3', 'bridge.hot > high.3', 'low.2 > out.ring', 'high.2 > out.tip'],
};
/** The same half of it at a jack of its own. */
const mono = (pickup: 'neck' | 'bridge', volume: 'low' | 'high') =>
  makeCircuit({
    parts: { [pickup]: pickups[pickup], [volume]: volumes[volume], out: { kind: 'jack' } },
    joints: [
      `${pickup}.ground > out.sleeve`,
      `${volume}.1 > out.sleeve`,
      `${pickup}.hot > ${volume}.3`,
      `${volume}.2 > out.tip`,
    ],
  });
/** Both outputs tied by a resistor, so that each pickup is heard at both. */
const tied: Compact = {
  parts: { ...stereo.parts, tie: { kind: 'resistor', value: '100k' } },
  joints: [...stereo.joints, 'tie.1 > out.tip', 'tie.2 > out.ring'],
};

describe('two pickups, a volume each, at tip and ring', () => {
  const circuit = makeCircuit(stereo);
  const [state] = circuit.states;
  const halves = [mono('neck', 'low'), mono('bridge', 'high')];
  it('each sounds at its own output and at no other', () => {
    expect(state?.sounding).toEqual(['neck', 'bridge']);
    expect(state?.outputs).toEqual([
      { name: 'tip', sounding: ['bridge'], loudest: ['bridge'] },
      { name: 'ring', sounding: ['neck'], loudest: ['neck'] },
    ]);
  });
  it('loads, level and relations are those of the same half at a mono jack', () => {
    const both = solveLoads(circuit)[0]?.pickups ?? [];
    expect(both.map(({ pickup }) => pickup)).toEqual(['neck', 'bridge']);
    both.forEach((own, i) => {
      const alone = halves[i] && solveLoads(halves[i])[0]?.pickups[0];
      expect(own.dcLoad).toBeCloseTo(alone?.dcLoad ?? 0, 6);
      expect(own.signalLoad).toBeCloseTo(alone?.signalLoad ?? 0, 6);
      expect(own.total.signalLoad).toBeCloseTo(alone?.total.signalLoad ?? 0, 6);
      expect(own.level).toBeCloseTo(alone?.level ?? 1, 9);
      expect([own.series, own.parallel, own.outOfPhase]).toEqual([[], [], []]);
    });
    // By hand: each sees its own volume pot alone.
    expect(both.map(({ dcLoad }) => Math.round(dcLoad))).toEqual([250e3, 500e3]);
  });
  it('one response an output, that of the half at a mono jack', () => {
    const { states } = solveResponse(circuit, { points: 40 });
    expect(states.map((one) => one.pickups.map(({ pickup }) => pickup))).toEqual([['bridge'], ['neck']]);
    for (const [one, half] of [
      [states[0], halves[1]],
      [states[1], halves[0]],
    ] as const) {
      const alone = half && solveResponse(half, { points: 40 }).states[0]?.together?.gain;
      one?.together?.gain.forEach((gain, k) => {
        expect(gain).toBeCloseTo(alone?.[k] ?? 0, 9);
      });
    }
    expect(responseTable(states)).toMatch(/always, tip +bridge[^\n]*\nalways, ring +neck/);
  });
  it('a meter is put across both; by hand the coil beside its pot', () => {
    const beside = (a: number, b: number) => (a * b) / (a + b);
    const [tip = 0, ring = 0] = readOutputs(circuit)[0] ?? [];
    expect(tip).toBeCloseTo(beside(6.5e3, 500e3), 6);
    expect(ring).toBeCloseTo(beside(5.7e3, 250e3), 6);
    const table = meterTable(circuit.kit, readMeter(circuit));
    expect(table).toMatch(/tip to sleeve +500 kΩ +6\.417 kΩ +0 Ω +0 Ω/);
    expect(table).toMatch(/ring to sleeve +250 kΩ +5\.573 kΩ +0 Ω +0 Ω/);
    expect(cardsOf(circuit, solveLoads(circuit), readOutputs(circuit))).toMatchObject([
      { title: 'neck + bridge', joined: 'tip: bridge; ring: neck', meter: 'tip 6.42 kΩ, ring 5.57 kΩ' },
    ]);
  });
  it('each has its own range of resonance', () => {
    const [limits] = solveLimits(circuit, { samples: 60 }).states;
    limits?.pickups.forEach((one, i) => {
      const alone = halves[i] && solveLimits(halves[i], { samples: 60 }).states[0]?.pickups[0];
      expect(one.resonance?.frequency.nominal).toBeCloseTo(alone?.resonance?.frequency.nominal ?? 0, 0);
    });
  });
});

describe('outputs tied by 100 kΩ', () => {
  const circuit = makeCircuit(tied);
  it('both sound at both, each loudest at its own', () => {
    expect(circuit.states[0]?.outputs).toEqual([
      { name: 'tip', sounding: ['neck', 'bridge'], loudest: ['bridge'] },
      { name: 'ring', sounding: ['neck', 'bridge'], loudest: ['neck'] },
    ]);
    expect(cardsOf(circuit, solveLoads(circuit), readOutputs(circuit))[0]?.joined).toBe(
      'tip: neck + bridge in parallel; ring: neck + bridge in parallel',
    );
  });
  it('every transfer to either output is that of ngspice, with cable and amplifier at both', async () => {
    const kit = makeKit(tied);
    const [state] = circuit.states;
    if (!state) throw new Error('no state');
    for (const rotation of [1, 0.6, 0]) {
      const rotations = { low: rotation, high: 1 };
      const own = ownNetlist(circuit, state, rotations);
      const lines = [
        ...own.lines,
        ...['out.tip', 'out.ring'].flatMap((lug) => {
          const [a, b] = [own.node(lug), own.node('out.sleeve')];
          if (a === b) return [];
          return [
            { kind: 'C', a, b, value: kit.outputLoad.cable.value } as const,
            { kind: 'R', a, b, value: kit.outputLoad.amplifier.value } as const,
          ];
        }),
      ];
      const cases = perOutput(state).flatMap((view, i) =>
        ['neck', 'bridge'].map((pickup) => ({
          view,
          pickup,
          from: own.node(i === 0 ? 'out.tip' : 'out.ring'),
        })),
      );
      const run = await runSpice(
        cases.map(({ pickup, from }) => ({ lines, from, to: own.node('out.sleeve'), drive: [pickup] })),
        'dec 10 20 20k',
      );
      cases.forEach(({ view, pickup }, i) => {
        const heard = makeStateSolver(circuit, view, rotations);
        const windings = heard?.windings.filter((one) => one.pickup === pickup) ?? [];
        run.frequencies.forEach((frequency, k) => {
          const ours = heard ? transferAt(heard, windings, frequency) : { re: 0, im: 0 };
          const spice = run.results[i]?.[k] ?? { re: Number.NaN, im: 0 };
          const off = Math.hypot(ours.re - spice.re, ours.im - spice.im);
          expect(off).toBeLessThan(1e-6 * Math.max(1e-3, Math.hypot(spice.re, spice.im)));
        });
      });
    }
  });
});

describe('a switch that mutes one output', () => {
  const muted = (intended: object = {}) =>
    kitFromValue(
      {
        kit: 'muted',
        title: 'Muted',
        ...intended,
        parts: {
          ...stereo.parts,
          mute: {
            kind: 'switch',
            lugs: { left: ['a', 'b', 'c'] },
            positions: [[], [['a', 'b']], [['a', 'b', 'c']]],
          },
        },
        joints: [
          'high.case > out.sleeve',
          'low.case > high.case',
          'low.1 > low.case',
          'high.1 > high.case',
          'neck.ground > low.case',
          'bridge.ground > high.case',
          ...stereo.joints.slice(ground.length, -1),
          'high.2 > mute.c',
          'mute.c > out.tip',
          'mute.a > out.ring',
          'mute.b > out.sleeve',
        ],
      },
      'muted.ts',
    ).diagnostics;
  it('is an error only where the other is silent too', () => {
    expect(muted().map(({ code, message }) => [code, message.replace(/^joints\S+ /, '')])).toEqual([
      ['output-shorted', 'the output is shorted: the tip is connected to ground in position 3'],
    ]);
    expect(muted({ intended: { silent: [{ mute: 3 }] } })).toEqual([]);
  });
});

describe('a tone control for each output', () => {
  const tone = { kind: 'pot', value: '250k' };
  const cap = { kind: 'capacitor', value: '22n' };
  const wired = (which: string, volume: string) => [
    `${which}.1 > ${volume}.3`,
    `${which}.2 > ${which}-cap.1`,
    `${which}-cap.2 > out.sleeve`,
    `${which}.case > out.sleeve`,
  ];
  const circuit = makeCircuit({
    parts: { ...stereo.parts, one: tone, 'one-cap': cap, two: tone, 'two-cap': cap },
    joints: [...stereo.joints, ...wired('one', 'low'), ...wired('two', 'high')],
  });
  it('is in circuit, whichever output it is on', () => {
    expect(idleComponents(circuit)).toEqual([]);
  });
  it('does not load the other output', () => {
    const [state] = circuit.states;
    expect(state && toneControlsIn(circuit, state)).toHaveLength(1);
  });
});
