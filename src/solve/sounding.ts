/**
 * What is heard at the jack in one setting of the switches. It is solved and not traced, so that it holds through whatever
 * parts the signal passes: a pickup sounds where one volt induced in it gives at the jack, all controls at full, more
 * than a hundredth (−40 dB) of what the loudest pickup of that setting gives, at some frequency from 100 Hz to 5 kHz.
 */
import type { Graph, Setting, State } from '../circuit/circuit.ts';
import { isPickup } from '../parts/index.ts';
import { makeNetlist, type Netlist, type PotRotations } from './netlist.ts';
import type { Branch, Winding } from './network.ts';
import { withOutputLoad } from './output.ts';
import { type Complex, Solver } from './solver.ts';

/** Hertz at which the levels of pickups are compared. */
export const LEVEL_FREQUENCY = 1000;

/** Hertz: the third-octave mid-band frequencies from 100 Hz to 5 kHz, exact, base ten (IEC 61260-1, 5.4; from memory). */
export const LISTENED: readonly number[] = Array.from({ length: 18 }, (_, k) => 100 * 10 ** (k / 10));
/** −40 dB of the loudest: what is below is not heard beside it. Common practice, no source. */
export const HEARD = 0.01;
/** −80 dB of the voltage induced: where the loudest pickup gives less, there is no output. Common practice, no source. */
const SILENCE = 1e-4;

/** Volts at the jack per volt induced in a pickup, at each of the frequencies asked for. */
type Transfers = ReadonlyMap<string, readonly Complex[]>;

/** The transfers of every pickup that the network holds, each with one volt in all of its coils. */
export function transfersOf(
  branches: readonly Branch[],
  jack: Netlist['jack'],
  frequencies: readonly number[] = LISTENED,
): Transfers {
  const found = new Map<string, Complex[]>();
  if (!jack || jack.from === jack.to) return found;
  const windings = branches.filter((branch): branch is Winding => branch.kind === 'winding');
  const solver = new Solver(branches, jack);
  for (const frequency of frequencies) {
    const solved = solver.solve(frequency);
    const sums = new Map<string, Complex>();
    for (const winding of windings) {
      if (winding.pickup === undefined) continue;
      const { re, im } = solved ? solver.transfer(winding, frequency) : { re: 0, im: 0 };
      const sum = sums.get(winding.pickup) ?? { re: 0, im: 0 };
      sums.set(winding.pickup, { re: sum.re + re, im: sum.im + im });
    }
    for (const [pickup, sum] of sums) {
      const row = found.get(pickup);
      if (row) row.push(sum);
      else found.set(pickup, [sum]);
    }
  }
  return found;
}

/** Sounding pickups of a setting, in the order written, at each output, and whether tip and sleeve are one node. */
export function solveSounding(
  graph: Graph,
  setting: Setting,
  controls: PotRotations = {},
): Pick<State, 'sounding' | 'shorted' | 'outputs'> {
  const netlist = makeNetlist(graph, setting, controls);
  const branches = withOutputLoad(netlist, graph.kit.outputLoad);
  const found = netlist.outputs.map((port) => transfersOf(branches, port));
  const heard = found.map(audiblePickups);
  const pickups = graph.kit.parts.filter(isPickup).map(({ name }) => name);
  const outputs = outputNames(graph).map((name, i) => ({
    name,
    sounding: pickups.filter((pickup) => heard[i]?.has(pickup)),
    loudest: pickups.filter((pickup) => heard[i]?.has(pickup) && loudestOf(found, pickup) === i),
  }));
  return {
    sounding: pickups.filter((pickup) => heard.some((one) => one.has(pickup))),
    shorted: netlist.outputs.length > 0 && netlist.outputs.every(({ from, to }) => from === to),
    ...(outputs.length > 1 ? { outputs } : {}),
  };
}

const outputNames = ({ lugs }: Graph): readonly string[] =>
  [...lugs.values()].filter(({ role }) => role === 'output').map(({ name }) => name);

/** Number of the output at which a pickup gives most; the first of those alike. */
function loudestOf(found: readonly Transfers[], pickup: string): number {
  const levels = found.map((transfers) =>
    (transfers.get(pickup) ?? []).reduce((sum, one) => sum + magnitudeOf(one), 0),
  );
  return levels.indexOf(Math.max(...levels));
}

/** Of transfers at the frequencies listened to, the pickups that are heard. */
function audiblePickups(transfers: Transfers): ReadonlySet<string> {
  const loudest = LISTENED.map((_, k) =>
    Math.max(0, ...[...transfers.values()].map((row) => magnitudeOf(row[k]))),
  );
  return new Set(
    [...transfers]
      .filter(([, row]) => loudest.some((most, k) => most > SILENCE && magnitudeOf(row[k]) > HEARD * most))
      .map(([pickup]) => pickup),
  );
}

export const magnitudeOf = (value: Complex | undefined): number =>
  value ? Math.hypot(value.re, value.im) : 0;
