/** How long to cut wires: what is given, what is estimated and from what, and that no wire is forgotten or cut twice. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Kit } from '../../src/describe/kit.ts';
import { circuitFile, circuitNames } from '../../src/files/circuits.ts';
import { arrangementErrors, findArrangement } from '../../src/files/layouts.ts';
import { loadKit } from '../../src/files/load.ts';
import { componentOf, isPickup } from '../../src/parts/index.ts';
import { prepare } from '../../src/pipeline.ts';
import { freeFlow } from '../../src/place/arrangement.ts';
import { CUTTING, cutList, inches, wireLengths } from '../../src/place/wire-lengths.ts';
import { workshop } from '../catalogue/folder.ts';
import { sample, samples } from '../truth/draw.ts';

const EFFORT = { steps: 0, seed: 1 };
const arrangementOf = (name: string) => {
  const found = findArrangement(name);
  if (typeof found === 'string') throw new Error(found);
  return found;
};
async function lengthsOf(kit: Kit, arrangement = 'free-flow', hand = kit.hand) {
  const {
    circuit,
    placement,
    arrangement: by,
  } = await prepare(kit, arrangementOf(arrangement), { effort: EFFORT, hand });
  return { circuit, ...wireLengths(circuit, placement, by) };
}
const endsOf = (kit: Kit, joint: number): string =>
  [kit.joints[joint]?.from, kit.joints[joint]?.to].map((end) => `${end?.part}.${end?.lug}`).join(' > ');
/** The kit with no length given. */
const bare = (kit: Kit): Kit => ({ ...kit, joints: kit.joints.map(({ length: _, ...joint }) => joint) });
async function millimetres(kit: Kit, arrangement?: string): Promise<Readonly<Record<string, number>>> {
  const { wires } = await lengthsOf(kit, arrangement);
  return Object.fromEntries(
    wires.map(({ joint, length }) => [endsOf(kit, joint), Math.round(length * 1000)]),
  );
}

describe('a length', () => {
  it('that is given is taken', async () => {
    const { wires } = await lengthsOf(sample('kestrel-hss'));
    const given = sample('kestrel-hss').joints.flatMap(({ length }, i) =>
      length === undefined ? [] : [[i, length]],
    );
    expect(wires.filter(({ estimated }) => !estimated).map(({ joint, length }) => [joint, length])).toEqual(
      given,
    );
    expect(given.length).toBeGreaterThan(8);
  });

  // The lengths that the kit's own description gives, written before any were estimated.
  it.each([
    ['volume.2 > output.tip', 140],
    ['output.sleeve > volume.case', 140],
    ['strings.1 > volume.case', 250],
    ['volume.case > tone-1.case', 60],
  ])('%s is estimated, where nothing says how large the instrument is, as %i mm', async (ends, length) => {
    expect((await millimetres(bare(sample('kestrel-hss'))))[ends]).toBe(length);
  });

  it('is estimated from the distance of the seats, 30 % longer, with two stripped ends of 5 mm, rounded up to 10 mm', async () => {
    expect(CUTTING).toEqual({ allowance: 0.3, strip: 0.005, rounded: 0.01 });
    const all = await millimetres(bare(sample('kestrel-hss')), 'plate-row');
    // 15 units of 1.7 mm are 25.5 mm; 33.15 and 10 are 43.15 mm.
    expect(all['volume.case > tone-1.case']).toBe(50);
    expect(all['tone-1.case > tone-2.case']).toBe(50);
    // Two seats on are 51 mm: 66.3 and 10 are 76.3 mm; the selector is further away, and each pot further than the one before.
    const [near, far] = [all['selector.B0 > volume.3'] ?? 0, all['selector.B2 > tone-2.1'] ?? 0];
    expect(far - near).toBeGreaterThanOrEqual(60);
    expect(far - near).toBeLessThanOrEqual(70);
    // The jack has no seat there.
    expect(all['volume.2 > output.tip']).toBe(140);
  });

  it('does not depend on how much room the drawing needed, nor on the hand', async () => {
    const kit = bare(sample('kestrel-hss'));
    const right = await lengthsOf(kit, 'plate-row', 'right');
    const left = await lengthsOf(kit, 'plate-row', 'left');
    expect(left.wires).toEqual(right.wires);
    expect(right.wires.length).toBeGreaterThan(8);
  });
});

