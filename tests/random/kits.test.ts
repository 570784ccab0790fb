/** Random kits: nearly all are without error, and solved as ngspice solves them; half of them drawn. */
import { expect, it } from 'vitest';
import { buildCircuit } from '../../src/solve/build.ts';
import { randomKit } from './kits.ts';
import { solvingErrors } from './proof.ts';
import { drawn, kits } from './some.ts';

it('nearly all are kits without error, the same for the same seed', () => {
  expect(kits.length).toBeGreaterThan(65);
  expect(randomKit(7)).toEqual(randomKit(7));
});

drawn(0);

it('sounding, level, phase, loads and readings are those of ngspice', async () => {
  expect(await solvingErrors(kits.map(({ kit }) => buildCircuit(kit)))).toEqual([]);
}, 300_000);
