/** Where a pad that is advised is grounded: on the volume pot's case, where there is most room. Common practice, no source. */
import { expect, it } from 'vitest';
import { groundLug } from '../../src/analyse/kit-changes.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { makeKit } from './kits.ts';

type Joints = Parameters<typeof makeKit>[0]['joints'];
type Parts = Parameters<typeof makeKit>[0]['parts'];
const ground = (volume: Parts, joints: Joints) =>
  groundLug(
    buildCircuit(
      makeKit({
        parts: {
          pickup: { kind: 'single-coil' },
          toggle: { kind: 'toggle-3' },
          ...volume,
          output: { kind: 'jack' },
        },
        joints: [
          { wire: 'pickup.hot > toggle.common' },
          { wire: 'pickup.ground > output.sleeve' },
          { wire: 'toggle.frame > output.sleeve' },
          ...joints,
        ],
      }),
    ),
  );

it('is a pot’s case before a switch’s frame, whichever the kit names first; a frame before the jack', () => {
  const volume = { volume: { kind: 'pot', value: '250k' } };
  expect(ground(volume, [{ wire: 'volume.case > output.sleeve' }, { wire: 'toggle.1 > volume.3' }])).toBe(
    'volume.case',
  );
  // The case is not grounded.
  expect(ground(volume, [{ wire: 'toggle.1 > volume.3' }])).toBe('toggle.frame');
  expect(ground({}, [{ wire: 'toggle.1 > output.tip' }])).toBe('toggle.frame');
});
