/** Room on lugs: three joints, and a lug bent to its own case takes none of it. Common practice, no source. */
import { expect, it } from 'vitest';
import { kitFromValue } from '../../src/describe/read.ts';
import { findErrors } from '../../src/solve/errors.ts';

const parts = {
  neck: { kind: 'single-coil' },
  volume: { kind: 'pot', value: '250k' },
  output: { kind: 'jack' },
  a: { kind: 'ground-point' },
  b: { kind: 'ground-point' },
  c: { kind: 'ground-point' },
  d: { kind: 'ground-point' },
};
const crowded = (...joints: readonly unknown[]): readonly string[] => {
  const { kit } = kitFromValue(
    {
      kit: 'a',
      title: 'a',
      parts,
      joints: [
        'neck.hot > volume.3',
        'neck.ground > output.sleeve',
        'volume.2 > output.tip',
        'volume.case > output.sleeve',
        'd.1 > volume.case',
        ...joints,
      ],
    },
    'a.ts',
  );
  if (!kit) throw new Error('no kit');
  return findErrors(kit)
    .filter(({ code }) => code === 'crowded-lug')
    .map(({ detail }) => (detail as { lug: string }).lug);
};
const bend = { bend: 'volume.1 > volume.case' };
const three = ['a.1 > volume.1', 'b.1 > volume.1', 'c.1 > volume.1'];

it('three wires and the bend fit on a lug', () => expect(crowded(bend, ...three)).toEqual([]));
it('a fourth wire does not', () => {
  expect(crowded(bend, ...three, 'd.1 > volume.1')).toEqual(['volume.1']);
  expect(crowded(...three, 'd.1 > volume.1', 'volume.1 > volume.case')).toEqual(['volume.1']);
});
