/**
 * How the pickups that sound together are joined, found by solving at 1 kHz with all controls at full.
 *
 * - **In series or parallel**: of two pickups, the one is shorted and then taken out. In series a short lets the other's
 *   signal pass and a gap stops it; in parallel it is the other way round. So this holds with padding resistors, treble
 *   bleeds and whatever else lies beside them, where a path could not be traced. Every part counts with the size of its
 *   impedance only: a capacitor and a winding in resonance would pass for a gap, or for a short.
 * - **Out of phase**: the voltages that the two give at the jack have opposite signs, in the same network of sizes: near the
 *   resonance of a winding with a capacitor in its path the sign is the other for a few hundred hertz, and says nothing of
 *   which lead goes where.
 * - **Silent together**: with one volt in each, what reaches the jack is below −40 dB of the louder one everywhere.
 */
import type { Graph, State } from '../circuit/circuit.ts';
import { remembered } from '../common/remembered.ts';
import { isPickup, type Pickup } from '../parts/index.ts';
import { makeNetlist, type Netlist } from '../solve/netlist.ts';
import {
  type Branch,
  joinNodes,
  type Winding,
  withoutCoils,
  withoutCoupling,
  withoutPickups,
} from '../solve/network.ts';
import { withOutputLoad } from '../solve/output.ts';
import type { Complex } from '../solve/solver.ts';
import {
  coilTransfersOf,
  HEARD,
  LEVEL_FREQUENCY,
  LISTENED,
  magnitudeOf,
  pickupSounds,
  transfersOf,
  windingSounds,
} from '../solve/sounding.ts';
import { decibels } from './peak.ts';

/** One sounding pickup beside the others of its state. */
export interface Relation {
  /** Decibels at 1 kHz, 0 or less: below the loudest pickup of the state; of one that sounds alone, the state's output. */
  readonly level: number;
  /** A positive voltage in the coil gives a negative one at the jack: its leads are exchanged. */
  readonly reversed: boolean;
  /** Names of the pickups it sounds with, in series and in parallel, and those of them it is out of phase with. */
  readonly series: readonly string[];
  readonly parallel: readonly string[];
  readonly outOfPhase: readonly string[];
  /** Of a pickup that sounds with two coils of its own: how they are joined, and whether they work against each other. */
  readonly coils?: { readonly joined: 'series' | 'parallel'; readonly outOfPhase: boolean };
}

interface Relations {
  /** By pickup, in the order written. */
  readonly of: ReadonlyMap<string, Relation>;
  /**
   * Decibels at 1 kHz, 0 or less: how far the output is below that of the reference harness, for the pickup that loses
   * least on its way to the jack, those in parallel to it taken out.
   */
  readonly output: number;
  /** Two or more sound each by itself, and cancel one another. */
  readonly silentTogether: boolean;
}

/**
 * Names of the pickups in series with each, of those that sound in a state.
 *
 * @returns what depends on the circuit and the state alone, and is asked for again and again
 */
export const chainsOf = (graph: Graph, state: State): ReadonlyMap<string, readonly string[]> =>
  chainsIn(graph)(state);

const chainsIn = remembered((graph: Graph) =>
  remembered((state: State) => {
    const netlist = makeNetlist(graph, state);
    const sizes = magnitudesOnly(withOutputLoad(netlist, graph.kit.outputLoad));
    const names = soundingIn(graph, state).map(({ name }) => name);
    const inSeries = seriesPairs(sizes, netlist.jack, names);
    return new Map(
      names.map((name) => [name, names.filter((other) => other !== name && inSeries(name, other))] as const),
    );
  }),
);

const soundingIn = ({ kit }: Graph, { sounding }: State): readonly Pickup[] =>
  kit.parts.filter((part): part is Pickup => isPickup(part) && sounding.includes(part.name));

/** @param referenceLevel volts at the jack per volt at 1 kHz in the pickup's reference harness */
export function relationsIn(
  graph: Graph,
  state: State,
  referenceLevel: (pickup: Pickup) => number,
): Relations {
  const pickups = soundingIn(graph, state);
  const netlist = makeNetlist(graph, state);
  const branches = withOutputLoad(netlist, graph.kit.outputLoad);
  const heard = windingSounds(state);
  const whole = pickupSounds(state);
  const at = transfersAt(branches, netlist.jack, whole);
  const sizes = magnitudesOnly(branches);
  const sign = transfersAt(sizes, netlist.jack);
  const loudest = Math.max(...pickups.map(({ name }) => magnitudeOf(at(name))));
  const inSeries = chainsOf(graph, state);
  const chains = new Map(
    pickups.map(({ name }) => {
      const others = pickups.filter((one) => one.name !== name).map((one) => one.name);
      const series = inSeries.get(name) ?? [];
      return [name, { others, series, parallel: others.filter((other) => !series.includes(other)) }] as const;
    }),
  );
  const output = down(
    Math.max(
      ...pickups.map((pickup) => {
        const parallel = chains.get(pickup.name)?.parallel ?? [];
        return alone(branches, netlist.jack, whole, pickup.name, parallel) / referenceLevel(pickup);
      }),
    ),
  );
  const of = new Map(
    pickups.map(({ name }): [string, Relation] => {
      const { others = [], series = [], parallel = [] } = chains.get(name) ?? {};
      return [
        name,
        {
          level: others.length === 0 ? output : down(magnitudeOf(at(name)) / loudest),
          reversed: (sign(name)?.re ?? 0) < 0,
          series,
          parallel,
          outOfPhase: others.filter((other) => opposite(sign(name), sign(other))),
          ...coilsJoined(sizes, netlist.jack, heard, name),
        },
      ];
    }),
  );
  const silentTogether = cancel(branches, netlist.jack, heard);
  return { of, output: pickups.length === 0 ? 0 : output, silentTogether };
}

