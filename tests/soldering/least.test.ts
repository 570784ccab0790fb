/**
 * As few heatings as can be: of small kits every way to divide the stages into steps and every choice of when to heat each lug is tried.
 * The order of the stages is common practice, no source.
 */
import { expect, it } from 'vitest';
import { type Circuit, lugIdOf } from '../../src/circuit/circuit.ts';
import { kitFromValue } from '../../src/describe/read.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { directResistance } from '../../src/solve/measure.ts';
import { makeNetlist } from '../../src/solve/netlist.ts';
import { follow, isLead, isSurface, needsNoSolder } from './bench.ts';

const single = { kind: 'single-coil' };
const volume = { kind: 'pot', value: '250k' };
const jack = { kind: 'jack' };
const point = { kind: 'ground-point' };
const pad = { kind: 'resistor', value: '470k' };
const cap = { kind: 'capacitor', value: '22n' };
const lever = { kind: 'lever-3' };

/** Each joint with its stage, worked out by hand: 1 ground, 2 jumpers, 3 components, 4 switch and pots, 5 output, 6 pickups. */
const kits: Readonly<
  Record<string, { readonly parts: object; readonly joints: readonly [object, number][] }>
> = {
  'a volume control': {
    parts: { bridge: single, volume, out: jack, strings: point },
    joints: [
      [{ bend: 'volume.1 > volume.case' }, 1],
      [{ wire: 'strings.1 > volume.case' }, 1],
      [{ wire: 'out.sleeve > volume.case' }, 1],
      [{ wire: 'volume.2 > out.tip' }, 5],
      [{ wire: 'bridge.hot > volume.3' }, 6],
      [{ wire: 'bridge.ground > volume.case' }, 6],
    ],
  },
  'a pickup grounded at the jack, without whose sleeve nothing reads': {
    parts: { bridge: single, volume, out: jack },
    joints: [
      [{ bend: 'volume.1 > volume.case' }, 1],
      [{ wire: 'out.sleeve > volume.case' }, 1],
      [{ wire: 'volume.2 > out.tip' }, 5],
      [{ wire: 'bridge.hot > volume.3' }, 6],
      [{ wire: 'bridge.ground > out.sleeve' }, 6],
    ],
  },
  'a pickup on the tip': {
    parts: { bridge: single, volume, out: jack },
    joints: [
      [{ wire: 'volume.1 > out.sleeve' }, 1],
      [{ wire: 'volume.3 > out.tip' }, 5],
      [{ wire: 'volume.2 > out.tip' }, 5],
      [{ wire: 'bridge.hot > out.tip' }, 6],
      [{ wire: 'bridge.ground > out.sleeve' }, 6],
    ],
  },
  'a pad at the lug of its pickup': {
    parts: { bridge: single, neck: single, lever, pad, out: jack },
    joints: [
      [{ leg: 'pad.1 > lever.A1' }, 3],
      [{ leg: 'pad.2 > out.sleeve' }, 3],
      [{ wire: 'lever.A0 > out.tip' }, 5],
      [{ wire: 'bridge.hot > lever.A1' }, 6],
      [{ wire: 'neck.hot > lever.A3' }, 6],
      [{ wire: 'bridge.ground > out.sleeve' }, 6],
      [{ wire: 'neck.ground > out.sleeve' }, 6],
    ],
  },
  'jumpers, a tone control, and a bent lug that ground comes to': {
    parts: { bridge: single, tone: volume, lever, cap, out: jack },
    joints: [
      [{ bend: 'tone.1 > tone.case' }, 3],
      [{ leg: 'cap.1 > tone.1' }, 3],
      [{ leg: 'cap.2 > lever.B0' }, 3],
      [{ jumper: 'lever.A1 > lever.A2' }, 2],
      [{ wire: 'tone.case > out.sleeve' }, 1],
      [{ wire: 'lever.A0 > out.tip' }, 5],
      [{ wire: 'bridge.hot > lever.A1' }, 6],
      [{ wire: 'bridge.ground > tone.case' }, 6],
    ],
  },
};

/** Every way to divide a list into one group or two, each group with something in it. */
function divisions(list: readonly number[]): readonly (readonly (readonly number[])[])[] {
  const found: (readonly (readonly number[])[])[] = [[list]];
  for (let mask = 1; mask < 2 ** list.length - 1; mask++) {
    const [one, other] = [0, 1].map((side) => list.filter((_, k) => ((mask >> k) & 1) === side));
    found.push([one ?? [], other ?? []]);
  }
  return found;
}

