/**
 * What sounds and how it is joined, by ngspice alone: from its transfers of every pickup, with each of the others as it
 * is, shorted, and taken out. The limits are the handbook's (“What is computed”): −40 dB of the loudest from 100 Hz to
 * 5 kHz; level, phase and chain at 1 kHz.
 */
import { solveLoads } from '../../src/analyse/loads.ts';
import { referenceCircuit } from '../../src/analyse/reference.ts';
import type { Circuit, State } from '../../src/circuit/circuit.ts';
import { isPickup } from '../../src/parts/index.ts';
import { outside } from './compare.ts';
import { type Line, type OwnNetlist, ownNetlist } from './own-netlist.ts';
import { type Complex, type Job, runSpice } from './spice.ts';

/** Ten a decade over whole decades, so that every third octave and 1 kHz are on it. */
const GRID = 'dec 10 100 10000';
const AT_1K = 'lin 1 1000 1000';
const MOST = 5050;
/** Nearer than this to a limit either answer is right. */
const NEAR = 1e-6;
const BATCH = 150;

const size = (value: Complex | undefined): number => (value ? Math.hypot(value.re, value.im) : 0);

interface Wanted {
  readonly key: string;
  readonly job: Job;
}

class Runs {
  readonly #found = new Map<string, readonly Complex[]>();
  /** What of a row lies at 1 kHz. */
  readonly #at1k = new Map<string, Complex | undefined>();

  async run(wanted: readonly Wanted[], grid: string): Promise<void> {
    for (let i = 0; i < wanted.length; i += BATCH) {
      const batch = wanted.slice(i, i + BATCH);
      const { frequencies, results } = await runSpice(
        batch.map(({ job }) => job),
        grid,
      );
      const heard = frequencies.filter((frequency) => frequency < MOST).length;
      const k = frequencies.findIndex((f) => Math.abs(f / 1000 - 1) < 1e-9);
      batch.forEach(({ key }, n) => {
        this.#found.set(key, (results[n] ?? []).slice(0, heard));
        this.#at1k.set(key, results[n]?.[k]);
      });
    }
  }

  row(key: string): readonly Complex[] {
    const row = this.#found.get(key);
    if (!row) throw new Error(`not run: ${key}`);
    return row;
  }

  at1k(key: string): Complex {
    const value = this.#at1k.get(key);
    if (!value) throw new Error(`1 kHz is not on the grid: ${key}`);
    return value;
  }
}

interface Played {
  readonly own: OwnNetlist;
  readonly lines: readonly Line[];
  readonly tip: string;
  readonly sleeve: string;
}

function played(circuit: Circuit, state: State): Played {
  const own = ownNetlist(circuit, state, {});
  const jack = circuit.kit.parts.find((part) => part.kind === 'jack')?.name;
  return {
    own,
    lines: [...own.lines, ...outside(circuit, own)],
    tip: own.node(`${jack}.tip`),
    sleeve: own.node(`${jack}.sleeve`),
  };
}

const job = ({ lines, tip, sleeve }: Played, ...drive: readonly string[]): Job => ({
  lines,
  from: tip,
  to: sleeve,
  drive,
});

const without = (one: Played, gone: readonly string[]): Played => ({
  ...one,
  lines: one.lines.filter((line) => line.pickup === undefined || !gone.includes(line.pickup)),
});

function shorted(one: Played, pickup: string): Played {
  const coil = one.lines.find((line) => line.kind === 'coil' && line.pickup === pickup);
  if (!coil) return one;
  const moved = (node: string): string => (node === coil.b ? coil.a : node);
  const lines = one.lines.map((line) => ({ ...line, a: moved(line.a), b: moved(line.b) }));
  return {
    ...one,
    lines: lines.filter((line) => line.a !== line.b),
    tip: moved(one.tip),
    sleeve: moved(one.sleeve),
  };
}