const circuits = circuitNames();
it.each([...samples, ...circuits])(
  '%s: each wire is cut once, or is a pickup’s own; each sleeved leg has its sleeving',
  async (name) => {
    const kit = samples.includes(name) ? sample(name) : (await loadKit(circuitFile(name))).kit;
    if (!kit) throw new Error(name);
    const { wires, leads, sleevings } = await lengthsOf(kit, kit.arrangement);
    const pickups = new Set(kit.parts.filter(isPickup).map((part) => part.name));
    const ofPickup = (i: number): boolean =>
      [kit.joints[i]?.from.part, kit.joints[i]?.to.part].some((part) => pickups.has(part ?? ''));
    const those = (test: (joint: Kit['joints'][number], i: number) => boolean): readonly number[] =>
      kit.joints.flatMap((joint, i) => (test(joint, i) ? [i] : []));
    expect(leads.map(({ joint }) => joint)).toEqual(
      those(({ kind }, i) => ['wire', 'braid', 'jumper'].includes(kind) && ofPickup(i)),
    );
    expect(wires.map(({ joint }) => joint)).toEqual(
      those(({ kind }, i) => ['wire', 'jumper'].includes(kind) && !ofPickup(i)),
    );
    const legs = those(
      ({ kind, from, to }) =>
        kind === 'leg' &&
        [from, to].some(({ part, lug }) => {
          const found = kit.parts.find((one) => one.name === part);
          return found !== undefined && (componentOf(found)?.sleeved.includes(lug) ?? false);
        }),
    );
    expect(sleevings.map(({ joint }) => joint)).toEqual(legs);
    // A leg is some 28 mm long (from memory).
    for (const { length } of sleevings) expect([10, 15, 20, 25]).toContain(Math.round(length * 1e6) / 1000);
    for (const { length } of wires.filter(({ estimated }) => estimated)) {
      expect(length).toBeGreaterThanOrEqual(0.02);
      expect(length).toBeLessThanOrEqual(0.35);
    }
    const list = cutList({ wires });
    expect(list.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(wires.length);
    expect(list.reduce((sum, { total }) => sum + total, 0)).toBeCloseTo(
      wires.reduce((sum, { length }) => sum + length, 0),
      9,
    );
    expect(list.flatMap(({ rows }) => rows.flatMap(({ joints }) => joints)).sort((a, b) => a - b)).toEqual(
      wires.map(({ joint }) => joint),
    );
    for (const { rows, colour, kind } of list)
      for (const { joints, length } of rows)
        for (const joint of joints) {
          expect(wires.find((wire) => wire.joint === joint)?.length).toBe(length);
          if (kind === 'wire') expect(kit.joints[joint]?.colour).toBe(colour);
        }
  },
);

it('the list has a group for each colour, and in it the longest first', async () => {
  const { wires } = await lengthsOf(sample('kestrel-hss'));
  const list = cutList({ wires }).map(({ kind, colour, rows, pieces }) => [
    colour ?? kind,
    pieces,
    ...rows.map(({ length, joints }) => `${joints.length} × ${Math.round(length * 1000)}`),
  ]);
  expect(list).toEqual([
    ['BK', 4, '1 × 250', '1 × 140', '2 × 60'],
    ['OG', 3, '1 × 140', '1 × 110', '1 × 70'],
    ['TQ', 1, '1 × 80'],
    ['PK', 1, '1 × 140'],
    ['jumper', 2, '2 × 20'],
  ]);
});

it.each([
  [25.4, '1'],
  [60, '2 3/8'],
  [140, '5 1/2'],
  [250, '9 7/8'],
  [50, '2'],
  [19.05, '3/4'],
  [3.2, '1/8'],
  [1, '1/8'],
])('%d mm are %s inches', (length, words) => expect(inches(length / 1000)).toBe(words));

describe('an arrangement', () => {
  it('of the program says how large it is, but for free flow and the narrow column, which are of no instrument', () => {
    const names = readdirSync('layouts')
      .filter((name) => name.endsWith('.yaml'))
      .map((name) => name.slice(0, -5));
    expect(names.filter((name) => arrangementOf(name).millimetres === undefined)).toEqual([
      'free-flow',
      'narrow-column',
    ]);
    expect(freeFlow.millimetres).toBeUndefined();
  });
  it.each(['0', '-1', '51', 'wide'])('of %s mm a unit is refused at its place', (millimetres) => {
    const folder = workshop({
      'own.yaml': `arrangement: own\nabout: Own.\nmillimetres: ${millimetres}\nseats: []\n`,
    });
    const [found] = arrangementErrors(`${folder}/own.yaml`);
    expect(JSON.stringify(found)).toMatch(/own\.yaml:3:14: /);
  });
});
