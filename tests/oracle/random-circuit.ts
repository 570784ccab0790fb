/** Random harnesses: any parts, any lugs together, so that floating pickups and shorted states turn up by themselves. */
import fc from 'fast-check';
import type { Compact } from '../analyse/kits.ts';

export interface RandomHarness {
  readonly compact: Compact;
  readonly rotations: Readonly<Record<string, number>>;
}

const logUniform = (low: number, high: number): fc.Arbitrary<number> =>
  fc
    .double({ min: Math.log(low), max: Math.log(high), noNaN: true })
    .map((x) => Number(Math.exp(x).toPrecision(4)));

const pickup = fc.record({
  kind: fc.constantFrom('single-coil', 'humbucker'),
  resistance: logUniform(3e3, 15e3),
  inductance: logUniform(1, 10),
  capacitance: logUniform(40e-12, 300e-12),
});
const lossy = fc
  .record({ pickup, loss: logUniform(2e5, 2e6) })
  .map(({ pickup, loss }) => ({ ...pickup, 'core-loss': loss }));
const pot = fc.record({
  kind: fc.constant('pot'),
  value: logUniform(100e3, 1e6),
  taper: fc.constantFrom('linear', 'log', 'reverse-log'),
});
const resistor = fc.record({ kind: fc.constant('resistor'), value: logUniform(1e3, 2e6) });
const capacitor = fc.record({ kind: fc.constant('capacitor'), value: logUniform(100e-12, 100e-9) });
const lever = fc.record({ kind: fc.constantFrom('lever-3', 'lever-5') });

const LUGS: Readonly<Record<string, readonly string[]>> = {
  'single-coil': ['hot', 'ground'],
  humbucker: ['hot', 'ground'],
  pot: ['1', '2', '3'],
  resistor: ['1', '2'],
  capacitor: ['1', '2'],
  'lever-3': ['A0', 'A1', 'A2', 'A3', 'B0', 'B1', 'B2', 'B3'],
  'lever-5': ['A0', 'A1', 'A2', 'A3', 'B0', 'B1', 'B2', 'B3'],
  jack: ['tip', 'sleeve'],
};

const parts = fc
  .tuple(
    fc.array(fc.oneof(pickup, lossy), { minLength: 1, maxLength: 3 }),
    fc.array(pot, { maxLength: 3 }),
    fc.array(resistor, { maxLength: 3 }),
    fc.array(capacitor, { maxLength: 2 }),
    fc.array(lever, { maxLength: 1 }),
  )
  .map((groups) => groups.flat());

/** Nets a lug may fall on: 0 holds the sleeve, 1 the tip; −1 leaves it free. Pickups lean towards being played. */
function netsFor(lug: string): readonly number[] {
  if (lug.endsWith('.hot')) return [-1, 1, 1, 2, 2, 3, 3, 4, 4, 0];
  if (lug.endsWith('.ground')) return [-1, 0, 0, 0, 0, 0, 2, 3, 4, 1];
  return [-1, 0, 1, 1, 2, 2, 3, 4, 5, 6];
}

/** Every lug is dealt to one of a few nets or left free; lugs of one net are joined in a chain. */
export const randomHarness: fc.Arbitrary<RandomHarness> = parts.chain((list) => {
  const named = Object.fromEntries([...list, { kind: 'jack' }].map((part, i) => [`p${i}`, part] as const));
  const lugs = Object.entries(named).flatMap(([name, part]) =>
    (LUGS[part.kind] ?? []).map((lug) => `${name}.${lug}`),
  );
  const pots = Object.keys(named).filter((name) => named[name]?.kind === 'pot');
  const deal = fc.tuple(...lugs.map((lug) => fc.constantFrom(...netsFor(lug))));
  const turns = fc.array(fc.constantFrom(0, 0.2, 0.5, 0.7, 1), {
    minLength: pots.length,
    maxLength: pots.length,
  });
  return fc.tuple(deal, turns).map(([nets, rotations]) => ({
    compact: { parts: named, joints: chains(lugs, nets) },
    rotations: Object.fromEntries(pots.map((name, i) => [name, rotations[i] ?? 1])),
  }));
});

function chains(lugs: readonly string[], nets: readonly number[]): readonly string[] {
  const last = new Map<number, string>();
  return lugs.flatMap((lug, i) => {
    const net = lug.endsWith('.sleeve') ? 0 : lug.endsWith('.tip') ? 1 : (nets[i] ?? -1);
    const before = last.get(net);
    if (net >= 0) last.set(net, lug);
    return net >= 0 && before !== undefined ? [`${before} > ${lug}`] : [];
  });
}
