/** How pickups are said to be joined: chains in the order in which their first pickup is written. */
import { expect, it } from 'vitest';
import { solveLoads } from '../../src/analyse/index.ts';
import { joiningText } from '../../src/annotate/joining.ts';
import { makeCircuit } from '../analyse/kits.ts';

it('a chain comes where its first pickup comes', () => {
  const circuit = makeCircuit({
    parts: {
      a: { kind: 'single-coil' },
      b: { kind: 'single-coil' },
      c: { kind: 'single-coil' },
      volume: { kind: 'pot', value: '250k' },
      out: { kind: 'jack' },
    },
    joints: [
      'a.hot > volume.3',
      'a.ground > c.hot',
      'c.ground > out.sleeve',
      'b.hot > volume.3',
      'b.ground > out.sleeve',
      'volume.2 > out.tip',
      'volume.1 > out.sleeve',
    ],
  });
  const [loads] = solveLoads(circuit);
  expect(loads && joiningText(loads, (name) => name)).toMatch(/^a \+ c in series, in parallel with b/);
});
