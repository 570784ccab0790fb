/**
 * Bench: a sweep of 400 frequencies over the five states of the HSS kit, ours against ngspice as WebAssembly and as a
 * process; and how our time grows with states and with nodes. Run it with `npm run bench`.
 */
import { spawnSync } from 'node:child_process';
import { pathToFileURL } from 'node:url';
import { logGrid } from '../../src/analyse/peak.ts';
import { makeStateSolver, sweep } from '../../src/analyse/response.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { capacitor, type Port, resistor, winding } from '../../src/solve/network.ts';
import { Solver } from '../../src/solve/solver.ts';
import { sampleCircuit } from '../analyse/kits.ts';
import { responseChecks } from '../oracle/compare.ts';
import { type Job, runSpice, spiceText } from '../oracle/spice.ts';

const POINTS = 400;
/** 133 a decade over three decades: 400 points from 20 Hz to 20 kHz. */
const GRID = 'dec 133 20 2e4';

/** Milliseconds, the best of several goes: what the work takes when the machine does nothing else. */
async function time(goes: number, work: () => unknown): Promise<number> {
  const taken: number[] = [];
  for (let i = 0; i < goes; i++) {
    const start = performance.now();
    await work();
    taken.push(performance.now() - start);
  }
  return Math.min(...taken);
}

/** Everything from the circuit on: network, solver, and the transfer of every sounding pickup at every frequency. */
function sweepOurs(circuit: Circuit): number {
  const frequencies = logGrid(POINTS);
  let points = 0;
  for (const state of circuit.states) {
    const heard = makeStateSolver(circuit, state);
    if (!heard) continue;
    const groups = state.sounding.map((pickup) =>
      heard.windings.filter((winding) => winding.pickup === pickup),
    );
    points += sweep(heard, groups, frequencies).reduce((sum, row) => sum + row.length, 0);
  }
  return points;
}

/** One circuit a sounding pickup and state, as ngspice wants them. */
const jobsOf = (circuit: Circuit): readonly Job[] =>
  circuit.states.flatMap((state) => responseChecks(circuit, state, {}).map((check) => check.job));

export interface Figures {
  readonly ours: number;
  readonly wasm: number;
  /** Absent where no `ngspice` is installed. */
  readonly process?: number;
}

export async function sweepFigures(): Promise<Figures> {
  const circuit = sampleCircuit('kestrel-hss');
  const jobs = jobsOf(circuit);
  await runSpice(jobs, GRID);
  const ours = await time(100, () => sweepOurs(circuit));
  const wasm = await time(8, () => runSpice(jobs, GRID));
  const text = spiceText(jobs, GRID).replace('.end', '.print ac v(idle)\n.end');
  const run = () => spawnSync('ngspice', ['-b'], { input: text, encoding: 'utf8' });
  const first = run();
  // ngspice reports success even when an analysis was given up, so its output is read.
  if (first.error || !/No\. of Data Rows : \d+/.test(first.stdout)) return { ours, wasm };
  return { ours, wasm, process: await time(8, run) };
}

/** Milliseconds of 400 frequencies on a ladder of so many nodes. */
export async function ladderTime(nodes: number): Promise<number> {
  const port: Port = { from: nodes, to: 0 };
  const branches = Array.from({ length: nodes }, (_, i) => [
    i === 0 ? winding(1, 0, 6e3, 2.4) : resistor(i, i + 1, 1e4 + i),
    capacitor(i + 1, 0, 1e-10),
  ]).flat();
  const solver = new Solver(branches, port);
  const frequencies = logGrid(POINTS);
  return time(9, () => {
    for (const frequency of frequencies) solver.solve(frequency);
  });
}

async function main(): Promise<void> {
  const { ours, wasm, process: batch } = await sweepFigures();
  const line = (name: string, ms: number) => `${name.padEnd(34)}${ms.toFixed(2).padStart(9)} ms`;
  console.log(line('ours, 5 states × 400', ours));
  console.log(`${line('ngspice, WebAssembly', wasm)}  ${(wasm / ours).toFixed(0)}×`);
  if (batch !== undefined) console.log(`${line('ngspice, process', batch)}  ${(batch / ours).toFixed(0)}×`);
  const circuit = sampleCircuit('kestrel-hss');
  for (const states of [1, 2, 5, 10, 20, 40]) {
    const many = {
      ...circuit,
      states: Array.from({ length: states }, (_, i) => circuit.states[i % 5]).filter((s) => s !== undefined),
    };
    console.log(line(`${states} states`, await time(15, () => sweepOurs(many))));
  }
  for (const nodes of [2, 4, 8, 16, 32, 64])
    console.log(line(`one state of ${nodes} nodes`, await ladderTime(nodes)));
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await main();
