/** Kits that nobody thought of, followed at the bench. What is expected of each is common practice, no source. */
import { describe, expect, it } from 'vitest';
import { jackTests, stepTests } from '../../src/annotate/step-tests.ts';
import { stepsOf } from '../../src/annotate/steps.ts';
import { type Circuit, lugIdOf } from '../../src/circuit/circuit.ts';
import { kitFromValue } from '../../src/describe/read.ts';
import { earlyBends } from '../../src/soldering/stages.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { describedNets, follow } from './bench.ts';

const single = { kind: 'single-coil', resistance: '6k' };
const volume = { kind: 'pot', value: '250k' };

function circuitOf(parts: object, joints: readonly object[]): Circuit {
  const { kit, problems } = kitFromValue({ kit: 'odd', title: 'Odd', parts, joints }, 'odd.ts');
  if (!kit) throw new Error(problems.map(({ code }) => code).join());
  return buildCircuit(kit);
}

/** The bench finds nothing wrong, and ends with the nets that are described. */
function followed(circuit: Circuit): ReturnType<typeof follow> {
  const done = follow(circuit);
  expect(done.faults).toEqual([]);
  expect(done.nets).toEqual(describedNets(circuit));
  return done;
}

/** Steps by the joints as they are written. */
const stepOf = (circuit: Circuit, joint: string): number =>
  stepsOf(circuit).find(({ joints }) =>
    joints.some((i) => {
      const found = circuit.joints[i];
      return found && `${lugIdOf(found.from)} > ${lugIdOf(found.to)}` === joint;
    }),
  )?.number ?? 0;

it('all joints on one case: it is heated once before the pickups and once with them', () => {
  const points = Array.from({ length: 9 }, (_, i) => `point-${i}`);
  const circuit = circuitOf(
    {
      bridge: single,
      volume,
      out: { kind: 'jack' },
      ...Object.fromEntries(points.map((name) => [name, { kind: 'ground-point' }])),
    },
    [
      ...points.map((name) => ({ wire: `${name}.1 > volume.case` })),
      { wire: 'bridge.ground > volume.case' },
      { bend: 'volume.1 > volume.case' },
      { wire: 'bridge.hot > volume.3' },
      { wire: 'volume.2 > out.tip' },
    ],
  );
  expect(followed(circuit).heats.get('volume.case')).toHaveLength(2);
});

it('no ground at all: steps without a ground step, and every reading at the jack open', () => {
  const circuit = circuitOf({ bridge: single, volume, out: { kind: 'jack' } }, [
    { wire: 'bridge.hot > volume.3' },
    { wire: 'volume.2 > out.tip' },
  ]);
  followed(circuit);
  expect(stepsOf(circuit).map(({ title }) => title)).toEqual(['Output', 'Pickups']);
  expect(jackTests(circuit).finished.map(({ volumeFull }) => volumeFull)).toEqual(['open']);
});

it('no jack: steps, and no test at one', () => {
  const circuit = circuitOf({ bridge: single, volume }, [
    { wire: 'bridge.hot > volume.3' },
    { wire: 'bridge.ground > volume.1' },
    { bend: 'volume.1 > volume.case' },
  ]);
  followed(circuit);
  expect(jackTests(circuit)).toEqual({ before: [], finished: [] });
  // The lug is closed when it is bent: with the lead, not before.
  expect(stepOf(circuit, 'volume.1 > volume.case')).toBe(stepOf(circuit, 'bridge.ground > volume.1'));
});

it('no joint: no step', () => expect(stepsOf(circuitOf({ bridge: single }, []))).toEqual([]));

it('no pickup: all of it is there before the pickups, as when it is finished', () => {
  const circuit = circuitOf({ volume: { ...volume, role: 'volume' }, out: { kind: 'jack' } }, [
    { wire: 'volume.2 > out.tip' },
    { wire: 'volume.1 > out.sleeve' },
  ]);
  followed(circuit);
  const { before, finished } = jackTests(circuit);
  expect(before).toEqual(finished);
  expect(before.map(({ volumeFull, volumeZero }) => [volumeFull, volumeZero])).toEqual([
    ['250 kΩ, from 200 kΩ to 300 kΩ', 'a few ohms or less'],
  ]);
});

it('a stereo jack: a test at each output', () => {
  const circuit = circuitOf({ neck: single, bridge: single, out: { kind: 'stereo-jack' } }, [
    { wire: 'neck.hot > out.tip' },
    { wire: 'bridge.hot > out.ring' },
    { wire: 'neck.ground > out.sleeve' },
    { wire: 'bridge.ground > out.sleeve' },
  ]);
  followed(circuit);
  expect(jackTests(circuit).finished.map(({ fromName }) => fromName)).toEqual(['Out tip', 'Out ring']);
  expect(stepTests(circuit).flatMap(({ tests }) => tests.map(({ fromName }) => fromName))).toEqual([
    'Out tip',
    'Out ring',
  ]);
});

