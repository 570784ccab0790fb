/**
 * Which pot is a volume and which a tone. A name proves nothing, so it is found from what
 * turning each pot does, solved in every state with the others at full; a kit may also say it:
 *
 * - **volume**: turned down, it takes a coil's direct voltage at the jack to less than a tenth;
 * - **tone**: it leaves the direct voltage, and takes at least 1 dB off somewhere from 500 Hz to 10 kHz: its path to ground
 *   holds a capacitor;
 * - **blend**: at each end it leaves another pickup, and is at full in the middle;
 * - **other**: none of these, in any state (a pot not connected).
 */
import type { Circuit } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { remembered } from '../common/remembered.ts';
import { type Control, controlsOf, elementsLike } from '../parts/index.ts';
import type { ControlRole } from '../parts/kind.ts';
import { blends } from '../solve/full.ts';
import { makeNetlist, type PotRotations } from '../solve/netlist.ts';
import { type Branch, coilName, type Winding } from '../solve/network.ts';
import { withOutputLoad } from '../solve/output.ts';
import { Solver } from '../solve/solver.ts';

/** Settings as printed on a knob, 0 to 10. */
export interface Knobs {
  readonly volume: number;
  readonly tone: number;
}

export const knobsAtFull: Knobs = { volume: 10, tone: 10 };

/** The role of every control by its id, in the order written. */
export type Roles = ReadonlyMap<string, ControlRole>;

export const rolesOf: (circuit: Circuit) => Roles = remembered((circuit) => {
  const controls = circuit.kit.parts.flatMap(controlsOf);
  return new Map(controls.map((control) => [control.id, control.role ?? roleNow(circuit, control)]));
});

/** Rotations for knob settings; controls that are neither volume nor tone stay where they are. */
export function rotationsAt(roles: Roles, knobs: Knobs): PotRotations {
  const turned = [...roles].flatMap(([name, role]) =>
    role === 'other' || role === 'blend' ? [] : [[name, knobs[role] / 10] as const],
  );
  return Object.fromEntries(turned);
}

/** The knob settings of the handbook's table: each control turned down alone, the other at full. */
export const knobSettings: readonly Knobs[] = [
  knobsAtFull,
  ...[7, 5, 2, 0].map((tone): Knobs => ({ volume: 10, tone })),
  ...[7, 5, 2, 0].map((volume): Knobs => ({ volume, tone: 10 })),
];

/** Hertz. */
export const PROBES: readonly number[] = [500, 1000, 2000, 3000, 5000, 7000, 10_000];
const ONE_DECIBEL = 10 ** (-1 / 20);

const roleNow = (circuit: Circuit, control: Control): ControlRole =>
  circuit.fullAt?.get(control.id) === 'middle' ? 'blend' : turnedRole(circuit, control);

/** By the circuit alone, whatever the kit says. */
export const solvedRole = (circuit: Circuit, control: Control): ControlRole =>
  blends(circuit, control) ? 'blend' : turnedRole(circuit, control);

function turnedRole(circuit: Circuit, { id: pot }: Control): ControlRole {
  const full = gainsAtFull(circuit).flat();
  const zero = gainsAtZero(circuit, pot).flat();
  const pairs = full.map((row, i) =>
    row.map((gain, k): readonly [number, number] => [gain, zero[i]?.[k] ?? gain]),
  );
  if (pairs.some(([direct]) => direct !== undefined && Math.min(...direct) < 0.1 * Math.max(...direct)))
    return 'volume';
  const duller = pairs.some((row) =>
    row.slice(1).some(([at10, at0]) => Math.min(at10, at0) < ONE_DECIBEL * Math.max(at10, at0)),
  );
  return duller ? 'tone' : 'other';
}

/** A row for every coil at each output: gain at direct current, then at each probe. */
export type Gains = readonly (readonly number[])[];

/** The rows of each state, all controls at full. */
export const gainsAtFull = remembered((circuit: Circuit): readonly Gains[] => gainsByState(circuit, {}));

/** The same with one control at zero. */
export function gainsAtZero(circuit: Circuit, pot: string): readonly Gains[] {
  const known = zeroesOf(circuit);
  const rows = known.get(pot) ?? gainsByState(circuit, { [pot]: 0 });
  known.set(pot, rows);
  return rows;
}

const zeroesOf = remembered((_: Circuit) => new Map<string, readonly Gains[]>());

/** The rows of all states, with controls where they are said to stand, and with some branches as they are changed. */
export const gains = (
  circuit: Circuit,
  controls: PotRotations,
  changed?: (branch: Branch) => Branch,
): Gains => gainsByState(circuit, controls, changed).flat();

function gainsByState(
  circuit: Circuit,
  controls: PotRotations,
  changed: (branch: Branch) => Branch = (branch) => branch,
): readonly Gains[] {
  const names = circuit.kit.parts.flatMap((part) =>
    elementsLike(part, 'coil').map(({ id }) => coilName(part.name, id)),
  );
  return circuit.states.map((state) => {
    const netlist = makeNetlist(circuit, state, controls);
    const branches = withOutputLoad(netlist, circuit.kit.outputLoad).map(changed);
    const coils = new Map(
      netlist.branches.flatMap((branch) => (branch.kind === 'winding' ? [[branch.of, branch] as const] : [])),
    );
    // A coil that both settings short out has no branch; keeping rows by pickup keeps the two lists in step.
    const heard = names.map((name) => coils.get(name));
    return netlist.outputs.flatMap((port) => {
      const direct = gainsIn(new Solver(branches, port, { direct: true }), heard, 0);
      const full = new Solver(branches, port);
      const probed = PROBES.map((frequency) => gainsIn(full, heard, frequency));
      return names.map((_, i) => [direct, ...probed].map((row) => nth(row, i)));
    });
  });
}

/** Of each coil; 0 of one that is not there. */
function gainsIn(
  solver: Solver,
  coils: readonly (Winding | undefined)[],
  frequency: number,
): readonly number[] {
  if (solver.shorted || !solver.solve(frequency)) return coils.map(() => 0);
  return coils.map((coil) => {
    if (!coil) return 0;
    const { re, im } = solver.transfer(coil, frequency);
    return Math.hypot(re, im);
  });
}
