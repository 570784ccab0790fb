/**
 * Response: volts at the jack per volt induced in a coil, with cable and amplifier connected, for every state.
 *
 * Beside each pickup's own curve stands `together`: one volt induced in every sounding coil at once, in phase. That
 * is the curve a plot samples for a state; two equal coils side by side give the level of one, end to end of two. The coils of
 * one pickup have each their share of its volt.
 */

import { type Circuit, perOutput, type State } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { isPickup, type Pickup } from '../parts/index.ts';
import { makeNetlist, type Netlist, type PotRotations } from '../solve/netlist.ts';
import type { Branch, Winding } from '../solve/network.ts';
import { withOutputLoad } from '../solve/output.ts';
import { type Complex, Solver } from '../solve/solver.ts';
import { pickupSounds, signalOf } from '../solve/sounding.ts';
import { type Knobs, knobSettings, knobsAtFull, type Roles, rolesOf, rotationsAt } from './controls.ts';
import { type CurveShape, type Gain, HIGHEST, LOWEST, logGrid, shapeOf } from './peak.ts';
import { referenceCircuit } from './reference.ts';

export interface SweepOptions {
  /** How many frequencies, evenly spaced on a logarithmic axis. */
  readonly points?: number;
  /** Hertz. */
  readonly from?: number;
  readonly to?: number;
  readonly knobs?: Knobs;
}

export interface Curve {
  /** Volts per volt at each frequency of the sweep. */
  readonly gain: readonly number[];
  readonly shape: CurveShape;
}

export interface PickupCurve extends Curve {
  readonly pickup: string;
  /** The same pickup in the plain harness it was made for, at the same knob settings. */
  readonly reference: Curve;
  readonly difference: ShapeDifference;
}

/** What a player hears of the difference to the reference; absent where either curve has no peak. */
export interface ShapeDifference {
  /** Hertz, and per cent of the reference's frequency. */
  readonly frequency?: number;
  readonly percent?: number;
  /** Decibels that the peak is higher than the reference's, each above its own plateau. */
  readonly height?: number;
}

export interface StateResponse {
  readonly index: number;
  /** As it is heard at one output: a jack that has several gives a response for each. */
  readonly state: State;
  readonly knobs: Knobs;
  /** One a sounding pickup, in the order written. */
  readonly pickups: readonly PickupCurve[];
  /** Absent when nothing sounds. */
  readonly together?: Curve;
}

export interface FrequencyResponse {
  readonly frequencies: readonly number[];
  readonly states: readonly StateResponse[];
}

/** One state made ready for solving: the network at the jack and the coils of the pickups that sound. */
export interface StateSolver {
  readonly solver: Solver;
  readonly windings: readonly Winding[];
}

/** The network of a state as played; `undefined` when nothing can sound. */
export const makeStateSolver = (
  circuit: Circuit,
  state: State,
  controls: PotRotations = {},
): StateSolver | undefined => solverOf(circuit, state, makeNetlist(circuit, state, controls));

/** The same of a network that is at hand, with its branches as they are changed. */
export function solverOf(
  { kit }: Circuit,
  state: State,
  netlist: Netlist,
  changed: (branches: readonly Branch[]) => readonly Branch[] = (branches) => branches,
): StateSolver | undefined {
  if (!netlist.jack) return undefined;
  const branches = changed(withOutputLoad(netlist, kit.outputLoad));
  const sounds = pickupSounds(state);
  const windings = branches.filter(
    (branch): branch is Winding => branch.kind === 'winding' && sounds(branch),
  );
  return windings.length === 0 ? undefined : { solver: new Solver(branches, netlist.jack), windings };
}

/** Volts at the jack with one volt in each pickup that `windings` are of, all in phase; complex. */
export const transferAt = (
  { solver }: StateSolver,
  windings: readonly Winding[],
  frequency: number,
): Complex =>
  solver.shorted || !solver.solve(frequency) ? { re: 0, im: 0 } : transferOf(solver, windings, frequency);

/** The size of that transfer as a function of frequency. */
export const gainOf =
  ({ solver }: StateSolver, windings: readonly Winding[]): Gain =>
  (frequency) =>
    solver.shorted || !solver.solve(frequency) ? 0 : sumOf(solver, windings, frequency);

/** Response of every state at one setting of the knobs; 400 points from 20 Hz to 20 kHz unless told otherwise. */
export function solveResponse(circuit: Circuit, options: SweepOptions = {}): FrequencyResponse {
  const { points = 400, from = LOWEST, to = HIGHEST, knobs = knobsAtFull } = options;
  const frequencies = logGrid(points, from, to);
  return { frequencies, states: respond(circuit, frequencies, [knobs]) };
}