it('pickups in series: one reading proves both', () => {
  const circuit = circuitOf({ neck: single, bridge: single, out: { kind: 'jack' } }, [
    { wire: 'neck.hot > out.tip' },
    { wire: 'neck.ground > bridge.hot' },
    { wire: 'bridge.ground > out.sleeve' },
  ]);
  followed(circuit);
  const [{ tests = [] } = {}, ...more] = stepTests(circuit);
  expect(more).toEqual([]);
  expect(tests.map(({ reading }) => [reading.nominal, reading.proves])).toEqual([[12_000, [0, 1, 2]]]);
});

it('a component between the lugs of two pickups is soldered with them, both its legs in one step', () => {
  const circuit = circuitOf(
    { neck: single, bridge: single, link: { kind: 'resistor', value: '10k' }, out: { kind: 'jack' } },
    [
      { leg: 'link.1 > neck.ground' },
      { leg: 'link.2 > bridge.hot' },
      { wire: 'neck.hot > out.tip' },
      { wire: 'bridge.ground > out.sleeve' },
    ],
  );
  followed(circuit);
  expect(stepsOf(circuit).map(({ title }) => title)).toEqual(['Pickups']);
});

it('a braid and a lead on one lug of the jack', () => {
  const circuit = circuitOf({ bridge: { kind: 'four-lead-humbucker' }, volume, out: { kind: 'jack' } }, [
    { braid: 'bridge.shield > volume.case' },
    { wire: 'bridge.b-start > volume.case' },
    { jumper: 'bridge.a-finish > bridge.b-finish' },
    { wire: 'bridge.a-start > volume.3' },
    { wire: 'volume.2 > out.tip' },
    { bend: 'volume.1 > volume.case' },
    { wire: 'out.sleeve > volume.case' },
  ]);
  followed(circuit);
  const pickups = stepsOf(circuit).at(-1);
  expect(pickups?.title).toBe('Pickups');
  expect(pickups?.details.map(({ kind }) => kind)).toContain('braid');
});

describe('steps of the description’s own', () => {
  const parts = {
    bridge: single,
    volume,
    cap: { kind: 'capacitor', value: '22n' },
    out: { kind: 'jack' },
  };
  it('out of order: the pickup first, and the output before the ground', () => {
    const circuit = circuitOf(parts, [
      { wire: 'bridge.hot > volume.3', step: 1 },
      { wire: 'bridge.ground > volume.case', step: 1 },
      { wire: 'volume.2 > out.tip', step: 2 },
      { bend: 'volume.1 > volume.case', step: 9 },
      { wire: 'out.sleeve > volume.case', step: 9 },
      { leg: 'cap.1 > volume.3', step: 12 },
      { leg: 'cap.2 > volume.case' },
    ]);
    const { placed } = followed(circuit);
    // The capacitor's other leg comes with the first, and lug 3 waits for it.
    expect(placed).toEqual([1, 1, 2, 3, 3, 4, 4]);
    expect(stepsOf(circuit)[0]?.details[0]?.to.soldered).toEqual({ later: 4 });
    // Nothing is soldered before the first pickup.
    expect(jackTests(circuit).before.map(({ volumeFull }) => volumeFull)).toEqual(['open']);
  });

  it('a lug that is bent too early is bent with the last joint that comes to it', () => {
    const circuit = circuitOf(parts, [
      { bend: 'volume.1 > volume.case', step: 1 },
      { wire: 'out.sleeve > volume.1', step: 7 },
      { wire: 'volume.2 > out.tip' },
      { wire: 'bridge.hot > volume.3' },
      { wire: 'bridge.ground > volume.case' },
      { leg: 'cap.1 > volume.3' },
      { leg: 'cap.2 > volume.case' },
    ]);
    followed(circuit);
    expect(stepOf(circuit, 'volume.1 > volume.case')).toBe(stepOf(circuit, 'out.sleeve > volume.1'));
    expect(earlyBends(circuit).map(({ asked, made, last }) => [asked, made, lugIdOf(last.from)])).toEqual([
      [1, 7, 'out.sleeve'],
    ]);
  });

  it.each([
    ['with the last joint', 7, 7],
    ['after it', 9, 7],
    ['as worked out', undefined, 7],
    ['in the step of a joint without one, ground', 1, undefined],
  ])('a lug that is bent %s is bent as asked', (_, bend, sleeve) => {
    const circuit = circuitOf(parts, [
      { bend: 'volume.1 > volume.case', ...(bend === undefined ? {} : { step: bend }) },
      { wire: 'out.sleeve > volume.1', ...(sleeve === undefined ? {} : { step: sleeve }) },
      { wire: 'volume.2 > out.tip' },
      { wire: 'bridge.hot > volume.3' },
      { wire: 'bridge.ground > volume.case' },
      { leg: 'cap.1 > volume.3' },
      { leg: 'cap.2 > volume.case' },
    ]);
    followed(circuit);
    expect(earlyBends(circuit)).toEqual([]);
  });

  it('of two bends each is told, with the joint that comes last', () => {
    const circuit = circuitOf({ ...parts, tone: volume }, [
      { bend: 'volume.1 > volume.case', step: 2 },
      { bend: 'tone.1 > tone.case', step: 3 },
      { wire: 'volume.1 > tone.1', step: 4 },
      { wire: 'bridge.ground > tone.1' },
      { wire: 'out.sleeve > volume.1' },
      { wire: 'volume.2 > out.tip' },
      { wire: 'bridge.hot > volume.3' },
      { leg: 'cap.1 > volume.3' },
      { leg: 'cap.2 > volume.case' },
    ]);
    followed(circuit);
    expect(earlyBends(circuit).map(({ asked, made, last }) => [asked, made, lugIdOf(last.from)])).toEqual([
      [2, 4, 'volume.1'],
      [3, 6, 'bridge.ground'],
    ]);
  });

  it('the two legs of a component in steps of their own: as they are written', () => {
    const circuit = circuitOf(parts, [
      { leg: 'cap.1 > volume.3', step: 2 },
      { leg: 'cap.2 > volume.case', step: 4 },
      { wire: 'volume.2 > out.tip' },
      { wire: 'out.sleeve > volume.case' },
      { bend: 'volume.1 > volume.case' },
      { wire: 'bridge.hot > volume.3' },
      { wire: 'bridge.ground > volume.case' },
    ]);
    followed(circuit);
    expect(stepOf(circuit, 'cap.1 > volume.3')).toBeLessThan(stepOf(circuit, 'cap.2 > volume.case'));
  });

  it('many joints that are written into one step stay in one', () => {
    const points = Array.from({ length: 9 }, (_, i) => `point-${i}`);
    const circuit = circuitOf(
      {
        ...parts,
        ...Object.fromEntries(points.map((name) => [name, { kind: 'ground-point' }])),
        lever: { kind: 'rotary', throws: 10 },
      },
      [
        ...points.map((name, i) => ({ wire: `${name}.1 > lever.A${i + 1}`, step: 20 })),
        { wire: 'bridge.hot > out.tip' },
        { wire: 'bridge.ground > out.sleeve' },
      ],
    );
    followed(circuit);
    expect(stepsOf(circuit).map(({ joints }) => joints.length)).toEqual([2, 9]);
  });
});

