/**
 * How far every figure may lie from its nominal one, over the harnesses that tolerances and temperature allow. Of resistances and
 * loads the limits: no harness within its tolerances lies outside. Of a resonance the limits would say little, as hardly a
 * harness has every value at its worst end, so 95 % of 10,000 samples: harnesses whose values lie anywhere in their tolerance
 * with equal chance, the same ones in every state, repeatable from the seed.
 */

import { atOutputOf, type Circuit, type LugId, perOutput, type State } from '../circuit/circuit.ts';
import { seeded } from '../common/random.ts';
import { partNamed } from '../describe/kit.ts';
import { makeNetlist, type Netlist, type PotRotations } from '../solve/netlist.ts';
import type { Branch, Port, Winding } from '../solve/network.ts';
import { knobsAtFull, type Roles, rolesOf, rotationsAt } from './controls.ts';
import { type Factors, resistanceRange, signalLoadRange, type ToleranceRange } from './extremes.ts';
import { chainOf, type LoadOptions, pickupLoadBranches, totalLoadBranches } from './loads.ts';
import { jackPort, lugPort } from './meter.ts';
import { decibels, highestBetween, PLATEAU, shapeOf } from './peak.ts';
import { pickupPort } from './ports.ts';
import { gainOf, makeStateSolver, type StateSolver } from './response.ts';
import { beforePickups, probeLug } from './soldered.ts';
import {
  roomTemperatures,
  type Temperatures,
  type ToleranceParameter,
  toleranceParameters,
} from './variables.ts';

export interface LimitOptions extends LoadOptions {
  /** A whole number from 0 to 2³² − 1. */
  readonly seed?: number;
  /** A whole number from 1 to 100,000. */
  readonly samples?: number;
  /** Degrees Celsius. */
  readonly temperatures?: Temperatures;
}

/** Where the resonance of a curve lies in 95 % of the samples. */
export interface ResonanceLimits {
  /** Hertz. */
  readonly frequency: SampledRange;
  /** Decibels above the plateau. */
  readonly height: SampledRange;
  /** How many of the samples had no peak. */
  readonly without: number;
}

/** A fortieth of the samples lies below `low`, a fortieth above `high`. */
export interface SampledRange extends Omit<ToleranceRange, 'method'> {
  readonly method: '95 % of samples, uniform';
}

export interface PickupLimits {
  readonly pickup: string;
  readonly dcLoad: ToleranceRange;
  readonly signalLoad: ToleranceRange;
  readonly total: { readonly dcLoad: ToleranceRange; readonly signalLoad: ToleranceRange };
  /** Absent where the nominal curve has no peak. */
  readonly resonance?: ResonanceLimits;
}

export interface ReadingLimits {
  readonly disconnected: ToleranceRange;
  readonly connected: ToleranceRange;
}

export interface StateLimits {
  readonly index: number;
  readonly state: State;
  readonly pickups: readonly PickupLimits[];
  /** Tip to sleeve; absent for a kit without a jack. */
  readonly jack?: { readonly volumeFull: ReadingLimits; readonly volumeZero: ReadingLimits };
  /** Each net to ground, all controls at full, named by the lug that the probe is held to. */
  readonly lugs: readonly (ReadingLimits & { readonly net: number; readonly lug: LugId })[];
  /** Of all sounding pickups together, at the tip. */
  readonly resonance?: ResonanceLimits;
}

export interface Limits {
  readonly seed: number;
  readonly samples: number;
  readonly temperatures: Temperatures;
  readonly states: readonly StateLimits[];
}

export const DEFAULT_SEED = 60063;
export const DEFAULT_SAMPLES = 10_000;
export const MOST_SEED = 2 ** 32 - 1;
/** More than these take minutes and move no figure that a person reads. */
export const MOST_SAMPLES = 100_000;

interface Task {
  readonly circuit: Circuit;
  readonly roles: Roles;
  readonly variables: readonly ToleranceParameter[];
  readonly samples: readonly Factors[];
  /** Hertz, of the signal loads. */
  readonly frequency: number;
}

/**
 * Limits of every figure in every state, and where most of the resonances lie.
 *
 * @throws RangeError when seed or samples is not a whole number of its range, or the temperatures are not in order
 */
export function solveLimits(circuit: Circuit, options: LimitOptions = {}): Limits {
  const { seed = DEFAULT_SEED, samples = DEFAULT_SAMPLES, temperatures = roomTemperatures } = options;
  whole('seed', seed, 0, MOST_SEED);
  whole('samples', samples, 1, MOST_SAMPLES);
  // Catches a wrong unit.
  if (!(temperatures.low >= -50 && temperatures.low <= temperatures.high && temperatures.high <= 100))
    throw new RangeError('temperatures run from a low to a high one, between −50 and 100 °C');
  const variables = toleranceParameters(circuit.kit, temperatures);
  const task = {
    circuit,
    roles: rolesOf(circuit),
    variables,
    samples: sampled(variables, samples, seed),
    frequency: options.frequency ?? circuit.kit.outputLoad.frequency.value,
  };
  return {
    seed,
    samples,
    temperatures,
    states: circuit.states.map((state, index) => inState(task, state, index)),
  };
}

function whole(name: string, value: number, least: number, most: number): void {
  if (!(Number.isInteger(value) && value >= least && value <= most))
    throw new RangeError(`${name} is ${value}: it must be a whole number from ${least} to ${most}`);
}

