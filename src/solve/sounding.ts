/**
 * What is heard at the jack in one setting of the switches. It is solved and not traced, so that it holds through whatever
 * parts the signal passes: a coil sounds where one volt induced in its pickup gives at the jack, all controls at full, more
 * than a hundredth (−40 dB) of what the loudest coil of that setting gives, at some frequency from 100 Hz to 5 kHz; and a
 * pickup sounds where one of its coils does. What a coil gives only through the field of the coil beside it does not count:
 * a humbucker with one coil shorted is split, though a sixth of the other's signal comes through.
 */
import type { Graph, Setting, State } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { elementsLike, isPickup } from '../parts/index.ts';
import { makeNetlist, type Netlist, type PotRotations } from './netlist.ts';
import { type Branch, coilName, type Winding, withoutCoupling } from './network.ts';
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

/** Volts at the jack per volt induced in a pickup, at each of the frequencies asked for; by pickup, or by coil (`neck.coil`). */
type Transfers = ReadonlyMap<string, readonly Complex[]>;

/** Whether a winding counts. */
type Counts = (winding: Winding) => boolean;

/** The transfers of every pickup that the network holds, each with one volt in all of its coils together. */
export const transfersOf = (
  branches: readonly Branch[],
  jack: Netlist['jack'],
  frequencies: readonly number[] = LISTENED,
  counts?: Counts,
): Transfers => sums(branches, jack, frequencies, ({ pickup }) => pickup, counts);

/** The same by coil, each with its share of that volt. */
export const coilTransfersOf = (
  branches: readonly Branch[],
  jack: Netlist['jack'],
  frequencies: readonly number[] = LISTENED,
  counts?: Counts,
): Transfers =>
  sums(branches, jack, frequencies, ({ pickup, of }) => (pickup === undefined ? undefined : of), counts);

function sums(
  branches: readonly Branch[],
  jack: Netlist['jack'],
  frequencies: readonly number[],
  keyOf: (winding: Winding) => string | undefined,
  counts: Counts = () => true,
): Transfers {
  const found = new Map<string, Complex[]>();
  if (!jack || jack.from === jack.to) return found;
  const windings: { readonly winding: Winding; readonly row: Complex[] }[] = [];
  for (const winding of branches) {
    if (winding.kind !== 'winding' || !counts(winding)) continue;
    const key = keyOf(winding);
    if (key === undefined) continue;
    const row = found.get(key) ?? frequencies.map(() => ({ re: 0, im: 0 }));
    found.set(key, row);
    windings.push({ winding, row });
  }
  const solver = new Solver(branches, jack);
  for (const [k, frequency] of frequencies.entries()) {
    if (!solver.solve(frequency)) continue;
    for (const { winding, row } of windings) {
      const { re, im } = signalOf(solver, winding, frequency);
      const sum = nth(row, k);
      row[k] = { re: sum.re + re, im: sum.im + im };
    }
  }
  return found;
}

/** Volts at the port with a winding's share of one volt in its whole pickup; the network solved at that frequency. */
export function signalOf(solver: Solver, winding: Winding, frequency: number): Complex {
  const { re, im } = solver.transfer(winding, frequency);
  const share = winding.signal ?? 1;
  return { re: share * re, im: share * im };
}

/**
 * Whether a winding is of a pickup that sounds in a state. How loud that is hangs on all of its coils: what the strings induce in one
 * that is shorted works against the other, through the field.
 */
export const pickupSounds =
  ({ sounding }: Pick<State, 'sounding'>): Counts =>
  ({ pickup }) =>
    pickup !== undefined && sounding.includes(pickup);

/** Whether a winding itself sounds in a state, through its leads. */
export const windingSounds =
  ({ sounding, coils }: Pick<State, 'sounding' | 'coils'>): Counts =>
  ({ pickup, of }) =>
    pickup !== undefined &&
    sounding.includes(pickup) &&
    (coils?.[pickup]?.some(({ id }) => coilName(pickup, id) === of) ?? true);

/** Sounding pickups of a setting, in the order written, at each output, and whether tip and sleeve are one node. */
export function solveSounding(
  graph: Graph,
  setting: Setting,
  controls: PotRotations = {},
): Pick<State, 'sounding' | 'coils' | 'shorted' | 'outputs'> {
  const netlist = makeNetlist(graph, setting, controls);
  const played = withoutCoupling(withOutputLoad(netlist, graph.kit.outputLoad));
  const found = netlist.outputs.map((port) => coilTransfersOf(played, port));
  const heard = found.map(audibleCoils);
  const outputs = outputNames(graph).map((name, i) => {
    const { sounding, ...coils } = heardOf(graph, (coil) => heard[i]?.has(coil) ?? false);
    const loudest = sounding.filter((pickup) => loudestOf(found, pickup) === i);
    return { name, sounding, ...coils, loudest };
  });
  return {
    ...heardOf(graph, (coil) => heard.some((one) => one.has(coil))),
    shorted: netlist.outputs.length > 0 && netlist.outputs.every(({ from, to }) => from === to),
    ...(outputs.length > 1 ? { outputs } : {}),
  };
}

/** The pickups of which some coil is heard, and the coils of those of which not every one is. */
function heardOf(graph: Graph, isHeard: (coil: string) => boolean): Pick<State, 'sounding' | 'coils'> {
  const pickups = graph.kit.parts.filter(isPickup).flatMap((part) => {
    const all = elementsLike(part, 'coil').map(({ id, called = id }) => ({ id, called }));
    const own = all.filter(({ id }) => isHeard(coilName(part.name, id)));
    return own.length === 0 ? [] : [{ name: part.name, own, whole: own.length === all.length }];
  });
  const partial = pickups.filter(({ whole }) => !whole).map(({ name, own }) => [name, own] as const);
  return {
    sounding: pickups.map(({ name }) => name),
    ...(partial.length === 0 ? {} : { coils: Object.fromEntries(partial) }),
  };
}

const outputNames = ({ lugs }: Graph): readonly string[] =>
  [...lugs.values()].filter(({ role }) => role === 'output').map(({ name }) => name);

/** Number of the output at which a pickup's coils give most; the first of those alike. */
function loudestOf(found: readonly Transfers[], pickup: string): number {
  const levels = found.map((transfers) =>
    [...transfers].reduce(
      (sum, [coil, row]) =>
        coil.startsWith(`${pickup}.`) ? sum + row.reduce((all, one) => all + magnitudeOf(one), 0) : sum,
      0,
    ),
  );
  return levels.indexOf(Math.max(...levels));
}

/** Of transfers at the frequencies listened to, the coils that are heard. */
function audibleCoils(transfers: Transfers): ReadonlySet<string> {
  const loudest = LISTENED.map((_, k) =>
    Math.max(0, ...[...transfers.values()].map((row) => magnitudeOf(row[k]))),
  );
  return new Set(
    [...transfers]
      .filter(([, row]) => loudest.some((most, k) => most > SILENCE && magnitudeOf(row[k]) > HEARD * most))
      .map(([coil]) => coil),
  );
}

export const magnitudeOf = (value: Complex | undefined): number =>
  value ? Math.hypot(value.re, value.im) : 0;
