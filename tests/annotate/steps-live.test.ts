/** The order of soldering and the live path. The order is common practice, no source; the paths are read off the circuits. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { liveJoints } from '../../src/annotate/live.ts';
import { stepsOf } from '../../src/annotate/steps.ts';
import { readKit } from '../../src/describe/read.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { makeCircuit } from '../analyse/kits.ts';
import { circuitKit } from '../circuits/circuits.ts';

const names = ['heron-ss', 'wren-hs', 'wren-sh', 'plover-sss', 'kestrel-hss', 'osprey-hsh'] as const;
function sampleCircuit(name: string) {
  const { kit } = readKit(readFileSync(`samples/${name}.yaml`, 'utf8'), name);
  if (!kit) throw new Error(`${name} does not read`);
  return buildCircuit(kit);
}
const text = ({ from, to }: { from: { part: string; lug: string }; to: { part: string; lug: string } }) =>
  `${from.part}.${from.lug} > ${to.part}.${to.lug}`;

describe('steps', () => {
  it.each(names)('%s: every joint in just one step, numbered without gaps', (name) => {
    const circuit = sampleCircuit(name);
    const steps = stepsOf(circuit);
    expect(steps.flatMap(({ joints }) => joints).sort((a, b) => a - b)).toEqual(
      circuit.joints.map((_, i) => i),
    );
    expect(steps.map(({ number }) => number)).toEqual(steps.map((_, i) => i + 1));
    for (const step of steps) expect(step.lines).toHaveLength(step.joints.length);
  });

  it('ground, jumpers and bends, components, switch and pots, output, pickups', () => {
    const circuit = sampleCircuit('kestrel-hss');
    const steps = stepsOf(circuit);
    expect(steps.map(({ title }) => title)).toEqual([
      'Ground',
      'Jumpers',
      'Components',
      'Switch and pots',
      'Output',
      'Pickups',
    ]);
    const stepOf = (joint: string) =>
      steps.find(({ joints }) => joints.some((i) => circuit.joints[i] && text(circuit.joints[i]) === joint))
        ?.number;
    expect(steps[2]?.lines).toContain(
      // The pad's leg at the switch goes in a tube.
      'Neck pad (470 kΩ, yellow violet yellow gold, sleeved): one leg to Selector A3; hook only, solder in step 6',
    );
    // IEC 60062 and EIA-198: 22 nF is 22 × 10³ pF, marked 223.
    expect(steps[2]?.lines.filter((line) => line.includes('nF'))).toEqual([
      expect.stringMatching(/^Tone cap \(22 nF, marked 223\): one leg to /),
      expect.stringMatching(/^Tone cap \(22 nF, marked 223\): one leg to /),
    ]);
    expect(stepOf('volume.case > tone-1.case')).toBe(1);
    // Bent with the other joints on its case, which is then heated once for all of them.
    expect(stepOf('volume.1 > volume.case')).toBe(1);
    expect(stepOf('pad-neck.1 > selector.A3')).toBe(3);
    expect(stepOf('selector.B0 > volume.3')).toBe(4);
    expect(stepOf('volume.2 > output.tip')).toBe(5);
    expect(stepOf('neck.ground > volume.case')).toBe(6);
  });

  it('a joint’s own step goes before the one worked out', () => {
    const { kit } = sampleCircuit('heron-ss');
    const joints = kit.joints.map((joint) =>
      text(joint) === 'volume.2 > output.tip' ? { ...joint, step: 9 } : joint,
    );
    const steps = stepsOf(buildCircuit({ ...kit, joints }));
    const last = steps[steps.length - 1];
    expect(last?.title).toBe('Further joints');
    expect(last?.lines).toEqual(['Wire (pink, 180 mm) from Volume lug 2 to Output tip']);
    expect(steps.map(({ title }) => title)).not.toContain('Output');
  });
});

describe('the live path', () => {
  const live = (name: (typeof names)[number], index: number): readonly string[] => {
    const circuit = sampleCircuit(name);
    const state = circuit.states[index];
    if (!state) throw new Error('no such state');
    const on = liveJoints(circuit, state);
    return circuit.joints.flatMap((joint, i) => (on.has(i) ? [text(joint)] : []));
  };

  it('HSS, position 1: bridge and its tone, not the other pickups, their pads or grounds', () => {
    const on = live('kestrel-hss', 0);
    for (const joint of [
      'bridge.hot > selector.A1',
      'selector.B0 > volume.3',
      'volume.2 > output.tip',
      'bridge.ground > volume.case',
      'selector.B2 > tone-2.1',
    ])
      expect(on).toContain(joint);
    for (const joint of [
      'neck.hot > selector.A3',
      'middle.hot > selector.A2',
      'pad-neck.1 > selector.A3',
      'neck.ground > volume.case',
      'selector.B3 > tone-1.1',
    ])
      expect(on).not.toContain(joint);
  });

  it('HSS, position 5: neck, its pad and its tone', () => {
    const on = live('kestrel-hss', 4);
    for (const joint of [
      'neck.hot > selector.A3',
      'pad-neck.1 > selector.A3',
      'selector.B3 > tone-1.1',
      'volume.2 > output.tip',
    ])
      expect(on).toContain(joint);
    for (const joint of ['bridge.hot > selector.A1', 'middle.hot > selector.A2'])
      expect(on).not.toContain(joint);
  });

  it.each(names)(
    '%s: every state has its pickups’ hot leads and the way out live, and no silent one’s',
    (name) => {
      const circuit = sampleCircuit(name);
      circuit.states.forEach((state, index) => {
        const on = live(name, index);
        expect(on.some((joint) => joint.includes('output.tip'))).toBe(true);
        for (const part of circuit.kit.parts.filter(
          ({ kind }) => kind === 'single-coil' || kind === 'humbucker',
        ))
          expect(
            on.some((joint) => joint.includes(`${part.name}.hot`)),
            `${part.name} in state ${index + 1}`,
          ).toBe(state.sounding.includes(part.name));
      });
    },
  );
});

it('a ring of parts that hangs on the signal by one lug carries none of it, and one that leads to ground does', () => {
  const parts = {
    bridge: { kind: 'single-coil' },
    volume: { kind: 'pot', value: '250k' },
    r: { kind: 'resistor', value: '10k' },
    c: { kind: 'capacitor', value: '1n' },
    output: { kind: 'jack' },
  };
  const ring = ['r.1 > volume.3', 'c.1 > volume.3', 'r.2 > c.2'];
  const joints = [
    'bridge.hot > volume.3',
    'bridge.ground > volume.case',
    'volume.1 > volume.case',
    'volume.2 > output.tip',
    'output.sleeve > volume.case',
    ...ring,
  ];
  const dead = makeCircuit({ parts, joints });
  const [state] = dead.states;
  if (!state) throw new Error('no state');
  const at = (joint: string): number => joints.indexOf(joint);
  expect(liveJoints(dead, state).has(at('r.2 > c.2'))).toBe(false);
  expect(liveJoints(dead, state).has(at('bridge.hot > volume.3'))).toBe(true);
  const led = makeCircuit({ parts, joints: [...joints, 'c.2 > volume.case'] });
  expect(liveJoints(led, led.states[0] ?? state).has(at('r.2 > c.2'))).toBe(true);
  const round = makeCircuit({ parts, joints: [...joints, 'c.2 > output.tip'] });
  expect(liveJoints(round, round.states[0] ?? state).has(at('r.2 > c.2'))).toBe(true);
});

describe('what is not on the way of a sounding pickup is not lit', () => {
  const shipped = async (
    name: string,
    setting: Readonly<Record<string, number>>,
  ): Promise<readonly string[]> => {
    const circuit = buildCircuit(await circuitKit(name));
    const state = circuit.states.find(({ positions }) =>
      Object.entries(setting).every(([part, position]) => positions[part] === position),
    );
    if (!state) throw new Error('no such state');
    const on = liveJoints(circuit, state);
    return circuit.joints.flatMap((joint, i) => (on.has(i) ? [text(joint)] : []));
  };

  // Read off the circuit's text: towards the neck, the bridge's wiper is at its ground end.
  it('a pickup that a blend has turned down, at either end', async () => {
    const [neck, bridge] = [
      await shipped('bass-ss-blend-1v1t', { blend: 3 }),
      await shipped('bass-ss-blend-1v1t', { blend: 2 }),
    ];
    const [hot, ground] = ['neck.hot > blend.a2', 'neck.ground > blend.case'];
    const [otherHot, otherGround] = ['bridge.hot > blend.b2', 'bridge.ground > blend.case'];
    expect(neck).toEqual(expect.arrayContaining([hot, ground, 'volume.2 > output.tip']));
    expect(neck).not.toContain(otherHot);
    expect(neck).not.toContain(otherGround);
    expect(bridge).toEqual(expect.arrayContaining([otherHot, otherGround]));
    expect(bridge).not.toContain(hot);
    expect(bridge).not.toContain(ground);
  });

  it('neither screens, nor the string ground, nor the ground that only a silent pickup is split to', async () => {
    const on = await shipped('hh-toggle-3-1v1t-split', { toggle: 3, tone: 2 });
    expect(on.filter((joint) => /shield|strings|frame|neck\./.test(joint))).toEqual([]);
    // The bridge's own return, and the jack's.
    expect(on.some((joint) => joint.startsWith('bridge.b-start'))).toBe(true);
    expect(on.some((joint) => joint.includes('output.sleeve'))).toBe(true);
    expect(on.some((joint) => joint.startsWith('tone.A'))).toBe(false);
  });

  it('a screen that is a pickup’s only ground is its return', async () => {
    expect(await shipped('h-1v1t-kill', { kill: 1 })).toContain('bridge.ground > volume.case');
    expect(await shipped('h-1v1t-kill', { kill: 2 })).toEqual([]);
  });
});
