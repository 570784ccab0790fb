/** One reading of an ohmmeter: two probes on a harness, at a setting of its switches and controls. */
import type { Circuit, LugId, State } from '../circuit/circuit.ts';
import { must } from '../common/must.ts';
import { remembered } from '../common/remembered.ts';
import { directResistance } from '../solve/measure.ts';
import { makeNetlist, type Netlist } from '../solve/netlist.ts';
import { knobsAtFull, rolesOf, rotationsAt } from './controls.ts';
import { resistanceRange } from './extremes.ts';
import { toleranceParameters } from './variables.ts';

/** The lugs that the probes are held to; which is which makes no difference. */
export interface Probes {
  readonly from: LugId;
  readonly to: LugId;
}

/** Where the switches stand, by the index of the circuit's state, and the volume controls; all other controls are on 10. */
export interface MeterSetting {
  readonly state: number;
  readonly volume: 10 | 0;
}

/**
 * What a meter shows: a `short`, whatever is below 1 Ω; a `value`; or `open`, as no current flows. Below an ohm a meter's own leads
 * count as much as the harness. Common practice, no source.
 */
type ReadingKind = 'short' | 'value' | 'open';

const SHORT = 1;

export const readingKind = (ohms: number): ReadingKind =>
  ohms < SHORT ? 'short' : Number.isFinite(ohms) ? 'value' : 'open';

/** Ohms; infinite where the meter shows an open circuit. Smallest and largest over tolerances, from 10 to 30 °C. */
export interface ExpectedReading {
  readonly kind: ReadingKind;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

/** Networks of a circuit by state and volume, each made once. */
const netlists = remembered((_: Circuit) => new Map<string, Netlist>());

/**
 * The network of some of a circuit's joints at a setting.
 *
 * @param whole the finished circuit, whose controls have the roles that turning them goes by
 */
export function networkAt(whole: Circuit, some: Circuit, { state, volume }: MeterSetting): Netlist {
  const known = netlists(some);
  const key = `${state} ${volume}`;
  const before = known.get(key);
  if (before) return before;
  const turned = rotationsAt(rolesOf(whole), { ...knobsAtFull, volume });
  const made = makeNetlist(some, stateOf(whole, state), turned);
  known.set(key, made);
  return made;
}

const stateOf = ({ states }: Circuit, index: number): State => must(states[index], `state ${index}`);

const portAt = ({ nodeOf }: Netlist, { from, to }: Probes) => ({
  from: must(nodeOf.get(from), `node of ${from}`),
  to: must(nodeOf.get(to), `node of ${to}`),
});

/** Ohms between the probes. */
export function readingAt(netlist: Netlist, probes: Probes): number {
  const port = portAt(netlist, probes);
  return port.from === port.to ? 0 : directResistance(netlist.branches, port);
}

/** The same with its limits. */
export function expectedAt({ kit }: Circuit, netlist: Netlist, probes: Probes): ExpectedReading {
  const { low, nominal, high } = resistanceRange(
    netlist.branches,
    portAt(netlist, probes),
    parametersOf(kit),
  );
  return { kind: readingKind(nominal), low, nominal, high };
}

/** Whether a meter tells two readings apart, whatever the tolerances. */
export const differs = (one: ExpectedReading, other: ExpectedReading): boolean =>
  one.kind !== other.kind || (one.kind === 'value' && (one.low > other.high || one.high < other.low));

const parametersOf = remembered((kit: Circuit['kit']) => toleranceParameters(kit));
