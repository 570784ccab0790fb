/**
 * The readings of the test cards at the jack against ngspice: before the pickups, with the volume on 10 and on 0, and where legs and
 * wires that are only hooked by then already touch their lugs; and of the finished harness. As written, and at the ends of the tolerances.
 */
import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { type ExpectedReading, testCards } from '../../src/analyse/index.ts';
import { stepsOf } from '../../src/annotate/steps.ts';
import type { Circuit, LugId } from '../../src/circuit/circuit.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { kitFromValue } from '../../src/describe/read.ts';
import { loadKit } from '../../src/files/load.ts';
import { isPickup } from '../../src/parts/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { atEnd } from '../analyse/kits.ts';
import { randomKit } from '../random/kits.ts';
import { kits } from '../random/some.ts';
import { type Check, solderedBeforePickups } from './compare.ts';
import { check, failures, withValues } from './readings.ts';

const files = ['samples', 'samples/circuits'].flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => `${folder}/${name}`),
);

/** Positions compared of each kit; a kit with three switches has more than a hundred, much alike. */
const MOST_STATES = 4;
/** Of what is hooked so many joints are tried in every choice. */
const MOST_HOOKED = 4;

const fewer = (circuit: Circuit): Circuit => {
  const step = Math.ceil(circuit.states.length / MOST_STATES);
  return { ...circuit, states: circuit.states.filter((_, i) => i % step === 0) };
};

/** The harness of all joints that are in a step before the first with a pickup's lead, hooked or soldered, as a customer reads the steps. */
function placedBeforePickups(circuit: Circuit): Circuit {
  const pickups = new Set(circuit.kit.parts.filter(isPickup).map(({ name }) => name));
  const placed = new Set<number>();
  for (const { details } of stepsOf(circuit)) {
    const ends = details.flatMap(({ from, to }) => [from.lug, to.lug]);
    if (ends.some((lug) => pickups.has(lug.split('.')[0] ?? ''))) break;
    for (const { index } of details) placed.add(index);
  }
  const joints = circuit.kit.joints.filter((_, i) => placed.has(i));
  return { ...circuit, joints, kit: { ...circuit.kit, joints } };
}

interface Compared {
  readonly wrongs: readonly string[];
  readonly count: number;
  /** Rows that have another reading where something hooked touches. */
  readonly hooked: number;
}

/** The harness made by then with every choice of what is only hooked: none of it, all of it, and whatever lies between. */
function someTouching(circuit: Circuit): readonly Circuit[] {
  const [least, most] = [solderedBeforePickups(circuit), placedBeforePickups(circuit)];
  const waiting = most.joints.filter((joint) => !least.joints.includes(joint)).slice(0, MOST_HOOKED);
  return Array.from({ length: 2 ** waiting.length }, (_, mask) => {
    const left = new Set(waiting.filter((_joint, k) => ((mask >> k) & 1) === 0));
    const joints = most.joints.filter((joint) => !left.has(joint));
    return { ...circuit, joints, kit: { ...circuit.kit, joints } };
  });
}

/** A row and what it is compared on: the harness made by then, and the same with what is hooked. */
async function compare(kit: Kit, made = solderedBeforePickups, touching = placedBeforePickups) {
  const circuit = fewer(buildCircuit(kit));
  const ends = [atEnd(kit, -1), atEnd(kit, 1)] as const;
  const checks: Check[] = [];
  let hooked = 0;
  const ask = (
    what: string,
    harness: Circuit,
    row: { readonly state: number; readonly from: LugId; readonly to: LugId },
    volume: 10 | 0,
    { nominal, low, high }: ExpectedReading,
  ): void => {
    const asked = { ...row, volume };
    const name = `${what} in state ${row.state}`;
    checks.push(
      check(name, circuit, harness, asked, nominal),
      check(`${name}, smallest`, circuit, withValues(harness, ends[0]), asked, low),
      check(`${name}, largest`, circuit, withValues(harness, ends[1]), asked, high),
    );
  };
  const { before, finished } = testCards(circuit);
  const [soldered, touched] = [made(circuit), touching(circuit)];
  for (const row of before) {
    ask('before the pickups', soldered, row, 10, row.volumeFull);
    ask('before the pickups, volume on 0', soldered, row, 0, row.volumeZero);
    if (row.hooked) {
      hooked++;
      ask('hooked', touched, row, 10, row.hooked);
    } else {
      // Nothing is said, so that what is hooked must make no difference.
      const { nominal } = row.volumeFull;
      const same = check(
        `nothing hooked in state ${row.state}`,
        circuit,
        touched,
        { ...row, volume: 10 },
        nominal,
      );
      checks.push({ ...same, error: (...run) => (same.error(...run) < 2e-3 ? 0 : Infinity) });
    }
  }
  for (const row of finished) {
    ask('finished', circuit, row, 10, row.volumeFull);
    ask('finished, volume on 0', circuit, row, 0, row.volumeZero);
  }
  return { wrongs: await failures(checks), count: checks.length, hooked } satisfies Compared;
}

