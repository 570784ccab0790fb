/** Which drawings a kit gets, by what was written on the command line. */
import { expect, it } from 'vitest';
import { stepsOf } from '../../src/annotate/steps.ts';
import { aspectsOf } from '../../src/publish/aspects.ts';
import { sampleCircuit } from '../analyse/kits.ts';

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
