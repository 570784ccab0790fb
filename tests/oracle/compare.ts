/** The program's figures for one circuit and control setting, paired with the jobs that check them. */

import { rolesOf, rotationsAt } from '../../src/analyse/controls.ts';
import { solveLoads } from '../../src/analyse/loads.ts';
import { readMeter } from '../../src/analyse/meter.ts';
import { makeStateSolver, transferAt } from '../../src/analyse/response.ts';
import { stepsOf } from '../../src/annotate/steps.ts';
import type { Circuit, State } from '../../src/circuit/circuit.ts';
import { isPickup } from '../../src/parts/index.ts';
import { loadsOf } from '../../src/solve/measure.ts';
import { makeNetlist } from '../../src/solve/netlist.ts';
import type { Port } from '../../src/solve/network.ts';
import { withoutPickups } from '../../src/solve/network.ts';
import { type Line, type OwnNetlist, ownNetlist } from './own-netlist.ts';
import { type Complex, type Job, type Run, TIE } from './spice.ts';

export interface Check {
  readonly what: string;
  readonly job: Job;
  /** The worst relative error over the run. */
  readonly error: (frequencies: readonly number[], result: readonly Complex[]) => number;
}

/** A direct resistance or 1/Re(Y), as ngspice gives it, against ours. */
function loadError(ours: number, z: Complex | undefined, shorted: boolean): number {
  if (!z) return Infinity;
  if (shorted || ours === 0) return shorted && ours === 0 ? 0 : Infinity;
  const conductance = z.re / (z.re * z.re + z.im * z.im);
  // Conductances are compared, where the ties' own share (some 1e-14 S) can be allowed for.
  const own = ours === Infinity ? 0 : 1 / ours;
  return Math.abs(conductance - own) <= 20 / TIE ? 0 : Math.abs(own / conductance - 1);
}

const at = (frequencies: readonly number[], wanted: number): number =>
  frequencies.findIndex((f) => Math.abs(f / wanted - 1) < 1e-9);

/** Every load of every sounding pickup in every state, controls at full, as `solveLoads` gives them. */
export function loadChecks(circuit: Circuit): readonly Check[] {
  const { outputLoad } = circuit.kit;
  const frequency = outputLoad.frequency.value;
  return solveLoads(circuit).flatMap(({ state, pickups }) => {
    const own = ownNetlist(circuit, state, {});
    return pickups.flatMap(({ pickup, dcLoad, signalLoad, total, series }): readonly Check[] => {
      const port = ownPort(own, circuit, state, pickup);
      // The windings of its own chain stay; which they are, `relations.ts` compares.
      const bare = own.lines.filter((line) => line.pickup === undefined || series.includes(line.pickup));
      const played = [
        ...own.lines.filter(
          (l) => l.pickup === undefined || (l.pickup !== pickup && state.sounding.includes(l.pickup)),
        ),
        ...outside(circuit, own),
      ];
      const name = `${pickup} ${JSON.stringify(state.positions)}`;
      return [
        ...pair(`load of ${name}`, bare, port, frequency, dcLoad, signalLoad),
        ...pair(`total load of ${name}`, played, port, frequency, total.dcLoad, total.signalLoad),
      ];
    });
  });
}

/** Ids of the coils that a humbucker with four leads sounds with. */
const soundingCoils = (state: State, pickup: string): readonly string[] =>
  (state.coils?.[pickup] ?? [{ id: 'coil-a' }, { id: 'coil-b' }]).map(({ id }) => id.slice(-1));

/** Where a pickup is looked out of: the ends of its one sounding coil, or the nodes that two do not share, or share both. */
function ownPort(own: OwnNetlist, { kit }: Circuit, state: State, pickup: string): OwnPort {
  const node = (lug: string) => own.node(`${pickup}.${lug}`);
  if (kit.parts.find(({ name }) => name === pickup)?.kind !== 'four-lead-humbucker')
    return { from: node('hot'), to: node('ground') };
  const ends = soundingCoils(state, pickup).map((coil) => [node(`${coil}-start`), node(`${coil}-finish`)]);
  const all = ends.flat();
  const single = all.filter((one) => all.filter((other) => other === one).length === 1);
  const [from, to] = single.length === 0 ? (ends[0] ?? []) : single;
  if (from === undefined || to === undefined || single.length > 2) throw new Error(`no port of ${pickup}`);
  return { from, to };
}

