/**
 * Where each control is at full. Loudest and brightest is at full, whichever end of the rotation that is: in a left-handed build it is
 * the anticlockwise one. A blend is at full in the middle. What a control does is found by turning it from end to end with all
 * others half way, where none of them shorts or opens anything.
 */
import type { Circuit, FullAt, Graph, Setting } from '../circuit/circuit.ts';
import { andList } from '../common/quoting.ts';
import { type Control, controlsOf, isPickup } from '../parts/index.ts';
import { makeNetlist } from './netlist.ts';
import { withOutputLoad } from './output.ts';
import { rests } from './rest.ts';
import { LEVEL_FREQUENCY, magnitudeOf, transfersOf } from './sounding.ts';

/** Hertz: one so low that it is nearly direct current, which no capacitor of a tone control takes any of, the one where levels are compared, and those of brightness. */
const LOW = 0.1;
const BRIGHT = [3000, 5000];
const PROBES = [LOW, LEVEL_FREQUENCY, ...BRIGHT];
/** A change that decides between the ends: half a decibel of loudness, a tenth of brightness. Common practice, no source. */
const LOUDER = 10 ** (0.5 / 20);
const BRIGHTER = 10 ** (0.1 / 20);
/** At an end of a blend one pickup is at least 12 dB below the other, and 8 dB below its own level at the other end. */
const BESIDE_OTHER = 0.25;
const BESIDE_OWN = 0.4;

/** Levels by pickup, at each probe. */
type Levels = ReadonlyMap<string, readonly number[]>;

/** Where every control of a kit is at full, by its id. */
export function solveFull(graph: Graph): ReadonlyMap<string, FullAt> {
  const controls = graph.kit.parts.flatMap(controlsOf);
  return new Map(controls.map((control) => [control.id, fullOf(graph, control, controls)] as const));
}

function fullOf(graph: Graph, control: Control, all: readonly Control[]): FullAt {
  if (control.tracks.some((track) => rests(track) === 0.5)) return 'middle';
  const ends = graph.settings.map((setting) => endsIn(graph, setting, control, all));
  if (control.role === undefined && ends.some(isBlend)) return 'middle';
  return fullEnd(ends) ?? 'clockwise';
}

interface Ends {
  readonly low: Levels;
  readonly high: Levels;
}

/** What a control does in a setting of the switches, at its anticlockwise end and at its clockwise one. */
function endsIn(graph: Graph, setting: Setting, { id }: Control, all: readonly Control[]): Ends {
  const midway = Object.fromEntries(all.map((other) => [other.id, 0.5]));
  const at = (rotation: number): Levels => {
    const { fullAt: _, ...raw } = graph;
    const { branches, jack } = makeNetlist(raw, setting, { ...midway, [id]: rotation });
    const loaded = withOutputLoad({ branches, jack }, graph.kit.outputLoad);
    return new Map(
      [...transfersOf(loaded, jack, PROBES)].map(([pickup, row]) => [pickup, row.map(magnitudeOf)]),
    );
  };
  return { low: at(0), high: at(1) };
}

const levelOf = (levels: Levels, pickup: string, probe: number): number =>
  levels.get(pickup)?.[PROBES.indexOf(probe)] ?? 0;

/** Whether each end leaves another pickup. */
function isBlend({ low, high }: Ends): boolean {
  const names = [...new Set([...low.keys(), ...high.keys()])];
  const at = (levels: Levels, name: string): number => levelOf(levels, name, LEVEL_FREQUENCY);
  const fades = (name: string, other: string, here: Levels, there: Levels): boolean =>
    at(here, name) < BESIDE_OTHER * at(here, other) && at(here, name) < BESIDE_OWN * at(there, name);
  return names.some((one) =>
    names.some((other) => fades(one, other, low, high) && fades(other, one, high, low)),
  );
}