describe('what is said', () => {
  const circuit = circuitOf(
    {
      bridge: { ...single, label: 'Bridge' },
      pad: { kind: 'resistor', value: '470k', label: 'Pad' },
      lever: { kind: 'lever-3', label: 'Lever' },
      volume: { ...volume, label: 'Volume' },
      out: { kind: 'jack', label: 'Out' },
    },
    [
      { bend: 'volume.1 > volume.case' },
      { wire: 'out.sleeve > volume.case' },
      { leg: 'pad.1 > lever.A1' },
      { leg: 'pad.2 > volume.case' },
      { wire: 'lever.A0 > volume.3' },
      { wire: 'volume.2 > out.tip' },
      { wire: 'bridge.hot > lever.A1' },
      { wire: 'bridge.ground > volume.case' },
    ],
  );
  it('of a pad that waits for its pickup, and of a case that is heated again', () => {
    const steps = stepsOf(circuit);
    const [, components] = steps;
    expect(components?.lines[0]).toMatch(
      /^Pad \(470 kΩ, .*\): one leg to Lever A1; hook only, solder in step 5$/,
    );
    expect(components?.notes).toEqual([
      'Only hooked for now, and soldered together with the pickup’s lead: Pad.',
      'Volume case: joints of an earlier step are there; place the new ones beside them.',
    ]);
    expect(steps[4]?.lines[0]).toBe(
      'Lead from Bridge hot to Lever A1; at Lever A1 solder all that is hooked',
    );
    expect(stepsOf(circuit, 'de')[4]?.lines[0]).toMatch(
      /^Ader von .* nach .*; an .* alles Eingehakte mitlöten$/,
    );
  });
  it('of a lug that is soldered before the pickups for the test', () => {
    const early = circuitOf({ bridge: single, volume, out: { kind: 'jack', label: 'Out' } }, [
      { bend: 'volume.1 > volume.case' },
      { wire: 'out.sleeve > volume.case' },
      { wire: 'volume.2 > out.tip' },
      { wire: 'bridge.hot > volume.3' },
      { wire: 'bridge.ground > out.sleeve' },
    ]);
    expect(stepsOf(early)[0]?.notes).toEqual([
      'Out sleeve: soldered now so that the harness can be tested, and again in step 3 with the pickup’s lead.',
    ]);
  });
});
