/** The tone controls that load the signal in a state. */
import type { Circuit, State } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { is } from '../parts/index.ts';
import { parallelResistanceOf } from '../solve/measure.ts';
import { makeNetlist } from '../solve/netlist.ts';
import { partOf, withoutPickups } from '../solve/network.ts';
import { Solver } from '../solve/solver.ts';
import { rolesOf } from './controls.ts';

/** Less than this share of the load is no load: a control behind a resistor of many times its value. */
const SHARE = 0.05;

/** Names of the tone controls without which the signal load at an output of the jack would be lighter, in the order written. */
export function toneControlsIn(circuit: Circuit, state: State): readonly string[] {
  const pots = circuit.kit.parts.filter((part) => is(part, 'pot'));
  if (pots.length < 2) return [];
  const netlist = makeNetlist(circuit, state);
  const branches = withoutPickups(netlist.branches, () => true);
  const loads = (some: typeof branches): readonly number[] =>
    netlist.outputs.map((port) =>
      parallelResistanceOf(new Solver(some, port), circuit.kit.outputLoad.frequency.value),
    );
  const whole = loads(branches);
  const roles = rolesOf(circuit);
  return pots.flatMap(({ name }) => {
    if (roles.get(name) !== 'tone') return [];
    const without = loads(branches.filter((branch) => partOf(branch) !== name));
    return without.some((load, i) => load > nth(whole, i) * (1 + SHARE)) ? [name] : [];
  });
}