/** Loads of every pickup, sounding or not, at any control setting, straight from the network. */
export function portChecks(
  circuit: Circuit,
  state: State,
  rotations: Readonly<Record<string, number>>,
): readonly Check[] {
  const own = ownNetlist(circuit, state, rotations);
  const ours = makeNetlist(circuit, state, rotations);
  const bare = own.lines.filter((line) => line.pickup === undefined);
  return circuit.kit.parts.filter(isPickup).flatMap(({ name }) => {
    const [hot, ground] = [`${name}.hot`, `${name}.ground`];
    const port: Port = { from: ours.nodeOf.get(hot) ?? -1, to: ours.nodeOf.get(ground) ?? -1 };
    const { dcLoad, signalLoad } = loadsOf(
      withoutPickups(ours.branches, () => true),
      port,
      1000,
    );
    return pair(
      `port ${name}`,
      bare,
      { from: own.node(hot), to: own.node(ground) },
      1000,
      dcLoad,
      signalLoad,
    );
  });
}

/** Every meter reading at the jack and at every joined lug, as `readMeter` gives them. */
export function meterChecks(circuit: Circuit): readonly Check[] {
  const roles = rolesOf(circuit);
  const sleeve = `${circuit.kit.parts.find((part) => part.kind === 'jack')?.name}.sleeve`;
  const tip = sleeve.replace('.sleeve', '.tip');
  const before = solderedBeforePickups(circuit);
  return readMeter(circuit, roles).flatMap(({ state, volumeFull, volumeZero }) =>
    [
      { volume: 10, readings: volumeFull },
      { volume: 0, readings: volumeZero },
    ].flatMap(({ volume, readings }) => {
      const turned = rotationsAt(roles, { volume, tone: 10 });
      const [bare, whole] = [ownNetlist(before, state, turned), ownNetlist(circuit, state, turned)];
      const rows = [{ probe: tip, ...readings.jack }, ...readings.lugs];
      return rows.flatMap(({ probe, disconnected, connected }) => {
        const port = (own: OwnNetlist) => ({ from: own.node(probe), to: own.node(sleeve) });
        const what = `reading at ${probe}, volume ${volume}, ${JSON.stringify(state.positions)}`;
        return [
          direct(`${what}, before pickups`, bare.lines, port(bare), disconnected),
          direct(`${what}, finished`, whole.lines, port(whole), connected),
        ];
      });
    }),
  );
}

/**
 * The circuit with those joints only that are soldered at both ends before the first lead of a pickup is. Which these are is read
 * off the steps as a customer has them.
 */
export function solderedBeforePickups(circuit: Circuit): Circuit {
  const pickups = new Set(circuit.kit.parts.filter(isPickup).map(({ name }) => name));
  const first = stepsOf(circuit).find(({ joints }) =>
    joints.some((i) => {
      const joint = circuit.joints[i];
      return joint !== undefined && (pickups.has(joint.from.part) || pickups.has(joint.to.part));
    }),
  );
  return solderedAfter(circuit, first ? first.number - 1 : Infinity);
}

/** The same after a step: a joint of the steps up to then counts unless one of its ends is left for a later one. */
export function solderedAfter(circuit: Circuit, step: number): Circuit {
  const made = new Set(
    stepsOf(circuit).flatMap(({ number, details }) =>
      number > step
        ? []
        : details
            .filter(({ from, to }) =>
              [from, to].every(({ soldered }) => typeof soldered === 'string' || soldered.later <= step),
            )
            .map(({ index }) => index),
    ),
  );
  const joints = circuit.kit.joints.filter((_, i) => made.has(i));
  return { ...circuit, joints, kit: { ...circuit.kit, joints } };
}

interface OwnPort {
  readonly from: string;
  readonly to: string;
}