async function kitOf(file: string): Promise<Kit> {
  const { kit } = await loadKit(file);
  if (!kit) throw new Error(`${file} is not a kit`);
  return kit;
}

it('samples and circuits', async () => {
  let hooked = 0;
  for (const file of files) {
    const found = await compare(await kitOf(file));
    expect(found.wrongs, file).toEqual([]);
    expect(found.count, file).toBeGreaterThan(12);
    hooked += found.hooked;
  }
  expect(hooked).toBeGreaterThan(5);
}, 240_000);

/**
 * The random kit of a seed with a pad at the end of each pickup's lead that comes to a part with lugs: a leg that is hooked until the lead
 * comes. Absent where the kit is refused, or has no such lead.
 */
function padded(seed: number): Kit | undefined {
  const { parts, joints, ...head } = randomKit(seed);
  const kindOf = (name: string): string => String(parts[name]?.kind);
  const ends = joints.flatMap(({ wire }) => {
    const [from = '', to = ''] = String(wire ?? '').split(' > ');
    const hot = /^p\d+\.(hot|.-start)$/;
    return hot.test(from) ? [to] : hot.test(to) ? [from] : [];
  });
  const lugs = [...new Set(ends)].filter((lug) => /lever|pot/.test(kindOf(lug.split('.')[0] ?? '')));
  const pads = lugs.map((lug, i) => ({ lug, name: `added-${i + 1}` }));
  const { kit } = kitFromValue(
    {
      ...head,
      parts: {
        ...parts,
        ...Object.fromEntries(pads.map(({ name }) => [name, { kind: 'resistor', value: '330k' }])),
      },
      joints: [
        ...joints,
        ...pads.flatMap(({ lug, name }) => [
          { leg: `${name}.1 > ${lug}` },
          { leg: `${name}.2 > output.sleeve` },
        ]),
      ],
    },
    'random.ts',
  );
  return pads.length === 0 ? undefined : kit;
}

const withPads = Array.from({ length: 36 }, (_, i) => i + 1).flatMap((seed) => padded(seed) ?? []);

it('random kits, as they are and with pads at pickups’ leads', async () => {
  let hooked = 0;
  for (const kit of [...kits.slice(0, 20).map(({ kit: one }) => one), ...withPads]) {
    const found = await compare(kit);
    expect(found.wrongs, kit.id).toEqual([]);
    hooked += found.hooked;
  }
  expect(hooked).toBeGreaterThan(10);
}, 240_000);

it('ngspice finds another reading where nothing that is hooked touches, and where too much conducts', async () => {
  const samples = await Promise.all(files.map(kitOf));
  const concerned = [...samples, ...withPads].filter((kit) =>
    testCards(fewer(buildCircuit(kit))).before.some(({ hooked }) => hooked),
  );
  expect(concerned.length).toBeGreaterThan(12);
  for (const kit of concerned.slice(0, 20)) {
    const nothing = await compare(kit, solderedBeforePickups, solderedBeforePickups);
    expect(nothing.wrongs.join(), kit.id).toMatch(/direct hooked/);
    const all = await compare(kit, placedBeforePickups, placedBeforePickups);
    expect(all.wrongs.join(), kit.id).toMatch(/direct before the pickups in/);
  }
}, 240_000);

it('whatever of the hooked legs touches, ngspice reads what is printed', async () => {
  let between = 0;
  const samples = ['samples/kestrel-hss.yaml', 'samples/circuits/hss-lever-5-1v2t-pads.yaml'];
  for (const kit of [...(await Promise.all(samples.map(kitOf))), ...withPads.slice(0, 12)]) {
    const circuit = fewer(buildCircuit(kit));
    const rows = testCards(circuit).before.filter(({ hooked }) => hooked?.kind === 'value');
    const checks = rows.flatMap(({ hooked, volumeFull, ...row }): readonly Check[] => {
      if (!hooked) return [];
      if (hooked.between) between++;
      // By conductance, in which an open circuit is zero; the ties of a network to ground are far less than the slack.
      const [least, most] = [1 / volumeFull.nominal, 1 / hooked.nominal];
      const slack = 1e-6 * most;
      return someTouching(circuit).map((harness, i): Check => {
        const one = check(`choice ${i} in state ${row.state}`, circuit, harness, { ...row, volume: 10 }, 1);
        const error: Check['error'] = (_, [z]) => {
          if (!z) return Infinity;
          const conductance = 1 / z.re;
          const printed = hooked.between
            ? conductance > least - slack && conductance < most + slack
            : [least, most].some((end) => Math.abs(conductance - end) < 2e-3 * most);
          return printed ? 0 : Infinity;
        };
        return { ...one, error };
      });
    });
    expect(await failures(checks), kit.id).toEqual([]);
  }
  expect(between).toBeGreaterThan(2);
}, 240_000);
