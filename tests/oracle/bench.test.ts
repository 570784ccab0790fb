/** The bench's targets. Where no `ngspice` is installed its row is left out; `bench.ts` prints all figures. */
import { describe, expect, it } from 'vitest';
import { sweepFigures } from './bench.ts';

describe('a sweep of 400 frequencies over five states of the HSS kit', () => {
  it('is at least 20 times faster than ngspice as WebAssembly and 5 times faster than as a process', {
    timeout: 60_000,
    retry: 2,
  }, async () => {
    const { ours, wasm, process } = await sweepFigures();
    expect(wasm / ours).toBeGreaterThan(20);
    if (process !== undefined) expect(process / ours).toBeGreaterThan(5);
  });
});
