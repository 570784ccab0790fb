/** Random harnesses with humbuckers of four leads: each lead on any of a few nets, or free. */
import fc from 'fast-check';
import type { RandomHarness } from './random-circuit.ts';

const coils = fc.record({
  kind: fc.constant('four-lead-humbucker'),
  resistance: fc.integer({ min: 6000, max: 16000 }),
  inductance: fc.integer({ min: 2, max: 9 }),
  coupling: fc.constantFrom(0.05, 0.15, 0.4, 0.9),
});
const LEADS = ['a-start', 'a-finish', 'b-finish', 'b-start'];

/** 0 holds the sleeve, 1 the tip, −1 leaves it free. */
const nets = fc.constantFrom(-1, 0, 0, 1, 1, 2, 2, 3, 4);

export const randomFourLead: fc.Arbitrary<RandomHarness> = fc
  .tuple(
    coils,
    fc.option(coils),
    fc.integer({ min: 1000, max: 500_000 }),
    fc.array(nets, { minLength: 15, maxLength: 15 }),
  )
  .map(([first, second, ohms, dealt]) => {
    const parts = {
      p0: first,
      ...(second ? { p1: second } : {}),
      r: { kind: 'resistor', value: ohms },
      c: { kind: 'capacitor', value: '10n' },
      volume: { kind: 'pot', value: '500k' },
      jack: { kind: 'jack' },
    };
    const leads = Object.keys(parts)
      .filter((name) => name.startsWith('p'))
      .flatMap((name) => LEADS.map((lead) => `${name}.${lead}`));
    const lugs = [...leads, 'r.1', 'r.2', 'c.1', 'c.2', 'volume.1', 'volume.2', 'volume.3'];
    const groups = new Map<number, string[]>([
      [0, ['jack.sleeve']],
      [1, ['jack.tip']],
    ]);
    lugs.forEach((lug, i) => {
      const net = dealt[i] ?? -1;
      if (net >= 0) groups.set(net, [...(groups.get(net) ?? []), lug]);
    });
    const joints = [...groups.values()].flatMap(([first, ...others]) =>
      others.map((other) => `${first} > ${other}`),
    );
    return { compact: { parts, joints }, rotations: { volume: 0.5 } };
  });