/** The same with resistors of the size of every impedance at 1 kHz, in which nothing resonates. */
const magnitudesOnly = (one: Played): Played => ({
  ...one,
  lines: one.lines.map((line): Line => {
    if (line.kind === 'R') return line;
    if (line.kind !== 'coil') return { ...line, kind: 'R', value: 1 / (2000 * Math.PI * line.value) };
    return { ...line, ohms: Math.sqrt(line.ohms ** 2 + (2000 * Math.PI * line.henries) ** 2), henries: 0 };
  }),
});

/** How far the sum of all comes above a hundredth of the loudest, at the frequency where it is most; over 1 alone. */
const sumsOver = (rows: readonly (readonly Complex[])[]): number =>
  rows.length < 2
    ? Infinity
    : Math.max(
        ...(rows[0] ?? []).map((_, k) => {
          const each = rows.map((row) => row[k] ?? { re: 0, im: 0 });
          const sum = each.reduce((all, one) => ({ re: all.re + one.re, im: all.im + one.im }));
          return size(sum) / (0.01 * Math.max(...each.map(size)));
        }),
      );

/** Everything in which our states, levels, phases and chains differ from ngspice's, in words. */
export async function relationErrors(circuits: readonly Circuit[]): Promise<readonly string[]> {
  const runs = new Runs();
  const all = circuits.flatMap((circuit, c) =>
    circuit.states.map((state, s) => ({ circuit, state, s, id: `${c} ${s}`, net: played(circuit, state) })),
  );
  const pickupsOf = (circuit: Circuit) => circuit.kit.parts.filter(isPickup);
  await runs.run(
    [
      ...all.flatMap(({ circuit, id, net }) =>
        pickupsOf(circuit).map(({ name }) => ({ key: `${id} ${name}`, job: job(net, name) })),
      ),
      ...circuits.flatMap((circuit, c) =>
        pickupsOf(circuit).map((pickup) => {
          const plain = referenceCircuit(pickup, circuit.kit.outputLoad);
          const [state] = plain.states;
          if (!state) throw new Error('a reference harness has a state');
          return { key: `${c} reference ${pickup.name}`, job: job(played(plain, state), pickup.name) };
        }),
      ),
    ],
    GRID,
  );

  const heard = all.map((entry) => {
    const names = pickupsOf(entry.circuit).map(({ name }) => name);
    const rows = names.map((name) => runs.row(`${entry.id} ${name}`));
    const loudest = (rows[0] ?? []).map((_, k) => Math.max(...rows.map((row) => size(row[k]))));
    const margin = (row: readonly Complex[]): number =>
      Math.max(...row.map((one, k) => ((loudest[k] ?? 0) > 1e-4 ? size(one) / (loudest[k] ?? 1) : 0))) / 0.01;
    const margins = new Map(names.map((name, i) => [name, margin(rows[i] ?? [])]));
    return { ...entry, margins, sounding: names.filter((name) => (margins.get(name) ?? 0) > 1) };
  });
  await runs.run(
    heard.flatMap(({ id, net, sounding }) => [
      ...sounding.map((name) => ({ key: `${id} ${name} sizes`, job: job(magnitudesOnly(net), name) })),
      ...sounding.map((name) => ({
        key: `${id} ${name} level`,
        job: job(net, name),
      })),
      ...sounding.flatMap((other) => [
        ...sounding
          .filter((name) => name !== other)
          .flatMap((name) => [
            { key: `${id} ${name} short ${other}`, job: job(shorted(magnitudesOnly(net), other), name) },
            { key: `${id} ${name} gap ${other}`, job: job(without(magnitudesOnly(net), [other]), name) },
          ]),
      ]),
    ]),
    AT_1K,
  );
  const chained = heard.map((entry) => {
    const short = (name: string, other: string) => size(runs.at1k(`${entry.id} ${name} short ${other}`));
    const gap = (name: string, other: string) => size(runs.at1k(`${entry.id} ${name} gap ${other}`));
    const at = (name: string) => runs.at1k(`${entry.id} ${name} level`);
    const loudest = Math.max(...entry.sounding.map((name) => size(at(name))));
    return { ...entry, short, gap, at, loudest };
  });
  await runs.run(
    chained.flatMap(({ id, net, sounding, short, gap }) =>
      sounding.map((name) => ({
        key: `${id} ${name} alone`,
        job: job(
          without(
            net,
            sounding.filter((other) => other !== name && !(short(name, other) > gap(name, other))),
          ),
          name,
        ),
      })),
    ),
    AT_1K,
  );

  const ours = new Map(circuits.map((circuit) => [circuit, solveLoads(circuit)]));
  const errors: string[] = [];
  for (const { circuit, state, s, id, margins, sounding, short, gap, at, loudest } of chained) {
    const say = (what: string) =>
      errors.push(`${circuit.kit.id} ${JSON.stringify(state.positions)}: ${what}`);
    const sure = [...margins].filter(([, margin]) => Math.abs(margin - 1) > NEAR).map(([name]) => name);
    const sounds = (names: readonly string[]) => names.filter((name) => sure.includes(name)).join();
    if (sounds(sounding) !== sounds(state.sounding)) {
      say(`${sounding.join()} sounding by ngspice, ours ${state.sounding.join()}`);
      continue;
    }
    const cancelled = sumsOver(sounding.map((name) => runs.row(`${id} ${name}`)));
    if (Math.abs(cancelled - 1) > NEAR && cancelled < 1 !== ours.get(circuit)?.[s]?.silentTogether)
      say(`together ${cancelled / 100} of the loudest by ngspice`);
    const c = id.split(' ')[0];
    const losses = sounding.map(
      (name) => size(runs.at1k(`${id} ${name} alone`)) / size(runs.at1k(`${c} reference ${name}`)),
    );
    const output = Math.min(1, Math.max(0, ...losses));
    const own = ours.get(circuit)?.[s]?.output ?? 0;
    // Where a pair is at the border of series and parallel, either is taken out.
    const bordering = sounding.some((name) =>
      sounding.some((other) => other !== name && Math.abs(short(name, other) / gap(name, other) - 1) < NEAR),
    );
    if (
      !bordering &&
      sounding.length > 0 &&
      !(Math.abs(10 ** (own / 20) / output - 1) < NEAR || output < 1e-6)
    )
      say(`output at ${20 * Math.log10(output)} dB by ngspice, ours ${own} dB`);
    for (const { pickup, level, series, outOfPhase } of ours.get(circuit)?.[s]?.pickups ?? []) {
      const expected = sounding.length === 1 ? output : Math.min(1, size(at(pickup)) / loudest);
      if (!(Math.abs(10 ** (level / 20) / expected - 1) < NEAR || expected < 1e-6))
        say(`${pickup} at ${20 * Math.log10(expected)} dB by ngspice, ours ${level} dB`);
      for (const other of sounding.filter((name) => name !== pickup)) {
        const [a, b] = [pickup, other].map((name) => runs.at1k(`${id} ${name} sizes`).re);
        // A bridge in balance lets nothing through, and its sign is chance.
        if (a !== undefined && b !== undefined && Math.min(Math.abs(a), Math.abs(b)) > NEAR)
          if (a * b < 0 !== outOfPhase.includes(other))
            say(
              `${pickup} and ${other}: ${a} and ${b} by ngspice, ${outOfPhase.join()} out of phase by ours`,
            );
        const [through, round] = [short(pickup, other), gap(pickup, other)];
        if (Math.abs(through - round) > NEAR * Math.max(through, round))
          if (through > round !== series.includes(other))
            say(`${pickup} and ${other}: ${through} when shorted, ${round} when out, by ngspice`);
      }
    }
  }
  return errors;
}
