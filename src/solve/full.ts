/**
 * Where each control is at full. Loudest and brightest is at full, whichever end of the rotation that is: in a left-handed build it is
 * the anticlockwise one. A blend is at full in the middle. Which end of a control is at full is found by turning it from end to end
 * with all others half way, where none of them shorts or opens anything. That a no-load pot opens at an end does not make that one the full
 * end: wired backwards it is at its darkest just before.
 */
import type { FullAt, Graph, Setting } from '../circuit/circuit.ts';
import { andList } from '../common/quoting.ts';
import { remembered } from '../common/remembered.ts';
import { type Control, controlsOf, isPickup } from '../parts/index.ts';
import { makeNetlist } from './netlist.ts';
import { withOutputLoad } from './output.ts';
import { type PotRotations, rests } from './rest.ts';
import { LEVEL_FREQUENCY, magnitudeOf, transfersOf } from './sounding.ts';

/** Hertz: one so low that it is nearly direct current, which no capacitor of a tone control takes any of, the one where levels are compared, and those of brightness. */
const LOW = 0.1;
const BRIGHT = [3000, 5000];
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
  const controls = controlsIn(graph);
  const ends = new Map(
    controls.map((control) => [
      control.id,
      control.tracks.some((track) => rests(track) === 0.5)
        ? 'middle'
        : (solvedEnd(graph, control) ?? 'clockwise'),
    ]),
  );
  const known = { ...graph, fullAt: ends };
  return new Map(
    controls.map((control) => {
      const blend = control.role === undefined && blends(known, control);
      return [control.id, blend ? 'middle' : (ends.get(control.id) ?? 'clockwise')] as const;
    }),
  );
}

const controlsIn = ({ kit }: Graph): readonly Control[] => kit.parts.flatMap(controlsOf);

interface Ends {
  readonly low: Levels;
  readonly high: Levels;
}

/** What a control does in each setting of the switches, one after another: at its anticlockwise end and at its clockwise one, the others at full. */
function* endsOf(graph: Graph, { id }: Control): Generator<Ends> {
  const full = graph.fullAt?.get(id);
  // Of the control itself no end is full yet.
  const fullAt = new Map([...(graph.fullAt ?? [])].filter(([other]) => other !== id));
  for (const setting of graph.settings) {
    const at = (end: FullAt, rotation: number): Levels =>
      full === end
        ? levelsAtFull(graph)(setting)
        : levelsIn({ ...graph, fullAt }, setting, { [id]: rotation }, [LEVEL_FREQUENCY]);
    yield { low: at('anticlockwise', 0), high: at('clockwise', 1) };
  }
}

/** Every control but a blend has an end at full, so that this one network serves them all. */
const levelsAtFull = remembered((graph: Graph) =>
  remembered((setting: Setting): Levels => levelsIn(graph, setting, {}, [LEVEL_FREQUENCY])),
);

function levelsIn(
  graph: Graph,
  setting: Setting,
  controls: PotRotations,
  probes: readonly number[],
  noLoad?: 'stays',
): Levels {
  const { branches, jack } = makeNetlist(graph, setting, controls, noLoad);
  const loaded = withOutputLoad({ branches, jack }, graph.kit.outputLoad);
  return new Map(
    [...transfersOf(loaded, jack, probes)].map(([pickup, row]) => [pickup, row.map(magnitudeOf)]),
  );
}

/** At the first of the probes. */
const levelOf = (levels: Levels, pickup: string): number => levels.get(pickup)?.[0] ?? 0;

/** Whether each end leaves another pickup. */
function isBlend({ low, high }: Ends): boolean {
  const names = [...new Set([...low.keys(), ...high.keys()])];
  const fades = (name: string, other: string, here: Levels, there: Levels): boolean =>
    levelOf(here, name) < BESIDE_OTHER * levelOf(here, other) &&
    levelOf(here, name) < BESIDE_OWN * levelOf(there, name);
  return names.some((one) =>
    names.some((other) => fades(one, other, low, high) && fades(other, one, high, low)),
  );
}

/**
 * Whether the circuit blends two pickups with a control, whatever the kit says. The others stand at full: turned down a volume control
 * leaves its pickup so weak that the one beside it would seem to be blended.
 */
export function blends(graph: Graph, control: Control): boolean {
  if (graph.kit.parts.filter(isPickup).length > 1)
    for (const ends of endsOf(graph, control)) if (isBlend(ends)) return true;
  return false;
}

/** So plain a difference that no other setting is asked: 6 dB of loudness; or none of it, and 1 dB of brightness. */
const PLAINLY_LOUDER = 2;
const AS_LOUD = 1.001;
const PLAINLY_BRIGHTER = 10 ** (1 / 20);

/** Which end is louder, or else brighter, by the circuit alone; absent where turning the control changes neither. */
export function solvedEnd(graph: Graph, control: Control): FullAt | undefined {
  const { fullAt: _, ...raw } = graph;
  const midway = Object.fromEntries(controlsIn(graph).map(({ id }) => [id, 0.5]));
  const sum = (levels: Levels, from: number, to?: number): number =>
    [...levels.values()].reduce((all, row) => row.slice(from, to).reduce((a, b) => a + b, all), 0);
  const end = (low: number, high: number): FullAt => (high > low ? 'clockwise' : 'anticlockwise');
  const apart = (low: number, high: number, factor: number): boolean =>
    Math.max(low, high) > factor * Math.min(low, high);
  const all = { low: 0, high: 0, dull: 0, bright: 0 };
  for (const setting of graph.settings) {
    const at = (rotation: number): Levels =>
      levelsIn(raw, setting, { ...midway, [control.id]: rotation }, [LOW, ...BRIGHT], 'stays');
    const ends = { low: at(0), high: at(1) };
    const [low, high] = [sum(ends.low, 0, 1), sum(ends.high, 0, 1)];
    const [dull, bright] = [sum(ends.low, 1), sum(ends.high, 1)];
    if (apart(low, high, PLAINLY_LOUDER)) return end(low, high);
    if (!apart(low, high, AS_LOUD) && apart(dull, bright, PLAINLY_BRIGHTER)) return end(dull, bright);
    all.low += low;
    all.high += high;
    all.dull += dull;
    all.bright += bright;
  }
  if (apart(all.low, all.high, LOUDER)) return end(all.low, all.high);
  return apart(all.dull, all.bright, BRIGHTER) ? end(all.dull, all.bright) : undefined;
}

/** More settings than these are not made by the ends of blends. */
export const MOST_SETTINGS = 1024;

/** Blends that stay at their centre in every setting, as their ends would make too many. */
export const keptAtCentre = ({ kit, fullAt, settings }: Graph): readonly Control[] =>
  kit.parts
    .flatMap(controlsOf)
    .filter(
      ({ id }) => fullAt?.get(id) === 'middle' && settings.every(({ turned }) => turned?.[id] === undefined),
    );

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
  const ends = [...endsOf(graph, control)];
  const left = (which: (one: Ends) => Levels, other: (one: Ends) => Levels): readonly string[] =>
    graph.kit.parts.filter(isPickup).flatMap(({ name }) => {
      const stays = ends.some((one) => levelOf(other(one), name) < BESIDE_OWN * levelOf(which(one), name));
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
