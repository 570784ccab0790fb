/** Every wire finds a way, whatever the circuit and the arrangement; the first places only, for the search starts there. */
import fc from 'fast-check';
import { it } from 'vitest';
import { kitFromValue } from '../../src/describe/read.ts';
import { findArrangement } from '../../src/files/layouts.ts';
import { prepare } from '../../src/pipeline.ts';
import { validKit } from './check.ts';
import { circuits } from './circuits.ts';

const SEED = 4242;
const ARRANGEMENTS = ['free-flow', 'bass-row', 'cavity-2x2', 'pickguard', 'plate-row', 'single-control'];

async function layIn(name: string, kit: ReturnType<typeof validKit>): Promise<void> {
  const arrangement = findArrangement(name);
  if (typeof arrangement === 'string') throw new Error(arrangement);
  await prepare(kit, arrangement, { effort: { steps: 0, seed: 1 } });
}

it('random circuits in every arrangement', { timeout: 120_000 }, () =>
  fc.assert(
    fc.asyncProperty(circuits, fc.constantFrom(...ARRANGEMENTS), async (description, name) => {
      await layIn(name, validKit(description));
    }),
    { seed: SEED, numRuns: 80, interruptAfterTimeLimit: 100_000, markInterruptAsFailure: true },
  ),
);

it('three ends at each of two lugs side by side: a treble bleed of two parts', () => {
  const { kit } = kitFromValue(
    {
      kit: 'bleed',
      title: 'SS, five-way lever, volume with a bleed',
      parts: {
        neck: { kind: 'single-coil' },
        bridge: { kind: 'single-coil' },
        selector: { kind: 'lever-5' },
        volume: { kind: 'pot', value: '100k', taper: 'linear' },
        output: { kind: 'jack' },
        'bleed-cap': { kind: 'capacitor', value: '180p' },
        'bleed-res': { kind: 'resistor', value: '1k', label: 'Wide label for one part' },
        strings: { kind: 'ground-point', label: 'String ground' },
      },
      joints: [
        { wire: 'strings.1 > volume.case' },
        { leg: 'bleed-res.2 > volume.2' },
        { leg: 'bleed-res.1 > volume.3' },
        { leg: 'bleed-cap.2 > volume.2' },
        { leg: 'bleed-cap.1 > volume.3' },
        { wire: 'output.sleeve > volume.case' },
        { wire: 'output.tip > volume.2' },
        { wire: 'selector.A2 > bridge.hot' },
        { wire: 'selector.A1 > bridge.hot' },
        { wire: 'selector.A3 > neck.hot' },
        { jumper: 'selector.A0 > selector.B0' },
        { wire: 'selector.B0 > volume.3' },
        { wire: 'bridge.ground > volume.case' },
        { wire: 'neck.ground > volume.case' },
        { wire: 'volume.1 > volume.case' },
      ],
    },
    'bleed.ts',
  );
  if (!kit) throw new Error('the kit does not read');
  return layIn('free-flow', kit);
});