/** Lugs that need solder for a joint: not where a leg or a pickup’s lead begins, nor the lug that is bent, nor a ground point. */
function solderedLugs(circuit: Circuit, i: number): readonly string[] {
  const joint = circuit.joints[i];
  if (!joint) return [];
  const ends = [joint.from, joint.to].map(lugIdOf);
  return joint.kind === 'bend' || joint.kind === 'leg'
    ? ends.slice(1)
    : ends.filter((lug) => !needsNoSolder(circuit, joint, lug));
}

/** The least number of heatings of all lugs together, for steps as they are given; infinite where they break a rule. */
function leastFor(circuit: Circuit, steps: readonly (readonly number[])[]): number {
  const placed = circuit.joints.map((_, i) => steps.findIndex((step) => step.includes(i)));
  for (const [i, joint] of circuit.joints.entries()) {
    const others = circuit.joints.flatMap((other, k) => (k === i ? [] : [{ other, at: placed[k] ?? 0 }]));
    // A bent lug is closed.
    if (
      joint.kind === 'bend' &&
      others.some(
        ({ other, at }) =>
          at > (placed[i] ?? 0) && [other.from, other.to].some((end) => lugIdOf(end) === lugIdOf(joint.from)),
      )
    )
      return Infinity;
    if (
      joint.kind === 'leg' &&
      others.some(
        ({ other, at }) => other.kind === 'leg' && other.from.part === joint.from.part && at !== placed[i],
      )
    )
      return Infinity;
  }
  const lugs = new Map<string, Set<number>>();
  for (const i of circuit.joints.keys())
    for (const lug of solderedLugs(circuit, i))
      lugs.set(lug, (lugs.get(lug) ?? new Set()).add(placed[i] ?? 0));
  const first = Math.min(
    ...circuit.joints.flatMap((joint, i) => (isLead(circuit, joint) ? [placed[i] ?? 0] : [])),
  );
  const shared = [...lugs].flatMap(([lug, at]) =>
    !isSurface(circuit, lug) && Math.min(...at) < first && Math.max(...at) >= first ? [lug] : [],
  );
  const finds = (early: readonly string[]): readonly boolean[] => {
    const joints = circuit.joints.filter(
      (_, i) =>
        (placed[i] ?? 0) < first &&
        solderedLugs(circuit, i).every((lug) => !shared.includes(lug) || early.includes(lug)),
    );
    const kit = { ...circuit.kit, joints };
    return circuit.states.flatMap((state) => {
      const { branches, outputs } = makeNetlist({ ...circuit, kit, joints }, state);
      return outputs.map((port) => Number.isFinite(directResistance(branches, port)));
    });
  };
  const wanted = finds(shared);
  let twice = Infinity;
  for (let mask = 0; mask < 2 ** shared.length; mask++) {
    const early = shared.filter((_, k) => ((mask >> k) & 1) === 1);
    if (early.length < twice && finds(early).every((is, k) => is === wanted[k])) twice = early.length;
  }
  const once = [...lugs].map(([lug, at]) => (isSurface(circuit, lug) ? at.size : 1));
  return once.reduce((sum, one) => sum + one, twice);
}

it.each(Object.entries(kits))('%s', (_, { parts, joints }) => {
  const { kit, problems } = kitFromValue(
    { kit: 'small', title: 'Small', parts, joints: joints.map(([joint]) => joint) },
    'small.ts',
  );
  expect(problems).toEqual([]);
  if (!kit) throw new Error('no kit');
  const circuit = buildCircuit(kit);
  const stages = [1, 2, 3, 4, 5, 6]
    .map((stage) => joints.flatMap(([, one], i) => (one === stage ? [i] : [])))
    .filter(({ length }) => length > 0);
  let ways: readonly (readonly (readonly number[])[])[] = [[]];
  for (const stage of stages)
    ways = ways.flatMap((way) => divisions(stage).map((division) => [...way, ...division]));
  expect(ways.length).toBeGreaterThan(5);
  const least = Math.min(...ways.map((way) => leastFor(circuit, way)));
  const { faults, heats } = follow(circuit);
  expect(faults).toEqual([]);
  expect([...heats.values()].flat()).toHaveLength(least);
});

it('the sleeve that everything hangs on is soldered before the pickups, and again with one', () => {
  const { parts, joints } = kits['a pickup grounded at the jack, without whose sleeve nothing reads'] ?? {};
  const { kit } = kitFromValue(
    { kit: 'small', title: 'Small', parts, joints: joints?.map(([joint]) => joint) },
    'small.ts',
  );
  if (!kit) throw new Error('no kit');
  const { heats } = follow(buildCircuit(kit));
  expect(heats.get('out.sleeve')).toEqual([1, 3]);
  expect(heats.get('volume.3')).toEqual([3]);
});
