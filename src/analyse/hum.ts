/**
 * Whether a state cancels hum. Hum is a field that is the same in every coil, so that it gives each the same voltage, with a sign that
 * the direction of the winding sets; the magnets do not matter. It is solved at the jack at mains frequency and its harmonics: a
 * state is hum-cancelling where all coils together give less than a quarter (−12 dB) of the one that gives most. Two coils that
 * are each 10 % off, on different sides, leave −15 dB, so that a stricter limit would deny it to matched pairs.
 */
import { type Graph, type State, soundingCoils } from '../circuit/circuit.ts';
import { elementsLike, isPickup, type Pickup } from '../parts/index.ts';
import { makeNetlist } from '../solve/netlist.ts';
import type { Winding } from '../solve/network.ts';
import { withOutputLoad } from '../solve/output.ts';
import { type Complex, Solver } from '../solve/solver.ts';
import { magnitudeOf } from '../solve/sounding.ts';

/** Hertz: mains of both kinds, and harmonics up to where hum turns into buzz. Common practice, no source. */
const FREQUENCIES: readonly number[] = [50, 60, 100, 120, 200, 300, 500, 1000];
/** −12 dB of one coil; no source, see above. */
const CANCELLED = 0.25;

type Row = readonly Complex[];

/**
 * Absent where it hangs on a direction that the kit does not give, or nothing sounds. A pickup that cancels its own hum, as a humbucker does, needs none
 * given; nor does one that hums beside such ones only, which cancels nothing either way.
 */
export function isHumCancelling(graph: Graph, state: State): boolean | undefined {
  const pickups = graph.kit.parts.filter(isPickup).filter((part) => soundingCoils(state, part).length > 0);
  const netlist = makeNetlist(graph, state);
  const { branches, jack } = netlist;
  if (pickups.length === 0 || !jack || jack.from === jack.to) return undefined;
  // Most states need no solving: no coil that hums, or a single one with nothing against it.
  const humming = pickups
    .flatMap((part) => elementsLike(part, 'coil'))
    .filter(({ hum = 1 }) => hum !== 0).length;
  if (humming < 2) return humming === 0;
  const solver = new Solver(withOutputLoad(netlist, graph.kit.outputLoad), jack);
  const windings = branches.filter((branch): branch is Winding => branch.kind === 'winding');
  const solved = FREQUENCIES.map((frequency) =>
    solver.solve(frequency) ? windings.map((one) => solver.transfer(one, frequency)) : undefined,
  );
  const most = solved.map((row) =>
    Math.max(0, ...(row ?? []).map((one, i) => Math.abs(windings[i]?.hum ?? 1) * magnitudeOf(one))),
  );
  const rowOf = (pickup: Pickup): Row =>
    solved.map((row) =>
      (row ?? []).reduce<Complex>(
        (sum, one, i) => {
          const own = windings[i]?.pickup === pickup.name ? signOf(pickup) * (windings[i]?.hum ?? 1) : 0;
          return { re: sum.re + own * one.re, im: sum.im + own * one.im };
        },
        { re: 0, im: 0 },
      ),
    );
  const cancels = (row: Row): boolean =>
    row.every((sum, k) => magnitudeOf(sum) <= CANCELLED * (most[k] ?? 0));
  const unknown = pickups.filter((pickup) => pickup.wind === undefined && !cancels(rowOf(pickup)));
  const others = total(pickups.filter((pickup) => !unknown.includes(pickup)).map(rowOf));
  if (unknown.length === 0) return cancels(others);
  return unknown.length === 1 && cancels(others) ? false : undefined;
}

const signOf = ({ wind }: Pickup): number => (wind === 'anticlockwise' ? -1 : 1);

const total = (rows: readonly Row[]): Row =>
  FREQUENCIES.map((_, k) =>
    rows.reduce<Complex>((sum, row) => ({ re: sum.re + (row[k]?.re ?? 0), im: sum.im + (row[k]?.im ?? 0) }), {
      re: 0,
      im: 0,
    }),
  );