/** Random harnesses, each a factor for every value. */
function sampled(
  variables: readonly ToleranceParameter[],
  samples: number,
  seed: number,
): readonly Factors[] {
  const random = seeded(seed);
  return Array.from(
    { length: samples },
    () => new Map(variables.map(({ of, low, high }) => [of, low + (high - low) * random()])),
  );
}

function inState(task: Task, state: State, index: number): StateLimits {
  const { circuit } = task;
  const netlist = makeNetlist(circuit, state);
  const views = perOutput(state).map((view) => makeStateSolver(circuit, view));
  const peaks = views.map((heard) => heard && resonanceLimits(heard, heard.windings, task.samples));
  const pickups = state.sounding.map((name): PickupLimits => {
    const loads = loadLimits(task, state, netlist, name);
    const at = atOutputOf(state, name).output ?? 0;
    const heard = views[at];
    const own = heard?.windings.filter((winding) => winding.pickup === name) ?? [];
    // A pickup that sounds alone has its output's own curve, already drawn.
    const peak =
      !heard || own.length === heard.windings.length ? peaks[at] : resonanceLimits(heard, own, task.samples);
    return { pickup: name, ...loads, ...(peak ? { resonance: peak } : {}) };
  });
  const down = rotationsAt(task.roles, { ...knobsAtFull, volume: 0 });
  const before = (controls: PotRotations) => makeNetlist(beforePickups(circuit), state, controls);
  const full = { before: before({}), finished: netlist };
  const zero = { before: before(down), finished: makeNetlist(circuit, state, down) };
  return {
    index,
    state,
    pickups,
    ...(netlist.jack
      ? {
          jack: {
            volumeFull: readingLimits(full, jackPort, task.variables),
            volumeZero: readingLimits(zero, jackPort, task.variables),
          },
        }
      : {}),
    lugs: lugLimits(task, full),
    ...(peaks[0] ? { resonance: peaks[0] } : {}),
  };
}

function loadLimits(
  { circuit, variables, frequency }: Task,
  state: State,
  netlist: Netlist,
  name: string,
): Omit<PickupLimits, 'pickup' | 'resonance'> {
  const { port, kept } = pickupPort(partNamed(circuit.kit, name), state, netlist);
  const both = (branches: readonly Branch[]) => ({
    dcLoad: resistanceRange(branches, port, variables),
    signalLoad: signalLoadRange(branches, port, frequency, variables),
  });
  return {
    ...both(pickupLoadBranches(netlist, chainOf(circuit, state, name), kept)),
    total: both(totalLoadBranches(circuit, state, netlist, name, kept)),
  };
}

/** The harness before the pickups are soldered, and when all is. */
interface Moments {
  readonly before: Netlist;
  readonly finished: Netlist;
}

const readingLimits = (
  { before, finished }: Moments,
  portIn: (netlist: Netlist) => Port,
  variables: readonly ToleranceParameter[],
): ReadingLimits => ({
  disconnected: resistanceRange(before.branches, portIn(before), variables),
  connected: resistanceRange(finished.branches, portIn(finished), variables),
});

function lugLimits({ circuit, variables }: Task, moments: Moments): StateLimits['lugs'] {
  if (!moments.finished.jack) return [];
  return circuit.nets.flatMap((net) => {
    if (net.role === 'ground' || net.lugs.length < 2) return [];
    const lug = probeLug(circuit.kit, net.lugs);
    return [{ net: net.index, lug, ...readingLimits(moments, (one) => lugPort(one, lug), variables) }];
  });
}

/** How far from the nominal peak a drawn one is looked for before the whole range is searched. */
const REACH = 1.5;
/** Relative; a tenth of a hertz at the usual resonances. */
const PRECISION = 2e-5;

function resonanceLimits(
  heard: StateSolver,
  windings: readonly Winding[],
  samples: readonly Factors[],
): ResonanceLimits | undefined {
  const gain = gainOf(heard, windings);
  heard.solver.scale(new Map());
  const nominal = shapeOf(gain).resonance;
  if (!nominal) return undefined;
  const frequencies: number[] = [];
  const heights: number[] = [];
  for (const factors of samples) {
    heard.solver.scale(factors);
    const found = peakNear(gain, nominal.frequency);
    if (!found) continue;
    frequencies.push(found.frequency);
    heights.push(found.height);
  }
  return {
    frequency: sampledRange(frequencies, nominal.frequency),
    height: sampledRange(heights, nominal.height),
    without: samples.length - frequencies.length,
  };
}

function peakNear(gain: (f: number) => number, nominal: number) {
  const [low, high] = [nominal / REACH, nominal * REACH];
  const frequency = highestBetween(gain, low, high, PRECISION);
  // At an end of the reach it is not a peak yet: the whole curve must be looked at.
  if (frequency < low * 1.01 || frequency > high / 1.01) return shapeOf(gain).resonance;
  return { frequency, height: decibels(gain(frequency)) - decibels(gain(PLATEAU)) };
}

const TAIL = 0.025;

function sampledRange(values: readonly number[], nominal: number): SampledRange {
  const sorted = Float64Array.from(values).sort();
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))] ?? nominal;
  return { low: at(TAIL), nominal, high: at(1 - TAIL), method: '95 % of samples, uniform' };
}
