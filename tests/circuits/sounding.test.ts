/** What the program solves of every circuit that ships, against tables written by hand. */
import { expect, test } from 'vitest';
import { type StateLoads, solveLoads } from '../../src/analyse/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { solveSounding } from '../../src/solve/sounding.ts';
import { circuitKit, circuitNames } from './circuits.ts';
import { type Row, type Sound, tables, turned } from './sounding.ts';

/** What is compared of one pickup that sounds: with which others and with which of its coils, how, and how loud. */
interface Heard {
  readonly pickup: string;
  readonly series: readonly string[];
  readonly parallel: readonly string[];
  readonly outOfPhase: readonly string[];
  readonly coils: string;
  readonly output: string;
  /** Decibels; 0 where it is no more than 1 dB down. */
  readonly down: number;
}

type Leaf = Extract<Sound, { readonly pickup: string }>;
const leaves = (sound: Sound): readonly Leaf[] =>
  'pickup' in sound ? [sound] : sound.of.flatMap((one) => leaves(one));

/** How two pickups of one sound are joined: by what joins the two smallest groups that hold one of them each. */
function joinOf(sound: Sound, a: string, b: string): 'series' | 'parallel' | 'apart' | undefined {
  if ('pickup' in sound) return undefined;
  const holds = (one: Sound, name: string): boolean => leaves(one).some(({ pickup }) => pickup === name);
  const both = sound.of.find((one) => holds(one, a) && holds(one, b));
  return both ? joinOf(both, a, b) : sound.join;
}

const byName = (list: readonly string[]): readonly string[] => [...list].sort();

function expected({ sound }: Row): readonly Heard[] {
  const all = sound ? leaves(sound) : [];
  return all.map((own) => {
    const others = all.filter((one) => one !== own);
    const joined = (join: 'series' | 'parallel'): readonly string[] =>
      others
        .map(({ pickup }) => pickup)
        .filter((other) => sound && joinOf(sound, own.pickup, other) === join);
    return {
      pickup: own.pickup,
      series: byName(joined('series')),
      parallel: byName(joined('parallel')),
      outOfPhase: byName(others.filter((one) => one.reversed !== own.reversed).map(({ pickup }) => pickup)),
      coils: own.coils ?? '',
      output: own.output ?? '',
      down: own.down ?? 0,
    };
  });
}

/** What is reckoned by hand leaves out cable, pots and capacitances, which come to less than this. Decibels. */
const REACH = 0.3;

const solved = ({ state, pickups }: StateLoads, wanted: readonly Heard[]): readonly Heard[] =>
  pickups.map(({ pickup, series, parallel, outOfPhase, level, coils }) => {
    const own = level >= -1 ? 0 : -level;
    const by = wanted.find((one) => one.pickup === pickup)?.down ?? 0;
    return {
      pickup,
      series: byName(series),
      parallel: byName(parallel),
      outOfPhase: byName(outOfPhase),
      coils: state.coils?.[pickup]?.map(({ id }) => id.replace('coil-', '')).join() ?? coils?.joined ?? '',
      output: state.outputs?.find(({ loudest }) => loudest.includes(pickup))?.name ?? '',
      down: Math.abs(own - by) <= REACH ? by : own,
    };
  });

const sorted = (heard: readonly Heard[]): readonly Heard[] =>
  [...heard].sort((a, b) => (a.pickup < b.pickup ? -1 : 1));
const key = (at: Row['at']): string =>
  Object.entries(at)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([part, position]) => `${part} ${position}`)
    .join(', ');

test('every circuit has its table, and every table its circuit', () => {
  expect(Object.keys(tables).sort()).toEqual(circuitNames);
});

test.each(circuitNames)('%s sounds as written by hand in every state', async (name) => {
  const loads = solveLoads(buildCircuit(await circuitKit(name)));
  const table = tables[name] ?? [];
  const wanted = table.map((row) => ({
    at: key(row.at),
    heard: sorted(expected(row)),
    quiet: row.quiet === true,
  }));
  const ours = loads.map((one) => {
    const at = key(one.state.positions);
    const heard = sorted(solved(one, wanted.find((row) => row.at === at)?.heard ?? []));
    return { at, heard, quiet: one.humCancelling === true };
  });
  const byPlace = (list: typeof wanted) => [...list].sort((a, b) => (a.at < b.at ? -1 : 1));
  expect(byPlace(ours)).toEqual(byPlace(wanted));
  // What works against itself in one pickup is no more meant than two pickups that do.
  for (const { pickups } of loads)
    for (const { coils } of pickups) expect(coils?.outOfPhase ?? false).toBe(false);
});

test.each(Object.keys(turned))('%s with controls on 0', async (name) => {
  const circuit = buildCircuit(await circuitKit(name));
  for (const { at, zero, sounding } of turned[name] ?? []) {
    const state = circuit.states.find(({ positions }) => key(positions) === key(at));
    if (!state) throw new Error(`${name} has no state ${key(at)}`);
    const controls = Object.fromEntries(zero.map((pot) => [pot, 0]));
    expect(solveSounding(circuit, state, controls).sounding, `${key(at)}, ${zero.join()} on 0`).toEqual(
      sounding,
    );
  }
});
