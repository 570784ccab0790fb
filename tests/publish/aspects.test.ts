/** Which drawings a kit gets, by what was written on the command line. */
import { describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/annotate/steps.ts';
import { aspectsOf } from '../../src/publish/aspects.ts';
import { makeCircuit, sampleCircuit } from '../analyse/kits.ts';

const circuit = sampleCircuit('kestrel-hss');
const asked = (wanted: Parameters<typeof aspectsOf>[1]) => aspectsOf(circuit, wanted, undefined);

it('all steps are every step, one is that one, another is refused', () => {
  const numbers = stepsOf(circuit).map(({ number }) => number);
  expect(numbers.length).toBeGreaterThan(3);
  expect(asked({ step: 'all' })).toEqual(numbers.map((step) => ({ step })));
  expect(asked({ step: '2', theme: 'print' })).toEqual([{ step: 2, theme: 'print' }]);
  expect(asked({ step: '99' })).toBe(`no step 99; allowed: 1 to ${numbers.length}, or all`);
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
    if (typeof found === 'string') throw new Error(found);
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
  it.each([
    'selector=4',
    'selector=0',
    'volume=3',
    'selector',
    'selector=',
    'tone=1',
    'selector=1,tone=1',
    '',
  ])('%j is none, and those there are are named', (position) =>
    expect(of(position)).toBe(
      `no position ${position}; allowed: selector=1 to selector=3, volume=1 to volume=2, or all`,
    ),
  );
});

it('a kit without a switch has no position, whatever is asked', () => {
  const plain = makeCircuit({
    parts: { neck: { kind: 'single-coil' }, output: { kind: 'jack' } },
    joints: ['neck.hot > output.tip', 'neck.ground > output.sleeve'],
  });
  expect(aspectsOf(plain, { position: 'selector=1' }, undefined)).toBe(
    'no position selector=1: the kit has no switch',
  );
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
    expect(aspectsOf(circuit, { step }, undefined), step).toMatch(/^no step .*; allowed: 1 to \d, or all$/);
});
