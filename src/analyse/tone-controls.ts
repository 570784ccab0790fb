/** The tone controls that load the signal in a state. */
import type { Circuit, State } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { controlsOf } from '../parts/index.ts';
import { parallelResistanceOf } from '../solve/measure.ts';
import { makeNetlist } from '../solve/netlist.ts';
import { elementName, withoutPickups } from '../solve/network.ts';
import { Solver } from '../solve/solver.ts';
import { rolesOf } from './controls.ts';

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
