/**
 * Components in circuit nowhere, on harnesses by chance: a part is idle when no value of it changes what the jack shows in any
 * position, the pots half way. And switches that change nothing, by comparing each pair of positions.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { idleComponents, idleSwitches, type StateLoads, solveLoads } from '../../src/analyse/index.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { impedanceOf } from '../../src/solve/measure.ts';
import { makeNetlist } from '../../src/solve/netlist.ts';
import type { Branch } from '../../src/solve/network.ts';
import { withOutputLoad } from '../../src/solve/output.ts';
import { randomHarness } from '../oracle/random-circuit.ts';
import { type Compact, makeCircuit } from './kits.ts';

/** Whether the jack shows another impedance when a part has three times its value. */
function counts(circuit: Circuit, part: string): boolean {
  const half = Object.fromEntries(circuit.kit.parts.map(({ name }) => [name, 0.5]));
  return circuit.states.some((state) => {
    const { branches, jack } = makeNetlist(circuit, state, half);
    if (!jack || jack.from === jack.to) return false;
    const shown = (factor: number) => {
      const scaled = branches.map((branch): Branch => {
        if (branch.of !== `${part}.body`) return branch;
        if (branch.kind === 'resistor') return { ...branch, ohms: branch.ohms * factor };
        return branch.kind === 'capacitor' ? { ...branch, farads: branch.farads * factor } : branch;
      });
      return impedanceOf(withOutputLoad({ branches: scaled, jack }, circuit.kit.outputLoad), jack, 1000);
    };
    const [one, other] = [shown(1), shown(3)];
    return Math.hypot(one.re - other.re, one.im - other.im) > 1e-11 * Math.hypot(one.re, one.im);
  });
}

it('components are idle that no value of theirs can tell', () => {
  let [idle, used] = [0, 0];
  for (const { compact } of fc.sample(randomHarness, { numRuns: 150, seed: 9 })) {
    const circuit = makeCircuit(compact);
    const components = circuit.kit.parts.filter(({ kind }) => kind === 'resistor' || kind === 'capacitor');
    const wanted = components.filter(({ name }) => !counts(circuit, name)).map(({ name }) => name);
    expect(idleComponents(circuit), JSON.stringify(compact)).toEqual(wanted);
    idle += wanted.length;
    used += components.length - wanted.length;
  }
  expect(Math.min(idle, used)).toBeGreaterThan(30);
});

it('what guards the strings is not idle, and what hangs on them by one end only neither', () => {
  const parts: Compact['parts'] = {
    a: { kind: 'single-coil' },
    strings: { kind: 'ground-point' },
    r: { kind: 'resistor', value: '220k' },
    out: { kind: 'jack' },
  };
  const sound = ['a.hot > out.tip', 'a.ground > out.sleeve'];
  const idle = (...joints: readonly string[]) =>
    idleComponents(makeCircuit({ parts, joints: [...sound, ...joints] }));
  expect(idle('strings.1 > r.1', 'r.2 > out.sleeve')).toEqual([]);
  expect(idle('strings.1 > out.sleeve', 'r.1 > strings.1')).toEqual(['r']);
  expect(idle('strings.1 > out.sleeve', 'r.1 > strings.1', 'r.2 > out.sleeve')).toEqual(['r']);
  expect(idle('strings.1 > out.sleeve', 'r.1 > strings.1', 'r.2 > out.tip')).toEqual([]);
});

describe('a switch that changes nothing', () => {
  const circuit = makeCircuit({
    parts: {
      a: { kind: 'single-coil' },
      b: { kind: 'humbucker' },
      pick: { kind: 'lever-3' },
      dead: { kind: 'lever-3' },
      once: { kind: 'lever-3' },
      far: { kind: 'resistor', value: '1M' },
      out: { kind: 'jack' },
    },
    joints: [
      'a.hot > pick.A1',
      'b.hot > pick.A3',
      'pick.A0 > out.tip',
      'a.ground > out.sleeve',
      'b.ground > out.sleeve',
      'dead.A0 > out.tip',
      // Counts only where the bridge sounds, and its lever is in its second position.
      'b.hot > once.A2',
      'once.A0 > far.1',
      'far.2 > out.sleeve',
    ],
  });
  const loads = solveLoads(circuit);
  it('is one whose positions all sound the same, wherever the others stand', () =>
    expect(idleSwitches(circuit, loads)).toEqual(['dead']));

  it.each<[string, (one: StateLoads) => StateLoads, readonly string[]]>([
    ['output', (one) => ({ ...one, output: -1 }), []],
    ['output by rounding', (one) => ({ ...one, output: one.output + 1e-9 }), ['dead']],
    ...(['dcLoad', 'signalLoad'] as const).map(
      (load): [string, (one: StateLoads) => StateLoads, readonly string[]] => [
        load,
        (one) => ({ ...one, pickups: one.pickups.map((own) => ({ ...own, [load]: 123 })) }),
        [],
      ],
    ),
    ['level', (one) => ({ ...one, pickups: one.pickups.map((own) => ({ ...own, level: -0.01 })) }), []],
    ['phase', (one) => ({ ...one, pickups: one.pickups.map((own) => ({ ...own, outOfPhase: ['x'] })) }), []],
    ['what sounds', (one) => ({ ...one, pickups: [] }), []],
  ])('does change something where one position has another %s', (_, change, idle) => {
    const at = loads.findIndex(({ state: { positions } }) => positions.dead === 2 && positions.pick === 1);
    expect(
      idleSwitches(
        circuit,
        loads.map((one, i) => (i === at ? change(one) : one)),
      ),
    ).toEqual(idle);
  });
});

it('a switch whose doing shows only with a control turned down is no idle one', () => {
  const parts: Compact['parts'] = {
    a: { kind: 'single-coil' },
    knob: { kind: 'push-pull', value: '500k' },
    bleed: { kind: 'capacitor', value: '1n' },
    out: { kind: 'jack' },
  };
  const joints = [
    'a.hot > knob.3',
    'a.ground > out.sleeve',
    'knob.1 > out.sleeve',
    'knob.2 > out.tip',
    // A treble bleed from lug 3 to lug 2, which the shaft takes in.
    'knob.A2 > knob.3',
    'knob.A0 > bleed.1',
  ];
  const found = (more: readonly string[]): readonly string[] => {
    const circuit = makeCircuit({ parts, joints: [...joints, ...more] });
    return idleSwitches(circuit, solveLoads(circuit));
  };
  expect(found(['bleed.2 > knob.2'])).toEqual([]);
  // The same capacitor with its far leg on the lug that it comes from does nothing.
  expect(found(['bleed.2 > knob.3'])).toEqual(['knob']);
});