/** A share in decibels, 0 at most; two alike differ by rounding only, and then neither is down. */
function down(share: number): number {
  const level = decibels(share);
  return level > -1e-9 ? 0 : level;
}

type Port = Netlist['jack'];
type Heard = (winding: Winding) => boolean;

const transfersAt = (branches: readonly Branch[], jack: Port, heard?: Heard) => {
  const found = transfersOf(branches, jack, [LEVEL_FREQUENCY], heard);
  return (pickup: string): Complex | undefined => found.get(pickup)?.[0];
};

const opposite = (a: Complex | undefined, b: Complex | undefined): boolean =>
  a !== undefined && b !== undefined && a.re * b.re < 0;

/** What a pickup gives with those in parallel to it taken out. */
const alone = (
  branches: readonly Branch[],
  jack: Port,
  heard: Heard,
  name: string,
  parallel: readonly string[],
): number =>
  magnitudeOf(
    transfersAt(
      withoutPickups(branches, (one) => parallel.includes(one)),
      jack,
      heard,
    )(name),
  );

/** A network in which nothing can resonate: resistances of the size that the impedances have at 1 kHz, and no coupling. */
const magnitudesOnly = (branches: readonly Branch[]): readonly Branch[] =>
  withoutCoupling(branches).map((branch): Branch => {
    const { of, a, b, pickup, coil } = branch;
    const ends = {
      of,
      a,
      b,
      ...(pickup === undefined ? {} : { pickup }),
      ...(coil === undefined ? {} : { coil }),
    };
    const omega = 2 * Math.PI * LEVEL_FREQUENCY;
    if (branch.kind === 'capacitor') return { kind: 'resistor', ...ends, ohms: 1 / (omega * branch.farads) };
    if (branch.kind === 'resistor') return branch;
    const ohms = Math.hypot(branch.ohms, omega * branch.henries);
    return { kind: 'winding', ...ends, ohms, henries: 0, signal: branch.signal ?? 1 };
  });

/** Whether a pickup has another one in its chain: that one shorted lets more of its signal pass than that one taken out. */
function seriesPairs(branches: readonly Branch[], jack: Port, pickups: readonly string[]) {
  const pairs = new Set<string>();
  for (const other of pickups.length < 2 ? [] : pickups) {
    const gap = transfersAt(
      withoutPickups(branches, (one) => one === other),
      jack,
    );
    const short = transfersOfShorted(branches, jack, other);
    for (const name of pickups)
      if (magnitudeOf(short(name)) > magnitudeOf(gap(name))) pairs.add(`${name} ${other}`);
  }
  return (own: string, other: string): boolean => pairs.has(`${own} ${other}`);
}

/** The transfers with all coils of one pickup shorted. */
const transfersOfShorted = (branches: readonly Branch[], jack: Port, pickup: string) => {
  const { branches: rest, port } = shorted(branches, jack, (one) => one.pickup === pickup);
  return transfersAt(rest, port);
};

/** The network with some of its windings shorted. */
function shorted(branches: readonly Branch[], jack: Port, which: Heard) {
  let rest = branches;
  let port = jack;
  const next = (): Winding | undefined =>
    rest.find((branch): branch is Winding => branch.kind === 'winding' && which(branch));
  for (let coil = next(); coil !== undefined; coil = next()) {
    const { a, b } = coil;
    rest = joinNodes(rest, a, b);
    const moved = (node: number): number => (node === b ? a : node);
    port = port && { from: moved(port.from), to: moved(port.to) };
  }
  return { branches: rest, port };
}

/** How the sounding coils of one pickup are joined to one another; nothing where it sounds with one. */
function coilsJoined(
  branches: readonly Branch[],
  jack: Port,
  heard: Heard,
  pickup: string,
): Pick<Relation, 'coils'> {
  const sizes = (some: readonly Branch[], port: Port) =>
    coilTransfersOf(some, port, [LEVEL_FREQUENCY], heard);
  const all = sizes(branches, jack);
  const own = branches.flatMap((branch) =>
    branch.kind === 'winding' && branch.pickup === pickup && heard(branch) ? [branch.of] : [],
  );
  const [first, second] = own;
  if (first === undefined || second === undefined) return {};
  const size = (found: ReturnType<typeof sizes>): number => magnitudeOf(found.get(first)?.[0]);
  const short = shorted(branches, jack, ({ of }) => of === second);
  const gap = withoutCoils(branches, (coil) => coil === second);
  const joined = size(sizes(short.branches, short.port)) > size(sizes(gap, jack)) ? 'series' : 'parallel';
  return { coils: { joined, outOfPhase: opposite(all.get(first)?.[0], all.get(second)?.[0]) } };
}

/** Whether two or more coils give hardly anything together, though each does by itself. */
function cancel(branches: readonly Branch[], jack: Port, heard: Heard): boolean {
  const rows = [...coilTransfersOf(branches, jack, LISTENED, heard).values()];
  return (
    rows.length > 1 &&
    LISTENED.every((_, k) => {
      const each = rows.map((row) => row[k] ?? { re: 0, im: 0 });
      const sum = each.reduce((all, one) => ({ re: all.re + one.re, im: all.im + one.im }));
      return magnitudeOf(sum) <= HEARD * Math.max(...each.map(magnitudeOf));
    })
  );
}
