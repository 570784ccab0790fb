/** The tone controls of a kit: which load the signal in a state, and which act on a pickup in it. */
import type { Circuit, State } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { controlsOf, elementsLike } from '../parts/index.ts';
import { parallelResistanceOf } from '../solve/measure.ts';
import { makeNetlist } from '../solve/netlist.ts';
import { elementName, withoutPickups } from '../solve/network.ts';
import { Solver } from '../solve/solver.ts';
import { gainsAtFull, gainsAtZero, rolesOf } from './controls.ts';

/** Less than this share of the load is no load: a control behind a resistor of many times its value. */
const SHARE = 0.05;

/**
 * Names of the tone controls without which the signal load at an output of the jack would be lighter, in the order written; of several
 * outputs those at the one that most of them load, since what loads the one does not load the other.
 */
export function toneControlsIn(circuit: Circuit, state: State): readonly string[] {
  const controls = circuit.kit.parts.flatMap(controlsOf);
  if (controls.length < 2) return [];
  const netlist = makeNetlist(circuit, state);
  const branches = withoutPickups(netlist.branches, () => true);
  const loads = (some: typeof branches): readonly number[] =>
    netlist.outputs.map((port) =>
      parallelResistanceOf(new Solver(some, port), circuit.kit.outputLoad.frequency.value),
    );
  const whole = loads(branches);
  const roles = rolesOf(circuit);
  const lighter = controls.flatMap((control) => {
    if (roles.get(control.id) !== 'tone') return [];
    const own = new Set(control.tracks.map((track) => elementName(control.part, track)));
    const without = loads(branches.filter(({ of }) => !own.has(of)));
    return [{ id: control.id, at: without.map((load, i) => load > nth(whole, i) * (1 + SHARE)) }];
  });
  return whole
    .map((_, i) => lighter.filter(({ at }) => at[i] === true).map(({ id }) => id))
    .reduce((most, some) => (some.length > most.length ? some : most), []);
}

/** Whether a kit has a tone control at all. */
export const hasTone = (circuit: Circuit): boolean => [...rolesOf(circuit).values()].includes('tone');

/** What takes a decibel somewhere is heard (common practice, no source); 40 dB below what a coil gives at its own output it is not heard there. */
const HEARD = 10 ** (-1 / 20);
const SILENT = 0.01;

/**
 * For a state, by each of its sounding pickups the tone controls that act on it, in the order written: turned from 10 to 0, all others on
 * 10, they take at least a decibel of it at the jack somewhere from 500 Hz to 10 kHz.
 *
 * @param index into the circuit's states
 */
export function tonesByPickup(circuit: Circuit, index: number): ReadonlyMap<string, readonly string[]> {
  const tones = [...rolesOf(circuit)].flatMap(([id, role]) => (role === 'tone' ? [id] : []));
  const coils = circuit.kit.parts.flatMap((part) => elementsLike(part, 'coil').map(() => part.name));
  const full = nth(gainsAtFull(circuit), index);
  // A row for every coil at each output, direct current first.
  const probed = full.map((row) => row.slice(1));
  const loudest = Math.max(...probed.flat());
  const acts = (id: string, pickup: string): boolean => {
    const zero = nth(gainsAtZero(circuit, id), index);
    return probed.some(
      (row, i) =>
        coils[i % coils.length] === pickup &&
        row.some((gain, k) => gain > SILENT * loudest && nth(nth(zero, i), k + 1) < HEARD * gain),
    );
  };
  return new Map(
    nth(circuit.states, index).sounding.map((pickup) => [pickup, tones.filter((id) => acts(id, pickup))]),
  );
}