/** A direct resistance. Without its inductance a coil is its resistance, so a second kind of analysis is not needed. */
export const direct = (what: string, lines: readonly Line[], port: OwnPort, ohms: number): Check => ({
  what: `direct ${what}`,
  job: {
    lines: lines.flatMap((line): readonly Line[] =>
      line.kind === 'coil'
        ? line.a === line.b
          ? []
          : [{ kind: 'R', a: line.a, b: line.b, value: line.ohms }]
        : line.kind === 'R'
          ? [line]
          : [],
    ),
    ...port,
    drive: 'current',
  },
  error: (_, result) => loadError(ohms, result[0], port.from === port.to),
});

function pair(
  what: string,
  lines: readonly Line[],
  port: OwnPort,
  frequency: number,
  dcLoad: number,
  signalLoad: number,
): readonly Check[] {
  return [
    direct(what, lines, port, dcLoad),
    {
      what: `signal ${what}`,
      job: { lines, ...port, drive: 'current' },
      error: (frequencies, result) =>
        loadError(signalLoad, result[at(frequencies, frequency)], port.from === port.to),
    },
  ];
}

export const outside = (circuit: Circuit, own: OwnNetlist): readonly Line[] => {
  const jack = circuit.kit.parts.find((part) => part.kind === 'jack');
  const [a, b] = [own.node(`${jack?.name}.tip`), own.node(`${jack?.name}.sleeve`)];
  if (a === b) return [];
  return [
    { kind: 'C', a, b, value: circuit.kit.outputLoad.cable.value },
    { kind: 'R', a, b, value: circuit.kit.outputLoad.amplifier.value },
  ];
};

/** The pickup; of a humbucker with four leads each coil, as the two together may cancel to the last digit. */
const driven = ({ kit }: Circuit, pickup: string): readonly string[] =>
  kit.parts.find(({ name }) => name === pickup)?.kind === 'four-lead-humbucker'
    ? ['a', 'b'].map((coil) => `${pickup}.${coil}`)
    : [pickup];

const pickupOf = (source: string): string => source.replace(/\.[ab]$/, '');

/** The transfer of each sounding pickup, magnitude and phase, over the whole run. */
export function responseChecks(
  circuit: Circuit,
  state: State,
  rotations: Readonly<Record<string, number>>,
): readonly Check[] {
  const own = ownNetlist(circuit, state, rotations);
  const jack = circuit.kit.parts.find((part) => part.kind === 'jack');
  const heard = makeStateSolver(circuit, state, rotations);
  const lines = [...own.lines, ...outside(circuit, own)];
  const all = state.sounding.flatMap((pickup) => driven(circuit, pickup));
  return all.map((source) => ({
    what: `response of ${source} ${JSON.stringify(state.positions)} ${JSON.stringify(rotations)}`,
    job: {
      lines,
      from: own.node(`${jack?.name}.tip`),
      to: own.node(`${jack?.name}.sleeve`),
      drive: [source],
    },
    error: (frequencies, result) =>
      Math.max(
        ...frequencies.map((f, k) => {
          const spice = result[k] ?? { re: NaN, im: NaN };
          const windings =
            heard?.windings.filter(
              (one) => one.pickup === source || one.of.replace('coil-', '') === source,
            ) ?? [];
          const ours = heard ? transferAt(heard, windings, f) : { re: 0, im: 0 };
          const size = Math.hypot(spice.re, spice.im);
          // Below a millionth of a volt per volt the ties themselves carry as much; a coil that is heard through the field alone is the
          // difference of far larger voltages.
          const least = source === pickupOf(source) ? 1e-6 : 1e-3;
          return Math.hypot(ours.re - spice.re, ours.im - spice.im) / Math.max(size, least);
        }),
      ),
  }));
}

/** Checks whose error is not below `limit`, in words; NaN counts as wrong. */
export const wrong = (checks: readonly Check[], run: Run, limit: number): readonly string[] =>
  checks.flatMap(({ what, error }, i) => {
    const worst = error(run.frequencies, run.results[i] ?? []);
    return worst <= limit ? [] : [`${what}: off by ${worst}`];
  });