/** The end that is louder, or else brighter; absent where turning the control changes neither. */
function fullEnd(ends: readonly Ends[]): FullAt | undefined {
  const sum = (which: (one: Ends) => Levels, probes: readonly number[]): number =>
    ends.reduce(
      (all, one) =>
        [...which(one).keys()].reduce(
          (some, name) => probes.reduce((level, f) => level + levelOf(which(one), name, f), some),
          all,
        ),
      0,
    );
  const decided = (probes: readonly number[], factor: number): FullAt | undefined => {
    const [low, high] = [sum((one) => one.low, probes), sum((one) => one.high, probes)];
    if (Math.max(low, high) <= factor * Math.min(low, high)) return undefined;
    return high > low ? 'clockwise' : 'anticlockwise';
  };
  return decided([LOW], LOUDER) ?? decided(BRIGHT, BRIGHTER);
}

/** Whether the solved circuit blends two pickups with a control, whatever the kit says. */
export const blends = (graph: Graph, control: Control): boolean => {
  const all = graph.kit.parts.flatMap(controlsOf);
  return graph.settings.some((setting) => isBlend(endsIn(graph, setting, control, all)));
};

/** Which end is at full by the solved circuit alone; absent where turning the control changes nothing. */
export const solvedEnd = (graph: Circuit, control: Control): FullAt | undefined => {
  const all = graph.kit.parts.flatMap(controlsOf);
  return fullEnd(graph.settings.map((setting) => endsIn(graph, setting, control, all)));
};

/** More settings than these are not made by the ends of blends. */
const MOST_SETTINGS = 1024;

/** The settings of the switches, each with every blend in the middle and at either end. */
export function withBlends(graph: Graph): readonly Setting[] {
  const order = graph.kit.parts.flatMap((part) => [part.name, ...controlsOf(part).map(({ id }) => id)]);
  const sorted = <T>(by: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
    Object.fromEntries(Object.entries(by).sort(([a], [b]) => order.indexOf(a) - order.indexOf(b)));
  let settings = graph.settings;
  for (const control of graph.kit.parts.flatMap(controlsOf)) {
    if (graph.fullAt?.get(control.id) !== 'middle' || settings.length * 3 > MOST_SETTINGS) continue;
    const places = placesOf(graph, control);
    settings = settings.flatMap((setting) =>
      places.map(({ called, rotation }, i) => ({
        ...setting,
        positions: sorted({ ...setting.positions, [control.id]: i + 1 }),
        positionNames: sorted({ ...setting.positionNames, [control.id]: called }),
        turned: { ...setting.turned, [control.id]: rotation },
      })),
    );
  }
  return settings;
}

interface BlendPlace {
  readonly called: string;
  readonly rotation: number;
}

/** The middle and the two ends, each end by the pickups that it leaves. */
function placesOf(graph: Graph, control: Control): readonly BlendPlace[] {
  const all = graph.kit.parts.flatMap(controlsOf);
  const ends = graph.settings.map((setting) => endsIn(graph, setting, control, all));
  const left = (which: (one: Ends) => Levels, other: (one: Ends) => Levels): readonly string[] =>
    graph.kit.parts.filter(isPickup).flatMap(({ name }) => {
      const stays = ends.some(
        (one) =>
          levelOf(other(one), name, LEVEL_FREQUENCY) <
          BESIDE_OWN * levelOf(which(one), name, LEVEL_FREQUENCY),
      );
      return stays ? [name] : [];
    });
  const low = left(
    (one) => one.low,
    (one) => one.high,
  );
  const high = left(
    (one) => one.high,
    (one) => one.low,
  );
  const named = (pickups: readonly string[], end: string): string =>
    pickups.length === 0 || low.join() === high.join() ? `fully ${end}` : `towards ${andList(pickups)}`;
  return [
    { called: 'at centre', rotation: 0.5 },
    { called: named(low, 'anticlockwise'), rotation: 0 },
    { called: named(high, 'clockwise'), rotation: 1 },
  ];
}