/** The shapes at every knob setting of the handbook's table, without the curves. */
export const solveKnobSettings = (circuit: Circuit): readonly StateResponse[] =>
  respond(circuit, [], knobSettings);

function respond(
  circuit: Circuit,
  frequencies: readonly number[],
  steps: readonly Knobs[],
): readonly StateResponse[] {
  const roles = rolesOf(circuit);
  const pickups = circuit.kit.parts.filter(isPickup);
  const references = steps.map(
    (knobs) =>
      new Map(
        pickups.map((pickup) => [pickup.name, referenceCurve(circuit, pickup, frequencies, knobs)] as const),
      ),
  );
  return circuit.states.flatMap((state, index) =>
    heardViews(state).flatMap((view) =>
      steps.map((knobs, k) =>
        inState(circuit, view, index, frequencies, knobs, roles, references[k] ?? new Map()),
      ),
    ),
  );
}

/** The outputs of a state at which something is heard; one of them where nothing is. */
function heardViews(state: State): readonly State[] {
  const [first = state, ...others] = perOutput(state);
  const heard = [first, ...others].filter(({ sounding }) => sounding.length > 0);
  return heard.length > 0 ? heard : [first];
}

function inState(
  circuit: Circuit,
  state: State,
  index: number,
  frequencies: readonly number[],
  knobs: Knobs,
  roles: Roles,
  references: ReadonlyMap<string, Curve>,
): StateResponse {
  const heard = makeStateSolver(circuit, state, rotationsAt(roles, knobs));
  if (!heard) return { index, state, knobs, pickups: [] };
  const { windings } = heard;
  const own = state.sounding.map((pickup) => windings.filter((winding) => winding.pickup === pickup));
  const [together, ...each] = curvesOf(heard, [windings, ...own], frequencies);
  const pickups = state.sounding.flatMap((pickup, i): PickupCurve[] => {
    const [curve, reference] = [each[i], references.get(pickup)];
    if (!curve || !reference) return [];
    return [{ pickup, ...curve, reference, difference: shapeDifference(curve.shape, reference.shape) }];
  });
  return { index, state, knobs, pickups, ...(together ? { together } : {}) };
}

/** A curve for each group of windings; each frequency is solved once for all of them. */
function curvesOf(
  heard: StateSolver,
  groups: readonly (readonly Winding[])[],
  frequencies: readonly number[],
): readonly Curve[] {
  const gains = sweep(heard, groups, frequencies);
  return groups.map((group, i) => ({ gain: nth(gains, i), shape: shapeOf(gainOf(heard, group)) }));
}

/** Gain of each group of windings at each frequency. */
export function sweep(
  { solver }: StateSolver,
  groups: readonly (readonly Winding[])[],
  frequencies: readonly number[],
): readonly (readonly number[])[] {
  const gains = groups.map(() => new Array<number>(frequencies.length).fill(0));
  if (solver.shorted) return gains;
  frequencies.forEach((frequency, k) => {
    if (!solver.solve(frequency)) return;
    groups.forEach((group, i) => {
      const row = gains[i];
      if (row) row[k] = sumOf(solver, group, frequency);
    });
  });
  return gains;
}

function sumOf(solver: Solver, windings: readonly Winding[], frequency: number): number {
  const { re, im } = transferOf(solver, windings, frequency);
  return Math.sqrt(re * re + im * im);
}

function transferOf(solver: Solver, windings: readonly Winding[], frequency: number): Complex {
  let re = 0;
  let im = 0;
  for (const winding of windings) {
    const part = signalOf(solver, winding, frequency);
    re += part.re;
    im += part.im;
  }
  return { re, im };
}

function referenceCurve(
  circuit: Circuit,
  pickup: Pickup,
  frequencies: readonly number[],
  knobs: Knobs,
): Curve {
  const plain = referenceCircuit(pickup, circuit.kit.outputLoad);
  const state = plain.states[0];
  const heard = state && makeStateSolver(plain, state, rotationsAt(rolesOf(plain), knobs));
  const curve = heard && curvesOf(heard, [heard.windings], frequencies)[0];
  return curve ?? { gain: frequencies.map(() => 0), shape: shapeOf(() => 0) };
}

/** How a curve's peak lies to another's. */
function shapeDifference(shape: CurveShape, reference: CurveShape): ShapeDifference {
  const [own, other] = [shape.resonance, reference.resonance];
  if (!own || !other) return {};
  return {
    frequency: own.frequency - other.frequency,
    percent: (own.frequency / other.frequency - 1) * 100,
    height: own.height - other.height,
  };
}
