/** Which pickups are told to be out of phase, from what was solved of each. */
import { describe, expect, it } from 'vitest';
import type { PickupLoads } from '../../src/analyse/index.ts';
import { exchangedAmong } from '../../src/annotate/joining.ts';

const one = (pickup: string, outOfPhase: readonly string[], reversed = false) =>
  ({ pickup, outOfPhase, reversed }) as unknown as PickupLoads;

describe('of pickups out of phase, those to blame', () => {
  it('are those whose leads are exchanged', () =>
    expect(
      exchangedAmong([
        one('neck', ['bridge']),
        one('middle', ['bridge']),
        one('bridge', ['neck', 'middle'], true),
      ]),
    ).toEqual(['bridge']));
  it('or, where all or none are, the one that is against most of the others', () => {
    for (const reversed of [true, false])
      expect(
        exchangedAmong([
          one('neck', ['middle'], reversed),
          one('middle', ['neck', 'bridge'], reversed),
          one('bridge', ['middle'], reversed),
        ]),
      ).toEqual(['middle']);
  });
  it('none where all are in phase', () =>
    expect(exchangedAmong([one('neck', []), one('bridge', [], true)])).toEqual([]));
});
