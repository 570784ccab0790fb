/** Which drawings a kit gets, by what was written on the command line. */
import { describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/annotate/steps.ts';
import { aspectsOf } from '../../src/publish/aspects.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { makeCircuit, sampleCircuit } from '../analyse/kits.ts';
import { circuitKit } from '../circuits/circuits.ts';

const circuit = sampleCircuit('kestrel-hss');
const asked = (wanted: Parameters<typeof aspectsOf>[1]) => aspectsOf(circuit, wanted, undefined);

it('all steps are every step, one is that one, another is refused', () => {
  const numbers = stepsOf(circuit).map(({ number }) => number);
  expect(numbers.length).toBeGreaterThan(3);
  expect(asked({ step: 'all' })).toEqual(numbers.map((step) => ({ step })));
  expect(asked({ step: '2', theme: 'print' })).toEqual([{ step: 2, theme: 'print' }]);
  expect(asked({ step: '99' })).toEqual({ wrong: [`no step 99; allowed: 1 to ${numbers.length}, or all`] });
});

it('all positions are every position, one is that one, and nothing asked is the usual drawing', () => {
  expect(asked({ position: 'all' })).toEqual([0, 1, 2, 3, 4].map((state) => ({ state })));
  expect(asked({ position: 'selector=2' })).toEqual([{ state: 1 }]);
  expect(asked({ view: 'component-side' })).toEqual([{ view: 'component-side' }]);
});

describe('with two switches', () => {
  const two = makeCircuit({
    parts: {
      neck: { kind: 'single-coil' },
      bridge: { kind: 'single-coil' },
      selector: { kind: 'lever-3' },
      volume: { kind: 'push-pull', value: '250k' },
      output: { kind: 'jack' },
    },
    joints: [
      'neck.hot > selector.A1',
      'bridge.hot > selector.A3',
      'selector.A0 > volume.3',
      'volume.2 > output.tip',
      'neck.ground > output.sleeve',
      'bridge.ground > output.sleeve',
    ],
  });
  const of = (position: string) => aspectsOf(two, { position }, undefined);
  const settings = (position: string) => {
    const found = of(position);
    if ('wrong' in found) throw new Error(found.wrong.join());
    return found.map(({ state = -1 }) => two.states[state]?.positions ?? {});
  };
  it('a setting of one gives every state it has with the other, of both just one', () => {
    expect(two.states).toHaveLength(6);
    expect(settings('selector=2').map(({ selector }) => selector)).toEqual([2, 2]);
    expect(settings('volume=2')).toHaveLength(3);
    expect(settings('selector=3,volume=1')).toEqual([{ selector: 3, volume: 1 }]);
    expect(settings(' volume = 2 , selector = 1 ')).toEqual([{ selector: 1, volume: 2 }]);
    expect(settings('all')).toEqual(two.states.map((state) => state.positions));
  });
  it('a position may be written by its name, or by the word on the face, as in a kit’s intended', () => {
    expect(settings('volume=pulled out')).toEqual(settings('volume=2'));
    expect(settings('volume=in,selector=3')).toEqual([{ selector: 3, volume: 1 }]);
    // Named twice: either.
    expect(settings('selector=1,selector=3,volume=out')).toEqual([
      { selector: 1, volume: 2 },
      { selector: 3, volume: 2 },
    ]);
  });
  const LEVER = 'selector has no position';
  const NONE = 'no switch is called';
  it.each([
    ['selector=4', [`1: ${LEVER} “4”; allowed: 1, 2, 3`]],
    ['selector=0', [`1: ${LEVER} “0”; allowed: 1, 2, 3`]],
    ['selector=out', [`1: ${LEVER} “out”; allowed: 1, 2, 3`]],
    [
      'volume=pulled ou',
      [
        '1: volume has no position “pulled ou”; allowed: 1 (pushed in, in), 2 (pulled out, out). Did you mean pulled out?',
      ],
    ],
    ['selector', ['1: the position of selector is missing; write such as selector=1']],
    ['volume=', ['1: the position of volume is missing; write such as volume=in']],
    [
      'selector=1, selecter=1',
      [`13: ${NONE} “selecter”; allowed: selector, volume, or all. Did you mean selector?`],
    ],
    ['=1', [`1: ${NONE} “”; allowed: selector, volume, or all`]],
    ['', ['1: a switch and its position are missing; write such as selector=1, or all']],
    [
      'selector=9,volume=3',
      [
        `1: ${LEVER} “9”; allowed: 1, 2, 3`,
        '12: volume has no position “3”; allowed: 1 (pushed in, in), 2 (pulled out, out)',
      ],
    ],
  ])('%j is refused with all that is wrong, its column and what is allowed', (position, wrong) =>
    expect(of(position)).toEqual({ wrong: wrong.map((words) => `--position, column ${words}`) }),
  );
});

it('a blend goes by where it stands', async () => {
  const blend = buildCircuit(await circuitKit('bass-ss-blend-1v1t'));
  const of = (position: string) => aspectsOf(blend, { position }, undefined);
  expect(of('blend=towards neck')).toEqual(of('blend=3'));
  expect(of('blend=towards neck')).toEqual([{ state: 2 }]);
  expect(of('blend=neck')).toEqual({
    wrong: [
      '--position, column 1: blend has no position “neck”; allowed: 1 (at centre), 2 (towards bridge), 3 (towards neck)',
    ],
  });
});

it('a kit without a switch has no position, whatever is asked', () => {
  const plain = makeCircuit({
    parts: { neck: { kind: 'single-coil' }, output: { kind: 'jack' } },
    joints: ['neck.hot > output.tip', 'neck.ground > output.sleeve'],
  });
  expect(aspectsOf(plain, { position: 'selector=1' }, undefined)).toEqual({
    wrong: ['no position selector=1: the kit has no switch'],
  });
  expect(aspectsOf(plain, { position: 'all' }, undefined)).toEqual([{ state: 0 }]);
});

it('every drawing has the view, the theme and the page that were asked for, and no more', () => {
  const page = { width: 210, height: 297, margin: 8 };
  const wanted = { view: 'component-side', theme: 'dark' } as const;
  expect(aspectsOf(circuit, {}, undefined)).toEqual([{}]);
  expect(aspectsOf(circuit, wanted, page)).toEqual([{ ...wanted, page }]);
  expect(aspectsOf(circuit, { ...wanted, position: 'selector=1' }, page)).toEqual([
    { ...wanted, page, state: 0 },
  ]);
  expect(aspectsOf(circuit, { ...wanted, step: '1' }, page)).toEqual([{ ...wanted, page, step: 1 }]);
  for (const step of ['0', 'first', '1.5', ''])
    expect(aspectsOf(circuit, { step }, undefined), step).toEqual({
      wrong: [expect.stringMatching(/^no step .*; allowed: 1 to \d, or all$/)],
    });
});
