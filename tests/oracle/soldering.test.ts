/**
 * The readings after each step against ngspice: of what is soldered by then, with the values as written and with all of them at the ends
 * of their tolerances; and of the harness without a joint that a reading is said to prove.
 */
import { expect, it } from 'vitest';
import { type StepReading, stepReadings } from '../../src/analyse/index.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { loadKit } from '../../src/files/load.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { atEnd } from '../analyse/kits.ts';
import { kits } from '../random/some.ts';
import { type Check, solderedAfter } from './compare.ts';
import { check, failures, withValues } from './readings.ts';

const FILES = [
  ...['heron-ss', 'kestrel-hss', 'osprey-hsh', 'plover-sss', 'wren-hs', 'wren-sh'].map(
    (name) => `samples/${name}.yaml`,
  ),
  ...[
    'bass-ss-2v2t-stereo',
    'bass-ss-blend-1v1t',
    'bass-ss-stacked-2v2t',
    'h-1v1t-kill',
    'h-1v1t-partial-split',
    'h-1v1t-rotary-caps',
    'hh-toggle-3-1v1t-split',
    'hh-toggle-3-2v2t-coupled',
    'hss-lever-5-4p-1v1t-auto-split',
    'ss-lever-3-1v1t-bleed-series',
    'ss-lever-3-1v1t-no-load-tone',
    'ss-lever-4-1v1t-series',
  ].map((name) => `samples/circuits/${name}.yaml`),
];

/** Relative distance that ngspice finds between a reading with a joint missing and the limits of the right one; 0 within them. */
const beyond = (ohms: number, { low, high }: StepReading): number =>
  ohms < low ? low / Math.max(ohms, 1e-9) - 1 : ohms > high ? ohms / high - 1 : 0;

/** Every reading of a kit that ngspice finds another, and how many there are. */
async function compare(
  kit: Circuit['kit'],
): Promise<{ readonly wrongs: readonly string[]; readonly count: number }> {
  const circuit = buildCircuit(kit);
  const [low, high] = [atEnd(kit, -1), atEnd(kit, 1)];
  const checks: Check[] = [];
  const without: Check[] = [];
  const differs: boolean[] = [];
  for (const [k, readings] of stepReadings(circuit).entries()) {
    const harness = solderedAfter(circuit, k + 1);
    for (const reading of readings) {
      const what = `after step ${k + 1}`;
      checks.push(
        check(what, circuit, harness, reading, reading.nominal),
        check(`${what}, smallest`, circuit, withValues(harness, low), reading, reading.low),
        check(`${what}, largest`, circuit, withValues(harness, high), reading, reading.high),
        check(`before step ${k + 1}`, circuit, solderedAfter(circuit, k), reading, reading.before),
      );
      for (const i of reading.proves) {
        const joints = harness.kit.joints.filter((joint) => joint !== circuit.joints[i]);
        expect(joints).toHaveLength(harness.kit.joints.length - 1);
        const less = { ...harness, joints, kit: { ...harness.kit, joints } };
        const asked = check(`without joint ${i}`, circuit, less, reading, 0);
        // Not what it should be but what it is: whether it lies beyond the limits, or is open.
        without.push({
          ...asked,
          error: (_, result) => {
            const z = result[0]?.re ?? 0;
            const ohms = asked.job.from === asked.job.to ? 0 : z > 1e12 ? Infinity : z;
            differs.push(beyond(ohms, reading) > 0);
            return 0;
          },
        });
      }
    }
  }
  const wrongs = await failures(checks);
  await failures(without);
  expect(differs).toHaveLength(without.length);
  expect(differs.every((is) => is)).toBe(true);
  return { wrongs, count: checks.length };
}

it.each(FILES)(
  '%s: every reading after a step, its smallest and its largest, and what it proves',
  async (file) => {
    const { kit } = await loadKit(file);
    if (!kit) throw new Error(`${file} is not a kit`);
    const { wrongs, count } = await compare(kit);
    expect(wrongs).toEqual([]);
    expect(count).toBeGreaterThan(8);
  },
  120_000,
);

it('random kits as well', async () => {
  let count = 0;
  for (const { kit } of kits.slice(0, 30)) {
    const found = await compare(kit);
    expect(found.wrongs, kit.id).toEqual([]);
    count += found.count;
  }
  expect(count).toBeGreaterThan(400);
}, 240_000);
