/**
 * ngspice as a second solver, through the WebAssembly build `eecircuit-engine`. Many small circuits go into one run as
 * islands of one netlist.
 *
 * Traps that this works around: an aborted analysis reports success, so the result is checked for every vector asked
 * for; a floating node makes the matrix singular, so every node is tied to ground through 10¹⁵ Ω, and the pivot
 * threshold is lowered to let that pass; `1M` would read as a thousandth, so only plain exponents are written; a
 * decade grid is stretched, so callers compare at the frequencies that come back.
 */
import type { Simulation } from 'eecircuit-engine';
import type { Line } from './own-netlist.ts';

export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** One circuit and what is wanted of it, at every frequency of the run. */
export interface Job {
  readonly lines: readonly Line[];
  readonly from: string;
  readonly to: string;
  /** Volts at the port for 1 A into it, or for 1 V induced in these pickups, or in single coils of them (`neck.a`). */
  readonly drive: 'current' | readonly string[];
}

export interface Run {
  readonly frequencies: readonly number[];
  readonly results: readonly (readonly Complex[])[];
}

/** Ohms from every node to ground, standing in for nothing at all. */
export const TIE = 1e15;

let engine: Simulation | undefined;
/** The window it made, kept while it does not run. */
let page: PropertyDescriptor | undefined;

/** Runs all jobs over `grid`, written as ngspice's `.ac` wants it. */
export async function runSpice(jobs: readonly Job[], grid: string): Promise<Run> {
  const result = await asPage(async () => {
    engine ??= await start();
    engine.setNetList(spiceText(jobs, grid));
    return engine.runSim();
  });
  if (result.dataType !== 'complex') throw new Error('ngspice gave no complex result');
  const vectors = new Map(result.data.map((vector) => [vector.name.toLowerCase(), vector.values]));
  const frequencies = (vectors.get('frequency') ?? []).map((value) => value.real);
  const results = jobs.map((job, i) => {
    if (job.from === job.to) return frequencies.map(() => ({ re: 0, im: 0 }));
    const values = vectors.get(`v(out${i})`);
    if (values?.length !== frequencies.length) throw new Error(`ngspice gave no voltage for circuit ${i}`);
    return values.map((value) => ({ re: value.real, im: value.img }));
  });
  return { frequencies, results };
}

/** The engine makes the process a window and needs it while it runs; elkjs would take that for a page and lay nothing out. */
async function asPage<T>(run: () => Promise<T>): Promise<T> {
  if ('window' in globalThis) return run();
  if (page) Object.defineProperty(globalThis, 'window', page);
  try {
    return await run();
  } finally {
    page = Object.getOwnPropertyDescriptor(globalThis, 'window');
    Reflect.deleteProperty(globalThis, 'window');
  }
}

async function start(): Promise<Simulation> {
  const { Simulation } = await import('eecircuit-engine');
  const simulation = new Simulation();
  await simulation.start();
  return simulation;
}

export function spiceText(jobs: readonly Job[], grid: string): string {
  const circuits = jobs.map((job, i) => (job.from === job.to ? [] : spiceLines(job, i)));
  return [
    'circuits side by side',
    ...circuits.flat(),
    // A run with no circuit at all is an error to ngspice.
    'Ridle idle 0 1',
    '.options pivtol=1e-30',
    `.save v(idle) ${jobs.flatMap((job, i) => (job.from === job.to ? [] : [`v(out${i})`])).join('\n+ ')}`,
    `.ac ${grid}`,
    '.end',
    '',
  ].join('\n');
}

function spiceLines(job: Job, i: number): readonly string[] {
  const names = new Map([
    [job.to, '0'],
    [job.from, `out${i}`],
  ]);
  const node = (name: string): string => {
    const known = names.get(name) ?? `n${i}x${names.size}`;
    names.set(name, known);
    return known;
  };
  const number = (value: number) => value.toExponential(17);
  const lines = job.lines.flatMap((line, k) => {
    const [a, b, id] = [node(line.a), node(line.b), `${i}x${k}`];
    if (line.kind !== 'coil') return [`${line.kind}${id} ${a} ${b} ${number(line.value)}`];
    const names = [line.pickup, `${line.pickup}.${line.coil}`];
    const isDriven = job.drive !== 'current' && names.some((name) => job.drive.includes(name));
    const driven = `AC ${isDriven ? (line.volts ?? 1) : 0}`;
    return [
      `V${id} ${a} s${id} DC 0 ${driven}`,
      `R${id} s${id} l${id} ${number(line.ohms)}`,
      `L${id} l${id} ${b} ${number(line.henries)}`,
    ];
  });
  const couplings = job.lines.flatMap((line, k) => {
    // Without inductance there is nothing to couple, and ngspice says so at length.
    if (line.kind !== 'coil' || line.coupling === undefined || line.henries === 0) return [];
    const other = job.lines.findIndex((one, n) => n > k && one.kind === 'coil' && one.pickup === line.pickup);
    return other < 0 ? [] : [`K${i}x${k} L${i}x${k} L${i}x${other} ${number(line.coupling)}`];
  });
  const source = job.drive === 'current' ? [`I${i} 0 ${node(job.from)} DC 0 AC 1`] : [];
  const ties = [...names.values()]
    .filter((name) => name !== '0')
    .map((name) => `Rt${name} ${name} 0 ${number(TIE)}`);
  return [...lines, ...couplings, ...source, ...ties];
}
